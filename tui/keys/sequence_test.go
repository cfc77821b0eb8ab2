package keys

import (
	"bytes"
	"strings"
	"testing"
)

// whole rewrites a stream that has ended.
func whole(in string) string {
	var r rewriter
	out, rest := r.rewrite(nil, []byte(in))
	return string(out) + string(rest)
}

func TestRewrite(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"number pad digits", "\x1bOp\x1bOq\x1bOr\x1bOs\x1bOt\x1bOu\x1bOv\x1bOw\x1bOx\x1bOy", "0123456789"},
		{"number pad signs", "\x1bOj\x1bOk\x1bOl\x1bOm\x1bOn\x1bOo\x1bOX", "*+,-./="},
		{"number pad enter", "\x1bOM", "\r"},
		{"with shift held", "\x1bO2q\x1bO5M", "1\r"},
		{"home and end without num lock", "\x1bOH\x1bOF", "\x1b[H\x1b[F"},
		{"plain keys", "27.4\r", "27.4\r"},
		{"escape alone", "\x1b", "\x1b"},
		{"escape and a key", "\x1bq", "\x1bq"},
		{"escape twice", "\x1b\x1b", "\x1b\x1b"},
		{"arrows and function keys", "\x1b[A\x1bOB\x1bOP\x1b[15~\x1b[[A\x1b[1;5C", "\x1b[A\x1bOB\x1bOP\x1b[15~\x1b[[A\x1b[1;5C"},
		{"alt and O", "\x1bOz", "\x1bOz"},
		{"paste is left alone", "\x1b[200~\x1bOq\x1bOM\x1b[201~\x1bOq", "\x1b[200~\x1bOq\x1bOM\x1b[201~1"},
		{"paste without end", "\x1b[200~12\x1b[20", "\x1b[200~12\x1b[20"},
		{"letters of other scripts", "é北\x1bOq", "é北1"},
		{"broken bytes", "\xff\xc3q", "\xff\xc3q"},
		{"malformed sequence", "\x1b[1\r", "\x1b[1\r"},
		{"endless sequence", "\x1b[" + strings.Repeat("1", 50) + "\x1bOq", "\x1b[" + strings.Repeat("1", 50) + "1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := whole(c.in); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
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
