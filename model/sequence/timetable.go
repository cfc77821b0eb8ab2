package sequence

import (
	"fmt"
	"slices"
)

// timetable lays a list of legs out in time. It holds what has happened so far.
type timetable struct {
	*room
	scene
	holds []int // by tank filled in the session: the tank its larvae came from, else -1
	seq   []int // jobs in the order moved, one entry a part
	plan  Plan
}

// timetable lays out the legs in their order; a leg that cannot be made is named
// in the complaints and the others are timed without it.
func (r *room) timetable(legs []Leg) (Plan, []Complaint) {
	t := &timetable{room: r, scene: r.begin(true), holds: make([]int, len(r.Tanks))}
	for i := range t.holds {
		t.holds[i] = -1
	}
	var complaints []Complaint
	for i, leg := range legs {
		j, slot, why := t.place(leg)
		if why != "" {
			complaints = append(complaints, Complaint{Leg: i, From: leg.From, To: leg.To, Why: why})
			continue
		}
		t.record(j, slot)
	}
	t.finish()
	return t.plan, complaints
}

// place finds the job and the slot of a leg, or says why it cannot be made.
func (t *timetable) place(leg Leg) (j, at int, why string) {
	j = slices.IndexFunc(t.Sources, func(s Source) bool { return s.Tank == leg.From })
	switch {
	case leg.From < 0 || leg.From >= len(t.Tanks):
		return 0, 0, fmt.Sprintf("there is no tank number %d", leg.From)
	case j < 0:
		return 0, 0, fmt.Sprintf("%s is not one of the tanks to change", t.name(leg.From))
	case t.parts[j] == 0:
		return 0, 0, fmt.Sprintf("%s has been moved already", t.name(leg.From))
	}
	if leg.To == ByRule {
		if at, _ = t.rule(&t.scene, j); at == noSlot {
			return 0, 0, t.noTank()
		}
		return j, at, ""
	}
	at, why = t.destination(j, leg.To)
	return j, at, why
}

// destination finds the slot of a tank that people chose.
func (t *timetable) destination(j, to int) (at int, why string) {
	from := t.jobs[j].tank
	if to < 0 || to >= len(t.Tanks) {
		return 0, fmt.Sprintf("there is no tank number %d", to)
	}
	at = slices.IndexFunc(t.slots, func(s slot) bool { return s.tank == to })
	name, tank := t.name(to), t.Tanks[to]
	if partner := t.jobs[j].partner; partner >= 0 && t.into[partner] == to {
		return joining, t.tooDense(j, to)
	}
	switch {
	case to == from:
		return 0, fmt.Sprintf("%s cannot be moved into itself", name)
	case tank.State == Out:
		return 0, fmt.Sprintf("%s is out of use", name)
	case t.holds[to] >= 0:
		return 0, fmt.Sprintf("%s holds the larvae of %s by then", name, t.name(t.holds[to]))
	case at < 0:
		return 0, fmt.Sprintf("%s still holds larvae then", name)
	case !t.jobs[j].fits[to]:
		return 0, t.tooSmall(j, to)
	}
	return at, ""
}

func (t *timetable) tooSmall(j, to int) string {
	s, litres := t.Sources[j], t.Tanks[to].Litres
	part := s.Larvae.Value / float64(s.parts())
	small := fmt.Sprintf("%s (%g L) is smaller than %s (%g L)", t.name(to), litres, t.name(s.Tank), t.Tanks[s.Tank].Litres)
	switch {
	case s.PerLitre == 0:
		return small
	case !s.Larvae.Known:
		return small + " and its larvae have not been counted"
	}
	return fmt.Sprintf("%s and %.1f larvae per litre would pass the limit of %g", small, part/litres, s.PerLitre)
}

// tooDense says why two sources do not go into one tank together, "" if they do.
func (t *timetable) tooDense(j, to int) string {
	jb := t.jobs[j]
	if jb.both[to] {
		return ""
	}
	a, b, litres := t.Sources[j], t.Sources[jb.partner], t.Tanks[to].Litres
	both := fmt.Sprintf("%s (%g L) would hold %s and %s", t.name(to), litres, t.name(b.Tank), t.name(a.Tank))
	switch {
	case a.PerLitre == 0:
		return both + " and is smaller than the two together"
	case !a.Larvae.Known || !b.Larvae.Known:
		return both + " and their larvae have not been counted"
	}
	return fmt.Sprintf("%s: %.1f larvae per litre would pass the limit of %g", both, (a.Larvae.Value+b.Larvae.Value)/litres, a.PerLitre)
}

