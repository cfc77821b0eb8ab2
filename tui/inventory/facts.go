package inventory

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"time"

	"drainboard/model"
)

// dated is one entry to be made.
type dated struct {
	row  int
	at   time.Time
	fact model.Fact
}

// Why a tank was out of use before the journal began; a dirty one is taken back at
// the same moment, which is how an entry says that it is to be washed.
const (
	beforeStart = "before the start"
	standsDirty = "stands dirty"
)

// reading is what a row comes to.
type reading struct {
	at      time.Time
	timed   bool // at was typed; else it is now
	hatched model.Hatched
	larvae  *float64
	length  float64 // um, 0 where not typed
}

// read reads a row, and says cell by cell what is wrong with it. What is needed
// and missing is wrong only once the review was asked for.
func (s *Inventory) read(i int) (reading, map[column]string) {
	r, zone := &s.rows[i], s.desk.Ledger.Room().Zone
	rd, wrong := reading{at: s.desk.Now.Truncate(time.Second)}, map[column]string{}
	if !r.empty(changed) {
		at, err := when(r.text(changed), r.typedAt, zone)
		if err == nil {
			rd.at, rd.timed = at, true
		} else {
			wrong[changed] = err.Error()
		}
	}
	if !r.holding() {
		return rd, wrong
	}
	if told := cmp.Or(r.text(hatched), s.batchHatch(i)); told != "" {
		var err error
		if rd.hatched, err = hatchDay(told, s.desk.Now, zone); err != nil {
			wrong[hatched] = err.Error()
		}
	}
	if x, ok := r.fields[larvae].Value(); ok {
		rd.larvae = &x
	}
	if x, ok := r.fields[length].Value(); ok {
		rd.length = x
		if err := (&model.Sizes{}).Fields()[1].Set([]any{x}); err != nil {
			wrong[length] = problemOf(err)
		}
	} else if !r.empty(length) {
		wrong[length] = "a number is expected"
	}
	s.missing(i, rd, wrong)
	return rd, wrong
}

// missing adds what a holding tank needs and lacks.
func (s *Inventory) missing(i int, rd reading, wrong map[column]string) {
	r := &s.rows[i]
	if !s.asked {
		return
	}
	if r.empty(batch) {
		wrong[batch] = "is missing; a tank that holds larvae needs the name of their batch"
	}
	if rd.hatched.IsZero() && wrong[hatched] == "" && !r.empty(batch) {
		wrong[hatched] = "is missing; write a date as 2026-11-08 or the age in days"
	}
	if r.empty(changed) {
		wrong[changed] = "is missing; the next change is due by it"
	}
}

func problemOf(err error) string {
	var field *model.FieldError
	if errors.As(err, &field) {
		return field.Problem
	}
	return err.Error()
}

// facts are the entries of a row that reads well.
func (s *Inventory) facts(i int, rd reading) []dated {
	r := &s.rows[i]
	var list []model.Fact
	switch r.state {
	case model.Holding:
		list = append(list, &model.Stocked{Tank: r.tank, Batch: r.text(batch), Hatched: rd.hatched, Larvae: rd.larvae})
		if rd.length > 0 {
			list = append(list, &model.Noted{Tank: r.tank, Text: lengthNote(rd.length)})
		}
	case model.Ready:
		list = append(list, &model.Filled{Tank: r.tank})
	case model.WashedDown:
		list = append(list, &model.Washed{Tank: r.tank})
	case model.Dirty:
		list = append(list, &model.Service{Tank: r.tank, Out: true, Why: beforeStart}, &model.Service{Tank: r.tank, Why: standsDirty})
	case model.Out:
		list = append(list, &model.Service{Tank: r.tank, Out: true, Why: beforeStart})
	}
	out := make([]dated, len(list))
	for k, f := range list {
		out[k] = dated{i, rd.at, f}
	}
	return out
}

// lengthNote words a mean of which nobody knows from how many larvae. It must not
// look like a reading, so it is a remark.
func lengthNote(um float64) string {
	return fmt.Sprintf("mean length %s um before the start", strconv.FormatFloat(um, 'f', -1, 64))
}

// gather reads every row, in the order of time. With a problem anywhere there is
// nothing to enter.
func (s *Inventory) gather() (list []dated, wrong map[cell]string) {
	wrong = map[cell]string{}
	for _, i := range s.filled() {
		if pending := s.rows[i].pending; len(pending) > 0 {
			list = append(list, pending...)
			continue
		}
		if s.rows[i].state == "" {
			wrong[cell{i, state}] = "is missing; h holding, r ready, w washed, d dirty, o out, or Backspace what is typed"
			continue
		}
		rd, problems := s.read(i)
		for c, words := range problems {
			wrong[cell{i, c}] = words
		}
		list = append(list, s.facts(i, rd)...)
	}
	slices.SortStableFunc(list, func(a, b dated) int { return a.at.Compare(b.at) })
	return list, wrong
}

// try asks a copy of the ledger whether the entries can be true, and says at which
// cell one cannot.
func (s *Inventory) try(list []dated) map[cell]string {
	wrong := map[cell]string{}
	l, failed := s.desk.Ledger.Copy(), map[int]bool{}
	for _, x := range list {
		if failed[x.row] {
			continue
		}
		e := model.Entry{At: x.at, By: s.desk.By, Fact: x.fact}
		err := l.Check(&e, s.desk.Now)
		if err == nil {
			err = l.Apply(e)
		}
		if err != nil {
			wrong[cell{x.row, columnOf(err)}] = problemOf(err)
			failed[x.row] = true
		}
	}
	return wrong
}

// columnOf is the cell that a refusal is about.
func columnOf(err error) column {
	var field *model.FieldError
	if !errors.As(err, &field) {
		return changed // it does not go with what stands in the journal at that time
	}
	switch field.Field {
	case "batch":
		return batch
	case "hatched":
		return hatched
	case "larvae":
		return larvae
	case "at":
		return changed
	}
	return state
}
