package model

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"drainboard/model/count"
)

// crowded is wideRoom with larvae in C1 alone, so many of them, and these bands;
// on 12 November they are 4 days old.
func crowded(t *testing.T, larvae count.Estimate, bands ...DensityBand) *Ledger {
	t.Helper()
	l := wideRoom(t, "C1")
	l.room.House.Density = bands
	l.fold.tank("C1").Larvae.Number = larvae
	return l
}

var noonOf12 = at("2026-11-12T12:00:00-05:00")

func TestCrowding(t *testing.T) {
	hundred := DensityBand{0, 100}
	tests := []struct {
		name   string
		larvae count.Estimate
		bands  []DensityBand
		want   string // of the crowd, then of its reliefs
	}{
		{"under the limit", count.Between(11000, 10500, 12000), []DensityBand{hundred}, ""},
		{"just at it", count.About(12000), []DensityBand{hundred}, ""},
		{"never counted", count.Estimate{}, []DensityBand{hundred}, ""},
		{"no limit in this room", count.About(1e6), nil, ""},
		{
			"only the high limit passes it", count.Between(11000, 10000, 13000),
			[]DensityBand{hundred},
			"C1 holds 91.7 larvae per litre (83.3 to 108.3), may be over the limit of 100: count again before anything is moved",
		},
		{
			"the estimate passes it", count.Between(15000, 11000, 19000),
			[]DensityBand{hundred},
			"C1 holds 125.0 larvae per litre (91.7 to 158.3), likely over the limit of 100: 3000 (0 to 7000) must go\n" +
				"at the change move all of C1 into C5 (200 L): 75.0 per litre\n" +
				"at the change split C1 in 2 equal parts of 7500 into C2 (62.5 per litre) and C3 (83.3 per litre)\n" +
				"now move 50 % of C1 (7500 larvae) into C2: 62.5 per litre in each; the water of C1 stays as old as it is\n" +
				"cull 3000 of C1 (20 %): 100.0 per litre; 7000 to be sure of it",
		},
		{
			"a number told, over in equal parts but for the large tanks", count.About(24000),
			[]DensityBand{hundred},
			"C1 holds 200.0 larvae per litre, over the limit of 100: 12000 must go\n" +
				"at the change split C1 in 2 equal parts of 12000 into C2 (100.0 per litre) and C4 (100.0 per litre)\n" +
				"now move 50 % of C1 (12000 larvae) into C2: 100.0 per litre in each; the water of C1 stays as old as it is\n" +
				"cull 12000 of C1 (50 %): 100.0 per litre",
		},
		{
			"three parts, and none by a part alone", count.Between(35000, 34000, 36000),
			[]DensityBand{hundred},
			"C1 holds 291.7 larvae per litre (283.3 to 300.0), over the limit of 100: 23000 (22000 to 24000) must go\n" +
				"at the change split C1 in 3 equal parts of 11667 into C2 (97.2 per litre), C4 (97.2 per litre) and C5 (58.3 per litre)\n" +
				"cull 23000 of C1 (66 %): 100.0 per litre; 24000 to be sure of it",
		},
		{
			"equal parts do not do", count.About(50000),
			[]DensityBand{hundred},
			"C1 holds 416.7 larvae per litre, over the limit of 100: 38000 must go\n" +
				"at the change split C1 by hand into C5 (share 0.3774, 94.3 per litre), C2 (share 0.3636, 94.3 per litre), " +
				"C4 (share 0.5714, 94.3 per litre) and C3 (the rest, 94.3 per litre)\n" +
				"cull 38000 of C1 (76 %): 100.0 per litre",
		},
		{
			"more than the room can take", count.About(90000),
			[]DensityBand{hundred},
			"C1 holds 750.0 larvae per litre, over the limit of 100: 78000 must go\ncull 78000 of C1 (87 %): 100.0 per litre",
		},
		{
			"a stricter band begins before the next change", count.About(9000),
			[]DensityBand{hundred, {6, 60}},
			"C1 holds 75.0 larvae per litre, over the limit of 60 from day 6 (it is day 4): 1800 must go\n" +
				"at the change move all of C1 into C5 (200 L): 45.0 per litre\n" +
				"at the change split C1 in 2 equal parts of 4500 into C2 (37.5 per litre) and C3 (50.0 per litre)\n" +
				"now move 50 % of C1 (4500 larvae) into C2: 37.5 per litre in each; the water of C1 stays as old as it is\n" +
				"cull 1800 of C1 (20 %): 60.0 per litre",
		},
		{"a stricter band begins after it", count.About(9000), []DensityBand{hundred, {7, 60}}, ""},
		{
			"a looser band begins before it, too dense until then", count.About(9000),
			[]DensityBand{{0, 60}, {5, 100}},
			"C1 holds 75.0 larvae per litre, over the limit of 60: 1800 must go\n" +
				"at the change move all of C1 into C5 (200 L): 45.0 per litre\n" +
				"at the change split C1 in 2 equal parts of 4500 into C2 (37.5 per litre) and C3 (50.0 per litre)\n" +
				"now move 50 % of C1 (4500 larvae) into C2: 37.5 per litre in each; the water of C1 stays as old as it is\n" +
				"cull 1800 of C1 (20 %): 60.0 per litre",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := crowded(t, tt.larvae, tt.bands...)
			var lines []string
			for _, c := range l.Crowding(noonOf12) {
				lines = append(lines, c.Text)
				for _, r := range c.Reliefs {
					lines = append(lines, r.Text)
				}
			}
			if got := strings.Join(lines, "\n"); got != tt.want {
				t.Errorf("got\n%s\nwant\n%s", got, tt.want)
			}
		})
	}
}

