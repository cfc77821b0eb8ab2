package chart

import "github.com/charmbracelet/x/ansi"

// place is where a name may stand: column and row of the plot.
type place struct{ col, row int }

// atEnd is the column that puts a name against the right end of the plot.
const atEnd = -1 << 20

// nameIn writes a name at the first of the places where it covers nothing but background and its
// own line; where there is none, it is left out.
func (f *frame) nameIn(places []place, name string, class Class) {
	w := ansi.StringWidth(name)
	if w == 0 {
		return
	}
	for _, p := range places {
		if p.col == atEnd {
			p.col = f.cols - w - 1
		}
		if f.free(p, w, class) {
			f.grid.write(f.left+p.col, f.top+p.row, f.left+p.col+w, name, class)
			return
		}
	}
}

func (f *frame) free(p place, w int, own Class) bool {
	if p.col < 0 || p.row < 0 || p.col+w > f.cols || p.row >= f.rows {
		return false
	}
	for c := p.col; c < p.col+w; c++ {
		switch f.at(c, p.row) {
		case ClassBlank, ClassCorridor:
		case own:
			if own == ClassMark {
				return false // the line of another mark
			}
		default:
			return false
		}
	}
	return true
}

// nameLevels writes the name of each level into its line.
func (s Scatter) nameLevels(f *frame) {
	for _, l := range s.Levels {
		if name := label(l.Name, f.mode); drawable(l.Y) && name != "" {
			row := f.row(l.Y)
			f.nameIn([]place{{1, row}, {atEnd, row}}, " "+name+" ", ClassLevel)
		}
	}
}

// nameMarks writes the name of each mark beside its line, as high as there is room.
func (s Scatter) nameMarks(f *frame) {
	for _, m := range s.Marks {
		name := label(m.Name, f.mode)
		if !drawable(m.X) || name == "" {
			continue
		}
		col, w := f.col(m.X), ansi.StringWidth(name)
		var places []place
		for row := range f.rows {
			places = append(places, place{col + 1, row}, place{col - w, row})
		}
		f.nameIn(places, name, ClassMark)
	}
}

// drawMarkFeet draws the interval of each mark on the axis, and the foot of its line.
func (s Scatter) drawMarkFeet(f *frame) {
	if f.axisRow < 0 {
		return
	}
	for _, m := range s.Marks {
		if !drawable(m.X) {
			continue
		}
		if m.Low < m.High {
			for col := max(0, f.col(m.Low)); col <= min(f.cols-1, f.col(m.High)); col++ {
				f.grid.set(f.left+col, f.axisRow, f.interval, ClassMark)
			}
		}
		if col := f.col(m.X); col >= 0 && col < f.cols {
			f.grid.set(f.left+col, f.axisRow, f.foot, ClassMark)
		}
	}
}
