package model

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"drainboard/model/water"
)

// Wait says why a step does not pass on the answer given. People may measure
// again, take another way out, or go ahead with a reason.
type Wait struct {
	Text       string            // in words
	Difference *water.Difference // for a held move: how far the waters lie apart
	From, To   float64           // the two temperatures then
}

// Reply is what an answer leads to: facts to be written, in order, and where
// the step does not pass, why it waits. Facts of a waiting step (a reading) are
// written all the same.
type Reply struct {
	Facts []Fact
	Wait  *Wait
}

// Answer works out what a typed answer to a step of the open session means. A
// wrong tank name, text where a number is wanted and numbers that cannot be true
// are errors, and nothing is to be written then. With a reason given, a step
// that would wait passes, and the reason is kept.
func (l *Ledger) Answer(p Prompt, typed, reason string, now time.Time) (Reply, error) {
	typed = strings.TrimSpace(typed)
	switch p.Step.Ask {
	case AskTank:
		return l.answerTank(p, typed)
	case AskCelsius:
		return l.answerCelsius(p, typed, reason, now)
	case AskNumber:
		return l.answerNumber(p, typed, reason, now)
	case AskChoice:
		return l.answerChoice(p, typed, reason)
	}
	return l.answerEnter(p, now)
}

// passed is the record that a step is done, with what was answered.
func (l *Ledger) passed(p Prompt, answer, reason string) Fact {
	if reason != "" {
		answer += "; went ahead: " + reason
	}
	return &StepDone{Session: l.Session().N, Move: p.Move, Name: p.Step.Name, Done: true, Why: answer}
}

// Defer is the record that a step is put off, with the reason.
func (l *Ledger) Defer(p Prompt, reason string) (Fact, error) {
	if p.Step.Ask == AskTank {
		return nil, fmt.Errorf("a tank's name cannot be put off; leave the move out instead")
	}
	if strings.TrimSpace(reason) == "" {
		return nil, fmt.Errorf("say why the step is put off")
	}
	return &StepDone{Session: l.Session().N, Move: p.Move, Name: p.Step.Name, Why: reason}, nil
}

func (l *Ledger) answerTank(p Prompt, typed string) (Reply, error) {
	want := p.Leg.From
	if p.Step.Name == NameTo {
		want = p.Leg.To
	}
	if typed == "" {
		return Reply{}, fmt.Errorf("type the tank's name as it stands on the tank")
	}
	if !strings.EqualFold(typed, want) {
		return Reply{}, fmt.Errorf("STOP: you typed %s, this step is at %s", typed, want)
	}
	if p.Step.Name == NameTo && !l.Session().made(p.Move) {
		if t, _ := l.Tank(want); !fits(&t) && !l.Joins(p.Move) {
			return Reply{}, fmt.Errorf("STOP: %s; larvae go into a ready tank", l.fold.stands(&t))
		}
	}
	return Reply{Facts: []Fact{l.passed(p, want, "")}}, nil
}

// ParseTyped reads a number typed by hand: both . and , are decimals, once.
func ParseTyped(typed string) (float64, error) {
	x, err := strconv.ParseFloat(strings.Replace(typed, ",", ".", 1), 64)
	if err != nil || strings.Trim(typed, "0123456789.,-") != "" {
		return 0, fmt.Errorf("%q is not a number", typed)
	}
	return x, nil
}

func (l *Ledger) answerCelsius(p Prompt, typed, reason string, now time.Time) (Reply, error) {
	celsius, err := ParseTyped(typed)
	if err != nil {
		return Reply{}, err
	}
	tank := p.Leg.From
	if p.Step.Records == RecordToCelsius {
		tank = p.Leg.To
	}
	reading := &Temperature{Tank: tank, Celsius: celsius}
	if err := checkFact(l.room, reading); err != nil {
		return Reply{}, err
	}
	reply := Reply{Facts: []Fact{reading}}
	if l.readJustNow(p, tank, celsius, reason, now) {
		reply.Facts = nil
	}
	if wait := l.apart(p, celsius, now); wait != nil && reason == "" {
		reply.Wait = wait
		return reply, nil
	}
	reply.Facts = append(reply.Facts, l.passed(p, typed, reason))
	return reply, nil
}

