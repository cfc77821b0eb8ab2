package inventory

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
	"drainboard/tui/screen"
)

// A full disk in the middle: what is saved is named, what is not is kept as typed
// and goes in at the next try, once.
func TestFailedSaveKeepsAll(t *testing.T) {
	for fail := range 11 {
		t.Run(fmt.Sprintf("after %d entries", fail), func(t *testing.T) {
			s, d, _ := opened(t)
			k := &failing{left: fail}
			d.Keeper = k
			typed(t, s, wholeRoom...)
			sent := typed(t, s, "enter")
			if len(sent) != 1 || sent[0] != (screen.Beep{Times: 1}) || s.phase != typing {
				t.Fatalf("sent %v", sent)
			}
			f := frame(s)
			if !strings.Contains(f, "no space left") || !strings.Contains(f, "tries again") {
				t.Errorf("the failure is not said:\n%s", f)
			}
			for _, name := range []string{"K4", "K5", "L1"} {
				if fail < 7 && !strings.Contains(f, name) {
					t.Errorf("%s is not shown", name)
				}
			}
			if got := len(d.Ledger.Entries()); got != fail {
				t.Fatalf("%d entries in the ledger; want %d", got, fail)
			}
			k.left = 1000
			typed(t, s, "*")
			if s.phase != asking {
				t.Fatalf("the second try does not ask:\n%s", frame(s))
			}
			typed(t, s, "enter")
			again, other, _ := opened(t)
			typed(t, again, wholeRoom...)
			typed(t, again, "enter")
			if diff := cmp.Diff(written(other), written(d)); diff != "" {
				t.Errorf("the second try entered something else: %s", diff)
			}
		})
	}
}

// failing is a keeper that takes so many entries and then no more.
type failing struct{ left int }

func (k *failing) Append(entries ...model.Entry) error {
	if k.left < len(entries) {
		return errors.New("write journal/2026-11.toml: no space left on device")
	}
	k.left -= len(entries)
	return nil
}

// A tank of which one of two entries was saved says so and cannot be typed into.
func TestSavedInPart(t *testing.T) {
	s, d, _ := opened(t)
	d.Keeper = &failing{left: 2} // L2, and K1 without its length
	typed(t, s, wholeRoom...)
	typed(t, s, "enter")
	f := frame(s)
	for _, want := range []string{"saved: L2.", "saved in part: K1.", "not saved, all kept as typed: K2, K3, K4, K5, L1, L3, L4."} {
		if !strings.Contains(strings.Join(strings.Fields(f), " "), want) {
			t.Errorf("%q is not said:\n%s", want, f)
		}
	}
	if s.open(0) || s.open(6) || !s.open(1) {
		t.Error("only what is not saved can be typed into")
	}
}
