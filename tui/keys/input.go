//go:build !windows

package keys

import (
	"io"
	"os"
	"time"
)

// patience is how long the rest of an unfinished sequence is waited for. It is
// what a lone Escape is late by.
const patience = 10 * time.Millisecond

// Input wraps the terminal a program reads from, for tea.WithInput. It rewrites
// the number pad's application mode (ESC O p to y and so on), which bubbletea
// v1 would take for alt+O and a letter, and keeps sequences whole that arrive
// in pieces, so that a slow line cannot turn an arrow into Escape. Pasted text
// is left alone. bubbletea still sees the terminal (its descriptor), and sets
// raw mode and waits on it as ever.
func Input(f *os.File) io.Reader {
	return &input{File: f, more: func() bool { return readable(f.Fd(), patience) }}
}

// input is the terminal with its bytes rewritten.
type input struct {
	*os.File
	rewriter
	held []byte      // start of a key whose rest is still in the terminal
	more func() bool // waits a little and says whether there is something to read
}

// Read gives whole keys. The first read blocks; those for the rest of a cut
// sequence do not.
func (in *input) Read(p []byte) (int, error) {
	return in.from(in.File, p)
}

func (in *input) from(src io.Reader, p []byte) (int, error) {
	if n := copy(p, in.held); n == len(p) { // no room for anything else
		in.held = in.held[n:]
		return n, nil
	}
	raw := append(make([]byte, 0, len(p)), in.held...)
	in.held = nil
	var out []byte
	for {
		n, err := src.Read(raw[len(raw):cap(raw)])
		raw = raw[:len(raw)+n]
		if err != nil {
			return give(p, append(out, raw...), err)
		}
		var rest []byte
		out, rest = in.rewrite(out, raw)
		room := len(p) - len(out)
		switch {
		case len(rest) == 0:
			return copy(p, out), nil
		case in.paste:
			in.held = append(in.held, rest...) // bubbletea waits for the end of a paste too
			return copy(p, out), nil
		case !in.more(), len(rest) >= room && len(out) == 0:
			return copy(p, append(out, rest...)), nil
		case len(rest) >= room:
			in.held = append(in.held, rest...)
			return copy(p, out), nil
		}
		raw = append(make([]byte, 0, room), rest...)
	}
}

// give keeps what was read before an error: the error comes again by itself.
func give(p, out []byte, err error) (int, error) {
	if len(out) > 0 {
		err = nil
	}
	return copy(p, out), err
}