// readJustNow reports whether a reading was kept at this step already: one that
// is answered again with a reason, or because its step could not be saved.
func (l *Ledger) readJustNow(p Prompt, tank string, celsius float64, reason string, now time.Time) bool {
	last, ok := l.readAt(p, tank)
	return ok && last.Value == celsius && (reason != "" || now.Sub(last.At) < time.Minute)
}

// readAt returns the last temperature of a tank if it was read since the last
// step of the prompt's move was recorded.
func (l *Ledger) readAt(p Prompt, tank string) (Reading, bool) {
	t, _ := l.Tank(tank)
	last, ok := t.celsius()
	return last, ok && last.N > l.Session().lastRecord(p.Move)
}

// Held says why a move waits by the temperatures that were read at its step, nil
// where it does not. It tells from the entries alone, so it stands after a
// restart as it did before.
func (l *Ledger) Held(p Prompt, now time.Time) *Wait {
	if p.Step.Records != RecordToCelsius || l.Session().made(p.Move) {
		return nil
	}
	last, ok := l.readAt(p, p.Leg.To)
	if !ok {
		return nil
	}
	return l.apart(p, last.Value, now)
}

// Rules returns the room's limits of a difference of temperature.
func (l *Ledger) Rules() water.Steps {
	t := l.room.House.Temperature
	return water.Steps{Fine: t.StepFine, Hold: t.StepHold}
}

// apart says why the move waits where the destination's temperature lies too
// far from the source's.
func (l *Ledger) apart(p Prompt, celsius float64, now time.Time) *Wait {
	if p.Step.Records != RecordToCelsius {
		return nil
	}
	from, ok := l.fresh(p.Leg.From, now)
	if !ok {
		return nil
	}
	d := l.Rules().Compare(&from, &celsius)
	if d.Verdict != water.Hold {
		return nil
	}
	text := fmt.Sprintf("HOLD: %s is %.1f °C, %s %.1f °C, %.1f °C apart; over %s °C the move waits",
		p.Leg.From, from, p.Leg.To, celsius, d.Celsius, plain(l.room.House.Temperature.StepHold))
	return &Wait{Text: text, Difference: &d, From: from, To: celsius}
}

// fresh returns the last temperature of a tank if it is not too old to go by.
func (l *Ledger) fresh(tank string, now time.Time) (float64, bool) {
	t, _ := l.Tank(tank)
	last, ok := t.celsius()
	if !ok || now.Sub(last.At) > l.ReadingLimit() {
		return 0, false
	}
	return last.Value, true
}

func (l *Ledger) answerNumber(p Prompt, typed, reason string, now time.Time) (Reply, error) {
	x, err := ParseTyped(typed)
	if err != nil {
		return Reply{}, err
	}
	if x < 0 {
		return Reply{}, fmt.Errorf("%s: a number of 0 or more is expected", typed)
	}
	if p.Step.Records == RecordMesh {
		if err := meshRange.check("sieve", "µm", x); err != nil {
			return Reply{}, err
		}
	}
	if wait := l.outside(p, x, now); wait != nil && reason == "" {
		return Reply{Wait: wait}, nil
	}
	return Reply{Facts: []Fact{l.passed(p, plain(x), reason)}}, nil
}

// outside says why a step waits on a number beyond its limits.
func (l *Ledger) outside(p Prompt, x float64, now time.Time) *Wait {
	switch {
	case p.Step.Least != nil && x < *p.Step.Least:
		return &Wait{Text: fmt.Sprintf("HOLD: at least %s %s is wanted, you typed %s", plain(*p.Step.Least), p.Step.Unit, plain(x))}
	case p.Step.Most != nil && x > *p.Step.Most:
		return &Wait{Text: fmt.Sprintf("HOLD: at most %s %s is wanted, you typed %s", plain(*p.Step.Most), p.Step.Unit, plain(x))}
	case p.Step.Records != RecordMesh:
		return nil
	}
	t, _ := l.Tank(p.Leg.From)
	age, known := l.Age(t, now)
	if !known || l.SieveFits(age, x) {
		return nil
	}
	return &Wait{Text: fmt.Sprintf("HOLD: day %d goes on %s µm, you typed %s", age, meshWords(l.room.House.MeshAt(age)), plain(x))}
}

