package sequence

import (
	"fmt"
	"slices"
	"time"
)

// reasons says for every move of an order why its source goes then. A source that
// is first in rank is named by what ranks it. For one that is brought forward the
// claim is tested: the first in rank is put in its place, the rest kept in order,
// and the reason is the first thing that goes worse than worst.
func (r *room) reasons(seq []int, worst time.Duration) []string {
	why := make([]string, len(seq))
	moved := make([]bool, len(r.jobs))
	for k, j := range seq {
		first := slices.MinFunc(seq[k:], func(a, b int) int { return r.jobs[a].place - r.jobs[b].place })
		if j == first {
			why[k] = r.rankReason(j, moved)
		} else {
			why[k] = r.forward(seq, k, first, worst)
		}
		moved[j] = true
	}
	return why
}

// rankReason names what makes j the first in rank of those that still move.
func (r *room) rankReason(j int, moved []bool) string {
	if r.Sources[j].Suspect {
		return "suspect, so last"
	}
	why := map[Order]string{OldestFirst: "oldest", YoungestFirst: "youngest", DueFirst: "due first"}[r.Order]
	var suspect, stays bool // ranked before j by age or due time alone
	for k, s := range r.Sources {
		if !moved[k] && r.Order.compare(s, r.Sources[j]) < 0 {
			suspect = suspect || s.Suspect
			stays = stays || !s.Suspect
		}
	}
	if suspect {
		why += " not suspect"
	}
	if stays {
		why += " that can be moved"
	}
	return why
}

// forward says what would go wrong if first went at step k instead of seq[k]. In
// an order from Best something does; people may list one where nothing does.
func (r *room) forward(seq []int, k, first int, worst time.Duration) string {
	swapped := slices.Concat(seq[:k], []int{first})
	at := k + slices.Index(seq[k:], first)
	swapped = slices.Concat(swapped, seq[k:at], seq[at+1:])
	c := r.begin(false)
	for n, x := range swapped {
		i, _ := r.rule(&c, x)
		if i == noSlot && n < k {
			break // their own destinations made what the rule's would not allow
		}
		if i == noSlot {
			return r.stuck(seq[k], first, x)
		}
		if late := r.act(&c, i, x, false) - r.jobs[x].limit; late > worst && n >= k {
			return r.late(seq[k], first, x, late, worst)
		}
	}
	return "as listed"
}

// stuck words that x finds no tank when first goes before j.
func (r *room) stuck(j, first, x int) string {
	switch x {
	case first:
		return "no tank is large enough yet for " + r.jobName(first)
	case j:
		return "else no tank large enough is left for it"
	}
	return "else no tank large enough is left for " + r.jobName(x)
}

// late words that x passes its limit when first goes before j. Minutes are given
// where something passes its limit anyway; they are rounded up.
func (r *room) late(j, first, x int, late, worst time.Duration) string {
	if x == first {
		return r.jobName(first) + " would wait too long for a tank"
	}
	who := "it"
	if x != j {
		who = "else " + r.jobName(x)
	}
	if worst == 0 {
		return fmt.Sprintf("brought forward: %s would pass its limit", who)
	}
	return fmt.Sprintf("brought forward: %s would be %d min past its limit", who, (late+time.Minute-1)/time.Minute)
}

func (r *room) jobName(j int) string { return r.name(r.jobs[j].tank) }

// stays says why a source stays where it is in the best plan.
func (r *room) stays(j int) string {
	if parts := r.jobs[j].parts; parts > 1 {
		return fmt.Sprintf("no ready tanks are left for all of its %d parts", parts)
	}
	return r.noTank()
}

// noTank says why a source that fits in no tank stays where it is.
func (r *room) noTank() string {
	empty := func(t Tank) bool { return t.State == Ready || t.State == Dirty || t.State == Washed }
	if !slices.ContainsFunc(r.Tanks, empty) {
		return "no tank is empty"
	}
	return "no ready tank is large enough"
}
