package model

import (
	"fmt"
	"slices"
	"time"
)

// fold is what the entries add up to. Entries go in one by one in the order in
// which things happened.
type fold struct {
	room     *Room
	tanks    []TankNow
	supplies map[string]*SupplyNow
	cultures map[string]*CellCount // by alga
	batches  []*Batch
	sessions []*SessionNow
	seen     map[string]seen // by tank and kind of alarm
	last     time.Time       // when the last entry happened
}

// SupplyNow is a water source as the entries leave it.
type SupplyNow struct {
	Name    string
	Celsius []Reading
	Tests   []WaterTest
}

func newFold(room *Room) *fold {
	f := &fold{room: room, supplies: map[string]*SupplyNow{}, cultures: map[string]*CellCount{}, seen: map[string]seen{}}
	for i, t := range room.Tanks {
		f.tanks = append(f.tanks, TankNow{Tank: t, Place: i, State: Dirty})
	}
	for _, s := range room.Supplies {
		f.supplies[s.Name] = &SupplyNow{Name: s.Name}
	}
	return f
}

// add folds an entry in, or says why it cannot be true and changes nothing.
func (f *fold) add(e Entry) error {
	if err := f.allows(e); err != nil {
		return err
	}
	f.put(e)
	f.last = e.At
	return nil
}

func (f *fold) tank(name string) *TankNow {
	i, ok := f.room.Tank(name)
	if !ok {
		return nil
	}
	return &f.tanks[i]
}

func (f *fold) batch(name string) *Batch {
	i := slices.IndexFunc(f.batches, func(b *Batch) bool { return b.Name == name })
	if i < 0 {
		return nil
	}
	return f.batches[i]
}

// openSession returns the session that is open, nil where there is none.
func (f *fold) openSession() *SessionNow {
	if len(f.sessions) == 0 || f.sessions[len(f.sessions)-1].Closed != nil {
		return nil
	}
	return f.sessions[len(f.sessions)-1]
}

// allows says whether an entry can be true as things stand.
func (f *fold) allows(e Entry) error {
	switch x := e.Fact.(type) {
	case *Stocked:
		return f.allowsStocked(e, x)
	case *Moved:
		return f.allowsMoved(x)
	case *Washed:
		return f.allowsWork(x.Tank, "washed", Dirty, WashedDown, Ready)
	case *Filled:
		return f.allowsWork(x.Tank, "filled", WashedDown, Ready)
	case *Temperature:
		return f.allowsReading(x.Tank)
	case *Water:
		return f.allowsReading(x.Tank)
	case *Sizes:
		return f.holds("tank", x.Tank)
	case *Look:
		return f.holds("tank", x.Tank)
	case *Count:
		return f.holds("tank", x.Tank)
	case *Cells:
		if x.Tank != "" {
			return f.holds("tank", x.Tank)
		}
	case *Fed:
		return f.allowsFed(x)
	case *Removed:
		return f.holds("tank", x.Tank)
	case *Ended:
		return f.holds("tank", x.Tank)
	case *Service:
		return f.allowsService(x)
	case *Opened:
		if s := f.openSession(); s != nil {
			return wrong("moves", "session %d is still open; close it first", s.N)
		}
	case *StepDone:
		return f.allowsStep(x)
	case *Closed:
		return f.allowsClosed(x)
	}
	return nil
}

// stands describes a tank for a refusal.
func (f *fold) stands(t *TankNow) string {
	since := ""
	if !t.Since.IsZero() {
		since = " since " + t.Since.In(f.room.Zone).Format("2 Jan 15:04")
	}
	switch {
	case t.State == Holding:
		return fmt.Sprintf("%s holds larvae of %s%s", t.Tank.Name, t.Larvae.Batch, since)
	case t.State == Out:
		return fmt.Sprintf("%s is out of use%s", t.Tank.Name, since)
	case !t.Known:
		return fmt.Sprintf("nothing was entered of %s yet", t.Tank.Name)
	}
	return fmt.Sprintf("%s is %s%s", t.Tank.Name, t.State, since)
}

func (f *fold) holds(field, name string) error {
	t := f.tank(name)
	if t.State != Holding {
		return wrong(field, "%s; it holds no larvae then", f.stands(t))
	}
	return nil
}

