package count

import "math"

// Figure is a number that may not be known. The zero Figure is unknown, so a
// figure nobody set never passes for a zero.
type Figure struct {
	X     float64 // 0 where the figure is not known
	Known bool
}

// Known returns x as a figure; what is not a finite number is unknown.
func Known(x float64) Figure {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return Figure{}
	}
	return Figure{X: x, Known: true}
}

// Estimate is an amount of 0 or more with the limits it lies between, in
// whatever unit the caller counts in. Any of the three may be unknown: a number
// told by someone has a value and no limits. Where all are known, Low <= Value
// <= High. The limits are those of a 95 % interval unless the caller says
// otherwise, and the operations keep that meaning as nearly as each one states.
type Estimate struct {
	Value, Low, High Figure
}

// Between returns an estimate with its limits.
func Between(value, low, high float64) Estimate {
	return Estimate{Known(value), Known(low), Known(high)}
}

// Exactly returns a figure that is known without error.
func Exactly(x float64) Estimate { return Between(x, x, x) }

// About returns a figure whose limits nobody knows.
func About(x float64) Estimate { return Estimate{Value: Known(x)} }

// Scale returns the estimate times factor: a change of unit, or the share of
// larvae that went to another tank. The limits are scaled alike, which takes
// the share as exact and leaves out the chance in which larva goes where. It
// refuses a factor that is not a finite number of 0 or more.
func (e Estimate) Scale(factor float64) (Estimate, error) {
	if err := notNegative("share", factor); err != nil {
		return Estimate{}, err
	}
	return e.times(factor), nil
}

func (e Estimate) times(factor float64) Estimate {
	scale := func(f Figure) Figure { return of(func(x ...float64) float64 { return x[0] * factor }, f) }
	return Estimate{scale(e.Value), scale(e.Low), scale(e.High)}
}

// Plus returns the sum of two estimates made independently. The half-widths
// below the values are combined in quadrature, and those above likewise (Zou &
// Donner 2008, Stat. Med. 27:1693, from memory): close to 95 %, and narrower than adding
// the limits.
func (e Estimate) Plus(o Estimate) Estimate {
	return Estimate{
		of(func(x ...float64) float64 { return x[0] + x[1] }, e.Value, o.Value),
		of(below(+1), e.Value, o.Value, e.Low, o.Low),
		of(above(+1), e.Value, o.Value, e.High, o.High),
	}
}

// Minus returns the estimate less what was removed. A removal that was counted
// one by one is Exactly and shifts the limits; one with limits of its own widens
// them in quadrature as Plus does. Nothing falls below 0: where more was removed
// than was thought to be there, the result is 0 and the caller ought to say so.
func (e Estimate) Minus(removed Estimate) Estimate {
	return Estimate{
		of(func(x ...float64) float64 { return max(0, x[0]-x[1]) }, e.Value, removed.Value),
		of(below(-1), e.Value, removed.Value, e.Low, removed.High),
		of(above(-1), e.Value, removed.Value, e.High, removed.Low),
	}
}

// below is the low limit of a + sign*b from both values and the limits that pull it down.
func below(sign float64) func(...float64) float64 {
	return func(x ...float64) float64 {
		return max(0, x[0]+sign*x[1]-math.Hypot(x[0]-x[2], x[1]-x[3]))
	}
}

// above is the high limit of a + sign*b from both values and the limits that push it up.
func above(sign float64) func(...float64) float64 {
	return func(x ...float64) float64 {
		return max(0, x[0]+sign*x[1]+math.Hypot(x[0]-x[2], x[1]-x[3]))
	}
}

// Over returns the ratio of two estimates made independently, such as larvae
// now over larvae at the start. Its limits are the ratios R at which e - R*o,
// with the half-widths in quadrature, just touches 0: the ratio form of the rule
// of Plus (Donner & Zou 2012, Stat. Methods Med. Res. 21:347; Newcombe 2016,
// same journal 25:1774; from memory). A ratio to 0 is unknown, and so is its
// high limit where o may be 0.
func (e Estimate) Over(o Estimate) Estimate {
	return Estimate{
		of(func(x ...float64) float64 { return x[0] / x[1] }, e.Value, o.Value),
		of(lowRatio, e.Value, o.Value, e.Low, o.High),
		of(highRatio, e.Value, o.Value, e.High, o.Low),
	}
}

// lowRatio solves (a-Rb)^2 = (a-low)^2 + R^2 (high-b)^2 for its lesser R.
func lowRatio(x ...float64) float64 {
	a, b, low, high := x[0], x[1], x[2], x[3]
	if a == 0 && b > 0 {
		return 0
	}
	down, up := (a-low)/a, (high-b)/b
	return a / b * (1 - down*down) / (1 + math.Sqrt(quadrature(down, up)))
}

// highRatio solves (a-Rb)^2 = (high-a)^2 + R^2 (b-low)^2 for its greater R.
func highRatio(x ...float64) float64 {
	a, b, high, low := x[0], x[1], x[2], x[3]
	down := (b - low) / b
	if a == 0 {
		return high / (b * math.Sqrt(1-down*down))
	}
	up := (high - a) / a
	return a / b * (1 + math.Sqrt(quadrature(up, down))) / (1 - down*down)
}

// quadrature is p^2 + q^2 - p^2 q^2 of two relative half-widths, one at most 1.
func quadrature(p, q float64) float64 { return p*p + q*q - p*p*q*q }

// of works out f where every figure it needs is known.
func of(f func(...float64) float64, figures ...Figure) Figure {
	x := make([]float64, len(figures))
	for i, figure := range figures {
		if !figure.Known {
			return Figure{}
		}
		x[i] = figure.X
	}
	return Known(f(x...))
}
