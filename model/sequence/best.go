package sequence

import (
	"cmp"
	"slices"
	"time"
)

// Best plans the session so that, in this order of importance,
//
//  1. the fewest sources stay unmoved;
//  2. the worst overrun, max(0, start - (due + grace)) over the moves, is smallest;
//  3. of all orders that reach both, the one that comes first when orders are
//     compared move by move by rank: suspect tanks last, then the house order, then
//     due time, then the order of the room.
//
// Times are exact: every duration is rounded once, to the millisecond, and only
// whole numbers are compared. The plan's Best is false when Problem.Budget ran out
// before the proof was done; the plan is then the best one found. The error is for
// a problem that cannot be planned, and names the tank or figure at fault.
func Best(p Problem) (Plan, error) {
	r, err := newRoom(p)
	if err != nil {
		return Plan{}, err
	}
	seq, proved, nodes := r.bestOrder()
	legs := make([]Leg, len(seq))
	for i, j := range seq {
		legs[i] = Leg{From: r.jobs[j].tank, To: ByRule}
	}
	plan, _ := r.timetable(legs)
	for i := range plan.Unmoved {
		plan.Unmoved[i].Why = r.stays(plan.Unmoved[i].Source)
	}
	plan.Best, plan.Nodes = proved, nodes
	return plan, nil
}

// bestOrder searches by what the problem allows: sources that are neither split
// nor joined may swap places freely, which the faster search builds on.
func (r *room) bestOrder() (seq []int, proved bool, nodes int) {
	if r.shared() {
		h := newParted(r)
		return h.best(), h.proved, h.spent
	}
	h := newHunt(r)
	return h.best(), h.proved, h.spent
}

// hunt takes the aims one after the other. Each search may use half of the nodes
// left, so a hard one leaves something for the next.
type hunt struct {
	*search
	budget, spent int
	proved        bool
}

func newHunt(r *room) *hunt {
	a := r.sortAlike()
	return &hunt{search: newSearch(r, &a), budget: cmp.Or(r.Budget, DefaultBudget), proved: true}
}

func (h *hunt) best() []int {
	seq := h.most()
	if len(seq) == 0 {
		return nil
	}
	h.earliest(seq)
	// Once the nodes have run out, passes of likely orders alone still improve the
	// order, until no source can simply be put further forward.
	for again := true; again; {
		again = h.ranked(seq) && !h.proved
	}
	return seq
}

// ask runs the search on from where it stands.
func (h *hunt) ask() verdict {
	h.nodes, h.stop = 0, (h.budget-h.spent+1)/2
	v := h.complete()
	h.spent += h.nodes
	if v == unknown {
		h.proved = false
	}
	return v
}

// most returns an order that moves all that can be moved: that of rank if it does,
// else the greatest need first, as movable shows.
func (h *hunt) most() []int {
	greatest := slices.Clone(h.byNeed)
	slices.Reverse(greatest)
	if !h.follow(h.rank) {
		h.follow(greatest)
	}
	seq := slices.Clone(h.path)
	h.back(0)
	return seq
}

// earliest makes the worst overrun of seq as small as can be, and sets the limit
// to it.
func (h *hunt) earliest(seq []int) {
	worst := h.worst(seq)
	least := max(0, h.bound.lateness(h.search))
	better := func() {
		copy(seq, h.path)
		h.back(0)
		worst = h.worst(seq)
	}
	b := &h.bound
	for _, order := range [][]int{h.rank, b.byLimit, b.byMove, b.byPrepare, b.byBoth} {
		if h.limit = worst - 1; worst > least && h.follow(order) {
			better()
		}
	}
	for worst > least {
		if h.limit = worst - 1; h.ask() != yes {
			break
		}
		better()
	}
	h.limit = worst
	h.forget()
}

// worst is the worst overrun of an order that can be made.
func (h *hunt) worst(seq []int) time.Duration {
	f, worst := h.open(false), time.Duration(0)
	for _, j := range seq {
		start := h.move(&f, h.pick(&f, j), j, false)
		worst = max(worst, start-h.jobs[j].limit)
	}
	return worst
}

// ranked changes seq into the order that comes first in rank within the limit:
// step by step it takes the first in rank from which the rest can be completed.
// It says whether seq has changed.
func (h *hunt) ranked(seq []int) bool {
	before := slices.Clone(seq)
	for d := range seq {
		h.step(seq, d)
		h.push(h.pick(h.floor(), seq[d]), seq[d])
	}
	h.back(0)
	return !slices.Equal(seq, before)
}

// step puts the first in rank that can go at place d there, and changes the rest
// of seq with it. Without nodes left only the first of all is tried.
func (h *hunt) step(seq []int, d int) {
	lost := make([]bool, len(h.jobs)) // cannot go now
	for _, j := range h.rank {
		if j == seq[d] {
			return
		}
		if h.gone[j] || lost[j] {
			continue
		}
		i := h.pick(h.floor(), j)
		if i < 0 {
			continue
		}
		h.push(i, j) // in time, for seq moves it later and in time
		v := h.rest(seq)
		if v == yes {
			copy(seq, h.path)
		}
		h.back(d)
		if v == yes {
			return
		}
		if v == no {
			h.lose(lost, j)
		}
		if h.spent >= h.budget {
			h.proved = false
			return
		}
	}
}

// rest says whether the order begun can be completed. Before searching it tries
// seq with the one just moved put forward, and the order of rank.
func (h *hunt) rest(seq []int) verdict {
	if h.left > 0 && h.spent < h.budget {
		h.spent++
		if h.hopeless() {
			return no
		}
	}
	if h.follow(seq) || h.follow(h.rank) {
		return yes
	}
	return h.ask()
}

// lose marks j and those of its class with no earlier limits: what fails for j
// fails for them, since in time they may swap places with it.
func (h *hunt) lose(lost []bool, j int) {
	for _, k := range h.classes[h.class[j]] {
		if h.jobs[k].limit >= h.jobs[j].limit {
			lost[k] = true
		}
	}
}
