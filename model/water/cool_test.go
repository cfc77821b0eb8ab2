package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The law does not care for units, so published examples are taken as printed,
// most of them in degrees Fahrenheit.
func TestNewtonPublished(t *testing.T) {
	for _, c := range []struct {
		name                   string
		start, room            float64
		after, read            float64
		want                   float64
		rate, rateTo           float64
		minutes, minutesTo     float64
		published, publishedTo float64
	}{
		{"cheesecake, OpenStax Precalculus", 165, 35, 10, 150, 70, 0.0122602, 5e-8, 107.028, 5e-4, 107, 0.5},
		{"pitcher warming, in hours, OpenStax Precalculus", 40, 70, 1, 45, 60, 0.18232156, 5e-8, 6.02569, 5e-6, 6.026, 5e-4},
		{"coffee, 154 to 133 in 10 minutes", 154, 71, 10, 133, 100, 0.0291706, 5e-8, 36.0481, 5e-5, 36.05, 5e-3},
		{"cake, 325 to 150 in 25 minutes", 325, 68, 25, 150, 115, 0.0456943, 5e-8, 37.1803, 5e-5, 37.2, 0.05},
		{"cake, 300 to 200 in 10 minutes", 300, 60, 10, 200, 75, 0.05389965, 5e-8, 51.4398, 5e-5, 51.44, 5e-3},
		{"tank, 28 to 27 in 45 minutes", 28, 22, 45, 27, 25, 0.00405159, 5e-9, 171.080, 5e-4, 171.080, 5e-4},
	} {
		t.Run(c.name, func(t *testing.T) {
			k := newtonRate(c.start, c.room, []Reading{{c.after, c.read}})
			near(t, "rate", k, c.rate, c.rateTo)
			got := newtonMinutes(c.start, c.room, c.want, k)
			near(t, "minutes", got, c.minutes, c.minutesTo)
			near(t, "minutes as published", got, c.published, c.publishedTo)
		})
	}
	// The cheesecake again with the rate rounded as the text rounds it.
	near(t, "rate rounded", newtonMinutes(165, 35, 70, 0.0123), 106.68, 0.005)
	// Coffee 95 to 61 in 30 minutes at 20: k printed as 0.02.
	near(t, "coffee, 95 to 61", newtonRate(95, 20, []Reading{{30, 61}}), 0.0201305, 5e-8)
}

func TestWait(t *testing.T) {
	// By hand: k = ln(6/5.2)/30 = 0.0047700; half of 6 is left after ln 2/k.
	k := math.Log(6/5.2) / 30
	got := must(Cooling{Start: 31, Room: 25, Want: 28, Readings: []Reading{{30, 30.2}}}.Wait())
	near(t, "rate", got.Rate, k, 1e-12)
	near(t, "minutes", got.Minutes, math.Ln2/k, 1e-8)
	near(t, "from the last reading", got.FromLast, math.Ln2/k-30, 1e-8)
	near(t, "per hour at the start", got.PerHour, -60*k*6, 1e-9)
	near(t, "per hour at the last reading", got.PerHourLast, -60*k*5.2, 1e-9)
	near(t, "minutes, as a person would say it", got.Minutes, 145.3, 0.05)
	near(t, "degrees an hour, as a person would say it", got.PerHour, -1.72, 0.005)
}

func TestWaitWarming(t *testing.T) {
	got := must(Cooling{Start: 22, Room: 30, Want: 26, Readings: []Reading{{60, 24}}}.Wait())
	near(t, "minutes", got.Minutes, 60*math.Ln2/math.Log(8.0/6), 1e-8)
	if !(got.PerHour > 0 && got.PerHourLast > 0 && got.PerHourLast < got.PerHour) {
		t.Errorf("warming slows down: got %v, then %v an hour", got.PerHour, got.PerHourLast)
	}
}

func TestWaitEdges(t *testing.T) {
	already := must(Cooling{Start: 31, Room: 25, Want: 31, Readings: []Reading{{30, 30.2}}}.Wait())
	if already.Minutes != 0 || already.FromLast != 0 {
		t.Errorf("wanting the start: got %+v, want no waiting", already)
	}
	passed := must(Cooling{Start: 31, Room: 25, Want: 30.5, Readings: []Reading{{30, 30.2}}}.Wait())
	if passed.FromLast != 0 || !(passed.Minutes > 0 && passed.Minutes < 30) {
		t.Errorf("passed already: got %+v, want 0 from the last and less than 30 from the start", passed)
	}
	quick := must(Cooling{Start: 31, Room: 25, Want: 28, Readings: []Reading{{0.5, 30.9}}}.Wait())
	near(t, "a reading within the first minute", quick.Minutes, 0.5*math.Ln2/math.Log(6/5.9), 1e-9)
	unsorted := must(Cooling{Start: 31, Room: 25, Want: 28, Readings: []Reading{{60, 29.5}, {30, 30.2}}}.Wait())
	near(t, "the last is the latest", unsorted.PerHourLast, -60*unsorted.Rate*4.5, 1e-9)
}

