package chart

// plotCells draws what lies behind the points with one character a cell.
func (s Scatter) plotCells(f *frame) {
	s.drawCorridor(f)
	for _, l := range s.Levels {
		s.drawLevel(f, l)
	}
	for _, m := range s.Marks {
		s.drawMark(f, m)
	}
	for _, forecast := range []bool{true, false} {
		for _, c := range s.Curves {
			if c.Forecast == forecast {
				f.drawCurve(c)
			}
		}
	}
	for _, p := range s.Points {
		f.drawError(p)
	}
}

func (s Scatter) drawCorridor(f *frame) {
	for col := range f.cols {
		b, found := s.corridorAt(f.x.at(float64(col), f.cols))
		if !found {
			continue
		}
		for row := max(0, f.row(b.High)); row <= min(f.rows-1, f.row(b.Low)); row++ {
			f.put(col, row, f.corridor, ClassCorridor)
		}
	}
}

func (s Scatter) drawLevel(f *frame, l Level) {
	if !drawable(l.Y) {
		return
	}
	for col := range f.cols {
		if f.mode == ASCII && col%2 == 1 {
			continue // the only ASCII dash is that of curves
		}
		f.put(col, f.row(l.Y), f.level, ClassLevel)
	}
}

func (s Scatter) drawMark(f *frame, m Mark) {
	if !drawable(m.X) {
		return
	}
	for row := range f.rows {
		f.put(f.col(m.X), row, f.mark, ClassMark)
	}
}

// curveRow is the row of a curve in a column, if it is drawn there.
func (f *frame) curveRow(c Curve, col int) (row int, drawn bool) {
	x := f.x.at(float64(col), f.cols)
	half := (f.x.high - f.x.low) / float64(max(f.cols-1, 1)) / 2
	if c.At == nil || x < c.From-half || x > c.To+half {
		return 0, false
	}
	y := c.At(min(max(x, c.From), c.To))
	if !drawable(y) {
		return 0, false
	}
	return f.row(y), true
}

// drawCurve draws a curve as a line of steps, or as dots where it is a forecast.
func (f *frame) drawCurve(c Curve) {
	before, joined := 0, false
	for col := range f.cols {
		row, drawn := f.curveRow(c, col)
		if drawn {
			if !joined {
				before = row
			}
			if c.Forecast {
				f.dotted(col, before, row)
			} else {
				f.stepped(col, before, row)
			}
		}
		before, joined = row, drawn
	}
}

// stepped draws a column of a line that comes in at the row before and leaves at row.
func (f *frame) stepped(col, before, row int) {
	switch {
	case row == before:
		f.put(col, row, f.flat, ClassCurve)
	case row < before:
		f.put(col, before, f.riseFrom, ClassCurve)
		f.put(col, row, f.riseTo, ClassCurve)
	default:
		f.put(col, before, f.fallFrom, ClassCurve)
		f.put(col, row, f.fallTo, ClassCurve)
	}
	for r := max(min(row, before)+1, 0); r < min(max(row, before), f.rows); r++ {
		f.put(col, r, f.steep, ClassCurve)
	}
}

// dotted puts a dot at row, and at the rows jumped over on the way there.
func (f *frame) dotted(col, before, row int) {
	f.put(col, row, f.forecast, ClassForecast)
	for r := max(min(row, before)+1, 0); r < min(max(row, before), f.rows); r++ {
		f.put(col, r, f.forecast, ClassForecast)
	}
}

// drawError draws the error bar of a point.
func (f *frame) drawError(p Point) {
	if !drawable(p.X) || !drawable(p.Y) || !(p.Low < p.High) {
		return
	}
	col, top, bottom := f.col(p.X), f.row(p.High), f.row(p.Low)
	for row := max(top, 0); row <= min(bottom, f.rows-1); row++ {
		glyph := f.bar
		switch {
		case top == bottom:
			continue // within the point's own cell
		case row == top:
			glyph = f.barTop
		case row == bottom:
			glyph = f.barBottom
		case f.at(col, row) == ClassCurve:
			glyph = f.barCross
		}
		f.put(col, row, glyph, ClassError)
	}
}
