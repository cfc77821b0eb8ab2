package sequence

import (
	"cmp"
	"slices"
	"time"
)

// parted looks for the best order where sources are split or joined. Then the
// number of empty tanks changes on the way, what can be moved depends on what is
// moved, and the exchange arguments of search hold for whole sources alone. So it
// tries orders depth first, bounded and remembering what failed, under two marks:
// how many sources may stay, and how late a move may begin.
type parted struct {
	*room
	swaps
	stay  int           // sources that may stay, beside those that can never be moved
	must  bool          // whatever is not split must be moved
	limit time.Duration // worst start - (due + grace) allowed

	path   []int   // jobs moved so far, one entry a part
	scenes []scene // scenes[d] is the scene after d moves

	budget, spent int
	nodes, stop   int // nodes of this search, and where it gives up
	proved        bool
	failed        map[string][]time.Duration // states that cannot be completed: see learn
	key           []byte                     // scratch
	now           []time.Duration            // scratch
}

func newParted(r *room) *parted {
	p := &parted{
		room: r, swaps: r.sortSwaps(), limit: anyLate,
		budget: cmp.Or(r.Budget, DefaultBudget), proved: true,
		failed: map[string][]time.Duration{},
	}
	moves := 0
	for _, jb := range r.jobs {
		moves += jb.parts
	}
	p.scenes = make([]scene, moves+1)
	p.scenes[0] = r.begin(false)
	p.bar(&p.scenes[0])
	return p
}

// bar takes the jobs out that can never be moved.
func (p *parted) bar(c *scene) {
	reach := p.reach(c)
	for j := range p.jobs {
		if p.need[j] > reach || p.jobs[j].parts > len(c.slots)+len(p.Joins) {
			c.parts[j] = 0
			c.left--
		}
	}
}

// best takes the three aims one after the other.
func (p *parted) best() []int {
	seq := p.most()
	if len(seq) == 0 {
		return nil
	}
	seq = p.earliest(seq)
	for {
		better := p.ranked(seq)
		if p.proved || slices.Equal(better, seq) {
			return better
		}
		seq = better
	}
}

// most returns an order that leaves as few as possible, and sets stay to that.
func (p *parted) most() []int {
	var seq []int
	p.stay = p.scenes[0].left
	stay := p.stay
	better := func() {
		seq, stay = slices.Clone(p.path), p.scene().left
		p.back(0)
	}
	for _, order := range p.orders {
		p.greedy(order)
		if p.scene().left < stay {
			better()
		}
		p.back(0)
	}
	for stay > 0 {
		if p.allow(stay - 1); p.ask() != yes {
			break
		}
		better()
	}
	p.allow(stay)
	p.forget()
	return seq
}

// allow lets so many sources stay. Where there are not tanks enough unless as many
// of the split ones do, no other may.
func (p *parted) allow(stay int) {
	p.stay = stay
	p.must = stay == 0 || !p.tanksLast(&p.scenes[0], stay-1)
}

// earliest makes the worst overrun of seq as small as can be, and sets the limit
// to it.
func (p *parted) earliest(seq []int) []int {
	worst, least := p.worst(seq), max(0, p.lateness(p.scene()))
	better := func() {
		seq, worst = slices.Clone(p.path), p.worst(p.path)
		p.back(0)
	}
	for _, order := range p.orders {
		if p.limit = worst - 1; worst > least && p.greedy(order) {
			better()
		}
	}
	for worst > least {
		if p.limit = worst - 1; p.ask() != yes {
			break
		}
		better()
	}
	p.limit = worst
	p.forget()
	return seq
}

// ranked returns the order within the limit that comes first in rank: step by
// step the first in rank from which the rest can be completed.
func (p *parted) ranked(seq []int) []int {
	for d := 0; d < len(seq); d++ {
		seq = p.step(seq, d)
		p.push(seq[d])
	}
	p.back(0)
	return seq
}

// step puts the first in rank that can go at place d there. Without nodes left
// only the first of all that seq moves is tried.
func (p *parted) step(seq []int, d int) []int {
	lost := make([]bool, len(p.jobs)) // cannot go now
	for _, j := range p.rank {
		if j == seq[d] {
			return seq
		}
		if lost[j] || !p.push(j) {
			continue
		}
		v := p.rest(seq[d:])
		if v == yes {
			seq = slices.Clone(p.path)
		}
		p.back(d)
		if v == yes {
			return seq
		}
		if v == no && p.must {
			p.lose(lost, j)
		}
		if p.spent >= p.budget {
			p.proved = false
			if slices.Contains(seq[d:], j) {
				return seq
			}
		}
	}
	return seq
}

// rest says whether the order begun can be completed. Before searching it tries
// what was to follow without the one just moved, and the order of rank.
func (p *parted) rest(follow []int) verdict {
	if at := slices.Index(follow, p.path[len(p.path)-1]); at >= 0 {
		if p.replay(slices.Concat(follow[:at], follow[at+1:])) {
			return yes
		}
	}
	if p.greedy(p.rank) {
		return yes
	}
	return p.ask()
}

// ask runs the search on from where it stands, with half of the nodes left.
func (p *parted) ask() verdict {
	p.nodes, p.stop = 0, (p.budget-p.spent+1)/2
	v := p.complete()
	p.spent += p.nodes
	if v == unknown {
		p.proved = false
	}
	return v
}

// complete says whether the moves made so far can be completed within stay and
// limit. After yes, path holds such an order; after any other answer it is as before.
func (p *parted) complete() verdict {
	if p.settled() {
		return yes
	}
	if p.nodes >= p.stop {
		return unknown
	}
	p.nodes++
	if p.hopeless(p.scene()) {
		return no
	}
	answer, d := no, len(p.path)
	for _, j := range p.candidates() {
		if !p.push(j) {
			continue
		}
		switch p.complete() {
		case yes:
			return yes
		case unknown:
			answer = unknown
		}
		p.back(d)
	}
	if answer == no {
		p.learn()
	}
	return answer
}

// settled says that no source is moved in part and few enough stay.
func (p *parted) settled() bool { return p.scene().begun == 0 && p.scene().left <= p.stay }

// forget drops what was learnt, which holds for marks no higher than those it was
// learnt under.
func (p *parted) forget() { clear(p.failed) }
