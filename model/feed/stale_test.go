package feed

import (
	"testing"
	"time"
)

func TestStale(t *testing.T) {
	ages := map[string]time.Duration{"tet": 49 * time.Hour, "iso": 48 * time.Hour, "chaet": 72 * time.Hour}
	got, err := Stale(ages, 48*time.Hour)
	if err != nil || len(got) != 2 || got[0] != "chaet" || got[1] != "tet" {
		t.Errorf("got %v, %v", got, err)
	}
	if _, err := Stale(ages, 0); err == nil || err.Error() != "culture_hours: 0 is not possible; give hours above 0" {
		t.Errorf("got %v", err)
	}
	ages["iso"] = -time.Minute
	if _, err := Stale(ages, 48*time.Hour); err == nil || err.Error() != "iso: its count lies in the future; look at the clock or the time typed" {
		t.Errorf("got %v", err)
	}
}
