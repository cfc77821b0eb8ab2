package count

import "math"

// MostCounted is the largest number one list of counts may add up to. Nobody
// counts that many; a larger number is a slip of the keyboard.
const MostCounted = 1_000_000_000

// Whole returns typed numbers as counts. It refuses, naming field, an empty
// list and whatever is not a whole number of 0 or more.
func Whole(field string, typed []float64) ([]int, error) {
	counts := make([]int, len(typed))
	for i, x := range typed {
		if !(x >= 0 && x <= MostCounted && x == math.Trunc(x)) {
			return nil, wrong(field, "%s is not a count; give whole numbers of 0 or more", plain(x))
		}
		counts[i] = int(x)
	}
	if _, err := sum(field, counts); err != nil {
		return nil, err
	}
	return counts, nil
}

// sum adds counts up and refuses lists no one can have counted.
func sum(field string, counts []int) (int, error) {
	if len(counts) == 0 {
		return 0, wrong(field, "no counts; give at least one")
	}
	total := 0
	for _, c := range counts {
		if c < 0 {
			return 0, wrong(field, "%d is not a count; give whole numbers of 0 or more", c)
		}
		if c > MostCounted-total {
			return 0, wrong(field, "more than %d in all is not a count; look at the numbers typed", MostCounted)
		}
		total += c
	}
	return total, nil
}
