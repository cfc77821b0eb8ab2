package feed

// none marks a tank that no alga holds back.
const none = -1

// fairParts returns the part of its ration, 0 to 1, that each tank gets when
// want[tank][alga] litres are asked of have[alga], and the alga that held it back.
//
// The rule is max-min fairness on the part of the ration: all parts rise together
// until a culture runs out; every tank that needs that culture stops there, its
// diet kept in its proportions, and the others rise on. So all tanks held back by
// one alga get the same part, no tank can get more without taking from one that
// has as little or less, and what stopped tanks leave of other cultures goes to
// the rest (progressive filling; Bertsekas & Gallager 1992, Data Networks, 6.5).
func fairParts(want [][]float64, have []float64) (parts []float64, heldBy []int) {
	parts, heldBy = make([]float64, len(want)), make([]int, len(want))
	rising := make([]bool, len(want))
	for tank := range want {
		rising[tank], heldBy[tank] = true, none
	}
	left := append([]float64(nil), have...)
	for {
		alga, part := nextShort(want, left, rising)
		if alga == none {
			break
		}
		for tank := range want {
			if rising[tank] && want[tank][alga] > 0 {
				parts[tank], heldBy[tank], rising[tank] = part, alga, false
				take(left, want[tank], part)
			}
		}
	}
	for tank := range want {
		if rising[tank] {
			parts[tank] = 1
		}
	}
	return parts, heldBy
}

// nextShort returns the culture that runs out first and the part all rising tanks
// have by then; none where all of them can have their whole ration.
func nextShort(want [][]float64, left []float64, rising []bool) (alga int, part float64) {
	alga, part = none, 1
	for a := range left {
		asked := 0.0
		for tank := range want {
			if rising[tank] {
				asked += want[tank][a]
			}
		}
		if asked > 0 && left[a] < asked*part {
			alga, part = a, left[a]/asked
		}
	}
	return alga, part
}

// take lowers what is left by a part of one tank's ration.
func take(left, want []float64, part float64) {
	for a := range left {
		left[a] = max(0, left[a]-want[a]*part)
	}
}
