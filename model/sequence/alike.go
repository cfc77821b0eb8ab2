package sequence

import (
	"cmp"
	"slices"
)

// alike says which tanks and which jobs are interchangeable, so that the search
// tries one of each sort.
//
// Fits are nested: what fits in a tank fits in every larger one. So a tank is as
// good as its level, the number of jobs that fit in it, and a job fits exactly
// where the level reaches its need.
type alike struct {
	level    []int    // by tank; 0 for one that takes no part
	need     []int    // by job
	byNeed   []int    // jobs, the least need first
	anywhere bool     // every job fits in every useful tank
	token    []uint16 // by tank: equal for tanks that may stand for one another when empty
	class    []int    // by job
	classes  [][]int  // jobs of a class, earliest limit first
}

// sortAlike groups tanks and jobs. Jobs of one class take the same time, leave the
// same tank, fit in the same tanks and choose among them alike; only their limits
// and ranks differ.
func (r *room) sortAlike() alike {
	a := alike{
		level: make([]int, len(r.Tanks)),
		need:  make([]int, len(r.jobs)),
		token: make([]uint16, len(r.Tanks)),
		class: make([]int, len(r.jobs)),
	}
	a.setLevels(r)
	a.setClasses(r, a.setTokens(r))
	return a
}

func (a *alike) setLevels(r *room) {
	for i := range r.Tanks {
		if !r.takesPart(i) {
			continue
		}
		for j := range r.jobs {
			a.level[i] += b2i(r.jobs[j].fits[i])
		}
	}
	a.anywhere = true
	for j := range r.jobs {
		a.need[j] = len(r.jobs)
		for i, fits := range r.jobs[j].fits {
			if fits && a.level[i] > 0 {
				a.need[j] = min(a.need[j], a.level[i])
			}
		}
		a.anywhere = a.anywhere && a.need[j] == len(r.jobs)
	}
	a.byNeed = slices.Clone(r.rank)
	slices.SortStableFunc(a.byNeed, func(x, y int) int { return cmp.Compare(a.need[x], a.need[y]) })
}

// takesPart says whether the tank can be a destination in this session.
func (r *room) takesPart(tank int) bool {
	switch r.Tanks[tank].State {
	case Out:
		return false
	case Holding:
		return slices.ContainsFunc(r.Sources, func(s Source) bool { return s.Tank == tank })
	}
	return true
}

// setTokens gives tanks of one level one token and returns the tanks standing
// ready whose choice matters: none when they are all of one level, for then
// temperatures decide between equals. Those that matter have tokens of their own.
func (a *alike) setTokens(r *room) []int {
	for i, level := range a.level {
		a.token[i] = uint16(level)
	}
	standing := slices.DeleteFunc(r.readyTanks(), func(tank int) bool { return !r.useful[tank] })
	if !slices.ContainsFunc(standing, func(tank int) bool { return a.level[tank] != a.level[standing[0]] }) {
		return nil
	}
	for i, tank := range standing {
		a.token[tank] = uint16(len(r.jobs) + 1 + i)
	}
	return standing
}

func (a *alike) setClasses(r *room, standing []int) {
	type sort struct {
		litres float64
		need   int
		choice string // places of the standing tanks in the order of choice
	}
	seen := map[sort]int{}
	for j, jb := range r.jobs {
		var choice []byte
		for _, tank := range standing {
			choice = append(choice, byte(jb.prefer[tank]), byte(jb.prefer[tank]>>8))
		}
		key := sort{r.Tanks[jb.tank].Litres, a.need[j], string(choice)}
		c, ok := seen[key]
		if !ok {
			c = len(seen)
			seen[key] = c
			a.classes = append(a.classes, nil)
		}
		a.class[j] = c
		a.classes[c] = append(a.classes[c], j)
	}
	for _, members := range a.classes {
		slices.SortFunc(members, func(x, y int) int {
			return cmp.Or(cmp.Compare(r.jobs[x].limit, r.jobs[y].limit), cmp.Compare(r.jobs[x].place, r.jobs[y].place))
		})
	}
}

// movable returns how many jobs not gone can ever find a tank, and thus can all be
// moved in one order: as byNeed has them, the first that finds no tank among those
// empty and those emptied so far leaves the rest without one too.
//
// All of them can be moved, whatever tanks the rule chooses: move, again and
// again, the job with the greatest need that fits somewhere. It takes a tank of no
// use to jobs of greater need, and leaves one that is as good as the one taken for
// all others.
func (a *alike) movable(r *room, f *floor, gone []bool) int {
	best, n := 0, 0
	for _, sl := range f.slots {
		best = max(best, a.level[sl.tank])
	}
	for _, j := range a.byNeed {
		if gone[j] {
			continue
		}
		if a.need[j] > best {
			break
		}
		best = max(best, a.level[r.jobs[j].tank])
		n++
	}
	return n
}
