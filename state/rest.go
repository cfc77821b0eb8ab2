package state

import (
	"fmt"
	"strconv"
	"strings"
)

// rest is what follows the last good entry of a journal and is none itself.
type rest struct {
	file   string   // journal file in which it begins
	from   int      // byte offset there
	end    int      // byte offset behind the last good entry, in front of blank lines
	line   int      // line there
	n      int      // the number expected there
	later  []string // journal files behind that one
	torn   bool     // one unfinished entry at the very end: a write that was cut off
	middle bool     // a good entry follows, so this is no tail
	text   string   // what is wrong
}

// restOf judges what stands behind the cursor, in its file and in later ones. A
// later entry counts as good where its sum follows from a sum that stands or
// should stand before it.
func (j *journal) restOf(text string, later []*chapter) *rest {
	first, _ := nextPiece(text, j.at.end, j.at.line)
	pieces := allPieces(text, first.from, first.line)
	r := &rest{
		file: j.at.file, from: first.from, end: j.at.end, line: first.line, n: j.at.n + 1,
		text: wrongWith(first, j.at.n+1),
	}
	for _, c := range later {
		r.later = append(r.later, c.from.file)
		pieces = append(pieces, allPieces(c.text, 0, 1)...)
	}
	r.torn = len(pieces) == 1 && unfinished(first)
	r.middle = goodFollows(j.at.sum, pieces)
	return r
}

// mostUnfinished bounds what one write that was cut off can leave, in bytes.
const mostUnfinished = 64 << 10

// unfinished reports whether a piece can be what is left of a write that was cut
// off: the beginning of an entry, and behind it noughts where the file grew and
// was not filled. A file that was changed as a whole, say in its line ends or by
// a failing device, must not pass for one.
func unfinished(p piece) bool {
	begun := strings.TrimRight(p.text, "\x00")
	if p.sum != "" || len(p.text) > mostUnfinished {
		return false
	}
	if !strings.HasPrefix(begun, entryHead) && !strings.HasPrefix(entryHead, begun) {
		return false
	}
	rows := strings.Split(begun, "\n")
	if begun != p.text {
		rows = rows[:len(rows)-1]
	}
	for _, row := range rows {
		if len(row) > len(sumHead)+sumDigits && isSumLine(row[:len(sumHead)+sumDigits+1]) {
			return false
		}
	}
	return true
}

func allPieces(text string, from, line int) []piece {
	var pieces []piece
	for {
		p, more := nextPiece(text, from, line)
		if !more {
			return pieces
		}
		pieces = append(pieces, p)
		from, line = p.end, p.line+strings.Count(text[p.from:p.end], "\n")
	}
}

// goodFollows reports whether any piece behind the first is a good entry: its
// sum follows from the last good sum, or from the sum that the piece before it
// holds or should hold.
func goodFollows(last string, pieces []piece) bool {
	held, due := last, last
	for i, p := range pieces {
		if i > 0 && p.sum != "" && (p.sum == sumOf(held, p.text) || p.sum == sumOf(due, p.text) || p.sum == sumOf(last, p.text)) {
			return true
		}
		held, due = p.sum, sumOf(held, body(p))
		if held == "" {
			held = due
		}
	}
	return false
}

// body is the text that the sum of a piece covers; of one without a whole sum
// line, everything before its last line, which may be what is left of it.
func body(p piece) string {
	if p.sum != "" {
		return p.text
	}
	text := strings.TrimRight(p.text, "\n")
	return text[:strings.LastIndexByte(text, '\n')+1]
}

// wrongWith says what is wrong with a piece that stands where entry n should.
func wrongWith(p piece, n int) string {
	if p.sum == "" {
		if !strings.HasPrefix(p.text, entryHead) {
			return fmt.Sprintf("this is no entry; entry %d is expected", n)
		}
		return fmt.Sprintf("entry %d does not end in a whole sum line", n)
	}
	if strings.Contains(p.text, "\r") {
		return fmt.Sprintf("entry %d has line ends of another kind than it was written with", n)
	}
	switch has := numberOf(p); {
	case has > n+1:
		return fmt.Sprintf("entry %d stands where entry %d is expected; entries %d to %d are missing or out of order", has, n, n, has-1)
	case has == n+1:
		return fmt.Sprintf("entry %d stands where entry %d is expected; entry %d is missing or out of order", has, n, n)
	case has > 0 && has < n:
		return fmt.Sprintf("entry %d stands where entry %d is expected; it is there twice or out of order", has, n)
	}
	return fmt.Sprintf("entry %d does not match its sum; it, or an entry before it, was changed after it was written", n)
}

// numberOf reads the n of a piece; 0 where there is none to read.
func numberOf(p piece) int {
	rest, ok := strings.CutPrefix(p.text, entryHead+"n = ")
	if !ok {
		return 0
	}
	digits, _, _ := strings.Cut(rest, "\n")
	n, err := strconv.Atoi(digits)
	if err != nil {
		return 0
	}
	return n
}

// problem says what is wrong and what can be done.
func (r *rest) problem(j *journal) Problem {
	p := Problem{File: j.name(r.file), Line: r.line, Text: r.text}
	switch {
	case r.torn:
		p.Text = fmt.Sprintf("entry %d is unfinished; a write was cut off", r.n)
		p.Hint = "opening the room for writing sets it aside, as does drainboard repair"
	case r.middle:
		p.Hint = "good entries follow, so nothing was changed; restore the journal from a backup"
	default:
		p.Hint = "restore the journal from a backup, or let drainboard repair set aside what stands from here on"
	}
	return p
}
