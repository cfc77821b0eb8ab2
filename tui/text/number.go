package text

import (
	"math"
	"strconv"
	"strings"
)

// Unknown stands where a figure is not known. It never looks like a value.
const Unknown = "?"

// Whole writes a whole number with a space between thousands: 5 200. The
// space is used because both . and , may be typed as decimal signs.
func Whole(n int) string {
	return grouped(strconv.Itoa(n))
}

// Decimal writes x with the given number of decimals, a point before them and
// a space between thousands: 12 400.5. NaN and the infinities are [Unknown].
func Decimal(x float64, places int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return Unknown
	}
	s := strconv.FormatFloat(x, 'f', max(0, places), 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	whole, part, has := strings.Cut(s, ".")
	if !has {
		return grouped(whole)
	}
	return grouped(whole) + "." + part
}

// grouped puts a space before each third digit from the right.
func grouped(digits string) string {
	sign := ""
	if strings.HasPrefix(digits, "-") {
		sign, digits = "-", digits[1:]
	}
	var b strings.Builder
	b.WriteString(sign)
	for i := range len(digits) {
		if i > 0 && (len(digits)-i)%3 == 0 {
			b.WriteByte(' ')
		}
		b.WriteByte(digits[i])
	}
	return b.String()
}
