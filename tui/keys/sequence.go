package keys

import (
	"bytes"
	"unicode/utf8"
)

const esc = 0x1b

var (
	pasteStart = []byte("\x1b[200~")
	pasteEnd   = []byte("\x1b[201~")
)

// longestSequence bounds how long an unfinished sequence is waited for, bytes.
const longestSequence = 32

// rewriter turns a stream of terminal input into one that bubbletea v1 reads
// right. It knows only whether it is inside a paste.
type rewriter struct{ paste bool }

// rewrite appends the whole keys at the front of in to out. What remains is the
// start of a key of which the rest has not arrived.
func (r *rewriter) rewrite(out, in []byte) (done, rest []byte) {
	for len(in) > 0 {
		var n int
		var as []byte
		if r.paste {
			n, as = r.pasted(in)
		} else {
			n, as = r.key(in)
		}
		if n == 0 {
			return out, in
		}
		out, in = append(out, as...), in[n:]
	}
	return out, nil
}

// pasted takes what surely belongs to the paste, up to and with its end.
func (r *rewriter) pasted(in []byte) (n int, as []byte) {
	if i := bytes.Index(in, pasteEnd); i >= 0 {
		r.paste = false
		n = i + len(pasteEnd)
		return n, in[:n]
	}
	n = len(in)
	for k := min(len(pasteEnd)-1, n); k > 0; k-- {
		if bytes.HasPrefix(pasteEnd, in[n-k:]) {
			n -= k
			break
		}
	}
	return n, in[:n]
}

// key takes one key off the front of in. n is 0 where it is not complete.
func (r *rewriter) key(in []byte) (n int, as []byte) {
	switch {
	case in[0] != esc:
		return character(in)
	case len(in) == 1:
		return 0, nil
	case in[1] == 'O':
		return keypad(in)
	case in[1] == '[':
		n = control(in)
		r.paste = bytes.Equal(in[:n], pasteStart)
		return n, in[:n]
	case in[1] == esc:
		return 1, in[:1]
	}
	n, _ = character(in[1:])
	if n == 0 {
		return 0, nil
	}
	return 1 + n, in[:1+n]
}

// character takes one character, 0 where its last bytes are missing.
func character(in []byte) (n int, as []byte) {
	if !utf8.FullRune(in) {
		return 0, nil
	}
	_, n = utf8.DecodeRune(in)
	return n, in[:n]
}

// control is the length of a CSI sequence, 0 where its end is missing. One that
// is malformed or too long is passed on as it stands.
func control(in []byte) int {
	i := 2
	if i < len(in) && in[i] == '[' { // function keys of the Linux console
		i++
	}
	for ; i < len(in) && i < longestSequence; i++ {
		switch c := in[i]; {
		case c >= 0x40 && c <= 0x7e:
			return i + 1
		case c < 0x20 || c > 0x3f:
			return i
		}
	}
	if i == longestSequence {
		return i
	}
	return 0
}

// keypad takes an SS3 sequence, ESC O and one letter with perhaps a digit for
// shift, alt or control between, and gives what the key means (xterm control
// sequences, "VT220-Style Function Keys" and "keypad": p-y are the digits).
func keypad(in []byte) (n int, as []byte) {
	i := 2
	if i < len(in) && in[i] >= '1' && in[i] <= '8' {
		i++
	}
	if i == len(in) {
		return 0, nil
	}
	n = i + 1
	switch c := in[i]; {
	case c >= 'p' && c <= 'y':
		return n, []byte{c - 'p' + '0'}
	case c >= 'j' && c <= 'o': // * + , - . /
		return n, []byte{c - 'j' + '*'}
	case c == 'M':
		return n, []byte{'\r'}
	case c == 'X':
		return n, []byte{'='}
	case c == 'I':
		return n, []byte{'\t'}
	case c == ' ':
		return n, []byte{' '}
	case c == 'H', c == 'F', c == 'E': // Home, End and the middle key without num lock
		return n, []byte{esc, '[', c}
	case c >= 'A' && c <= 'D', c >= 'P' && c <= 'S': // arrows and F1-F4, known to bubbletea
		return n, in[:n]
	}
	return 2, in[:2] // alt+O and whatever follows
}
