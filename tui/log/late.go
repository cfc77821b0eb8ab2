package log

import (
	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/factform"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// lateKinds are the kinds that can be entered for an earlier moment by hand. The
// steps of a change session are entered by the session, corrections at their
// entry.
func lateKinds() []model.Kind {
	var kinds []model.Kind
	for _, k := range model.Kinds() {
		if factform.Meaning(k) != "" {
			kinds = append(kinds, k)
		}
	}
	return kinds
}

func lateItems() []string {
	var items []string
	for _, k := range lateKinds() {
		items = append(items, text.Fit(string(k), 13)+factform.Meaning(k))
	}
	return items
}

// onPick takes a key while the kind is chosen.
func (l *Log) onPick(key tea.KeyMsg) tea.Cmd {
	if key.Type == tea.KeyEsc {
		l.pick = nil
		return nil
	}
	picked, out := l.pick.Update(key)
	l.pick = &picked
	if out == screen.Entered {
		kind := lateKinds()[picked.Chosen]
		l.pick = nil
		l.openLate(kind)
	}
	return nil
}

// openLate opens the form of a kind with the moment at which it happened. Left as
// it is, the moment is that of saving.
func (l *Log) openLate(kind model.Kind) {
	zone := l.desk.Ledger.Room().Zone
	form := factform.New(l.desk.Ledger.Room(), kind, nil).
		With(rowAt, factform.MomentNote, l.desk.Now.In(zone).Format("15:04"), mostMoment)
	slip := factform.Slip{Title: "Late entry: " + string(kind) + ", " + factform.Meaning(kind), Form: form}
	l.openSlip(slip, func(f factform.Form) (tea.Cmd, error) {
		fact, err := f.Fact()
		if err != nil {
			return nil, err
		}
		at := l.desk.Now
		if f.Touched(rowAt) {
			if at, err = l.moment(f.Text(rowAt)); err != nil {
				return nil, err
			}
		}
		return l.enter(at, fact)
	})
}