func (f *fold) allowsReading(name string) error {
	if name == "" {
		return nil
	}
	if t := f.tank(name); t.State == Out {
		return wrong("tank", "%s; bring it back by a service entry first", f.stands(t))
	}
	return nil
}

// fits says whether larvae can go into a tank: a ready one, or one of which
// nothing was entered yet, whose first entry is believed.
func fits(t *TankNow) bool { return t.State == Ready || !t.Known }

func (f *fold) allowsStocked(e Entry, x *Stocked) error {
	t := f.tank(x.Tank)
	if !fits(t) {
		return wrong("tank", "%s; only a ready tank can be stocked", f.stands(t))
	}
	day := x.Hatched.Day(f.room.Zone)
	if day.Sub(DayOf(e.At, f.room.Zone)) > 0 || !x.Hatched.Moment.IsZero() && x.Hatched.Moment.After(e.At) {
		return wrong("hatched", "%s is after the stocking on %s", x.Hatched, DayOf(e.At, f.room.Zone))
	}
	if b := f.batch(x.Batch); b != nil && b.Hatched.Day(f.room.Zone) != day {
		return wrong("hatched", "batch %s was entered as hatched on %s; name another batch or correct that entry",
			x.Batch, b.Hatched.Day(f.room.Zone))
	}
	return nil
}

func (f *fold) allowsMoved(x *Moved) error {
	if err := f.holds("from", x.From); err != nil {
		return err
	}
	from, to := f.tank(x.From), f.tank(x.To)
	if x.Join && to.State == Holding {
		if to.Larvae.Batch != from.Larvae.Batch {
			return wrong("to", "%s and %s holds %s; two batches in one tank would have no age", f.stands(to), x.From, from.Larvae.Batch)
		}
		return nil
	}
	if to.State == Holding {
		return wrong("to", "%s; join = true says that they go together", f.stands(to))
	}
	if !fits(to) {
		return wrong("to", "%s; larvae go into a ready tank", f.stands(to))
	}
	return nil
}

func (f *fold) allowsWork(name, what string, from ...State) error {
	t := f.tank(name)
	if !t.Known || slices.Contains(from, t.State) {
		return nil
	}
	if t.State == Dirty {
		return wrong("tank", "%s; enter its wash before it is %s", f.stands(t), what)
	}
	return wrong("tank", "%s; it cannot be %s then", f.stands(t), what)
}

func (f *fold) allowsFed(x *Fed) error {
	if err := f.holds("tank", x.Tank); err != nil {
		return err
	}
	total := 0.0
	for _, litres := range x.Litres {
		total += litres
	}
	if t := f.tank(x.Tank); total >= t.Tank.Litres {
		return wrong("litres", "%s L of algae do not go into the %s L of %s; amounts are in litres", plain(total), plain(t.Tank.Litres), x.Tank)
	}
	return nil
}

func (f *fold) allowsService(x *Service) error {
	t := f.tank(x.Tank)
	switch {
	case x.Out && t.State == Holding:
		return wrong("tank", "%s; move them before it is taken out of use", f.stands(t))
	case x.Out && t.State == Out:
		return wrong("out", "%s already", f.stands(t))
	case !x.Out && t.State != Out:
		return wrong("out", "%s, so it cannot come back into use", f.stands(t))
	}
	return nil
}

func (f *fold) allowsStep(x *StepDone) error {
	s := f.openSession()
	if s == nil || s.N != x.Session {
		return f.noSession(x.Session)
	}
	if x.Move > len(s.Legs) {
		return wrong("move", "session %d has %d moves, there is no move %d", s.N, len(s.Legs), x.Move)
	}
	return nil
}

func (f *fold) allowsClosed(x *Closed) error {
	s := f.openSession()
	if s == nil || s.N != x.Session {
		return f.noSession(x.Session)
	}
	if !x.Complete {
		return nil
	}
	for _, r := range s.Deferred(f.room.Procedure) {
		if step, _ := f.room.Procedure.Step(r.Step.Name); step.Critical {
			return wrong("complete", "step %s of move %d is still open (%s); close as incomplete with a reason", r.Step.Name, r.Step.Move, r.Step.Why)
		}
	}
	return nil
}

func (f *fold) noSession(n int) error {
	if s := f.openSession(); s != nil {
		return wrong("session", "session %d is not open; session %d is", n, s.N)
	}
	return wrong("session", "session %d is not open; no session is", n)
}
