package growth

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// Intervals by R 4.2.2 binom.test.
func TestSieve(t *testing.T) {
	tests := []struct {
		name         string
		um           []float64
		mesh, factor float64
		held         int
		low, high    float64
	}{
		{"all held", bayScallopDay2, 36, 1, 25, 0.862814828469, 1},
		{"one lost: the 90.43", bayScallopDay2, 91, 1, 24, 0.796483086078, 0.998987800301},
		{"none held", bayScallopDay2, 150, 1, 0, 0, 0.137185171531},
		{"a length equal to the opening passes", []float64{100, 100, 101}, 100, 1, 1, 0.00840375865961, 0.905700675979},
		{"a long shell passes end first: factor 1.4", bayScallopDay2, 65, 1.4, 24, 0.796483086078, 0.998987800301},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := must(Sieve(tt.um, tt.mesh, tt.factor))
			if h.Held != tt.held || h.Of != len(tt.um) {
				t.Fatalf("held %d of %d, want %d", h.Held, h.Of, tt.held)
			}
			near(t, "share", h.Share, float64(tt.held)/float64(len(tt.um)), 1e-12)
			near(t, "lost", h.Lost(), 1-h.Share, 1e-12)
			nearInterval(t, "share", h.Interval, tt.low, tt.high, 1e-9)
			nearInterval(t, "lost", h.LostInterval(), 1-tt.high, 1-tt.low, 1e-9)
		})
	}
}

// R 4.2.2: binom.test(3, 50).
func TestBinomial(t *testing.T) {
	nearInterval(t, "3 of 50", binomial(3, 50), 0.0125485878353, 0.1654819466038, 1e-10)
}

// By its definition each end of the interval leaves 2.5 % in the tail beyond the count.
func TestBinomialIsTheDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 300).Draw(t, "n")
		k := rapid.IntRange(0, n).Draw(t, "k")
		i := binomial(k, n)
		if k > 0 {
			tail := 1 - distuv.Binomial{N: float64(n), P: i.Low}.CDF(float64(k-1))
			if math.Abs(tail-0.025) > 1e-8 {
				t.Fatalf("P(X >= %d of %d | %g) = %g", k, n, i.Low, tail)
			}
		}
		if k < n {
			tail := distuv.Binomial{N: float64(n), P: i.High}.CDF(float64(k))
			if math.Abs(tail-0.025) > 1e-8 {
				t.Fatalf("P(X <= %d of %d | %g) = %g", k, n, i.High, tail)
			}
		}
	})
}

// The sieves on which a hatchery kept a real batch held its mean, its 5th percentile and its smallest
// larva on every day, with the rule length > mesh and with length > 1.35 mesh.
func TestSieveMeshRecord(t *testing.T) {
	for _, r := range meshRecord {
		for _, factor := range []float64{1, 1.35} {
			h := must(Sieve([]float64{r.mean, r.p05, r.smallest}, r.mesh, factor))
			if h.Held != 3 {
				t.Errorf("day %g: %g um at factor %g holds %d of 3", r.day, r.mesh, factor, h.Held)
			}
		}
	}
	// Days 6 to 12 on 75 um: the smallest larva stayed near the diagonal of a square opening, 1.41.
	for _, r := range meshRecord[2:6] {
		if ratio := r.smallest / r.mesh; ratio < 1.35 || ratio > 1.46 {
			t.Errorf("day %g: smallest / mesh = %.2f, want 1.35 to 1.46", r.day, ratio)
		}
	}
	// The 42.0 um of day 4 could not have stayed on that day's sieve: a slip, as Odd says too.
	if h := must(Sieve([]float64{42}, 54, 1)); h.Held != 0 {
		t.Error("42 um held on 54 um")
	}
}

func TestSieveRefuses(t *testing.T) {
	_, err := Sieve(nil, 100, 1)
	refuses(t, err, "no readings")
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := Sieve([]float64{300}, bad, 1)
		refuses(t, err, "mesh")
		_, err = Sieve([]float64{300}, 100, bad)
		refuses(t, err, "factor")
	}
	_, err = Sieves([]float64{300}, []float64{100, -5}, 1)
	refuses(t, err, "mesh -5")
}

func TestSievesProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		um := drawLengths(t, 1, 40)
		meshes := rapid.SliceOfN(rapid.Float64Range(20, 600), 1, 8).Draw(t, "meshes")
		mostLost := rapid.Float64Range(0, 1).Draw(t, "most lost")
		all := must(Sieves(um, meshes, 1))
		for i := 1; i < len(all); i++ {
			if all[i].MeshUM <= all[i-1].MeshUM || all[i].Held > all[i-1].Held {
				t.Fatalf("a coarser sieve holds more: %+v, %+v", all[i-1], all[i])
			}
		}
		best, found := Coarsest(all, mostLost)
		for _, h := range all {
			lost := 0
			for _, x := range um {
				if x <= h.MeshUM {
					lost++
				}
			}
			small := float64(lost) <= mostLost*float64(len(um))
			if small && (!found || h.MeshUM > best.MeshUM) {
				t.Fatalf("%g um loses %d of %d, and the coarsest is %+v", h.MeshUM, lost, len(um), best)
			}
			if found && h.MeshUM == best.MeshUM && !h.within(mostLost) {
				t.Fatalf("%+v loses more than %g", best, mostLost)
			}
		}
	})
}

// tens is a sample of 20 lengths, um, evenly from low in steps of 10.
func tens(low float64) []float64 {
	um := make([]float64, 20)
	for i := range um {
		um[i] = low + 10*float64(i)
	}
	return um
}

func TestAdvise(t *testing.T) {
	room := []float64{105, 150, 200, 250, 300}
	tests := []struct {
		name    string
		um      []float64
		age     []float64
		verdict Verdict
		use     float64
		words   string
	}{
		{"as the age says", tens(205), []float64{200, 250}, MeshAgrees, 200, "200 um would lose none of 20 read (surely under 17 %)"},
		{"readings behind the age", tens(151), []float64{200, 250}, MeshFiner, 150, "the age asks for 200 or 250 um, the readings for 150 um: 200 um would lose 5 of 20 read, 25 % (9 to 49 %)"},
		{"readings ahead of the age", tens(320), []float64{200, 250}, MeshCoarser, 200, "200 um would lose none of 20 read (surely under 17 %); the readings would allow 300 um"},
		{"the second of the age's meshes will do", tens(205), []float64{250, 200}, MeshAgrees, 200, "use 200 um, not 250 um, which would lose 5 of 20 read, 25 % (9 to 49 %)"},
		{"one of 20 lost is the limit", tens(200), []float64{200}, MeshAgrees, 200, "200 um would lose 1 of 20 read, 5 % (0 to 25 %)"},
		{"nothing holds them", tens(60), []float64{105}, MeshNone, 105, "no sieve holds enough: the finest, 105 um, would lose 5 of 20 read, 25 % (9 to 49 %)"},
		{"the age's mesh is none of the room's", tens(205), []float64{180}, MeshCoarser, 180, "180 um would lose none of 20 read (surely under 17 %); the readings would allow 200 um"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			a := must(Advise(tt.um, room, tt.age, 1, 0.05))
			if a.Verdict != tt.verdict || a.Use.MeshUM != tt.use || a.Words != tt.words {
				t.Errorf("got %v, %g um, %q", a.Verdict, a.Use.MeshUM, a.Words)
			}
			if !slices.IsSortedFunc(a.Sieves, func(a, b Held) int { return int(a.MeshUM - b.MeshUM) }) {
				t.Errorf("sieves out of order: %+v", a.Sieves)
			}
		})
	}
}

func TestAdviseRefuses(t *testing.T) {
	_, err := Advise(tens(200), nil, nil, 1, 0.05)
	refuses(t, err, "no mesh for this age")
	_, err = Advise(nil, nil, []float64{200}, 1, 0.05)
	refuses(t, err, "no readings")
	for _, share := range []float64{-0.1, 1, math.NaN()} {
		_, err = Advise(tens(200), nil, []float64{200}, 1, share)
		refuses(t, err, "share that may be lost")
	}
}

func TestVerdictWords(t *testing.T) {
	for v := MeshAgrees; v <= MeshNone; v++ {
		if strings.TrimSpace(v.String()) == "" {
			t.Errorf("verdict %d has no words", v)
		}
	}
}
