package season

import (
	"fmt"
	"strings"
	"testing"

	"drainboard/model"
)

// seasons plays batches of one tank, a week each: the larger the difference at the
// move the fewer live. Batch 3 was never counted.
func seasons(t *testing.T, n int) book {
	b := newBook(t)
	for i := range n {
		month := fmt.Sprintf("%02d", i+1)
		b.at(month+"-01 12:00", b.stocked("A", fmt.Sprintf("Q-%d", i+1), "2026-"+month+"-01", 10000))
		b.at(month+"-03 12:00", move("A", "B", 28, 28-float64(i)/2))
		if i != 3 {
			b.at(month+"-08 12:00", counted("B", 45-2*i))
		}
		b.at(month+"-09 12:00", &model.Ended{Tank: "B", Why: model.Discarded},
			&model.Washed{Tank: "A"}, &model.Filled{Tank: "A"}, &model.Washed{Tank: "B"}, &model.Filled{Tank: "B"})
	}
	return b
}

func TestComparison(t *testing.T) {
	s := Of(seasons(t, 6).ledger, moment(t, "12-31 12:00"))
	c := s.Comparison(Difference, Survival)
	if c.N != 5 || !c.Rho.Known || c.Rho.X != -1 || c.Why() != "" {
		t.Errorf("difference against survival %+v; want -1 over 5: one batch was never counted", c)
	}
	if c := s.Comparison(Late, Survival); c.Rho.Known || c.Why() != "all alike" {
		t.Errorf("late against survival %+v, %q; want no correlation of batches that are all alike", c, c.Why())
	}
	if c := s.Comparison(Golden, Speed); c.N != 0 || c.Rho.Known || c.Why() != "too few" {
		t.Errorf("golden against growth %+v, %q; want nothing to compare", c, c.Why())
	}
	if got := len(s.Points(Difference, Survival)); got != 5 {
		t.Errorf("%d points; want 5", got)
	}
	few := Of(seasons(t, 5).ledger, moment(t, "12-31 12:00")).Comparison(Difference, Survival)
	if few.N != 4 || few.Rho.Known || few.Why() != "too few" {
		t.Errorf("of four batches %+v, %q; want no correlation", few, few.Why())
	}
	if words := s.Caveat(); !strings.Contains(words, "proves nothing: 6 batches") || !strings.Contains(words, "14 comparisons") {
		t.Errorf("caveat %q", words)
	}
}

func TestYears(t *testing.T) {
	b := newBook(t)
	b.enter(moment(t, "12-30 12:00").AddDate(-2, 0, 0), b.stocked("B", "old", "2024-12-30", 10))
	b.at("01-02 12:00", b.stocked("C", "née en été", "2026-01-01", 10))
	b.at("01-03 12:00", b.stocked("A", "new", "2025-12-31", 10))
	s := Of(b.ledger, moment(t, "01-04 12:00"))
	if got := fmt.Sprint(s.Years()); got != "[2026 2025 2024]" {
		t.Errorf("years %s", got)
	}
	var names []string
	for _, x := range s.Batches {
		names = append(names, x.Name)
	}
	if got := strings.Join(names, ", "); got != "old, new, née en été" {
		t.Errorf("batches %s; want them by hatch day", got)
	}
	one := s.In(2025)
	if len(one.Batches) != 1 || one.Batches[0].Name != "new" || !strings.Contains(one.Caveat(), "1 batch,") {
		t.Errorf("2025: %+v", one.Batches)
	}
	if none := Of(newBook(t).ledger, moment(t, "01-04 12:00")); len(none.Batches) != 0 || len(none.Years()) != 0 || len(none.Compared) != 14 {
		t.Errorf("an empty room: %+v", none)
	}
}

// Every habit and outcome says what it is.
func TestWords(t *testing.T) {
	for _, h := range Habits() {
		if h.Words() == string(h) || h.Unit() == "" {
			t.Errorf("%s: %q, %q", h, h.Words(), h.Unit())
		}
	}
	for _, o := range Outcomes() {
		if o.Words() == "" || o.Unit() == "" {
			t.Errorf("%s lacks words", o)
		}
	}
}
