package session

import "drainboard/tui/text"

// block is lines of a frame that stand or go together.
type block struct {
	lines []string
	rank  int      // the highest goes first where there is no room; 0 never goes
	short []string // what stands in its place when it goes
	more  []string // what stands in its place where there is room
	air   bool     // a blank row before it where there is room
	cut   bool     // its last lines go, all but one, where all else is not enough
	foot  bool     // it stands at the foot of the frame, what is blank above it
}

// stack sets blocks beneath each other in exactly h rows of w cells. Where they do
// not fit, those of the highest rank go, the last of them first.
func stack(blocks []block, w, h int) []string {
	for height(blocks) > h && giveWay(blocks) {
	}
	shorten(blocks, height(blocks)-h)
	spread(blocks, h-height(blocks))
	var top, foot []string
	for _, b := range blocks {
		if b.foot {
			foot = append(foot, b.lines...)
			continue
		}
		top = append(top, b.lines...)
	}
	for len(top)+len(foot) < h {
		top = append(top, "")
	}
	return text.Frame(append(top, foot...), w, h)
}

// shorten takes n rows from the ends of blocks that may be cut, the last of them
// first.
func shorten(blocks []block, n int) {
	for i := len(blocks) - 1; i >= 0 && n > 0; i-- {
		b := &blocks[i]
		if !b.cut || len(b.lines) < 2 {
			continue
		}
		gone := min(n, len(b.lines)-1)
		b.lines = b.lines[:len(b.lines)-gone]
		last := len(b.lines) - 1
		b.lines = append(b.lines[:last:last], text.Ellipsis+" "+b.lines[last])
		n -= gone
	}
}

// spread uses rows to spare: for the longer forms first, then for air.
func spread(blocks []block, spare int) {
	for i, b := range blocks {
		if n := len(b.more) - len(b.lines); n > 0 && n <= spare && len(b.lines) > 0 {
			blocks[i].lines = b.more
			spare -= n
		}
	}
	for i, b := range blocks {
		if b.air && len(b.lines) > 0 && spare > 0 {
			blocks[i].lines = append([]string{""}, blocks[i].lines...)
			spare--
		}
	}
}

func height(blocks []block) int {
	n := 0
	for _, b := range blocks {
		n += len(b.lines)
	}
	return n
}

// giveWay takes the last block of the highest rank out, or puts its shorter form
// in its place; false where none can go.
func giveWay(blocks []block) bool {
	worst := -1
	for i, b := range blocks {
		if b.rank > 0 && len(b.lines) > 0 && (worst < 0 || b.rank >= blocks[worst].rank) {
			worst = i
		}
	}
	if worst < 0 {
		return false
	}
	b := &blocks[worst]
	if len(b.short) < len(b.lines) {
		b.lines, b.short = b.short, nil
	} else {
		b.lines, b.short = nil, nil
	}
	return true
}

// large writes words three rows high in as many rows as they need at w cells, the
// rows of letters one blank row apart; nil where a character is not to be had
// large or a word is too long.
func large(s string, w int, ascii bool) []string {
	var rows []string
	line := ""
	flush := func() bool {
		big, ok := text.Big(line, ascii)
		if !ok {
			return false
		}
		if len(rows) > 0 {
			rows = append(rows, "")
		}
		rows = append(rows, big[:]...)
		return true
	}
	for _, word := range wordsForLarge(s) {
		next := word
		if line != "" {
			next = line + " " + word
		}
		n := text.BigWidth(next)
		if n == 0 {
			return nil
		}
		if n <= w {
			line = next
			continue
		}
		if line == "" || text.BigWidth(word) > w || !flush() {
			return nil
		}
		line = word
	}
	if line == "" || !flush() {
		return nil
	}
	return rows
}
