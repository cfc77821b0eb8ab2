package model

import (
	"strings"
	"time"
)

// Room is what room.toml and procedure.toml say of a larval room.
type Room struct {
	Name      string
	Zone      *time.Location
	House     House
	Algae     []Alga
	Tanks     []Tank // in the order of room.toml
	Supplies  []Supply
	Procedure Procedure
}

// Tank is one covered conical tank.
type Tank struct {
	Name        string
	Litres      float64
	Row, Column int // where it stands, from 1; 0 where the room does not say
}

// Supply is a water source a temperature can be read from.
type Supply struct{ Name string }

// Alga is one food alga under its short name.
type Alga struct {
	Name string // short, as in "iso"
	Full string // as in "Isochrysis"
	// PgPerCell is the dry or organic weight of one cell in picograms, 0 where
	// the room gives none; it serves diets by weight.
	PgPerCell float64
}

// Tank finds a tank by name, whatever the case of its letters, and returns its
// place in Tanks.
func (r *Room) Tank(name string) (int, bool) {
	for i := range r.Tanks {
		if strings.EqualFold(r.Tanks[i].Name, name) {
			return i, true
		}
	}
	return -1, false
}

// Supply finds a water source by name, whatever the case of its letters.
func (r *Room) Supply(name string) (int, bool) {
	for i := range r.Supplies {
		if strings.EqualFold(r.Supplies[i].Name, name) {
			return i, true
		}
	}
	return -1, false
}

// Alga finds an alga by its short name, whatever the case of its letters.
func (r *Room) Alga(name string) (int, bool) {
	for i := range r.Algae {
		if strings.EqualFold(r.Algae[i].Name, name) {
			return i, true
		}
	}
	return -1, false
}

// tankNames lists the tanks for a refusal.
func (r *Room) tankNames() string {
	names := make([]string, len(r.Tanks))
	for i, t := range r.Tanks {
		names[i] = t.Name
	}
	return strings.Join(names, ", ")
}
