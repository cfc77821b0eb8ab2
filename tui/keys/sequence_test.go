package keys

import (
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