// record makes the move and writes it down.
func (t *timetable) record(j, slot int) {
	jb := &t.jobs[j]
	m := Move{
		Source: j,
		From:   jb.tank,
		Share:  1 / float64(t.parts[j]),
		Join:   slot == joining,
		WhyTo:  t.whyTo(j, slot),
	}
	if jb.parts > 1 {
		m.Part = jb.parts - t.parts[j] + 1
	}
	if slot >= t.standing {
		t.prepared(t.slots[slot])
	}
	start := t.act(&t.scene, slot, j, true)
	m.To = t.into[j]
	if t.Tanks[m.To].State == Ready {
		m.Difference = t.difference(m.From, m.To)
	}
	m.Start, m.End = t.Now.Add(start), t.Now.Add(t.free)
	m.Overrun = max(0, start-jb.limit)
	t.plan.WorstOverrun = max(t.plan.WorstOverrun, m.Overrun)
	t.plan.Moves = append(t.plan.Moves, m)
	if t.holds[m.To] < 0 {
		t.holds[m.To] = m.From
	}
	t.seq = append(t.seq, j)
}

// prepared writes down the preparation of a tank whose ready time is final.
func (t *timetable) prepared(s slot) {
	end := t.Now.Add(s.ready)
	t.plan.Preparations = append(t.plan.Preparations, Preparation{
		Tank:  s.tank,
		Start: end.Add(-t.prepare[s.tank]),
		End:   end,
		Wash:  t.Tanks[s.tank].State != Washed,
	})
}

// finish closes the plan: the rest is made ready, and what was left is named.
func (t *timetable) finish() {
	for _, s := range t.slots[t.standing:] {
		t.prepared(s)
	}
	slices.SortFunc(t.plan.Preparations, func(a, b Preparation) int { return a.Start.Compare(b.Start) })
	for _, s := range t.slots {
		t.plan.EmptyAfter = append(t.plan.EmptyAfter, s.tank)
	}
	slices.Sort(t.plan.EmptyAfter)
	t.plan.LastMoveEnd = t.Now.Add(t.free)
	t.plan.Finish = t.Now.Add(max(t.free, t.tail))
	for i, why := range t.reasons(t.seq, t.plan.WorstOverrun) {
		t.plan.Moves[i].Why = why
	}
	for _, j := range t.rank {
		if t.parts[j] > 0 {
			t.plan.Unmoved = append(t.plan.Unmoved, Unmoved{Source: j, Tank: t.jobs[j].tank})
		}
	}
}

// whyTo says what made this slot the destination: what the rule looked at, or
// that people chose otherwise.
func (t *timetable) whyTo(j, slot int) string {
	first, fits := t.rule(&t.scene, j)
	switch {
	case slot != first:
		return "chosen"
	case slot == joining:
		return "to join the larvae of " + t.jobName(t.jobs[j].partner)
	}
	start := t.start(slot)
	ready, fitting := 0, []int(nil)
	for i := range t.slots {
		if t.slots[i].ready > start {
			continue
		}
		ready++
		if fits[t.slots[i].tank] {
			fitting = append(fitting, i)
		}
	}
	name := t.name(t.slots[slot].tank)
	switch {
	case ready == 1:
		return "the only one ready"
	case len(fitting) == 1:
		return "only " + name + " is large enough"
	}
	return t.preference(j, slot, fitting)
}

// preference says by what the chosen slot beats every other fitting one.
func (t *timetable) preference(j, slot int, fitting []int) string {
	from := t.jobs[j].tank
	why := "smallest difference"
	for _, i := range fitting {
		if i == slot || compareDifferences(t.slotDifference(from, slot), t.slotDifference(from, i)) != 0 {
			continue
		}
		why = "ready longest"
		if slot < t.standing && i < t.standing && t.since(t.slots[i].tank).Equal(t.since(t.slots[slot].tank)) {
			return "first in the room's order"
		}
	}
	return why
}

// slotDifference is the difference to an empty tank; one filled in the session
// has not been read.
func (t *timetable) slotDifference(from, slot int) Reading {
	if slot >= t.standing {
		return Reading{}
	}
	return t.difference(from, t.slots[slot].tank)
}

func (r *room) name(tank int) string { return r.Tanks[tank].Name }
