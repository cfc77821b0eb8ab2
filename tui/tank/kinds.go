package tank

import (
	"fmt"

	"drainboard/model"
	"drainboard/tui/factform"
	"drainboard/tui/keys"
	"drainboard/tui/text"
)

// kind is one key of the screen: the kind of fact it enters, what of it is known
// already, and when it is not to be had.
type kind struct {
	action keys.Action
	key    string
	short  string
	long   string
	kind   model.Kind
	known  func(model.TankNow) map[string]string
	off    func(model.TankNow) string // why not now, empty where it can be had
	title  func(model.TankNow) string // empty for short
	ask    func(model.TankNow, factform.Form) string
}

func (k kind) binding() keys.Binding {
	return keys.Binding{Action: k.action, Keys: []string{k.key}, Short: k.short, Long: k.long}
}

// kinds is every fact that is entered here, in the order in which the footer
// shows its key.
func kinds() []kind {
	return []kind{
		{
			action: "temperature", key: "t", short: "temperature", long: "Enter a temperature of the water.",
			kind: model.KindTemperature, known: with("supply", ""), off: unlessInUse,
		},
		{
			action: "count", key: "c", short: "count", long: "Enter a count of larvae; its figures are shown before it is saved.",
			kind: model.KindCount, off: unlessHolding,
		},
		{action: "note", key: "n", short: "note", long: "Write a remark on the tank.", kind: model.KindNoted, off: always},
		{
			action: "suspect", key: "x", short: "suspect", long: "Mark the tank suspect with a reason, or clear it.",
			kind: model.KindSuspect, off: always,
			known: func(t model.TankNow) map[string]string { return map[string]string{"on": yesNo(!t.Suspect)} },
			title: func(t model.TankNow) string {
				return map[bool]string{true: "no longer suspect", false: "mark as suspect: changed last, with its own gear"}[t.Suspect]
			},
		},
		{
			action: "washed", key: "w", short: "washed", long: "Enter that the tank was acid-washed and rinsed.",
			kind: model.KindWashed, off: unlessState("washed", model.Dirty, model.WashedDown, model.Ready),
		},
		{
			action: "filled", key: "f", short: "filled", long: "Enter that the washed tank is full of clean water.",
			kind: model.KindFilled, off: unlessState("filled", model.WashedDown, model.Ready),
		},
		{
			action: "stocked", key: "i", short: "stock", long: "Put a batch into the ready tank.",
			kind: model.KindStocked, off: unlessState("stocked", model.Ready),
		},
		{
			action: "ended", key: "e", short: "end", long: "End the tank: its larvae settled, discarded or lost.",
			kind: model.KindEnded, off: unlessHolding, ask: endQuestion,
		},
		{
			action: "removed", key: "d", short: "remove", long: "Enter larvae taken out as a sample or a cull.",
			kind: model.KindRemoved, off: unlessHolding,
		},
		{
			action: "service", key: "v", short: "service", long: "Take the empty tank out of use, or bring it back.",
			kind: model.KindService, off: whileHolding,
			known: func(t model.TankNow) map[string]string {
				return map[string]string{"out": yesNo(t.State != model.Out)}
			},
			title: func(t model.TankNow) string {
				return map[bool]string{true: "back in use, dirty", false: "out of use"}[t.State == model.Out]
			},
		},
	}
}

// with gives fields that are the same for every tank.
func with(name, value string) func(model.TankNow) map[string]string {
	return func(model.TankNow) map[string]string { return map[string]string{name: value} }
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func always(model.TankNow) string { return "" }

func unlessHolding(t model.TankNow) string {
	if t.Larvae == nil {
		return "it holds no larvae"
	}
	return ""
}

func whileHolding(t model.TankNow) string {
	if t.Larvae != nil {
		return "it holds larvae; move them first"
	}
	return ""
}

func unlessInUse(t model.TankNow) string {
	if t.State == model.Out {
		return "it is out of use; bring it back first"
	}
	return ""
}

// unlessState asks for one of some states; a tank of which nothing was entered
// yet is believed at its first entry.
func unlessState(what string, states ...model.State) func(model.TankNow) string {
	return func(t model.TankNow) string {
		if !t.Known {
			return ""
		}
		for _, s := range states {
			if t.State == s {
				return ""
			}
		}
		return fmt.Sprintf("it is %s and cannot be %s", t.State, what)
	}
}

// slip is the form of the kind for a tank.
func (k kind) slip(s *Tank, t model.TankNow) factform.Slip {
	known := map[string]string{}
	if k.known != nil {
		known = k.known(t)
	}
	known["tank"] = t.Tank.Name
	title := k.short
	if k.title != nil {
		title = k.title(t)
	}
	slip := factform.Slip{Title: t.Tank.Name + ": " + title, Form: factform.New(s.desk.Ledger.Room(), k.kind, known)}
	if k.ask != nil {
		slip.Confirm = func(f factform.Form) string { return k.ask(t, f) }
	}
	return slip
}

// endQuestion names what leaves the room.
func endQuestion(t model.TankNow, f factform.Form) string {
	fact, err := f.Fact()
	ended, ok := fact.(*model.Ended)
	if err != nil || !ok {
		return ""
	}
	larvae := "an unknown number of larvae"
	switch n := t.Larvae.Number.Value; {
	case ended.Larvae != nil:
		larvae = text.Decimal(*ended.Larvae, 0) + " larvae"
	case n.Known:
		larvae = "about " + text.Decimal(n.X, 0) + " larvae"
	}
	what := map[string]string{
		model.Settled:   "leave the room as settled",
		model.Discarded: "are discarded",
		model.Lost:      "are lost",
	}[ended.Why]
	return fmt.Sprintf("End %s? All its larvae of batch %s, %s, %s. The tank is left dirty.", t.Tank.Name, t.Larvae.Batch, larvae, what)
}
