package session

import (
	"strings"
	"testing"
	"time"

	"drainboard/model"
)

func TestFill(t *testing.T) {
	f := figures{"from": "C5", "to": "C1", "acid_ml": "40"}
	for _, c := range []struct{ name, in, want string }{
		{"nothing to fill", "Put the lid on", "Put the lid on"},
		{"one", "Siphon {from} onto the sieve", "Siphon C5 onto the sieve"},
		{"several, one at each end", "{from} into {to}: {acid_ml}", "C5 into C1: 40"},
		{"a name it does not know stays", "Call {whom}", "Call {whom}"},
		{"unknown before a known one", "{whom} {to}", "{whom} C1"},
		{"open brace at the end", "Into {to", "Into {to"},
		{"brace before a name", "{{to}", "{C1"},
		{"nothing in braces", "{} {to}", "{} C1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := f.fill(c.in); got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// TestFiguresOfTheRoom checks the figures of a session of three moves. The acid is
// 10 mL to a litre (common practice, no source): 4 L take 40 mL and 3.96 L of
// water, the bin of 20 L takes 200 mL and 19.8 L.
func TestFiguresOfTheRoom(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.press("enter", "enter", "enter", "enter", "d1", "enter")
	at := c.screen().now()
	f := moverFigures(c.desk.Ledger, at.session, at.prompt, c.desk.Now)
	for name, want := range map[string]string{
		"from": "D1", "to": "C3", "meshes": "200 or 250", "sieves": "105, 200",
		"acid_ml": "40", "water_litres": "3.96", "bin_acid_ml": "200", "bin_water_litres": "19.8",
		"step_fine": "2", "step_hold": "4", "from_celsius": "27.9",
	} {
		if got := f[name]; got != want {
			t.Errorf("{%s} = %q, want %q", name, got, want)
		}
	}
	w := washFigures(c.desk.Ledger, at.session, at.queue[0], c.desk.Now)
	if w["tank"] != "C4" || w["from_celsius"] != "28.1" {
		t.Errorf("washer: tank %q to %q °C, want C4 to the 28.1 of C2, which comes into it", w["tank"], w["from_celsius"])
	}
	if got := aimWords(c.desk.Ledger, at.session, "D1", c.desk.Now); got != "27 to 29" {
		t.Errorf("a tank nothing comes into is filled to %q, want the best band", got)
	}
	if got := aimWords(c.desk.Ledger, at.session, "C4", c.desk.Now.Add(48*time.Hour)); got != "27 to 29" {
		t.Errorf("by a reading two days old: %q, want the best band", got)
	}
}

func TestEveryStepOfTheDefaultProcedureIsFilled(t *testing.T) {
	c := newCrew(t, testRoom(t))
	c.press("enter", "enter", "enter", "enter")
	at := c.screen().now()
	f := moverFigures(c.desk.Ledger, at.session, at.prompt, c.desk.Now)
	for k, v := range washFigures(c.desk.Ledger, at.session, at.queue[0], c.desk.Now) {
		if f[k] == "" || f[k] == "?" {
			f[k] = v
		}
	}
	for _, step := range model.DefaultProcedure() {
		if got := f.fill(step.Text + " " + step.Why); strings.ContainsAny(got, "{}?") && !strings.ContainsAny(step.Text+step.Why, "?") {
			t.Errorf("%s: %q", step.Name, got)
		}
	}
}

func TestTankTyped(t *testing.T) {
	room := testRoom(t)
	for _, c := range []struct{ name, typed, want, refusal string }{
		{"name", "C3", "C3", ""},
		{"small letters", " d1 ", "D1", ""},
		{"digits of one tank", "3", "C3", ""},
		{"leading zero", "04", "C4", ""},
		{"digits of two", "1", "", "1 fits several tanks; type the name, or a point and its place: .1 C1, .5 D1"},
		{"digits of none", "9", "", "no tank has the number 9"},
		{"place in the list", ".5", "D1", ""},
		{"place with the comma of a number pad", ",5", "D1", ""},
		{"place beyond the list", ".7", "", "the room's list has 6 tanks"},
		{"no tank at all is given back", "C9", "C9", ""},
		{"nothing", "", "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := tankTyped(room, c.typed)
			if got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
			if (err == nil) != (c.refusal == "") || err != nil && !strings.Contains(err.Error(), c.refusal) {
				t.Errorf("refusal %v, want %q", err, c.refusal)
			}
		})
	}
	room.Tanks = append(room.Tanks, model.Tank{Name: "7", Litres: 10}, model.Tank{Name: "E7", Litres: 10})
	if got, err := tankTyped(room, "7"); got != "7" || err != nil {
		t.Errorf("a tank called 7: got %q, %v", got, err)
	}
}

func TestReasonTyped(t *testing.T) {
	list := []string{"hands full", "not at hand"}
	for typed, want := range map[string]string{"1": "hands full", "2": "not at hand", "3": "3", "0": "0", "it leaks": "it leaks", "": ""} {
		if got := reasonTyped(list, typed); got != want {
			t.Errorf("reasonTyped(%q) = %q, want %q", typed, got, want)
		}
	}
}

func TestPlain(t *testing.T) {
	for x, want := range map[float64]string{40: "40", 3.96: "3.96", 19.8: "19.8", 0: "0", 100: "100", 0.0004: "0", -0.0001: "0", 35.6375: "35.638"} {
		if got := plain(x); got != want {
			t.Errorf("plain(%v) = %q, want %q", x, got, want)
		}
	}
}
