package calendar

import (
	"testing"
	"time"

	"drainboard/model"
)

// One empty tank makes the mover wait for it to be made ready: 26 + 18 + 26 + 18
// minutes. With a second one the session takes 26 + 26 + 18.
func TestOneMore(t *testing.T) {
	l, now := worked(t)
	put(t, l, now, &model.Service{Tank: "L1", Out: true})
	s, ok, err := OneMore(l, now, 0)
	if err != nil || !ok {
		t.Fatal(ok, err)
	}
	if s.As.Length != mins(88) || s.More.Length != mins(70) || s.Litres != 120 || s.Moves != 2 || !s.At.Equal(now) || !s.Saves() {
		t.Errorf("%+v; want 88 and 70 min of 2 moves with 120 L more, now", s)
	}
	// K2 is late already, and first by age: its overrun is that of 2:14 hours.
	if want := mins(134); s.As.Worst != want || s.More.Worst != want {
		t.Errorf("worst %v and %v; want %v", s.As.Worst, s.More.Worst, want)
	}
}

func TestOneMoreBeforeAnythingIsDue(t *testing.T) {
	l := room(t)
	stock(t, l, "2026-11-25T08:00:00-05:00", "K1", "P-1", "2026-11-20")
	now := moment(t, "2026-11-25T09:14:00-05:00")
	s, ok, err := OneMore(l, now, 0)
	if err != nil || !ok || !s.At.Equal(now.Add(46*time.Hour+46*time.Minute)) || s.Moves != 1 {
		t.Errorf("%+v, %v, %v; want the session at which K1 falls due", s, ok, err)
	}
	if want := mins(18 + 18 + 21 + 1.0/3 + 18); s.As.Length != want || s.More.Length != want || s.Saves() {
		t.Errorf("%+v; want nothing saved: making four tanks ready takes %v in any case", s, want)
	}
	if _, ok, err := OneMore(room(t), now, 0); ok || err != nil {
		t.Errorf("a room without larvae: %v, %v", ok, err)
	}
}
