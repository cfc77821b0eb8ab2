package model

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model/growth"
)

// Alarm is something wrong with a tank that needs someone. A change or a feed
// coming due is a task and never an alarm.
type Alarm struct {
	Tank   string
	Kind   AlarmKind
	Text   string    // the figure, in words
	Advice string    // what crews usually check next
	Since  time.Time // when it began
	Seen   bool      // acknowledged by name since it began
	SeenBy string
}

// AlarmKind names a kind of alarm.
type AlarmKind string

// The kinds of alarms, the gravest first.
const (
	AlarmOverdue AlarmKind = "overdue"
	AlarmHeat    AlarmKind = "temperature"
	AlarmFell    AlarmKind = "count fell"
	AlarmDead    AlarmKind = "dead"
	AlarmGolden  AlarmKind = "gut"
	AlarmGrowth  AlarmKind = "growth"
	AlarmNoLook  AlarmKind = "no look"
)

// SeenPrefix begins the text of a remark by which an alarm is acknowledged; the
// kind of the alarm follows.
const SeenPrefix = "seen: "

// SeenFact is the remark that acknowledges an alarm.
func (a Alarm) SeenFact() Fact {
	return &Noted{Tank: a.Tank, Text: SeenPrefix + string(a.Kind)}
}

// Alarms lists what is wrong at now: by kind, the gravest first, and by tank in
// rank order within a kind.
func (l *Ledger) Alarms(now time.Time) []Alarm {
	ranked := l.Ranked(now)
	var alarms []Alarm
	for _, raise := range []func(TankNow, time.Time) (Alarm, bool){
		l.alarmOverdue, l.alarmHeat, l.alarmFell, l.alarmDead, l.alarmGolden, l.alarmGrowth, l.alarmNoLook,
	} {
		for _, t := range ranked {
			if a, ok := raise(t, now); ok {
				a.Tank = t.Tank.Name
				l.markSeen(&a)
				alarms = append(alarms, a)
			}
		}
	}
	return alarms
}

func (l *Ledger) markSeen(a *Alarm) {
	seen, ok := l.fold.seen[a.Tank+"\n"+string(a.Kind)]
	a.Seen = ok && !seen.at.Before(a.Since)
	if a.Seen {
		a.SeenBy = seen.by
	}
}

// seen is a remark that acknowledges an alarm.
type seen struct {
	at time.Time
	by string
}

func (f *fold) putNoted(e Entry, x *Noted) {
	if kind, ok := strings.CutPrefix(x.Text, SeenPrefix); ok && x.Tank != "" {
		f.seen[x.Tank+"\n"+kind] = seen{e.At, e.By}
	}
}

func (l *Ledger) alarmOverdue(t TankNow, now time.Time) (Alarm, bool) {
	late := now.Sub(l.Due(t))
	return Alarm{
		Kind: AlarmOverdue, Since: l.Late(t),
		Text:   fmt.Sprintf("change overdue by %s", hoursMinutes(late)),
		Advice: "change it next; till then less food, watch the air",
	}, l.Overdue(t, now)
}

func hoursMinutes(d time.Duration) string {
	return fmt.Sprintf("%d h %02d min", int(d.Hours()), int(d.Minutes())%60)
}

func (l *Ledger) alarmHeat(t TankNow, now time.Time) (Alarm, bool) {
	last, ok := t.celsius()
	bearable := l.room.House.Temperature.Bearable
	if !ok || bearable.Holds(last.Value) {
		return Alarm{}, false
	}
	return Alarm{
		Kind: AlarmHeat, Since: last.At,
		Text:   fmt.Sprintf("%.1f °C, outside %s to %s °C", last.Value, plain(bearable.Low), plain(bearable.High)),
		Advice: "read again, then heater or chiller, room air, lid; bring it back slowly",
	}, true
}

