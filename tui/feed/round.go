package feed

import (
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	ration "drainboard/model/feed"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// round is the feed round as it was last worked out. It stands while tanks are
// entered as fed, so that a pour list that was carried along stays true; any
// other entry, other litres at hand, a new day or an hour gone make a new one.
type round struct {
	model.Feeding
	err    error
	fed    map[string]model.Entry // tanks entered as fed in this round
	ledger *model.Ledger
	next   int // entry number it stands for
	day    model.Day
}

// roundStands is how long a round stands without a new entry.
const roundStands = time.Hour

// sync makes a new round where the old one does not stand any more, and keeps the
// pointer on a tank.
func (f *Feed) sync() {
	d, r := f.desk, &f.round
	day := model.DayOf(d.Now, d.Ledger.Room().Zone)
	age := d.Now.Sub(r.At)
	if r.ledger != d.Ledger || r.next != d.Ledger.Next() || r.day != day || age < 0 || age >= roundStands {
		feeding, err := d.Ledger.Feeding(d.Now, f.hand)
		f.round = round{feeding, err, map[string]model.Entry{}, d.Ledger, d.Ledger.Next(), day}
	}
	if _, ok := f.tank(f.chosen); ok || len(f.round.Tanks) == 0 {
		return
	}
	f.chosen = f.round.Tanks[0].Tank.Tank.Name
	if first := f.toFeed(); len(first) > 0 {
		f.chosen = first[0]
	}
}

// again makes a new round at the next sync.
func (f *Feed) again() { f.round.ledger = nil }

func (f *Feed) tank(name string) (model.TankFeeding, bool) {
	for _, t := range f.round.Tanks {
		if t.Tank.Tank.Name == name {
			return t, true
		}
	}
	return model.TankFeeding{}, false
}

// toFeed lists the tanks of the round that are not entered as fed yet.
func (f *Feed) toFeed() []string {
	var names []string
	for _, t := range f.round.Tanks {
		if _, done := f.round.fed[t.Tank.Tank.Name]; !done && len(t.Litres()) > 0 {
			names = append(names, t.Tank.Tank.Name)
		}
	}
	return names
}

// enterFed enters a tank as fed with the amounts that are shown.
func (f *Feed) enterFed(name string) tea.Cmd {
	t, ok := f.tank(name)
	if !ok {
		return f.refuse("no tank is chosen")
	}
	if why := f.notToFeed(t); why != "" {
		return f.refuse(why)
	}
	saved, err := f.desk.Enter(&model.Fed{Tank: name, Litres: t.Litres()})
	if err != nil {
		return f.notSaved(err)
	}
	e := saved.Entries[0]
	f.round.fed[name], f.round.next = e, f.desk.Ledger.Next()
	f.say = message{fmt.Sprintf("%s fed: %s, saved as entry %d", text.Clean(name), poursWords(t.Pours), e.N), screen.Saved}
	return nil
}

// notToFeed says why a tank cannot be entered as fed; empty where it can.
func (f *Feed) notToFeed(t model.TankFeeding) string {
	name := text.Clean(t.Tank.Tank.Name)
	if e, done := f.round.fed[t.Tank.Tank.Name]; done {
		return fmt.Sprintf("%s is entered as fed already, entry %d; u takes it back", name, e.N)
	}
	switch {
	case !t.Asked:
		return fmt.Sprintf("%s was fed %s; count what is left (r) to feed it again", name, ago(f.desk.Now.Sub(t.Fed.At)))
	case t.Enough():
		return name + " has enough: nothing is to be poured, so nothing is entered"
	case !t.InRound:
		return name + ": " + strings.Join(t.Problems, ", ")
	case len(t.Litres()) == 0 && t.Part == 0:
		return fmt.Sprintf("%s gets nothing: there is no %s at hand", name, text.Clean(t.Feed.ShortOf))
	case len(t.Litres()) == 0:
		return name + " lacks less than can be measured out; nothing is entered"
	}
	return ""
}

// poursWords are the pours of a tank in one line.
func poursWords(list []ration.Pour) string {
	var words []string
	for _, p := range list {
		words = append(words, text.Clean(p.Alga)+" "+ml(p)+" mL")
	}
	return strings.Join(words, ", ")
}

// ml is a pour with the decimals of its step.
func ml(p ration.Pour) string {
	places := 0
	if p.StepML < 1 {
		places = 1
	}
	return text.Decimal(p.ML, places)
}

func ago(d time.Duration) string {
	if d < time.Minute {
		return "just now"
	}
	return text.Duration(d) + " ago"
}

// litreWords are litres as an algae room measures them: mL below one litre.
func litreWords(x float64) string {
	switch {
	case x < 0.0995:
		return text.Decimal(1000*x, 1) + " mL"
	case x < 0.9995:
		return text.Decimal(1000*x, 0) + " mL"
	}
	return text.Decimal(x, 2) + " L"
}

// cellWords are cells per mL.
func cellWords(x float64) string { return text.Decimal(x, 0) }
