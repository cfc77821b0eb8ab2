//go:build !windows

package keys

import (
	"bytes"
	"io"
	"os"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/creack/pty"
)

// listener hands on the keys that bubbletea delivers, normalised.
type listener struct{ heard chan tea.KeyMsg }

func (l listener) Init() tea.Cmd { return nil }
func (l listener) View() string  { return "" }

func (l listener) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok {
		for _, one := range Normalise(k) {
			l.heard <- one
		}
	}
	return l, nil
}

// keyboard runs a program on a pseudo terminal and gives its keyboard.
func keyboard(t *testing.T, wrap func(*os.File) io.Reader) (io.Writer, chan tea.KeyMsg) {
	t.Helper()
	board, tty, err := pty.Open()
	if err != nil {
		t.Skip("no pseudo terminal here: ", err)
	}
	l := listener{make(chan tea.KeyMsg, 100)}
	p := tea.NewProgram(l, tea.WithInput(wrap(tty)), tea.WithOutput(io.Discard), tea.WithoutSignalHandler())
	done := make(chan error)
	go func() {
		_, err := p.Run()
		done <- err
	}()
	t.Cleanup(func() {
		p.Quit()
		if err := <-done; err != nil {
			t.Error(err)
		}
		board.Close()
		tty.Close()
	})
	return board, l.heard
}

// hears waits for each key by name. The last wanted one proves that nothing
// else came between.
func hears(t *testing.T, heard chan tea.KeyMsg, want ...string) {
	t.Helper()
	for i, w := range want {
		select {
		case got := <-heard:
			if got.String() != w {
				t.Fatalf("key %d: got %q, want %q", i, got, w)
			}
		case <-time.After(10 * time.Second):
			t.Fatalf("key %d: nothing came, want %q", i, w)
		}
	}
}

func write(t *testing.T, w io.Writer, s string) {
	t.Helper()
	if _, err := io.WriteString(w, s); err != nil {
		t.Fatal(err)
	}
}

func TestInputOnATerminal(t *testing.T) {
	board, heard := keyboard(t, Input)
	for _, c := range []struct {
		name, in string
		want     []string
	}{
		{"number pad", "\x1bOr\x1bOw\x1bOn\x1bOt\x1bOM", []string{"2", "7", ".", "4", "enter"}},
		{"number pad commands", "\x1bOk\x1bOm\x1bOj\x1bOo", []string{"+", "-", "*", "/"}},
		{"line feed as enter", "\n", []string{"enter"}},
		{"alt and digit", "\x1b7", []string{"7"}},
		{"keys in one read", "uuq", []string{"u", "u", "q"}},
		{"arrow", "\x1b[A", []string{"up"}},
		{"function key", "\x1bOP\x1b[20~", []string{"f1", "f9"}},
		{"paste", "\x1b[200~q\r12\x1b[201~", []string{"[q\r12]"}},
		{"escape alone", "\x1b", []string{"esc"}},
	} {
		write(t, board, c.in)
		t.Run(c.name, func(t *testing.T) { hears(t, heard, c.want...) })
	}
}

// TestBubbleteaAloneMisreadsTheNumberPad is why Input exists: the 1 of the pad
// comes as alt+O and the letter q. When this fails, Input may go.
func TestBubbleteaAloneMisreadsTheNumberPad(t *testing.T) {
	board, heard := keyboard(t, func(f *os.File) io.Reader { return f })
	write(t, board, "\x1bOq")
	hears(t, heard, "alt+O", "q")
}

// TestInputPutsPiecesTogether feeds a sequence byte by byte, each as a read of
// its own.
func TestInputPutsPiecesTogether(t *testing.T) {
	src := &chunks{data: []byte("\x1bOq\x1b[A\x1bOMé"), size: 1}
	in := &input{more: func() bool { return len(src.data) > 0 }}
	p := make([]byte, 256)
	for _, want := range []string{"1", "\x1b[A", "\r", "é"} {
		n, err := in.from(src, p)
		if got := string(p[:n]); err != nil || got != want {
			t.Errorf("got %q, %v, want %q", got, err, want)
		}
	}
}

func TestInputGivesUpOnAHalfSequence(t *testing.T) {
	src := &chunks{data: []byte("\x1bO"), size: 10}
	in := &input{more: func() bool { return false }}
	p := make([]byte, 256)
	if n, err := in.from(src, p); string(p[:n]) != "\x1bO" || err != nil {
		t.Errorf("got %q, %v, want ESC O as it came", p[:n], err)
	}
}

// broken gives some bytes and then an error, and the error again.
type broken struct{ data string }

func (b *broken) Read(p []byte) (int, error) {
	n := copy(p, b.data)
	b.data = b.data[n:]
	return n, io.EOF
}

func TestInputKeepsWhatCameBeforeAnError(t *testing.T) {
	in, src, p := &input{}, &broken{"12"}, make([]byte, 256)
	if n, err := in.from(src, p); string(p[:n]) != "12" || err != nil {
		t.Errorf("got %q, %v, want 12", p[:n], err)
	}
	if n, err := in.from(src, p); n != 0 || err != io.EOF {
		t.Errorf("got %d bytes, %v, want the end", n, err)
	}
}

// chunks gives a stream in pieces, the end of each being where a read ends.
type chunks struct {
	data []byte
	size int
}

func (c *chunks) Read(p []byte) (int, error) {
	n := copy(p, c.data[:min(c.size, len(c.data))])
	c.data = c.data[n:]
	return n, nil
}

// FuzzPieces holds that it does not matter where the reads cut the stream or
// how large the reader's buffer is, and that nothing grows.
func FuzzPieces(f *testing.F) {
	for _, s := range []string{"\x1bOq\x1bOM", "27,4\r\x1b[A\x1b", "\x1b[200~1\r\n2\x1b[201~\x1bOp", "é北\x1b[15~", "\x1b[[A\x1bO5M"} {
		f.Add([]byte(s), uint8(1), uint16(256))
		f.Add([]byte(s), uint8(3), uint16(64))
	}
	f.Fuzz(func(t *testing.T, stream []byte, size uint8, buffer uint16) {
		want := whole(string(stream))
		src := &chunks{data: bytes.Clone(stream), size: 1 + int(size)%64}
		in := &input{more: func() bool { return len(src.data) > 0 }}
		p := make([]byte, 64+int(buffer)%256)
		var got []byte
		for len(src.data) > 0 {
			n, err := in.from(src, p)
			if err != nil {
				t.Fatal(err)
			}
			got = append(got, p[:n]...)
		}
		got = append(got, in.held...)
		if string(got) != want {
			t.Errorf("%q in pieces of %d: got %q, want %q", stream, src.size, got, want)
		}
		if len(want) > len(stream) {
			t.Errorf("%q grew to %q", stream, want)
		}
	})
}
