package sequence

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drainboard/model"
)

// Split asks that a tank's larvae be moved in equal parts, each into a tank of its
// own; 0 parts mean 2.
type Split struct {
	Tank  string
	Parts int
}

// Together asks that the larvae of two tanks go into one.
type Together struct{ A, B string }

// withAsked adds the tanks that are to be split or joined to those chosen by the
// house's window. Where people named the tanks to change, they must be among them.
func withAsked(l *model.Ledger, chosen []model.TankNow, o Options) ([]model.TankNow, error) {
	names := make([]string, 0, len(o.Split)+2*len(o.Join))
	for _, s := range o.Split {
		names = append(names, s.Tank)
	}
	for _, t := range o.Join {
		names = append(names, t.A, t.B)
	}
	for _, name := range names {
		t, err := holding(l, name)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(chosen, func(c model.TankNow) bool { return c.Place == t.Place }) {
			continue
		}
		if len(o.Tanks) > 0 {
			return nil, fmt.Errorf("tank %s is to be split or joined but not to be changed; name it among the tanks", t.Tank.Name)
		}
		chosen = append(chosen, t)
	}
	return chosen, nil
}

// share states what is to be split and joined in a problem whose sources are
// chosen already.
func (p *Problem) share(l *model.Ledger, o Options) error {
	for _, s := range o.Split {
		t, err := holding(l, s.Tank)
		if err != nil {
			return err
		}
		source := &p.Sources[slices.IndexFunc(p.Sources, func(s Source) bool { return s.Tank == t.Place })]
		switch {
		case source.Parts != 0:
			return fmt.Errorf("tank %s is split twice; name it once, with the number of parts", t.Tank.Name)
		case s.Parts == 1 || s.Parts < 0:
			return fmt.Errorf("tank %s: split into %d parts; give 2 to %d", t.Tank.Name, s.Parts, mostParts)
		}
		source.Parts = cmp.Or(s.Parts, 2)
	}
	for _, pair := range o.Join {
		joined, err := together(l, pair)
		if err != nil {
			return err
		}
		p.Joins = append(p.Joins, joined)
	}
	return nil
}

// together states a pair, or says why its larvae stay apart.
func together(l *model.Ledger, pair Together) (Pair, error) {
	a, err := holding(l, pair.A)
	if err != nil {
		return Pair{}, err
	}
	b, err := holding(l, pair.B)
	switch {
	case err != nil:
		return Pair{}, err
	case a.Larvae.Batch != b.Larvae.Batch:
		return Pair{}, fmt.Errorf("%s holds batch %s and %s batch %s; only larvae of one batch go into one tank",
			a.Tank.Name, a.Larvae.Batch, b.Tank.Name, b.Larvae.Batch)
	case a.Suspect || b.Suspect:
		suspect := a
		if b.Suspect {
			suspect = b
		}
		return Pair{}, fmt.Errorf("tank %s is suspect; its larvae are not put together with others", suspect.Tank.Name)
	}
	return Pair{A: a.Place, B: b.Place}, nil
}

// holding returns a tank of the room that holds larvae.
func holding(l *model.Ledger, name string) (model.TankNow, error) {
	t, ok := l.Tank(strings.TrimSpace(name))
	switch {
	case !ok:
		return model.TankNow{}, fmt.Errorf("tank %q is not one of this room", name)
	case t.State != model.Holding:
		return model.TankNow{}, fmt.Errorf("tank %s holds no larvae to change; it is %s", t.Tank.Name, t.State)
	}
	return t, nil
}
