package growth

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestPoolDays(t *testing.T) {
	looks := []Look{{4.1, 110, 5, 10}, {2.2, 100, 4, 10}, {2.4, 104, 6, 30}, {4.7, 120, 5, 10}}
	got := must(Pool(looks))
	if len(got) != 3 || got[0].N != 40 || got[1].N != 10 || got[2].AgeDays != 4.7 {
		t.Fatalf("got %+v, want days 2 (40 readings), 4.1 and 4.7", got)
	}
	near(t, "mean", got[0].MeanUM, 103, 1e-12)
	near(t, "age", got[0].AgeDays, 2.35, 1e-12)
}

func TestPoolRefuses(t *testing.T) {
	_, err := Pool([]Look{{2, 100, 4, 10}, {4, math.Inf(1), 4, 10}})
	refuses(t, err, "day 4")
}

// Pooling summaries gives what the readings themselves give, put in one heap.
func TestPoolIsOneSample(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tanks := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) []float64 { return drawLengths(t, 2, 30) }), 1, 5).Draw(t, "tanks")
		var looks []Look
		for _, um := range tanks {
			looks = append(looks, must(Summarize(um)).Look(6))
		}
		got := must(Pool(looks))
		want := must(Summarize(slices.Concat(tanks...))).Look(6)
		if len(got) != 1 || got[0].N != want.N ||
			math.Abs(got[0].MeanUM-want.MeanUM) > 1e-6 || math.Abs(got[0].SDUM-want.SDUM) > 1e-6 {
			t.Fatalf("got %+v, want %+v", got, want)
		}
	})
}

// drawLooks draws looks of at least the given number of days.
func drawLooks(t *rapid.T, leastDays int) []Look {
	days := rapid.SliceOfNDistinct(rapid.IntRange(0, 40), leastDays, 12, rapid.ID[int]).Draw(t, "days")
	var looks []Look
	for _, day := range days {
		for range rapid.IntRange(1, 3).Draw(t, "tanks") {
			looks = append(looks, Look{
				AgeDays: float64(day) + rapid.Float64Range(0, 0.4).Draw(t, "hour"),
				MeanUM:  rapid.Float64Range(80, 1200).Draw(t, "mean"),
				SDUM:    rapid.SampledFrom([]float64{0, 1, 10, 100}).Draw(t, "sd"),
				N:       rapid.IntRange(1, 60).Draw(t, "n"),
			})
		}
	}
	return looks
}

func TestPoolKeepsReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		looks := drawLooks(t, 1)
		pooled := must(Pool(looks))
		count := func(looks []Look) (n int) {
			for _, l := range looks {
				n += l.N
			}
			return n
		}
		if count(looks) != count(pooled) {
			t.Fatalf("%d readings became %d", count(looks), count(pooled))
		}
		if !slices.IsSortedFunc(pooled, func(a, b Look) int { return cmp.Compare(a.AgeDays, b.AgeDays) }) {
			t.Fatalf("out of order: %+v", pooled)
		}
	})
}