func TestReadyForByTemperatureThenLongest(t *testing.T) {
	l := crowded(t, count.About(15000), DensityBand{0, 100})
	mustEnter(t, l, "2026-11-12T08:00:00-05:00", &Temperature{Tank: "C4", Celsius: 28.9})
	mustEnter(t, l, "2026-11-12T08:00:00-05:00", &Temperature{Tank: "C1", Celsius: 29})
	mustEnter(t, l, "2026-11-12T08:10:00-05:00", &Filled{Tank: "C2"})
	var names []string
	c1, _ := l.Tank("C1")
	for _, to := range l.readyFor(c1) {
		names = append(names, to.Tank.Name)
	}
	// C4 is 0.1 apart, C3 and C5 one degree, C2 was filled anew and not read.
	if got := strings.Join(names, " "); got != "C4 C3 C5 C2" {
		t.Errorf("order = %s; want C4 C3 C5 C2", got)
	}
}

// TestReliefsHold draws crowds: what is proposed keeps the limit, by the high limit
// where it says so, and no larva is lost or doubled.
func TestReliefsHold(t *testing.T) {
	d := rand.New(rand.NewPCG(5, 5))
	seen := map[ReliefKind]int{}
	for range 2000 {
		l := crowded(t, count.Estimate{}, DensityBand{0, float64(20 + d.IntN(180))})
		for i := range l.fold.tanks {
			l.fold.tanks[i].Tank.Litres = float64(40 + 20*d.IntN(10))
			if i > 0 && d.IntN(3) == 0 {
				l.fold.tanks[i].State = Dirty
			}
		}
		n := float64(2000 + d.IntN(60000))
		number := count.Between(n, n*(1-0.3*d.Float64()), n*(1+0.3*d.Float64()))
		l.fold.tank("C1").Larvae.Number = number
		for _, c := range l.Crowding(noonOf12) {
			if (c.Certain == MayBeOver) != (len(c.Reliefs) == 0) {
				t.Fatalf("%s with %d reliefs", c.Certain, len(c.Reliefs))
			}
			for _, r := range c.Reliefs {
				seen[r.Kind]++
				checkRelief(t, l, c, r, number)
			}
		}
	}
	for _, kind := range []ReliefKind{MoveWhole, SplitEven, SplitUneven, MovePart, Cull} {
		if seen[kind] < 50 {
			t.Errorf("%s was drawn %d times; the test shows little of it", kind, seen[kind])
		}
	}
}

