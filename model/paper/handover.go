package paper

import (
	"slices"
	"time"

	"drainboard/model"
)

// Handover is what one shift tells the next: what was done since a moment, what
// went otherwise than the room has it, what is open, and what comes next.
type Handover struct {
	Room       *model.Room
	Since, Now time.Time

	Done      []model.Entry // as they count, in the order in which they happened
	KeyedLate Numbers       // happened before Since and were keyed since
	People    []Person

	Deviations []Deviation
	Notes      []model.Entry // remarks; those that acknowledge alarms are none

	Session  *model.SessionNow  // the change session that is open, nil where none is
	Moving   int                // moves of it that are neither made nor left out
	Deferred []model.StepRecord // of that session, still open
	Dirty    []string           // tanks that wait for a wash
	Washed   []string           // tanks that wait to be filled
	Suspect  []model.TankNow
	Out      []string

	Alarms []model.Alarm
	Next   []Task // within NextHours or late already, the first first
}

// NextHours is how far a handover looks ahead: a day.
const NextHours = 24

// Task is something that falls due.
type Task struct {
	Kind    TaskKind
	Tank    string
	Due     time.Time
	Overdue bool // a change past due and grace; a look or a feed past due
}

// TaskKind is what falls due.
type TaskKind string

// The kinds of tasks.
const (
	TaskChange TaskKind = "change"
	TaskLook   TaskKind = "look"
	TaskFeed   TaskKind = "feed"
)

// NewHandover gathers a handover from a ledger as it stands at now.
func NewHandover(l *model.Ledger, since, now time.Time) (Handover, error) {
	zone := l.Room().Zone
	h := Handover{Room: l.Room(), Since: since.In(zone), Now: now.In(zone), Alarms: l.Alarms(now), Next: tasks(l, now)}
	own := map[int]bool{}
	for _, e := range l.Events() {
		switch {
		case !e.At.Before(since):
			h.Done = append(h.Done, e)
			own[e.N] = true
			if note, ok := e.Fact.(*model.Noted); ok && !acknowledges(note) {
				h.Notes = append(h.Notes, e)
			}
		case !e.TypedAt().Before(since) && !e.TypedAt().After(now):
			h.KeyedLate = append(h.KeyedLate, e.N)
		}
	}
	h.People = people(l, own)
	h.open(l)
	var err error
	h.Deviations, err = deviations(l, since, now)
	return h, err
}

// open gathers what is begun and not ended.
func (h *Handover) open(l *model.Ledger) {
	for _, t := range l.Tanks() {
		switch t.State {
		case model.Dirty:
			h.Dirty = append(h.Dirty, t.Tank.Name)
		case model.WashedDown:
			h.Washed = append(h.Washed, t.Tank.Name)
		case model.Out:
			h.Out = append(h.Out, t.Tank.Name)
		}
		if t.Suspect {
			h.Suspect = append(h.Suspect, t)
		}
	}
	if h.Session = l.Session(); h.Session == nil {
		return
	}
	h.Deferred = h.Session.Deferred(l.Room().Procedure)
	for i, n := range h.Session.Moved {
		if _, out := h.Session.LeftOut(i + 1); n == 0 && !out {
			h.Moving++
		}
	}
}

// tasks lists what falls due within NextHours, or is late.
func tasks(l *model.Ledger, now time.Time) []Task {
	var list []Task
	until := now.Add(NextHours * time.Hour)
	add := func(kind TaskKind, tank string, due time.Time, over bool) {
		if !due.After(until) {
			list = append(list, Task{kind, tank, due.In(l.Room().Zone), over})
		}
	}
	for _, t := range l.Ranked(now) {
		look, feed := l.LookDue(t), l.FeedDue(t)
		add(TaskChange, t.Tank.Name, l.Due(t), l.Overdue(t, now))
		add(TaskLook, t.Tank.Name, look, now.After(look))
		add(TaskFeed, t.Tank.Name, feed, now.After(feed))
	}
	slices.SortStableFunc(list, func(a, b Task) int { return a.Due.Compare(b.Due) })
	return list
}
