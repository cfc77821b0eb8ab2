package scope

import (
	"errors"
	"slices"
	"strconv"
	"testing"
	"time"

	"pgregory.net/rapid"

	"drainboard/model"
	"drainboard/tui/desk/desktest"
)

// plain is the readings of every sitting in one list, with the moment of each.
type plain struct {
	um []float64
	at []time.Time
}

func (p *plain) add(um float64, at time.Time) { p.um, p.at = append(p.um, um), append(p.at, at) }

// sitting are the readings from the last one back to the last pause that was
// longer than the gap, none where that pause lasts till now.
func (p *plain) sitting(now time.Time) []float64 {
	from, later := len(p.um), now
	for from > 0 && later.Sub(p.at[from-1]) <= model.SittingGap {
		from--
		later = p.at[from]
	}
	return p.um[from:]
}

func (p *plain) drop(now time.Time) {
	if len(p.sitting(now)) > 0 {
		p.um, p.at = p.um[:len(p.um)-1], p.at[:len(p.at)-1]
	}
}

// Keying, taking back, reopening and a failing disk in any order leave the same
// readings as a plain list.
func TestKeyingAgainstAPlainList(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		d, k := desktest.Empty(t)
		larvae := 1000.0
		hatched, _ := model.ParseHatched("2026-11-20")
		desktest.Enter(t, d, 48*time.Hour, &model.Stocked{Tank: "K3", Batch: "P", Hatched: hatched, Larvae: &larvae})
		s := New(d, "K3").(*Scope)
		list := &plain{}
		for range rapid.IntRange(1, 40).Draw(r, "steps") {
			switch rapid.IntRange(0, 6).Draw(r, "step") {
			case 0, 1, 2:
				um := rapid.IntRange(1, 6000).Draw(r, "um")
				typed(t, s, strconv.Itoa(um), "enter")
				if um >= 20 && um <= 5000 {
					list.add(float64(um), d.Now)
				}
			case 3:
				typed(t, s, "backspace")
				list.drop(d.Now)
			case 4:
				d.Now = d.Now.Add(time.Duration(rapid.IntRange(0, 1800).Draw(r, "pause")) * time.Second)
			case 5:
				s = New(d, "K3").(*Scope)
			case 6:
				k.Fail = errors.New("disk full")
				typed(t, s, "512", "enter")
				k.Fail = nil
				if rapid.Bool().Draw(r, "again") {
					typed(t, s, "enter")
					list.add(512, d.Now)
				} else {
					typed(t, s, "backspace", "backspace", "backspace")
				}
			}
			if got, want := read(s), list.sitting(d.Now); !slices.Equal(got, want) {
				r.Fatalf("the sitting has %v, the list %v", got, want)
			}
		}
		again, err := model.LoadLedger(d.Ledger.Room(), k.Entries)
		if err != nil {
			r.Fatalf("what was kept does not fold: %v", err)
		}
		d.Ledger = again
		if got, want := read(New(d, "K3").(*Scope)), list.sitting(d.Now); !slices.Equal(got, want) {
			r.Fatalf("after a restart the sitting has %v, the list %v", got, want)
		}
	})
}

func BenchmarkView(b *testing.B) {
	for _, phase := range []string{"reading", "figures"} {
		b.Run(phase, func(b *testing.B) {
			s, _, _ := scope(b, "K3")
			for i := range 25 {
				typed(b, s, strconv.Itoa(700+i*7%50), "enter")
			}
			if phase == "figures" {
				typed(b, s, "enter")
			}
			b.ReportAllocs()
			for b.Loop() {
				s.View(120, 39)
			}
		})
	}
}

// BenchmarkReading is a reading from its first digit to the frame after it.
func BenchmarkReading(b *testing.B) {
	s, _, _ := scope(b, "K3")
	for b.Loop() {
		if len(read(s)) > wanted {
			b.StopTimer()
			s, _, _ = scope(b, "K3")
			b.StartTimer()
		}
		typed(b, s, "7", "1", "2", "enter")
		s.View(120, 39)
	}
}
