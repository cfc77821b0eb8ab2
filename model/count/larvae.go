package count

import "math"

// Sample is what was counted of the larvae standing in one holding volume.
type Sample struct {
	Live      []int   // live larvae, one number per subsample
	Dead      []int   // empty shells, one number per subsample; none where not counted
	SampleML  float64 // mL of one subsample
	HoldingML float64 // mL the subsamples were taken from
}

// Larvae is the number of live larvae in a holding volume.
type Larvae struct {
	Total  Estimate // larvae in the holding volume, exact Poisson limits (Garwood)
	PerML  Estimate // larvae per mL of the holding volume
	Mixing Mixing
	Trend  Trend
	Tally  Tally // the raw count, for Compare

	Subsamples int
	Counted    int // live larvae seen in all subsamples
	// DeadPercent is dead / (live + dead), exact binomial limits; unknown where
	// the dead were not counted or nothing at all was seen.
	DeadPercent Estimate
	// HalfWidthPercent is half the 95 % interval in per cent of the total;
	// unknown where none were seen.
	HalfWidthPercent Figure
	// Whole is set where the one subsample was all the water there was: then the
	// total is the number counted and chance has no part in it.
	Whole bool
}

// Total works out the larvae in a holding volume:
//
//	mean count / subsample mL * holding mL
//
// The raw counts are pooled before their limits are taken and scaled after. A
// count of none gives 0 with a high limit. Dead larvae never enter the total.
// The limits hold for well mixed water and subsamples that are a small part of
// it (where they are a large part, the limits are wider than they need be).
//
// It refuses empty or negative counts, dead counted for another number of
// subsamples than live, volumes of 0 or less, and a subsample larger than the
// volume it came from.
func Total(s Sample) (Larvae, error) {
	counted, err := sum("live", s.Live)
	if err := firstError(err, s.checkVolumes(), s.checkDead()); err != nil {
		return Larvae{}, err
	}
	tally := s.tally(counted)
	total := tally.estimate()
	result := Larvae{
		Total:       total,
		PerML:       total.times(1 / s.HoldingML),
		Mixing:      dispersion(s.Live, counted),
		Trend:       trend(s.Live, counted),
		Tally:       tally,
		Subsamples:  len(s.Live),
		Counted:     counted,
		DeadPercent: s.deadPercent(counted),
		Whole:       tally.Exact,
	}
	if counted > 0 {
		result.HalfWidthPercent = Known(100 * (total.High.X - total.Low.X) / 2 / total.Value.X)
	}
	return result, nil
}

func (s Sample) checkVolumes() error {
	if err := firstError(positive("sample_ml", s.SampleML), positive("holding_ml", s.HoldingML)); err != nil {
		return err
	}
	if s.SampleML > s.HoldingML {
		return wrong("sample_ml", "%s mL is more than the %s mL it was taken from; look at both",
			plain(s.SampleML), plain(s.HoldingML))
	}
	return nil
}

func (s Sample) checkDead() error {
	if len(s.Dead) == 0 {
		return nil
	}
	if len(s.Dead) != len(s.Live) {
		return wrong("dead", "%d numbers for %d subsamples; give one for each, 0 where none", len(s.Dead), len(s.Live))
	}
	_, err := sum("dead", s.Dead)
	return err
}

func (s Sample) tally(counted int) Tally {
	n := float64(len(s.Live))
	whole := len(s.Live) == 1 && s.SampleML == s.HoldingML
	return Tally{Counted: counted, Each: s.HoldingML / s.SampleML / n, Exact: whole}
}

func (s Sample) deadPercent(live int) Estimate {
	if len(s.Dead) == 0 {
		return Estimate{}
	}
	dead := 0
	for _, d := range s.Dead {
		dead += d
	}
	return clopperPearson(dead, live+dead).times(100)
}

// PerLitre returns larvae per litre of the tank they stand in. It refuses a
// volume of 0 or less.
func PerLitre(larvae Estimate, tankLitres float64) (Estimate, error) {
	if err := positive("tank_litres", tankLitres); err != nil {
		return Estimate{}, err
	}
	return larvae.times(1 / tankLitres), nil
}

// MLToTake returns the mL of the holding volume that hold the larvae wanted, as
// when a known number goes into a tank. It refuses a number below 0, and a
// density that is unknown or 0.
func MLToTake(larvae float64, perML Estimate) (Estimate, error) {
	if err := notNegative("larvae", larvae); err != nil {
		return Estimate{}, err
	}
	if !perML.Value.Known || perML.Value.X <= 0 {
		return Estimate{}, wrong("per_ml", "no larvae per mL known; count the holding volume first")
	}
	return Exactly(larvae).Over(perML), nil
}

// MoreSubsamples returns how many further subsamples of the same volume bring
// half the 95 % interval down to percent of the total, if they go on like those
// counted; 0 where they do already. It cannot say where none were seen.
// The rule of thumb is 196/sqrt(larvae counted) per cent; this uses the exact
// interval, which asks a little more of small counts.
func MoreSubsamples(live []int, percent float64) (int, error) {
	counted, err := sum("live", live)
	if err != nil {
		return 0, err
	}
	if !(percent >= 0.1 && percent <= 100) {
		return 0, wrong("percent", "%s is out of reach; give a half-width between 0.1 and 100", plain(percent))
	}
	if counted == 0 {
		return 0, wrong("live", "none seen, so no number of subsamples is known; take larger ones")
	}
	n := float64(len(live))
	want := math.Ceil(float64(countFor(percent))*n/float64(counted)) - n
	return int(max(0, want)), nil
}

// countFor is the least number to count for a half-width of percent or less.
func countFor(percent float64) int {
	enough := 1
	for halfWidthPercent(enough) > percent {
		enough *= 2
	}
	tooFew := enough / 2
	for enough-tooFew > 1 {
		middle := (tooFew + enough) / 2
		if halfWidthPercent(middle) > percent {
			tooFew = middle
		} else {
			enough = middle
		}
	}
	return enough
}
