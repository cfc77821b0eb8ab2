package model

import (
	"math"
	"strings"
	"testing"
	"time"
)

// wideRoom is a room of five tanks: the named ones hold larvae of batch 26-05, 9000
// each, the others are ready.
func wideRoom(t *testing.T, holding ...string) *Ledger {
	t.Helper()
	room := smallRoom(t)
	room.Tanks = append(room.Tanks, Tank{Name: "C4", Litres: 120}, Tank{Name: "C5", Litres: 200})
	l := NewLedger(room)
	for _, tank := range room.Tanks {
		mustEnter(t, l, "2026-11-10T09:00:00-05:00", &Filled{Tank: tank.Name, Celsius: num(28)})
	}
	for _, tank := range holding {
		mustEnter(t, l, "2026-11-10T10:00:00-05:00", &Stocked{Tank: tank, Batch: "26-05", Hatched: hatched("2026-11-08"), Larvae: num(9000)})
	}
	return l
}

// walk answers every step of the session so far open, reading the ledger back from
// its entries before each, as after a restart.
func walk(t *testing.T, l *Ledger, now time.Time) *Ledger {
	t.Helper()
	for {
		again, err := LoadLedger(l.Room(), l.Entries())
		if err != nil {
			t.Fatal(err)
		}
		if l = again; !open(l) {
			return l
		}
		if p, _, err := answer(t, l, now, "good", ""); err != nil {
			t.Fatalf("move %d, step %s: %v", p.Move, p.Step.Name, err)
		}
		now = now.Add(time.Minute)
	}
}

func open(l *Ledger) bool {
	_, ok := l.Session().MoverPrompt(l.Room().Procedure)
	return ok
}

// madeMoves are the moves of the ledger in the words of the log, without sieve and
// temperatures.
func madeMoves(l *Ledger) []string {
	var moves []string
	for _, e := range l.Events() {
		if m, ok := e.Fact.(*Moved); ok {
			moves = append(moves, Sentence(&Moved{From: m.From, To: m.To, Share: m.Share, Join: m.Join}))
		}
	}
	return moves
}

func larvaeIn(t *testing.T, l *Ledger, tank string) float64 {
	t.Helper()
	now, ok := l.Tank(tank)
	if !ok || now.Larvae == nil {
		t.Fatalf("%s holds no larvae; it is %s", tank, now.State)
	}
	return now.Larvae.Number.Value.X
}

func TestSessionsWithSplitsAndJoins(t *testing.T) {
	tests := []struct {
		name    string
		holding []string
		legs    []Leg
		moves   string
		larvae  map[string]float64
		dirty   string
	}{
		{
			"two halves",
			[]string{"C1"},
			[]Leg{{"C1", "C2"}, {"C1", "C4"}},
			"50 % of C1 moved into C2 | C1 moved into C4",
			map[string]float64{"C2": 4500, "C4": 4500},
			"C1",
		},
		{
			"three thirds",
			[]string{"C1"},
			[]Leg{{"C1", "C2"}, {"C1", "C4"}, {"C1", "C5"}},
			"33 % of C1 moved into C2 | 50 % of C1 moved into C4 | C1 moved into C5",
			map[string]float64{"C2": 3000, "C4": 3000, "C5": 3000},
			"C1",
		},
		{
			"another move between the halves",
			[]string{"C1", "C3"},
			[]Leg{{"C1", "C2"}, {"C3", "C4"}, {"C1", "C5"}},
			"50 % of C1 moved into C2 | C3 moved into C4 | C1 moved into C5",
			map[string]float64{"C2": 4500, "C4": 9000, "C5": 4500},
			"C3 C1",
		},
		{
			"two tanks together",
			[]string{"C1", "C3"},
			[]Leg{{"C1", "C5"}, {"C3", "C5"}},
			"C1 moved into C5 | C3 moved into C5, joined",
			map[string]float64{"C5": 18000},
			"C1 C3",
		},
		{
			"another move between the two",
			[]string{"C1", "C2", "C3"},
			[]Leg{{"C1", "C5"}, {"C2", "C4"}, {"C3", "C5"}},
			"C1 moved into C5 | C2 moved into C4 | C3 moved into C5, joined",
			map[string]float64{"C5": 18000, "C4": 9000},
			"C1 C2 C3",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := wideRoom(t, tt.holding...)
			mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: tt.legs})
			n := l.Session().N
			l = walk(t, l, at("2026-11-12T09:01:00-05:00"))
			if got := strings.Join(madeMoves(l), " | "); got != tt.moves {
				t.Errorf("moves = %s; want %s", got, tt.moves)
			}
			for tank, want := range tt.larvae {
				if got := larvaeIn(t, l, tank); math.Abs(got-want) > 1 {
					t.Errorf("%s holds %.1f larvae; want %.0f", tank, got, want)
				}
			}
			var dirty []string
			for _, w := range l.WashQueue() {
				dirty = append(dirty, w.Tank.Tank.Name)
			}
			if got := strings.Join(dirty, " "); got != tt.dirty {
				t.Errorf("to wash: %s; want %s", got, tt.dirty)
			}
			for i, made := range l.Session().Moved {
				if made == 0 {
					t.Errorf("move %d is not marked as made", i+1)
				}
			}
			mustEnter(t, l, "2026-11-12T12:00:00-05:00", &Closed{Session: n, Complete: true})
		})
	}
}