func checkRelief(t *testing.T, l *Ledger, c Crowd, r Relief, n count.Estimate) {
	t.Helper()
	worst, there := 0.0, 1.0 // the greatest share of the larvae per litre, and what is still in the tank
	for i, name := range r.Into {
		to, _ := l.Tank(name)
		part := there * r.Shares[i]
		there -= part
		worst = max(worst, part/to.Tank.Litres)
		if math.Abs(part*n.Value.X/to.Tank.Litres-r.PerLitre[i]) > 1e-6 || to.State != Ready {
			t.Fatalf("%s: %v of the larvae in %s (%s), said to be %v per litre", r.Text, part, name, to.State, r.PerLitre[i])
		}
	}
	from, _ := l.Tank(c.Tank)
	switch r.Kind {
	case Cull:
		there -= r.Shares[0]
		if want := math.Ceil(n.Value.X - c.Limit*from.Tank.Litres); r.Larvae != want {
			t.Fatalf("%s: culls %v; want %v", r.Text, r.Larvae, want)
		}
	case MovePart:
	default:
		if math.Abs(there) > 1e-9 {
			t.Fatalf("%s: %v stays behind", r.Text, there)
		}
	}
	worst = max(worst, there/from.Tank.Litres)
	if worst*n.Value.X > c.Limit*(1+1e-9) {
		t.Fatalf("%s: %v per litre, over %v", r.Text, worst*n.Value.X, c.Limit)
	}
	if r.Kind != Cull && r.Sure != (worst*n.High.X <= c.Limit*(1+1e-9)) {
		t.Fatalf("%s: sure %v, but up to %v per litre of %v", r.Text, r.Sure, worst*n.High.X, c.Limit)
	}
}

func TestJoinable(t *testing.T) {
	tests := []struct {
		name    string
		numbers map[string]count.Estimate
		facts   []Fact
		want    string
	}{
		{
			"they fit",
			map[string]count.Estimate{"C1": count.About(5000), "C3": count.About(4000)},
			nil,
			"C3 and C1 fit together in C2: 75.0 per litre of 100; one tank is freed",
		},
		{
			"in the large tank only",
			map[string]count.Estimate{"C1": count.About(9000), "C3": count.About(9000)},
			nil,
			"C1 and C3 fit together in C5: 90.0 per litre of 100; one tank is freed",
		},
		{
			"after a cull of under 5 %",
			map[string]count.Estimate{"C1": count.About(10500), "C3": count.About(10000)},
			nil,
			"cull 500, then C3 and C1 fit together in C5: 100.0 per litre of 100; one tank is freed",
		},
		{"the cull would be too large", map[string]count.Estimate{"C1": count.About(11500), "C3": count.About(10000)}, nil, ""},
		{"one was never counted", map[string]count.Estimate{"C1": count.About(50), "C3": {}}, nil, ""},
		{"one is suspect", map[string]count.Estimate{"C1": count.About(50), "C3": count.About(50)}, []Fact{&Suspect{Tank: "C3", On: true}}, ""},
		{"no tank is ready", map[string]count.Estimate{"C1": count.About(50), "C3": count.About(50)}, []Fact{
			&Service{Tank: "C2", Out: true}, &Service{Tank: "C4", Out: true}, &Service{Tank: "C5", Out: true},
		}, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := wideRoom(t, "C1", "C3")
			for _, f := range tt.facts {
				mustEnter(t, l, "2026-11-12T08:00:00-05:00", f)
			}
			for tank, n := range tt.numbers {
				l.fold.tank(tank).Larvae.Number = n
			}
			var lines []string
			for _, p := range l.Joinable(noonOf12) {
				lines = append(lines, p.Text)
			}
			if got := strings.Join(lines, "\n"); got != tt.want {
				t.Errorf("got  %q\nwant %q", got, tt.want)
			}
		})
	}
}

// TestJoinableTakesEachTankOnce: of three sparse tanks two are paired, the sparsest.
func TestJoinableTakesEachTankOnce(t *testing.T) {
	l := wideRoom(t, "C1", "C2", "C3")
	for tank, n := range map[string]float64{"C1": 3000, "C2": 1000, "C3": 2000} {
		l.fold.tank(tank).Larvae.Number = count.Between(n, n*0.9, n*1.1)
	}
	pairs := l.Joinable(noonOf12.Add(time.Hour))
	if len(pairs) != 1 || pairs[0].A != "C2" || pairs[0].B != "C3" || !pairs[0].Sure {
		t.Errorf("pairs = %+v; want C2 with C3, surely", pairs)
	}
}
