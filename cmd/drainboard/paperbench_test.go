package main

import (
	"io"
	"path/filepath"
	"testing"
	"time"

	"drainboard/cmd/drainboard/demo"
	"drainboard/cmd/drainboard/document"
	"drainboard/model"
	"drainboard/model/paper"
	"drainboard/state"
)

// demoLedger is the invented room with weeks of history and some 1,500 entries.
func demoLedger(b *testing.B) (*model.Ledger, string) {
	b.Helper()
	dir := filepath.Join(b.TempDir(), "room")
	err := state.Found(dir, demo.RoomTOML, state.Options{}, func(r *model.Room) ([]model.Entry, error) { return demo.Play(r, testNow()) })
	if err != nil {
		b.Fatal(err)
	}
	f, err := state.Open(dir, state.Options{})
	if err != nil {
		b.Fatal(err)
	}
	return f.Ledger(), dir
}

// BenchmarkReport is the report of a batch of four weeks, without opening the
// room.
func BenchmarkReport(b *testing.B) {
	l, _ := demoLedger(b)
	batch := l.Batch("P-02")
	write := map[string]func(document.Document) error{
		"text": func(d document.Document) error { _, err := io.WriteString(io.Discard, d.Text()); return err },
		"html": func(d document.Document) error { return d.HTML(io.Discard) },
	}
	for name, write := range write {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				r, err := paper.NewReport(l, batch, testNow())
				if err != nil {
					b.Fatal(err)
				}
				if err := write(reportDocument(r)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkHandover is a handover of a day.
func BenchmarkHandover(b *testing.B) {
	l, _ := demoLedger(b)
	for b.Loop() {
		h, err := paper.NewHandover(l, testNow().Add(-24*time.Hour), testNow())
		if err != nil {
			b.Fatal(err)
		}
		if handoverText(h) == "" {
			b.Fatal("nothing")
		}
	}
}

// BenchmarkExport is every file of an export, but for the disk.
func BenchmarkExport(b *testing.B) {
	l, _ := demoLedger(b)
	for b.Loop() {
		if _, err := exportOf(l); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBackup is a backup with its reading back and the verifying of it.
func BenchmarkBackup(b *testing.B) {
	_, dir := demoLedger(b)
	for b.Loop() {
		if _, err := state.Backup(dir, filepath.Join(b.TempDir(), "room.zip")); err != nil {
			b.Fatal(err)
		}
	}
}
