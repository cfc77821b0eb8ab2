package sequence

import (
	"cmp"
	"slices"
	"time"
)

// swaps says what may stand for what in a session with splits and joins, and the
// orders worth a try without a search.
type swaps struct {
	level  []int   // by tank: as far up as it is, so much fits in it
	need   []int   // by job: the level from which it fits, in its parts
	token  []int16 // by tank: equal for tanks that may stand for one another when empty
	kind   []int   // by job
	kinds  [][]int // jobs that may swap places, the earliest limit first
	orders [][]int // rank, and by limit with more and more of what a move takes
	byNeed []int   // jobs, the least need first
}

// sortSwaps groups tanks and jobs. As what fits in a tank fits in every larger
// one, the number of jobs and pairs that fit says all of it.
func (r *room) sortSwaps() swaps {
	w := swaps{level: make([]int, len(r.Tanks)), need: make([]int, len(r.jobs)), token: make([]int16, len(r.Tanks))}
	for i := range r.Tanks {
		for _, jb := range r.jobs {
			w.level[i] += b2i(jb.fits[i]) + b2i(jb.both != nil && jb.both[i])
		}
		w.token[i] = int16(w.level[i])
	}
	standing := slices.DeleteFunc(r.readyTanks(), func(tank int) bool { return !r.useful[tank] })
	if slices.ContainsFunc(standing, func(tank int) bool { return w.level[tank] != w.level[standing[0]] }) {
		for i, tank := range standing { // then it matters which one a job prefers
			w.token[tank] = int16(-1 - i)
		}
	} else {
		standing = nil
	}
	w.setKinds(r, standing)
	w.setOrders(r)
	return w
}

// setKinds puts whole sources together that take the same time, leave the same
// tank, fit in the same tanks and choose among them alike: in any order two of
// them may swap places, and but for their own limits nothing changes.
func (w *swaps) setKinds(r *room, standing []int) {
	type sort struct {
		litres float64
		need   int
		choice string // places of the standing tanks in the order of choice
		alone  int    // 1 + job for one that is split or joined
	}
	seen := map[sort]int{}
	for j, jb := range r.jobs {
		w.need[j] = 2*len(r.jobs) + 1
		for i, fits := range jb.fits {
			if fits {
				w.need[j] = min(w.need[j], w.level[i])
			}
		}
		key := sort{litres: r.Tanks[jb.tank].Litres, need: w.need[j]}
		if jb.parts > 1 || jb.partner >= 0 {
			key.alone = 1 + j
		}
		for _, tank := range standing {
			key.choice += string([]byte{byte(jb.prefer[tank]), byte(jb.prefer[tank] >> 8)})
		}
		k, ok := seen[key]
		if !ok {
			k = len(w.kinds)
			seen[key] = k
			w.kinds = append(w.kinds, nil)
		}
		w.kind = append(w.kind, k)
		w.kinds[k] = append(w.kinds[k], j)
	}
	for _, members := range w.kinds {
		slices.SortFunc(members, func(a, b int) int {
			return cmp.Or(cmp.Compare(r.jobs[a].limit, r.jobs[b].limit), cmp.Compare(r.jobs[a].place, r.jobs[b].place))
		})
	}
}

func (w *swaps) setOrders(r *room) {
	sorted := func(key func(j int) time.Duration) []int {
		order := slices.Clone(r.rank)
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(key(a), key(b)) })
		return order
	}
	w.orders = [][]int{
		r.rank,
		sorted(func(j int) time.Duration { return r.jobs[j].limit }),
		sorted(func(j int) time.Duration { return r.jobs[j].limit + r.jobs[j].move }),
		sorted(func(j int) time.Duration { return r.jobs[j].limit + r.jobs[j].move + r.jobs[j].prepare }),
		sorted(func(j int) time.Duration { return -time.Duration(w.need[j]) }),
	}
	w.byNeed = sorted(func(j int) time.Duration { return time.Duration(w.need[j]) })
}

// byMove and byTurn are Jackson's orders for the mover, and for a mover who waits
// for each tank in turn.
func (w *swaps) byMove() []int { return w.orders[2] }
func (w *swaps) byTurn() []int { return w.orders[3] }
