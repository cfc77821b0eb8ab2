package count

// ChangeLevel is the chance, in each tail, below which a change between two
// counts is more than luck: the tails of a 95 % interval.
const ChangeLevel = 0.025

// Tally is a raw count and what it stands for.
type Tally struct {
	Counted int
	Each    float64 // larvae in the whole that one counted larva stands for
	Exact   bool    // all were counted, or the number is known: chance has no part in it
}

func (t Tally) estimate() Estimate {
	if t.Exact {
		return Exactly(float64(t.Counted) * t.Each)
	}
	return pooled(t.Counted, t.Each)
}

func (t Tally) check() error {
	if t.Counted < 0 {
		return wrong("counted", "%d is not a count; give whole numbers of 0 or more", t.Counted)
	}
	return positive("each", t.Each)
}

// Change is what two counts say about each other.
type Change struct {
	Fell, Rose     bool
	PFell          float64 // chance of so few, or fewer, in the later count if only the expected change took place
	PRose          float64 // chance of so many or more
	ExpectedLarvae float64 // larvae the later count should have found
}

// Compare asks whether the later count differs from the earlier one by more
// than chance allows. share is the part of the earlier larvae that should still
// be there: 1, less what was knowingly removed or moved (Kept), less the loss the
// house counts as ordinary, if it does.
//
// Two counts by subsample: the exact conditional test of two Poisson rates
// (Przyborowski & Wilenski 1940, Biometrika 31:313): given the sum of both, the
// later count is binomial. A count of all larvae, or a known number stocked, is
// held against the other by the exact Poisson tail. Both known: no chance at all.
// Each tail is judged at ChangeLevel. A rise is flagged, never refused: larvae
// that cling or settle hide from the earlier count.
//
// The test takes even mixing; after an uneven count, count again instead. It
// refuses negative counts, a scale of 0 or less and a negative share.
func Compare(earlier, later Tally, share float64) (Change, error) {
	if err := firstError(earlier.check(), later.check(), notNegative("share", share)); err != nil {
		return Change{}, err
	}
	fell, rose := tails(earlier, later, share)
	return Change{
		Fell: fell < ChangeLevel, Rose: rose < ChangeLevel,
		PFell: fell, PRose: rose,
		ExpectedLarvae: float64(earlier.Counted) * earlier.Each * share,
	}, nil
}

func tails(earlier, later Tally, share float64) (fell, rose float64) {
	// per is how many of the later count go with one of the earlier.
	per := earlier.Each * share / later.Each
	switch {
	case earlier.Exact && later.Exact:
		return certain(float64(later.Counted), float64(earlier.Counted)*per)
	case earlier.Exact:
		mean := float64(earlier.Counted) * per
		return poissonAtMost(later.Counted, mean), poissonAtLeast(later.Counted, mean)
	case later.Exact:
		return exactLater(earlier.Counted, later.Counted, per)
	}
	n := earlier.Counted + later.Counted
	p, miss := per/(1+per), 1/(1+per)
	return binomialAtMost(later.Counted, n, p, miss), binomialAtMost(earlier.Counted, n, miss, p)
}

// exactLater turns the question round: would so many have been counted earlier?
func exactLater(earlier, later int, per float64) (fell, rose float64) {
	if per == 0 {
		return certain(float64(later), 0)
	}
	mean := float64(later) / per
	return poissonAtLeast(earlier, mean), poissonAtMost(earlier, mean)
}

// certain compares two numbers without chance; less than half a larva is none.
func certain(later, expected float64) (fell, rose float64) {
	fell, rose = 1, 1
	if later < expected-0.5 {
		fell = 0
	}
	if later > expected+0.5 {
		rose = 0
	}
	return fell, rose
}
