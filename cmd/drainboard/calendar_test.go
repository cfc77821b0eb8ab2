package main

import (
	"encoding/json"
	"strings"
	"testing"
)

// In the worked room at 10:12 C1 is past due and C3 due at 11; C2 is ready, C5
// dirty, C4 out of use: 18 min for C5 beside 26 + 26 of moves and 18 for the last.
func TestCalendar(t *testing.T) {
	room := workedRoom(t)
	var got struct {
		Crew  int
		Limit *int `json:"limit_minutes"`
		Days  []struct {
			Date      string
			Tanks     []string
			Minutes   int
			Over      bool
			Limit     int                 `json:"limit_minutes"`
			Sea       float64             `json:"sea_water_litres"`
			Acid      *float64            `json:"acid_ml"`
			MakeReady []string            `json:"make_ready"`
			Algae     map[string]*float64 `json:"algae_litres"`
		}
		Uncounted []string
		Level     struct {
			Needed, Best bool
			Early        []struct{ Tank string }
		}
	}
	if err := json.Unmarshal([]byte(mustSay(t, room, "calendar", "--days", "2", "--json").stdout), &got); err != nil {
		t.Fatal(err)
	}
	if got.Crew != 2 || got.Limit != nil || len(got.Days) != 2 || got.Level.Needed || !got.Level.Best || len(got.Level.Early) != 0 {
		t.Fatalf("%+v", got)
	}
	today := got.Days[0]
	if today.Date != "2026-11-25" || strings.Join(today.Tanks, " ") != "C1 C3" || today.Minutes != 70 || today.Over {
		t.Errorf("today %+v; want C1 and C3, 70 min", today)
	}
	if today.Sea != 360 || today.Acid == nil || *today.Acid != 320 || strings.Join(today.MakeReady, " ") != "C5" {
		t.Errorf("today %+v; want 360 L, 320 mL and C5 to be made ready", today)
	}
	if x, named := today.Algae["iso"]; !named || x != nil || strings.Join(got.Uncounted, " ") != "iso chaet" {
		t.Errorf("algae %v, uncounted %v; want iso null: no culture was counted", today.Algae, got.Uncounted)
	}
	// From 10:12 to midnight there are 13 h 48 min.
	if today.Limit != 13*60+48 || got.Days[1].Limit != 24*60 {
		t.Errorf("limits %d and %d; want what there is of the days", today.Limit, got.Days[1].Limit)
	}
}

func TestCalendarInWords(t *testing.T) {
	room := workedRoom(t)
	lines := mustSay(t, room, "calendar", "--days", "2").stdout
	for _, want := range []string{
		"CALENDAR no day of 2 is too full\n", "no limit to a day", "C1, C3; to make ready: C5\n", "iso ?",
		"litres not known of iso, chaet: count the culture\n", "level: no limit is given", "Acid into water, never the reverse",
	} {
		if !strings.Contains(lines, want) {
			t.Errorf("%q is not said in\n%s", want, lines)
		}
	}
	late := mustSay(t, room, "calendar", "--days", "1", "--at", "2026-11-25T23:30:00-05:00").stdout
	for _, want := range []string{"CALENDAR 1 of 1 day too full, the first Wed 25 Nov\n", "! no time by 40", "C1 (overdue), C3 (overdue)", "level: nothing helps; 1 day too full, by 40 min in all\n"} {
		if !strings.Contains(late, want) {
			t.Errorf("%q is not said in\n%s", want, late)
		}
	}
	mustSay(t, room, "enter", "service", "tank=C2", "out=true")
	mustSay(t, room, "enter", "service", "tank=C5", "out=true")
	if stuck := mustSay(t, room, "calendar", "--days", "1").stdout; !strings.Contains(stuck, "! no empty tank") {
		t.Errorf("no empty tank is not said in\n%s", stuck)
	}
}

func TestCalendarRefuses(t *testing.T) {
	room := workedRoom(t)
	for _, days := range []string{"0", "-1", "61"} {
		if got := say(t, room, "calendar", "--days", days); got.status != exitUsage || !strings.Contains(got.stderr, "give 1 to 60") || got.stdout != "" {
			t.Errorf("--days %s: status %d, %q", days, got.status, got.stderr)
		}
	}
}