func (l *Ledger) alarmFell(t TankNow, _ time.Time) (Alarm, bool) {
	fell := t.Larvae.Fell
	if fell == nil {
		return Alarm{}, false
	}
	return Alarm{
		Kind: AlarmFell, Since: t.Larvae.CountedAt,
		Text: fmt.Sprintf("count of %.0f where %.0f were expected, more than chance allows (p %.4f < 0.025)",
			t.Larvae.Number.Value.X, fell.ExpectedLarvae, fell.PFell),
		Advice: "mix and count again; then water, food, the sieve of the last move",
	}, true
}

func (l *Ledger) alarmDead(t TankNow, _ time.Time) (Alarm, bool) {
	look := t.Larvae.Look
	limit := l.room.House.Growth.DeadShare
	if look == nil || look.Dead == nil || limit <= 0 || *look.Dead <= limit {
		return Alarm{}, false
	}
	return Alarm{
		Kind: AlarmDead, Since: t.Larvae.Seen,
		Text:   fmt.Sprintf("%s %% dead at the last look, over %s %%", plain(*look.Dead), plain(limit)),
		Advice: "water, food, density, temperature; own gear for the tank till it is clear",
	}, true
}

func (l *Ledger) alarmGolden(t TankNow, _ time.Time) (Alarm, bool) {
	look := t.Larvae.Look
	limit := l.room.House.Growth.GoldenShare
	if look == nil || look.Golden == nil || *look.Golden >= limit {
		return Alarm{}, false
	}
	return Alarm{
		Kind: AlarmGolden, Since: t.Larvae.Seen,
		Text:   fmt.Sprintf("%s %% with golden gut at the last look, under %s %%", plain(*look.Golden), plain(limit)),
		Advice: "food: cells left in the tank, age of the culture, clumps; then water and temperature",
	}, true
}

func (l *Ledger) alarmGrowth(t TankNow, _ time.Time) (Alarm, bool) {
	corridor := l.Corridor()
	b := l.Batch(t.Larvae.Batch)
	if len(corridor) == 0 || t.Larvae.Sample == nil {
		return Alarm{}, false
	}
	looks, err := l.SampleLooks(b)
	if err != nil {
		return Alarm{}, false
	}
	behind, err := corridor.Behind(looks)
	if err != nil || !behind {
		return Alarm{}, false
	}
	return Alarm{
		Kind: AlarmGrowth, Since: t.Larvae.Sample.At,
		Text:   fmt.Sprintf("batch %s below the house corridor two looks running, last %.0f um", b.Name, looks[len(looks)-1].MeanUM),
		Advice: "food, density, temperature, water",
	}, true
}

func (l *Ledger) alarmNoLook(t TankNow, now time.Time) (Alarm, bool) {
	due := l.LookDue(t)
	limit := due.Add(hours(l.room.House.LookHours))
	return Alarm{
		Kind: AlarmNoLook, Since: limit,
		Text:   fmt.Sprintf("no look for %s", hoursMinutes(now.Sub(due)+hours(l.room.House.LookHours))),
		Advice: "look at a sample today",
	}, now.After(limit)
}

// Corridor returns the house corridor of shell length, empty where the room
// gives none.
func (l *Ledger) Corridor() growth.Corridor {
	var c growth.Corridor
	for _, b := range l.room.House.Corridor {
		c = append(c, growth.Band{FromDay: float64(b.FromDay), LowUM: b.LowUM, HighUM: b.HighUM})
	}
	return c
}

// SampleLooks returns the samples of a batch as looks by age in days since the
// hatch, those of one day in all its tanks pooled, oldest first.
func (l *Ledger) SampleLooks(b *Batch) ([]growth.Look, error) {
	var looks []growth.Look
	born := b.Hatched.Instant(l.room.Zone)
	for _, s := range b.Samples {
		sum, err := growth.Summarize(s.UM)
		if err != nil {
			return nil, err
		}
		looks = append(looks, sum.Look(s.At.Sub(born).Hours()/24))
	}
	return growth.Pool(looks)
}