// TestJoinedWaterIsOfTheFirstMove: the tank is due by the moment its water was fresh.
func TestJoinedWaterIsOfTheFirstMove(t *testing.T) {
	l := wideRoom(t, "C1", "C3")
	mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: []Leg{{"C1", "C5"}, {"C3", "C5"}}})
	l = walk(t, l, at("2026-11-12T09:01:00-05:00"))
	c5, _ := l.Tank("C5")
	moves := l.Batches()[0].Moves
	if !c5.Since.Equal(moves[0].At) || !moves[1].At.After(moves[0].At) {
		t.Errorf("C5 is fresh since %v, moves at %v and %v; want the first", c5.Since, moves[0].At, moves[1].At)
	}
}

func TestShareOfWhatIsLeft(t *testing.T) {
	leftOut := func(move int) Fact {
		return &StepDone{Session: 7, Move: move, Name: StepLeftOut, Done: true, Why: "no tank"}
	}
	third := 0.3333
	tests := []struct {
		name  string
		facts []Fact
		want  [3]float64 // of each move, were it the next
		made  []int      // moves marked as made
	}{
		{"as agreed", nil, [3]float64{1. / 3, 1. / 3, 1. / 3}, nil},
		{"the last left out", []Fact{leftOut(3)}, [3]float64{1. / 2, 1. / 2, 1. / 3}, nil},
		{"all others left out", []Fact{leftOut(1), leftOut(3)}, [3]float64{1. / 2, 1, 1. / 2}, nil},
		{"the first made", []Fact{&Moved{From: "C1", To: "C2", Share: &third}}, [3]float64{1. / 3, 1. / 2, 1. / 2}, []int{1}},
		{"the second made by hand", []Fact{&Moved{From: "C1", To: "C4", Share: &third}}, [3]float64{1. / 2, 1. / 3, 1. / 2}, []int{2}},
		{"made into a tank not agreed", []Fact{&Moved{From: "C1", To: "C3", Share: &third}}, [3]float64{1. / 3, 1. / 2, 1. / 2}, []int{1}},
		{"the first left out, one made elsewhere", []Fact{leftOut(1), &Moved{From: "C1", To: "C3", Share: &third}}, [3]float64{1. / 2, 1. / 2, 1}, []int{2}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := wideRoom(t, "C1")
			mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: []Leg{{"C1", "C2"}, {"C1", "C4"}, {"C1", "C5"}}})
			for _, f := range tt.facts {
				mustEnter(t, l, "2026-11-12T09:05:00-05:00", f)
			}
			s := l.Session()
			for i, want := range tt.want {
				if got := s.Share(i + 1); math.Abs(got-want) > 1e-9 {
					t.Errorf("share of move %d = %v; want %v", i+1, got, want)
				}
			}
			for i, n := range s.Moved {
				want := false
				for _, made := range tt.made {
					want = want || made == i+1
				}
				if (n != 0) != want {
					t.Errorf("move %d made: %v; want %v", i+1, n != 0, want)
				}
			}
		})
	}
}

// TestJoinsOnlyWhatWasAgreed: in any other case the destination step stops.
func TestJoinsOnlyWhatWasAgreed(t *testing.T) {
	tests := []struct {
		name  string
		legs  []Leg
		facts []Fact // before the second move, which goes into C5
		want  bool
	}{
		{"agreed, and the other was moved", []Leg{{"C1", "C5"}, {"C3", "C5"}}, []Fact{&Moved{From: "C1", To: "C5"}}, true},
		{"the other is yet to come", []Leg{{"C1", "C5"}, {"C3", "C5"}}, nil, false},
		{"moved there by hand, not agreed", []Leg{{"C4", "C2"}, {"C3", "C5"}}, []Fact{&Moved{From: "C1", To: "C5"}}, false},
		{"the other went elsewhere", []Leg{{"C1", "C5"}, {"C3", "C5"}}, []Fact{
			&StepDone{Session: 10, Move: 1, Name: StepInto, Done: true, Why: "C2"}, &Moved{From: "C1", To: "C2"},
		}, false},
		{"two batches", []Leg{{"C4", "C5"}, {"C3", "C5"}}, []Fact{&Moved{From: "C4", To: "C5"}}, false},
		{"both halves into one tank", []Leg{{"C3", "C5"}, {"C3", "C5"}}, []Fact{&Moved{From: "C3", To: "C5", Share: num(0.5)}}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := wideRoom(t, "C1", "C3")
			mustEnter(t, l, "2026-11-10T10:00:00-05:00", &Stocked{Tank: "C4", Batch: "26-06", Hatched: hatched("2026-11-09")})
			mustEnter(t, l, "2026-11-10T10:00:00-05:00", &Noted{Text: "begins"})
			mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: tt.legs})
			for _, f := range tt.facts {
				mustEnter(t, l, "2026-11-12T09:05:00-05:00", f)
			}
			if got := l.Joins(2); got != tt.want {
				t.Errorf("joins = %v; want %v", got, tt.want)
			}
			into, _ := l.Room().Procedure.Step(NameTo)
			_, err := l.Answer(Prompt{Move: 2, Leg: l.Session().Leg(2), Step: into}, "C5", "", later)
			c5, _ := l.Tank("C5")
			if passes := tt.want || c5.State == Ready; (err == nil) != passes {
				t.Errorf("destination: %v; want passed %v", err, passes)
			}
		})
	}
}

// TestNoJoinIntoOldWater: larvae joined by hand to a tank that was not changed in
// the session leave its water old, and no other move goes there.
func TestNoJoinIntoOldWater(t *testing.T) {
	l := wideRoom(t, "C1", "C3", "C5")
	mustEnter(t, l, "2026-11-12T09:00:00-05:00", &Opened{Moves: []Leg{{"C1", "C5"}, {"C3", "C5"}}})
	mustEnter(t, l, "2026-11-12T09:05:00-05:00", &Moved{From: "C1", To: "C5", Join: true})
	if l.Joins(2) {
		t.Error("joins C5, whose water is two days old")
	}
}
