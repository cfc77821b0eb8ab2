package session

import (
	"strconv"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/wash"
	"drainboard/tui/text"
)

// figures are what stands in the place of the {names} of a step.
type figures map[string]string

// fill puts the figures into a step's text. A name without a figure stays as it
// was written, so that a slip in procedure.toml shows.
func (f figures) fill(s string) string {
	var b strings.Builder
	for {
		open := strings.IndexByte(s, '{')
		if open < 0 {
			break
		}
		end := strings.IndexByte(s[open:], '}')
		if end < 0 {
			break
		}
		value, ok := f[s[open+1:open+end]]
		if !ok {
			b.WriteString(s[:open+1])
			s = s[open+1:]
			continue
		}
		b.WriteString(s[:open])
		b.WriteString(value)
		s = s[open+end+1:]
	}
	b.WriteString(s)
	return text.Clean(b.String())
}

// roomFigures are those that hold for every step of the session.
func roomFigures(l *model.Ledger, s *model.SessionNow, now time.Time) figures {
	house := l.Room().House
	f := figures{
		"step_fine": plain(house.Temperature.StepFine),
		"step_hold": plain(house.Temperature.StepHold),
		"sieves":    sieveWords(sessionSieves(l, s, now)),
		"from":      text.Unknown, "to": text.Unknown, "tank": text.Unknown,
		"meshes": text.Unknown, "from_celsius": text.Unknown,
	}
	mix, err := mixFor(house.Wash, max(1, len(s.Legs)))
	f["acid_ml"], f["water_litres"] = mixFigures(mix.PerTank, err)
	f["bin_acid_ml"], f["bin_water_litres"] = mixFigures(mix.Bin, err)
	return f
}

func mixFigures(m wash.Mix, err error) (acid, water string) {
	if err != nil {
		return text.Unknown, text.Unknown
	}
	return plain(m.AcidML), plain(m.WaterLitres)
}

// moverFigures are the figures of a step of the mover.
func moverFigures(l *model.Ledger, s *model.SessionNow, p model.Prompt, now time.Time) figures {
	f := roomFigures(l, s, now)
	if p.Move == 0 {
		return f
	}
	f["from"], f["to"] = p.Leg.From, p.Leg.To
	if t, ok := larvaeOf(l, s, p.Move); ok {
		age, _ := l.Age(t, now)
		f["meshes"] = meshWords(l.Room().House.MeshAt(age))
	}
	if t, ok := l.Tank(p.Leg.From); ok {
		if last, read := t.LastCelsius(); read {
			f["from_celsius"] = text.Decimal(last.Value, 1)
		}
	}
	return f
}

// washFigures are the figures of a step of the washer.
func washFigures(l *model.Ledger, s *model.SessionNow, w model.WashPrompt, now time.Time) figures {
	f := roomFigures(l, s, now)
	f["tank"] = w.Tank.Tank.Name
	f["from_celsius"] = aimWords(l, s, w.Tank.Tank.Name, now)
	return f
}

// aimWords is the temperature to which a tank is filled: that of the tank whose
// larvae come into it next, else the best of the house rules.
func aimWords(l *model.Ledger, s *model.SessionNow, tank string, now time.Time) string {
	for i := range s.Legs {
		leg := s.Leg(i + 1)
		if _, out := s.LeftOut(i + 1); out || s.Moved[i] != 0 || leg.To != tank {
			continue
		}
		source, _ := l.Tank(leg.From)
		if last, ok := source.LastCelsius(); ok && now.Sub(last.At) <= l.ReadingLimit() {
			return text.Decimal(last.Value, 1)
		}
		break
	}
	best := l.Room().House.Temperature.Best
	return plain(best.Low) + " to " + plain(best.High)
}

// larvaeOf finds the tank that holds the larvae of a move: its source, or its
// destination once they are over.
func larvaeOf(l *model.Ledger, s *model.SessionNow, move int) (model.TankNow, bool) {
	leg := s.Leg(move)
	name := leg.From
	if s.Moved[move-1] != 0 {
		name = leg.To
	}
	t, ok := l.Tank(name)
	return t, ok && t.Larvae != nil
}

// sessionSieves lists the sieves of an open session, each once, ascending, um.
func sessionSieves(l *model.Ledger, s *model.SessionNow, now time.Time) []float64 {
	var um []float64
	for i := range s.Legs {
		if t, ok := larvaeOf(l, s, i+1); ok {
			age, _ := l.Age(t, now)
			um = withSieve(um, l.Room().House.MeshAt(age))
		}
	}
	return um
}

// withSieve adds the default of the sieves for an age to an ascending list.
func withSieve(list, forAge []float64) []float64 {
	if len(forAge) == 0 {
		return list
	}
	um := forAge[0]
	for i, have := range list {
		switch {
		case have == um:
			return list
		case have > um:
			return append(list[:i:i], append([]float64{um}, list[i:]...)...)
		}
	}
	return append(list, um)
}

// mixFor works out the wash of a session that empties so many tanks.
func mixFor(rules model.WashRules, emptied int) (wash.SessionMix, error) {
	stock, err := wash.NewStock(rules.StockPercent)
	if err != nil {
		return wash.SessionMix{}, err
	}
	return wash.Session{
		Emptied: emptied, TankLitres: rules.TankLitres, BinLitres: rules.BinLitres,
		MLPerLitre: rules.MLPerLitre, Stock: stock,
	}.Mix()
}

// plain writes a figure with as few decimals as it needs, three at most.
func plain(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "" || s == "-" || s == "-0" {
		return "0"
	}
	return s
}

func meshWords(um []float64) string {
	if len(um) == 0 {
		return "any"
	}
	return joined(um, " or ")
}

func sieveWords(um []float64) string {
	if len(um) == 0 {
		return "any"
	}
	return joined(um, ", ")
}

func joined(um []float64, between string) string {
	words := make([]string, len(um))
	for i, x := range um {
		words[i] = plain(x)
	}
	return strings.Join(words, between)
}
