package board

import "drainboard/model"

// kind is the way in which the tanks are shown.
type kind int

const (
	oneLine kind = iota // a line that names the next tank
	asList              // a row a tank
	asTiles             // a small frame a tank, words only
	asCones             // a frame a tank with its cone
	asWall              // names and states in large digits
)

// Below listWidth x listHeight only the next tank is named; below tileWidth x
// tileHeight the board is a list. Both are sizes of the whole terminal.
const (
	listWidth, listHeight = 60, 15
	tileWidth, tileHeight = 80, 24
)

// Least and most cells of a tile.
const (
	coneW, coneH         = 20, 6
	coneMostW, coneMostH = 30, 10
	smallW, smallH       = 15, 4
	wallW, wallH         = 15, 7
)

// grid is how many tiles go beside each other and how large each is.
type grid struct {
	kind         kind
	cols, rows   int
	tileW, tileH int
}

// arrange finds the largest way to show n tanks in w x h cells. The terminal's
// own size decides whether tiles are shown at all.
func arrange(w, h, n int, wall, small bool) grid {
	switch {
	case n == 0 || w < 1 || h < 1:
		return grid{kind: asList}
	case small:
		return grid{kind: asList, cols: 1, rows: h, tileW: w, tileH: 1}
	case wall:
		if g, ok := fit(w, h, n, wallW, wallH, 40, 12); ok {
			g.kind = asWall
			return g
		}
	}
	if g, ok := fit(w, h, n, coneW, coneH, coneMostW, coneMostH); ok {
		g.kind = asCones
		return g
	}
	if g, ok := fit(w, h, n, smallW, smallH, 24, 5); ok {
		g.kind = asTiles
		return g
	}
	return grid{kind: asList, cols: 1, rows: h, tileW: w, tileH: 1}
}

// fit lays n tiles out in as few columns, so as wide, as their height allows.
func fit(w, h, n, leastW, leastH, mostW, mostH int) (grid, bool) {
	for cols := max(1, min(n, w/mostW)); cols <= w/leastW; cols++ {
		rows := (n + cols - 1) / cols
		if rows*leastH <= h {
			return grid{cols: cols, rows: rows, tileW: min(w/cols, mostW), tileH: min(h/rows, mostH)}, true
		}
	}
	return grid{}, false
}

// placed returns the tanks by the place where they stand, nil between them, and
// the number of columns; false where the room does not say or the grid of places
// is too large for the screen.
func placed(tanks []model.TankNow, w, h int) ([]*model.TankNow, grid, bool) {
	rows, cols := 0, 0
	for _, t := range tanks {
		if t.Tank.Row < 1 || t.Tank.Column < 1 {
			return nil, grid{}, false
		}
		rows, cols = max(rows, t.Tank.Row), max(cols, t.Tank.Column)
	}
	if rows*cols == 0 || cols > w/smallW || rows > h/smallH {
		return nil, grid{}, false
	}
	places := make([]*model.TankNow, rows*cols)
	for i, t := range tanks {
		at := (t.Tank.Row-1)*cols + t.Tank.Column - 1
		if places[at] != nil {
			return nil, grid{}, false
		}
		places[at] = &tanks[i]
	}
	g := grid{kind: asTiles, cols: cols, rows: rows, tileW: min(w/cols, coneMostW), tileH: min(h/rows, coneMostH)}
	if g.tileW >= coneW && g.tileH >= coneH {
		g.kind = asCones
	}
	return places, g, true
}
