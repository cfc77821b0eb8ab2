package state

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// piece is a run of lines of a journal file: an entry with its sum, or
// something that stands where an entry should.
type piece struct {
	line int    // of its first line, from 1
	from int    // byte offset of its first line
	end  int    // byte offset behind it
	text string // of an entry, from [[entry]] to the line before sum; of anything else, all of it
	sum  string // empty where it is no entry with a whole sum line
}

// nextPiece reads the piece that follows after the blank lines at an offset,
// and false at the end of the text.
func nextPiece(text string, from, line int) (piece, bool) {
	for from < len(text) && text[from] == '\n' {
		from++
		line++
	}
	if from == len(text) {
		return piece{}, false
	}
	p := piece{line: line, from: from}
	at := from
	for at < len(text) {
		row := text[at:]
		next := len(text)
		if n := strings.IndexByte(row, '\n'); n >= 0 {
			row, next = row[:n], at+n+1
		}
		switch {
		case at > from && row == entryHead[:len(entryHead)-1]:
			p.text, p.end = text[from:at], at
			return p, true
		case at > from && isSumLine(row) && strings.HasPrefix(text[from:], entryHead):
			p.text, p.sum, p.end = text[from:at], row[len(sumHead):len(row)-1], next
			return p, true
		}
		at = next
	}
	p.text, p.end = text[from:], len(text)
	return p, true
}

const (
	sumHead   = `sum = "`
	sumDigits = 16
)

// isSumLine reports whether a line is a whole sum line.
func isSumLine(row string) bool {
	if len(row) != len(sumHead)+sumDigits+1 || !strings.HasPrefix(row, sumHead) || row[len(row)-1] != '"' {
		return false
	}
	for _, c := range []byte(row[len(sumHead) : len(row)-1]) {
		if !(c >= '0' && c <= '9' || c >= 'a' && c <= 'f') {
			return false
		}
	}
	return true
}

// sumOf chains an entry to the one before it: the first digits, in hexadecimal,
// of the SHA-256 of that one's sum and this one's text.
func sumOf(before, text string) string {
	b := make([]byte, 0, 512)
	b = append(append(b, before...), text...)
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:sumDigits/2])
}
