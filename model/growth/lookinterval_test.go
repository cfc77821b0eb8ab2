package growth

import "testing"

// A look has the interval of its sample; that of Michelson's speeds is published
// data (NIST StRD), its t interval printed by R 4.2.2: t.test.
func TestLookMeanInterval(t *testing.T) {
	for name, um := range map[string][]float64{"bay scallop, day 2": bayScallopDay2, "Michelson": michelsonSpeed} {
		t.Run(name, func(t *testing.T) {
			s := must(Summarize(um))
			got, known := s.Look(2).MeanInterval()
			if !known {
				t.Fatal("not known")
			}
			nearInterval(t, "interval", got, s.MeanInterval.Low, s.MeanInterval.High, 1e-12)
		})
	}
}

// From the published mean 100.096, sd 5.25 and n 25, by hand with t(24) = 2.0639:
// 100.096 +- 2.167.
func TestLookMeanIntervalByHand(t *testing.T) {
	got, known := Look{AgeDays: 2, MeanUM: 100.096, SDUM: 5.25, N: 25}.MeanInterval()
	if !known {
		t.Fatal("not known")
	}
	nearInterval(t, "interval", got, 97.929, 102.263, 1e-5)
}

func TestLookMeanIntervalUnknown(t *testing.T) {
	for name, l := range map[string]Look{
		"one reading":       {2, 100, 0, 1},
		"no known spread":   {2, 100, 0, 12},
		"not a look at all": {2, -1, 5, 12},
	} {
		t.Run(name, func(t *testing.T) {
			if got, known := l.MeanInterval(); known {
				t.Errorf("got %+v, want unknown", got)
			}
		})
	}
}
