package chart

// A Braille cell is two dots wide and four high; its character is U+2800 plus a bit for each dot.
const (
	dotsWide, dotsHigh = 2, 4
	brailleBase        = 0x2800
)

// dotBit is the bit of a dot, by row and column within the cell (Unicode chapter 21.1).
func dotBit(dx, dy int) rune {
	return [dotsHigh][dotsWide]rune{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}[dy][dx]
}

// dots is a plot at the resolution of Braille dots. A cell shows the dots of all its layers but
// those of the corridor, which gives way to any other, and the class of the topmost.
type dots struct {
	*frame
	bits  []rune
	class []Class
}

func newDots(f *frame) *dots {
	return &dots{frame: f, bits: make([]rune, f.cols*f.rows), class: make([]Class, f.cols*f.rows)}
}

func (d *dots) wide() int { return d.cols * dotsWide }
func (d *dots) high() int { return d.rows * dotsHigh }

// dotX and dotY give the dot of a value, from the left and from the top; outside the plot they give
// one beyond its edge.
func (d *dots) dotX(x float64) int { return d.x.dot(x, d.cols, dotsWide) }
func (d *dots) dotY(y float64) int { return d.high() - 1 - d.y.dot(y, d.rows, dotsHigh) }

// valueX is the value in the middle of a column of dots.
func (d *dots) valueX(x int) float64 { return d.x.at((float64(x)+0.5)/dotsWide-0.5, d.cols) }

// dot sets one dot. Layers come in the order of their class, lowest first.
func (d *dots) dot(x, y int, class Class) {
	if x < 0 || y < 0 || x >= d.wide() || y >= d.high() {
		return
	}
	i := y/dotsHigh*d.cols + x/dotsWide
	if d.class[i] == ClassCorridor && class != ClassCorridor {
		d.bits[i] = 0
	}
	d.bits[i] |= dotBit(x%dotsWide, y%dotsHigh)
	d.class[i] = class
}

// flush puts the dots into the grid.
func (d *dots) flush() {
	for i, bits := range d.bits {
		if bits != 0 {
			d.put(i%d.cols, i/d.cols, string(brailleBase+bits), d.class[i])
		}
	}
}

// plotDots draws what lies behind the points in Braille dots.
func (s Scatter) plotDots(f *frame) {
	d := newDots(f)
	s.dotCorridor(d)
	for _, l := range s.Levels {
		if drawable(l.Y) {
			for x := 0; x < d.wide(); x += 2 {
				d.dot(x, d.dotY(l.Y), ClassLevel)
			}
		}
	}
	for _, m := range s.Marks {
		if drawable(m.X) {
			for y := 0; y < d.high(); y += 2 {
				d.dot(d.dotX(m.X), y, ClassMark)
			}
		}
	}
	for _, forecast := range []bool{true, false} {
		for _, c := range s.Curves {
			if c.Forecast == forecast {
				d.curve(c)
			}
		}
	}
	for _, p := range s.Points {
		d.errorBar(p)
	}
	d.flush()
}

// dotCorridor shades with two dots a cell, set off against each other.
func (s Scatter) dotCorridor(d *dots) {
	for x := range d.wide() {
		b, found := s.corridorAt(d.valueX(x))
		if !found {
			continue
		}
		for y := max(0, d.dotY(b.High)); y <= min(d.high()-1, d.dotY(b.Low)); y++ {
			if y%dotsHigh == x%dotsWide*2 {
				d.dot(x, y, ClassCorridor)
			}
		}
	}
}

func (d *dots) curve(c Curve) {
	if c.At == nil {
		return
	}
	class := ClassCurve
	if c.Forecast {
		class = ClassForecast
	}
	before, joined := 0, false
	for x := range d.wide() {
		row, drawn := d.curveDot(c, x)
		if drawn {
			if !joined {
				before = row
			}
			d.upright(x, before, row, class)
		}
		before, joined = row, drawn
	}
}

// curveDot is the row of dots of a curve in a column of dots, if it is drawn there.
func (d *dots) curveDot(c Curve, x int) (row int, drawn bool) {
	at, half := d.valueX(x), (d.x.high-d.x.low)/float64(max(d.wide()-1, 1))/2
	if at < c.From-half || at > c.To+half {
		return 0, false
	}
	y := c.At(min(max(at, c.From), c.To))
	if !drawable(y) {
		return 0, false
	}
	return d.dotY(y), true
}

// upright draws the column of a curve from the row before to row. A forecast shows every other pair
// of columns.
func (d *dots) upright(x, before, row int, class Class) {
	if class == ClassForecast && x%4 >= 2 {
		return
	}
	d.dot(x, row, class)
	for y := max(min(row, before)+1, 0); y < min(max(row, before), d.high()); y++ {
		d.dot(x, y, class)
	}
}

func (d *dots) errorBar(p Point) {
	if !drawable(p.X) || !drawable(p.Y) || !(p.Low < p.High) {
		return
	}
	x := d.dotX(p.X)
	for y := max(0, d.dotY(p.High)); y <= min(d.high()-1, d.dotY(p.Low)); y++ {
		d.dot(x, y, ClassError)
	}
}
