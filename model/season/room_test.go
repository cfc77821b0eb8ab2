package season

import (
	"testing"
	"time"

	"drainboard/model"
)

// book enters facts in a room of tanks A, B, C of 100 L and D of 200 L that keeps
// the default rules, on the clock of Greenwich.
type book struct {
	t      *testing.T
	ledger *model.Ledger
}

func newBook(t *testing.T) book {
	t.Helper()
	room := &model.Room{
		Name: "Worked room", Zone: time.UTC, House: model.DefaultHouse(), Procedure: model.DefaultProcedure(),
		Tanks: []model.Tank{
			{Name: "A", Litres: 100}, {Name: "B", Litres: 100}, {Name: "C", Litres: 100}, {Name: "D", Litres: 200},
		},
	}
	return book{t, model.NewLedger(room)}
}

// moment reads "06-05 18:00" of 2026.
func moment(t *testing.T, s string) time.Time {
	t.Helper()
	at, err := time.ParseInLocation("2006-01-02 15:04", "2026-"+s, time.UTC)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

func (b book) at(when string, facts ...model.Fact) {
	b.t.Helper()
	b.enter(moment(b.t, when), facts...)
}

func (b book) enter(at time.Time, facts ...model.Fact) {
	b.t.Helper()
	for _, f := range facts {
		e := model.Entry{At: at, Fact: f}
		err := b.ledger.Check(&e, at)
		if err == nil {
			err = b.ledger.Apply(e)
		}
		if err != nil {
			b.t.Fatalf("%s at %s: %v", f.Kind(), at, err)
		}
	}
}

func num(x float64) *float64 { return &x }

func day(t *testing.T, s string) model.Hatched {
	t.Helper()
	h, err := model.ParseHatched(s)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// stocked is larvae of a batch; a number of 0 stands for none given.
func (b book) stocked(tank, batch, hatched string, larvae float64) *model.Stocked {
	f := &model.Stocked{Tank: tank, Batch: batch, Hatched: day(b.t, hatched)}
	if larvae > 0 {
		f.Larvae = num(larvae)
	}
	return f
}

func move(from, to string, fromC, toC float64) *model.Moved {
	return &model.Moved{From: from, To: to, FromCelsius: num(fromC), ToCelsius: num(toC)}
}

// counted is a count that comes to 200 larvae for each one seen: 10 mL out of
// 2 000 mL.
func counted(tank string, live ...int) *model.Count {
	return &model.Count{Tank: tank, Live: live, SampleML: 10, HoldingML: 2000}
}

// one is the only batch of the book.
func (b book) one(now string) Batch {
	b.t.Helper()
	s := Of(b.ledger, moment(b.t, now))
	if len(s.Batches) != 1 {
		b.t.Fatalf("%d batches; want 1", len(s.Batches))
	}
	return s.Batches[0]
}
