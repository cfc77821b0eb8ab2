package model

import "slices"

// SpeaksOf reports whether a fact names a tank, as the room writes it. A step of
// a change session names its session and no tank.
func SpeaksOf(f Fact, tank string) bool {
	if tank == "" {
		return false
	}
	switch x := f.(type) {
	case *Moved:
		return x.From == tank || x.To == tank
	case *Opened:
		return slices.ContainsFunc(x.Moves, func(leg Leg) bool { return leg.From == tank || leg.To == tank })
	}
	return tankOf(f) == tank
}

// tankOf returns the one tank a fact is of, empty where it is of none or of two.
func tankOf(f Fact) string {
	switch x := f.(type) {
	case *Stocked:
		return x.Tank
	case *Washed:
		return x.Tank
	case *Filled:
		return x.Tank
	case *Temperature:
		return x.Tank
	case *Sizes:
		return x.Tank
	case *Look:
		return x.Tank
	case *Count:
		return x.Tank
	case *Cells:
		return x.Tank
	case *Fed:
		return x.Tank
	case *Water:
		return x.Tank
	case *Removed:
		return x.Tank
	case *Ended:
		return x.Tank
	case *Service:
		return x.Tank
	case *Suspect:
		return x.Tank
	case *Noted:
		return x.Tank
	}
	return ""
}
