package log

import (
	"strings"
	"testing"
	"time"

	"drainboard/model"
	"drainboard/tui/screen"
)

func TestLateEntry(t *testing.T) {
	l, d, k := logOf(t)
	typed(t, l, "+")
	if f := frame(l); !strings.Contains(f, "temperature") || strings.Contains(f, "opened") {
		t.Fatalf("the kinds are\n%s", f)
	}
	typed(t, l, "down", "down", "down", "down", "enter", "K3", "enter", "enter", "27.6", "enter", eraser(5), "08:30", "enter")
	e := last(d)
	if e.Kind() != model.KindTemperature || e.At.In(d.Ledger.Room().Zone).Format("2006-01-02 15:04") != "2026-11-25 08:30" || e.TypedAt() != d.Now {
		t.Errorf("entered %q at %v, keyed %v\n%s", model.Sentence(e.Fact), e.At, e.Keyed, frame(l))
	}
	if k.Entries[len(k.Entries)-1].N != e.N {
		t.Error("it is not kept")
	}
	d.Now = d.Now.Add(3 * time.Minute)
	typed(t, l, "+", "end", "enter", "a remark", "enter", "enter", "enter")
	if e := last(d); !e.At.Equal(d.Now) || !e.Keyed.IsZero() {
		t.Errorf("left as it was, the moment is %v, keyed %v; want now", e.At, e.Keyed)
	}
}

func TestLateEntryRefused(t *testing.T) {
	l, _, k := logOf(t)
	before := len(k.Entries)
	l.openLate(model.KindEnded)
	typed(t, l, "K3", "enter", "lost", "enter", "enter", eraser(5), "2026-11-20 08:30", "enter")
	f := strings.Join(strings.Fields(frame(l)), " ")
	if len(k.Entries) != before || !strings.Contains(f, "would become impossible") || !strings.Contains(f, "2026-11-20 08:30") {
		t.Errorf("%d entered; want a refusal that names a later entry:\n%s", len(k.Entries)-before, frame(l))
	}
	if sent := typed(t, l, "esc", "enter"); l.slip != nil || len(sent) != 0 {
		t.Errorf("sent %v", sent)
	}
}

func TestOddLateEntryIsRung(t *testing.T) {
	l, _, _ := logOf(t)
	l.openLate(model.KindTemperature)
	sent := typed(t, l, "K3", "enter", "enter", "33", "enter", "enter")
	if len(sent) != 2 || sent[1] != (screen.Beep{Times: 2}) || !strings.Contains(sent[0].(screen.Toast).Text, "odd: 33 °C lies outside") {
		t.Errorf("sent %v", sent)
	}
}
