package batch

import (
	"fmt"
	"slices"
	"testing"

	"drainboard/model"
)

func TestStoryInWords(t *testing.T) {
	warm, cool, cold, mesh, half := 28.0, 26.0, 23.5, 150.0, 0.5
	for _, c := range []struct {
		name  string
		fact  model.Fact
		wants []string
	}{
		{"a move over a sieve, fine", &model.Moved{From: "K2", To: "K3", MeshUM: &mesh, FromCelsius: &warm, ToCelsius: &cool}, []string{"K2 → K3", "150 µm", "28.0 → 26.0", "2.0 °C fine"}},
		{"a difference to be held", &model.Moved{From: "K2", To: "K3", FromCelsius: &warm, ToCelsius: &cold, Why: "pump\nout"}, []string{"4.5 °C OVER the 4 °C hold (pump out)"}},
		{"no temperatures", &model.Moved{From: "K2", To: "K3"}, []string{"K2 → K3", "not known"}},
		{"a part", &model.Moved{From: "K2", To: "K3", Share: &half}, []string{"50 % of K2 → K3"}},
		{"a look", &model.Look{Tank: "K2", Golden: &half, Swim: model.SwimPoor, Dead: &warm, Text: "clumps"}, []string{"0.5 %  poor   28.0 %  clumps"}},
		{"feeds", &model.Fed{Tank: "K2", Litres: map[string]float64{"iso": 0.35, "chaet": 0.1}}, []string{"1 feed, in all iso 0.35 L, chaet 0.10 L; longest pause 5 d 0 h, the last 5 d 0 h ago"}},
		{"water", &model.Temperature{Tank: "K2", Celsius: 32.5}, []string{"32.5 to 32.5 °C in 1 reading, 1 NOT within the bearable 25 to 31.5 °C"}},
		{"stocked", &model.Noted{Text: "nothing of it"}, []string{"K2 Sun 15 Nov 09:14, 10 000 larvae", "K2 15 Nov (10.0 d so far)"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, d := counted(t, larvae(10000))
			s.page = storyPage
			at(t, d, 5, c.fact)
			shows(t, frame(s), c.wants...)
		})
	}
}

// A batch is split, joined, moved back and ended: each stay once.
func TestStays(t *testing.T) {
	s, d := counted(t, nil)
	at(t, d, 9, &model.Moved{From: "K2", To: "K3", Share: larvae(0.5)})
	at(t, d, 8, &model.Moved{From: "K2", To: "K4"})
	at(t, d, 7, &model.Moved{From: "K4", To: "K3", Join: true})
	at(t, d, 6.5, &model.Washed{Tank: "K2"})
	at(t, d, 6.4, &model.Filled{Tank: "K2"})
	at(t, d, 6, &model.Moved{From: "K3", To: "K2"})
	at(t, d, 1, &model.Ended{Tank: "K2", Why: model.Settled})
	var got []string
	for _, x := range stays(s.now()) {
		got = append(got, fmt.Sprintf("%s %.0f", x.tank, x.to.Sub(x.from).Hours()/24))
	}
	if want := []string{"K2 2", "K3 3", "K4 1", "K2 5"}; !slices.Equal(got, want) {
		t.Errorf("stays %v; want %v", got, want)
	}
}
