package inventory

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

func keyPaste(s string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}
}

func nassau(t *testing.T) (time.Time, *time.Location) {
	t.Helper()
	zone, err := time.LoadLocation("America/Nassau")
	if err != nil {
		t.Fatal(err)
	}
	return time.Date(2026, 11, 2, 9, 14, 5, 0, zone), zone // the day after the clocks went back
}

func TestWhen(t *testing.T) {
	now, zone := nassau(t)
	for typed, want := range map[string]string{
		"8:05":                      "2026-11-02 08:05",
		"0805":                      "2026-11-02 08:05",
		"09:14":                     "2026-11-02 09:14",
		"0915":                      "2026-11-01 09:15", // not yet today
		"y 8:05":                    "2026-11-01 08:05",
		"Y0805":                     "2026-11-01 08:05",
		"yesterday 18:00":           "2026-11-01 18:00",
		"18:00 yesterday":           "2026-11-01 18:00",
		"today 8:00":                "2026-11-02 08:00",
		"t0800":                     "2026-11-02 08:00",
		"26":                        "2026-11-01 07:14",
		"0.5":                       "2026-11-02 08:44",
		"48":                        "2026-10-31 10:14", // 49 hours by the clock on the wall
		"31 16:30":                  "2026-10-31 16:30",
		"2 8:00":                    "2026-11-02 08:00",
		"3 8:00":                    "2026-10-03 08:00",
		"10-30 1630":                "2026-10-30 16:30",
		"12-30 16:30":               "2025-12-30 16:30",
		"2026-10-30 16:30":          "2026-10-30 16:30",
		"2026-10-30 6:30":           "2026-10-30 06:30",
		"2026-10-30T16:30:00-04:00": "2026-10-30 16:30",
		" 2026-10-30  16:30 ":       "2026-10-30 16:30",
	} {
		got, err := when(typed, now, zone)
		if err != nil || got.In(zone).Format("2006-01-02 15:04") != want {
			t.Errorf("%q is %v, %v; want %s", typed, got, err, want)
		}
	}
	for _, typed := range []string{
		"", "25:00", "8:5", "2460", "905", "99999", "-3", "y", "yesterday", "tomorrow 8:00", "t 9:30", "2026-11-02",
		"2026-11-31 8:00", "13-01 8:00", "0-5 8:00", "32 8:00", "2026-11-03 8:00", "8:00 8:00", "noon", "1.2.3", "26 h",
	} {
		if got, err := when(typed, now, zone); err == nil {
			t.Errorf("%q is taken as %v; want it refused", typed, got)
		}
	}
}

func TestHatchDay(t *testing.T) {
	now, zone := nassau(t)
	for typed, want := range map[string]string{
		"17": "2026-10-16", "0": "2026-11-02", "60": "2026-09-03",
		"10-16": "2026-10-16", "12-30": "2025-12-30", "2026-10-16": "2026-10-16",
		"2026-10-16T05:00:00-04:00": "2026-10-16T05:00:00-04:00",
	} {
		got, err := hatchDay(typed, now, zone)
		if err != nil || got.String() != want {
			t.Errorf("%q is %v, %v; want %s", typed, got, err, want)
		}
	}
	for _, typed := range []string{"", "61", "-1", "2026-11-03", "2026-11-31", "11-31", "16-10-2026", "1.5", "x", "10-16-05", "2026-11-02T10:00:00-05:00"} {
		if got, err := hatchDay(typed, now, zone); err == nil {
			t.Errorf("%q is taken as %v; want it refused", typed, got)
		}
	}
}
