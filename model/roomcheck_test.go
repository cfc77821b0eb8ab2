package model

import (
	"math"
	"strings"
	"testing"
	"time"
)

func TestTheDefaultsAreSound(t *testing.T) {
	room := smallRoom(t)
	for _, wrong := range room.Check() {
		t.Error(wrong)
	}
	for _, wrong := range DefaultProcedure().Check() {
		t.Error(wrong)
	}
}

// A room made in code is held to the same as one in a file; state tests each key
// by its line.
func TestRoomCheckNamesTheKey(t *testing.T) {
	cases := map[string]struct {
		put  func(*Room)
		want []string // key paths, in order
	}{
		"no zone":                {func(r *Room) { r.Zone = nil }, []string{"timezone"}},
		"no name":                {func(r *Room) { r.Name = "" }, []string{"name"}},
		"no tanks":               {func(r *Room) { r.Tanks = nil }, []string{"tank"}},
		"not a number":           {func(r *Room) { r.House.ChangeHours = math.NaN() }, []string{"house.change_hours"}},
		"infinite":               {func(r *Room) { r.Tanks[1].Litres = math.Inf(1) }, []string{"tank[2].litres"}},
		"two at once":            {func(r *Room) { r.House.Crew, r.House.Order = 0, "" }, []string{"house.crew", "house.order"}},
		"two tanks of one name":  {func(r *Room) { r.Tanks[2].Name = "c1" }, []string{"tank[3].name"}},
		"a ration of no alga":    {func(r *Room) { r.Algae = r.Algae[1:] }, []string{"house.ration[1].share.iso"}},
		"no limit of density":    {func(r *Room) { r.House.Density = nil }, nil},
		"no ration":              {func(r *Room) { r.House.Ration = nil }, nil},
		"best as wide as growth": {func(r *Room) { r.House.Temperature.Best = r.House.Temperature.Bearable }, nil},
		"hold as low as fine":    {func(r *Room) { r.House.Temperature.StepHold = r.House.Temperature.StepFine }, nil},
		"stock of 40":            {func(r *Room) { r.House.Wash.StockPercent = 40 }, nil},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			room := smallRoom(t)
			c.put(room)
			var got []string
			for _, wrong := range room.Check() {
				got = append(got, wrong.Field)
			}
			if strings.Join(got, " ") != strings.Join(c.want, " ") {
				t.Errorf("refused keys = %q; want %q", got, c.want)
			}
		})
	}
}

func TestRoomZoneMayBeTheMachines(t *testing.T) {
	room := smallRoom(t)
	room.Zone = time.Local
	if wrong := room.Check(); len(wrong) > 0 {
		t.Error(wrong)
	}
}
