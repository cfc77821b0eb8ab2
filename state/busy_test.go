package state

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drainboard/model"
)

// busyEntries are n entries of one batch that goes round between two tanks, five
// minutes apart, of all the kinds a day has.
func busyEntries(n int) []model.Entry {
	from, to := "C1", "C2"
	day := model.Day{Year: 2024, Month: time.January, Date: 3}
	facts := []model.Fact{
		&model.Filled{Tank: "C1", Celsius: num(28)},
		&model.Stocked{Tank: "C1", Batch: "24-01", Hatched: model.Hatched{Date: day}, Larvae: num(9000)},
		&model.Filled{Tank: "C2", Celsius: num(27.5)},
	}
	for len(facts) < n {
		for i := range 12 {
			facts = append(
				facts,
				&model.Temperature{Tank: from, Celsius: 27 + float64(i)/10},
				&model.Sizes{Tank: from, UM: []float64{501.5, 498, 512.25, 507, 499.5}},
				&model.Fed{Tank: from, Litres: map[string]float64{"iso": 0.35}},
				&model.Look{Tank: from, Lobes: new(4), Golden: num(85), Swim: model.SwimGood},
			)
		}
		facts = append(
			facts,
			&model.Count{Tank: from, Live: []int{41, 38, 47}, SampleML: 1, HoldingML: 2000},
			&model.Moved{From: from, To: to, MeshUM: num(150), FromCelsius: num(28.1), ToCelsius: num(27.9)},
			&model.Washed{Tank: from, AcidML: num(40), WaterLitres: num(4)},
			&model.Filled{Tank: from, Celsius: num(27.8)},
		)
		from, to = to, from
	}
	entries := make([]model.Entry, n)
	start := at("2024-01-05T08:00:00-05:00")
	for i := range entries {
		entries[i] = model.Entry{N: i + 1, At: start.Add(time.Duration(i) * 5 * time.Minute), By: "KT", Fact: facts[i]}
	}
	return entries
}

// writeJournal puts entries on disk without waiting for the device.
func writeJournal(t testing.TB, dir string, entries []model.Entry) {
	t.Helper()
	files := map[string]*strings.Builder{}
	zone, sum := nassau(t), ""
	for _, e := range entries {
		name := monthOf(e.TypedAt()) + ".toml"
		b := files[name]
		if b == nil {
			b = &strings.Builder{}
			files[name] = b
		} else {
			b.WriteByte('\n')
		}
		text := string(appendEntry(nil, e, zone))
		sum = sumOf(sum, text)
		fmt.Fprintf(b, "%s%s%s\"\n", text, sumHead, sum)
	}
	if err := os.MkdirAll(filepath.Join(dir, journalDir), 0o755); err != nil {
		t.Fatal(err)
	}
	for name, b := range files {
		writeFile(t, b.String(), dir, journalDir, name)
	}
}

func nassau(t testing.TB) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

func BenchmarkOpen(b *testing.B) {
	for _, n := range []int{1000, 200_000} {
		b.Run(fmt.Sprintf("%d entries", n), func(b *testing.B) {
			dir := newRoom(b)
			writeJournal(b, dir, busyEntries(n))
			b.ReportAllocs()
			for b.Loop() {
				f, err := Open(dir, Options{})
				if err != nil {
					b.Fatal(err)
				}
				if got := f.Ledger().Next(); got != n+1 {
					b.Fatalf("%d entries read; want %d", got-1, n)
				}
			}
		})
	}
}

// BenchmarkRead is the part of opening that is not the ledger's.
func BenchmarkRead(b *testing.B) {
	const n = 200_000
	dir := newRoom(b)
	writeJournal(b, dir, busyEntries(n))
	b.ReportAllocs()
	for b.Loop() {
		entries, _, err := newJournal(dir, nassau(b)).read()
		if err != nil || len(entries) != n {
			b.Fatal(len(entries), err)
		}
	}
}

func BenchmarkDecode(b *testing.B) {
	text := string(appendEntry(nil, busyEntries(3)[1], nassau(b)))
	b.Run("as written", func(b *testing.B) {
		d := newDecoder(nassau(b))
		b.ReportAllocs()
		for b.Loop() {
			if _, err := d.entry(text); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("by the library", func(b *testing.B) {
		d := newDecoder(nassau(b))
		b.ReportAllocs()
		for b.Loop() {
			table, err := d.library(text)
			if err != nil {
				b.Fatal(err)
			}
			if _, err := d.build(table); err != nil {
				b.Fatal(err)
			}
		}
	})
}