func TestWaitSeveralReadings(t *testing.T) {
	// Least squares by brute force: no rate near the one found fits better.
	c := Cooling{Start: 31, Room: 25, Want: 28, Readings: []Reading{{30, 30.3}, {60, 29.4}, {90, 29.0}, {120, 28.4}}}
	k := must(c.Wait()).Rate
	misfit := func(k float64) float64 {
		sum := 0.0
		for _, r := range c.Readings {
			d := math.Log((r.Celsius-c.Room)/(c.Start-c.Room)) + k*r.Minutes
			sum += d * d
		}
		return sum
	}
	for off := -1e-3; off <= 1e-3; off += 1e-5 {
		if misfit(k+off) < misfit(k)-1e-15 {
			t.Fatalf("rate %v fits better than %v", k+off, k)
		}
	}
}

func TestWaitFindsATrueRate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := rapid.Float64Range(0, 40).Draw(t, "start")
		room := rapid.Float64Range(0, 40).Draw(t, "room")
		if math.Abs(start-room) < 0.1 {
			t.Skip("no difference")
		}
		k := rapid.Float64Range(1e-4, 0.02).Draw(t, "k")
		left := rapid.Float64Range(0.05, 0.95).Draw(t, "left")
		c := Cooling{Start: start, Room: room, Want: room + left*(start-room)}
		for i := range rapid.IntRange(1, 6).Draw(t, "readings") {
			m := float64(10 * (i + 1))
			c.Readings = append(c.Readings, Reading{m, room + (start-room)*math.Exp(-k*m)})
		}
		got := must(c.Wait())
		near(t, "rate over true rate", got.Rate/k, 1, 1e-7)
		near(t, "temperature after the wait", room+(start-room)*math.Exp(-k*got.Minutes), c.Want, 1e-6)
	})
}

func TestWaitRefuses(t *testing.T) {
	read := []Reading{{30, 30.2}}
	for _, c := range []struct {
		name        string
		cooling     Cooling
		field, says string
	}{
		{"want at the room's", Cooling{31, 25, 25, read}, "want", "never reached by waiting"},
		{"want beyond the room's", Cooling{31, 25, 24, read}, "want", "between the start of 31 and the room's 25"},
		{"want behind the start", Cooling{31, 25, 32, read}, "want", "lies behind"},
		{"start at the room's", Cooling{25, 25, 28, read}, "start", "waiting changes nothing"},
		{"no reading", Cooling{31, 25, 28, nil}, "read", "at least one"},
		{"reading at the start", Cooling{31, 25, 28, []Reading{{0, 30.2}}}, "read", "minutes must be more than 0"},
		{"reading before the start", Cooling{31, 25, 28, []Reading{{-5, 30.2}}}, "read", "minutes must be more than 0"},
		{"reading unchanged", Cooling{31, 25, 28, []Reading{{30, 31}}}, "read", "must lie between"},
		{"reading warmer than the start", Cooling{31, 25, 28, []Reading{{30, 31.4}}}, "read", "must lie between"},
		{"reading at the room's", Cooling{31, 25, 28, []Reading{{30, 25}}}, "read", "must lie between"},
		{"reading beyond the room's", Cooling{31, 25, 28, []Reading{{30, 24}}}, "read", "must lie between"},
		{"one bad among good", Cooling{31, 25, 28, []Reading{{30, 30.2}, {60, 32}}}, "read", "must lie between"},
		{"start too hot to be true", Cooling{310, 25, 28, read}, "start", "between -2 and 100"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := c.cooling.Wait()
			refused(t, err, c.field, c.says)
		})
	}
	for _, x := range notNumbers() {
		for field, c := range map[string]Cooling{
			"start": {x, 25, 28, read}, "room": {31, x, 28, read}, "want": {31, 25, x, read},
		} {
			_, err := c.Wait()
			refused(t, err, field, "")
		}
		for _, r := range []Reading{{x, 30}, {30, x}} {
			_, err := Cooling{31, 25, 28, []Reading{r}}.Wait()
			refused(t, err, "read", "")
		}
	}
}

func TestRoomFrom(t *testing.T) {
	// (T0 T2 - T1^2)/(T0 + T2 - 2 T1) of 70, 60, 53.
	near(t, "room", must(RoomFrom(70, 60, 53)), 36.6667, 5e-5)
	near(t, "room, warming", must(RoomFrom(20, 24, 26)), 28, 1e-12)
	_, err := RoomFrom(30, 29, 28)
	refused(t, err, "third", "second step smaller")
	_, err = RoomFrom(30, 29, 29.5)
	refused(t, err, "third", "one way")
	_, err = RoomFrom(30, 29, 29)
	refused(t, err, "third", "one way")
	_, err = RoomFrom(30, 30, 30)
	refused(t, err, "third", "one way")
	_, err = RoomFrom(30, math.NaN(), 30)
	refused(t, err, "second", "")
}
