package growth

import "math"

// MeanInterval is the interval of the look's mean, um, by Student's t, as Sample has it. Of several
// tanks pooled it takes their readings as one sample. Known with two readings or more and a
// standard deviation.
func (l Look) MeanInterval() (interval Interval, known bool) {
	if l.N < 2 || l.SDUM == 0 || l.check() != nil {
		return Interval{}, false
	}
	n := float64(l.N)
	return around(l.MeanUM, student(n-1)*l.SDUM/math.Sqrt(n)), true
}