func meshWords(um []float64) string {
	words := make([]string, len(um))
	for i, x := range um {
		words[i] = plain(x)
	}
	return strings.Join(words, " or ")
}

func (l *Ledger) answerChoice(p Prompt, typed, reason string) (Reply, error) {
	i, err := strconv.Atoi(typed)
	if err != nil || i < 1 || i > len(p.Step.Choices) {
		return Reply{}, fmt.Errorf("%q: type a number from 1 to %d", typed, len(p.Step.Choices))
	}
	seen := p.Step.Choices[i-1]
	switch {
	case i == 1 || reason != "":
		return Reply{Facts: []Fact{l.passed(p, seen, reason)}}, nil
	case !p.Step.Critical:
		later, err := l.Defer(p, seen)
		return Reply{Facts: []Fact{later}}, err
	}
	return Reply{Wait: &Wait{Text: fmt.Sprintf("HOLD: %q; the step passes on %q. %s", seen, p.Step.Choices[0], p.Step.Why)}}, nil
}

func (l *Ledger) answerEnter(p Prompt, now time.Time) (Reply, error) {
	done := l.passed(p, "", "")
	if p.Step.Records != RecordMoved || l.Session().made(p.Move) {
		return Reply{Facts: []Fact{done}}, nil
	}
	return Reply{Facts: []Fact{l.moveOf(p), done}}, nil
}

// moveOf is the move as its steps were answered.
func (l *Ledger) moveOf(p Prompt) *Moved {
	m := &Moved{From: p.Leg.From, To: p.Leg.To}
	l.sharing(m, p.Move)
	m.MeshUM = l.answered(p.Move, RecordMesh)
	m.FromCelsius = l.answered(p.Move, RecordFromCelsius)
	m.ToCelsius = l.answered(p.Move, RecordToCelsius)
	for _, what := range []string{RecordMesh, RecordToCelsius} {
		name, _ := l.room.Procedure.Recorded(what)
		if answer, ok := l.Session().Answer(p.Move, name); ok {
			if _, why, ahead := strings.Cut(answer, "; went ahead: "); ahead {
				m.Why = strings.TrimPrefix(m.Why+"; "+why, "; ")
			}
		}
	}
	return m
}

// answered returns the number answered at the step that records what.
func (l *Ledger) answered(move int, what string) *float64 {
	name, ok := l.room.Procedure.Recorded(what)
	if !ok {
		return nil
	}
	answer, ok := l.Session().Answer(move, name)
	if !ok {
		return nil
	}
	figure, _, _ := strings.Cut(answer, ";")
	x, err := ParseTyped(figure)
	if err != nil {
		return nil
	}
	return &x
}

// AnswerWash works out what a typed answer to the washer's step means: the acid
// used, or the temperature of a filled tank.
func (l *Ledger) AnswerWash(w WashPrompt, typed string) (Fact, error) {
	if w.Step.Ask == AskEnter {
		return plainWash(w), nil
	}
	x, err := ParseTyped(strings.TrimSpace(typed))
	if err != nil {
		return nil, err
	}
	var fact Fact
	if w.Step.Records == RecordFilled {
		fact = &Filled{Tank: w.Tank.Tank.Name, Celsius: &x}
	} else {
		litres := max(0, l.room.House.Wash.TankLitres-x/1000)
		fact = &Washed{Tank: w.Tank.Tank.Name, AcidML: &x, WaterLitres: &litres}
	}
	return fact, checkFact(l.room, fact)
}

// plainWash is the washer's step done where the procedure asks for no figure.
func plainWash(w WashPrompt) Fact {
	if w.Step.Records == RecordFilled {
		return &Filled{Tank: w.Tank.Tank.Name}
	}
	return &Washed{Tank: w.Tank.Tank.Name}
}
