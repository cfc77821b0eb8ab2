package main

import (
	"drainboard/model"
	"drainboard/model/paper"
)

// handoverView is handover --json.
type handoverView struct {
	At         string          `json:"at"`
	Since      string          `json:"since"`
	Room       string          `json:"room"`
	Entries    int             `json:"entries"`
	People     []personView    `json:"people"`
	Done       []doneView      `json:"done"`
	KeyedLate  []int           `json:"keyed_late"` // happened before since, keyed after it
	Deviations []deviationView `json:"deviations"`
	Open       openView        `json:"open"`
	Alarms     []alarmView     `json:"alarms"`
	Next       []taskView      `json:"next"` // within a day, or late
}

type doneView struct {
	N    int    `json:"n"`
	At   string `json:"at"`
	By   string `json:"by"`
	Kind string `json:"kind"`
	Text string `json:"text"`
}

type deviationView struct {
	N    int    `json:"n"`
	At   string `json:"at"`
	By   string `json:"by"`
	What string `json:"what"`
	Text string `json:"text"`
	Why  string `json:"why"`
}

type openView struct {
	Session  *int           `json:"session"` // null where no change session is open
	Moves    int            `json:"moves"`   // of it, neither made nor left out
	Deferred []deferredView `json:"deferred"`
	Dirty    []string       `json:"dirty"`
	Washed   []string       `json:"washed"`
	Out      []string       `json:"out"`
	Suspect  []string       `json:"suspect"`
}

type deferredView struct {
	N    int    `json:"n"`
	Move int    `json:"move"`
	Step string `json:"step"`
	Why  string `json:"why"`
}

type alarmView struct {
	Tank   string `json:"tank"`
	Kind   string `json:"kind"`
	Text   string `json:"text"`
	Since  string `json:"since"`
	Seen   bool   `json:"seen"`
	SeenBy string `json:"seen_by"`
}

type taskView struct {
	What    string `json:"what"`
	Tank    string `json:"tank"`
	Due     string `json:"due"`
	Overdue bool   `json:"overdue"`
}

func viewHandover(h paper.Handover) handoverView {
	zone := h.Now.Location()
	v := handoverView{
		At: stamp(h.Now, zone), Since: stamp(h.Since, zone), Room: h.Room.Name, Entries: len(h.Done), KeyedLate: list([]int(h.KeyedLate)),
		People: mapped(h.People, func(p paper.Person) personView { return personView(p) }),
		Done: mapped(h.Done, func(e model.Entry) doneView {
			return doneView{e.N, stamp(e.At, zone), e.By, string(e.Kind()), model.Sentence(e.Fact)}
		}),
		Deviations: mapped(h.Deviations, func(d paper.Deviation) deviationView {
			return deviationView{d.N, stamp(d.At, zone), d.By, string(d.Kind), deviationWords(h, d), d.Why}
		}),
		Alarms: mapped(h.Alarms, func(a model.Alarm) alarmView {
			return alarmView{a.Tank, string(a.Kind), a.Text, stamp(a.Since, zone), a.Seen, a.SeenBy}
		}),
		Next: mapped(h.Next, func(t paper.Task) taskView { return taskView{string(t.Kind), t.Tank, stamp(t.Due, zone), t.Overdue} }),
	}
	v.Open = viewOpen(h)
	return v
}

func viewOpen(h paper.Handover) openView {
	v := openView{
		Moves: h.Moving, Dirty: list(h.Dirty), Washed: list(h.Washed), Out: list(h.Out),
		Deferred: mapped(h.Deferred, func(r model.StepRecord) deferredView {
			return deferredView{r.N, r.Step.Move, r.Step.Name, r.Step.Why}
		}),
		Suspect: mapped(h.Suspect, func(t model.TankNow) string { return t.Tank.Name }),
	}
	if h.Session != nil {
		v.Session = &h.Session.N
	}
	return v
}
