package model

import (
	"errors"
	"fmt"
	"time"

	"drainboard/model/count"
	"drainboard/model/feed"
)

// Feeding is a feed round of the room as it stands at a moment: what each tank
// that holds larvae asks for, and what it gets from the cultures at hand.
type Feeding struct {
	At       time.Time
	Cultures []CultureNow  // every alga of the room, in the order of room.toml
	Tanks    []TankFeeding // every tank that holds larvae, by rank
	Round    feed.Round    // of the tanks that are in it
}

// AtHand is what the algae room has of one alga.
type AtHand struct {
	Litres float64
	// From is the n from which on a feed was poured out of these litres: that of
	// the next entry when they were measured.
	From int
}

// LeftBasis is where the figure of the food left in a tank comes from.
type LeftBasis int

// The bases of the food left in a tank.
const (
	LeftFresh   LeftBasis = iota // the water is fresh and has not been fed: none
	LeftCounted                  // counted since its last feed
	LeftUnknown                  // fed and not counted since: reckoned as none, and said
)

// Left is the food still in the water of a tank.
type Left struct {
	Basis LeftBasis
	PerML count.Estimate // cells per mL, where counted
	At    time.Time      // of the count
	Stale bool           // the count is older than house.look_hours
}

// Reckoned is the cells per mL a feed takes to be there.
func (l Left) Reckoned() float64 { return l.PerML.Value.X }

// TankFeeding is the feed of one tank.
type TankFeeding struct {
	Tank      TankNow
	AgeDays   int
	Ration    RationBand // for its age
	HasRation bool
	Left      Left
	Fed       *FeedAt // the last feed of the water now in the tank; nil where none
	// Asked is set where the larvae are to be fed now: see Ledger.FeedAsked.
	Asked bool
	// InRound is set where the tank is asked for, lacks food and can be given some;
	// without it Feed, Part and Pours say nothing.
	InRound bool
	Feed    feed.Feed
	Part    float64     // of the cells it lacks that it gets, 0 to 1
	Pours   []feed.Pour // as a person measures them
	// Problems are what keeps the tank from its whole ration, one line each.
	Problems []string
}

// ToAdd is the cells per mL that are missing to the ration.
func (t TankFeeding) ToAdd() float64 { return max(0, t.Ration.CellsPerML-t.Left.Reckoned()) }

// Enough reports whether the ration, or more, is there already.
func (t TankFeeding) Enough() bool { return t.HasRation && t.ToAdd() == 0 }

// Litres are the pours as an entry of a feed holds them; empty where nothing is
// to be poured.
func (t TankFeeding) Litres() map[string]float64 {
	litres := map[string]float64{}
	for _, p := range t.Pours {
		if p.ML > 0 {
			litres[p.Alga] = p.ML / 1000
		}
	}
	return litres
}

// brimShare is the part of a tank above which a feed on top of a full tank is
// warned of: 4 mm in a tank 40 cm deep. A choice of ours, no source.
const brimShare = 0.01

// Overflows reports whether the feed would raise a full tank by more than a
// person overlooks. Feed.OverBrim says by how many litres.
func (t TankFeeding) Overflows() bool {
	return t.Feed.OverBrim > brimShare*t.Tank.Tank.Litres
}

// FeedAsked reports whether the larvae of a tank are to be fed in a round made
// now: never fed, in water that is fresh since, fed longer ago than half of
// house.feed_hours, or with cells counted since the feed.
func (l *Ledger) FeedAsked(t TankNow, now time.Time) bool {
	if t.Larvae == nil {
		return false
	}
	fed, here := l.fedHere(t)
	return !here || now.Sub(fed.At) > hours(l.room.House.FeedHours)/2 || countedAfter(t.Left, fed)
}

// fedHere returns the last feed of the water now in a tank.
func (l *Ledger) fedHere(t TankNow) (FeedAt, bool) {
	feeds := l.Batch(t.Larvae.Batch).Feeds
	for i := len(feeds) - 1; i >= 0 && !feeds[i].At.Before(t.Since); i-- {
		if feeds[i].Fed.Tank == t.Tank.Name {
			return feeds[i], true
		}
	}
	return FeedAt{}, false
}

// countedAfter reports whether cells left were counted after a feed.
func countedAfter(left *CellCount, fed FeedAt) bool {
	return left != nil && (left.At.After(fed.At) || left.At.Equal(fed.At) && left.N > fed.N)
}

// left says what food is still in the water of a tank. A count made before the
// last feed says nothing of what is there now.
func (l *Ledger) left(t TankNow, fed *FeedAt, now time.Time) (Left, error) {
	switch {
	case fed == nil && t.Left == nil:
		return Left{Basis: LeftFresh}, nil
	case fed != nil && !countedAfter(t.Left, *fed):
		return Left{Basis: LeftUnknown}, nil
	}
	cells, err := t.Left.Cells.PerML()
	return Left{LeftCounted, cells.PerML, t.Left.At, now.Sub(t.Left.At) > l.ReadingLimit()}, err
}

// Feeding works out the feed round of the room at a moment. hand holds the
// litres at hand by alga; of one it does not name there is enough.
//
// Each tank that is asked for gets what brings its water from the cells left to
// the ration for its age, split by cells. An alga that cannot be poured leaves
// its part out; the others keep theirs. What is short is shared as
// feed.RoundFor does. What a tank lacks stands in its Problems.
//
// It refuses litres that cannot be, naming the alga.
func (l *Ledger) Feeding(now time.Time, hand map[string]AtHand) (Feeding, error) {
	f := Feeding{At: now, Cultures: l.Cultures(now)}
	stock, err := l.stock(f.Cultures, hand)
	if err != nil {
		return f, err
	}
	density := feed.ByAlga{}
	for _, c := range stock {
		density[c.Name] = c.CellsPerML
	}
	var asked []feed.Tank
	for _, t := range l.Ranked(now) {
		tank, need := l.tankFeeding(t, density, now)
		if tank.InRound = need != nil; tank.InRound {
			asked = append(asked, *need)
		}
		f.Tanks = append(f.Tanks, tank)
	}
	f.Round, err = feed.RoundFor(asked, stock, feed.Plain)
	f.deal()
	return f, err
}

// stock is the cultures that can be poured, as the round takes them.
func (l *Ledger) stock(cultures []CultureNow, hand map[string]AtHand) ([]feed.Culture, error) {
	kept := l.room.House.Feeding.ReserveShare / 100
	for alga := range hand {
		if _, known := l.room.Alga(alga); !known {
			return nil, wrong(alga, "is not an alga of this room (%s)", l.room.algaNames())
		}
	}
	var stock []feed.Culture
	for _, c := range cultures {
		if c.Problem != "" {
			continue
		}
		at, limited := hand[c.Alga.Name]
		if limited && !(at.Litres >= 0 && at.Litres <= 1e6) {
			return nil, wrong(c.Alga.Name, "%s L cannot be at hand; give litres of 0 or more", plain(at.Litres))
		}
		one := feed.Culture{Name: c.Alga.Name, CellsPerML: c.Cells.PerML.Value.X, Unlimited: !limited}
		if limited {
			one.Litres = max(0, at.Litres*(1-kept)-l.poured(c.Alga.Name, at.From))
		}
		stock = append(stock, one)
	}
	return stock, nil
}

// poured is the litres of an alga fed by the entries from n on.
func (l *Ledger) poured(alga string, from int) float64 {
	total := 0.0
	for _, b := range l.Batches() {
		for _, f := range b.Feeds {
			if f.N >= from {
				total += f.Fed.Litres[alga]
			}
		}
	}
	return total
}

// tankFeeding is what one tank asks for, and its need where it can be fed.
func (l *Ledger) tankFeeding(t TankNow, density feed.ByAlga, now time.Time) (TankFeeding, *feed.Tank) {
	f := TankFeeding{Tank: t, Asked: l.FeedAsked(t, now)}
	f.AgeDays, _ = l.Age(t, now)
	if fed, ok := l.fedHere(t); ok {
		f.Fed = &fed
	}
	var err error
	if f.Left, err = l.left(t, f.Fed, now); err != nil {
		f.Problems = append(f.Problems, "cells left: "+err.Error())
		return f, nil
	}
	if f.Ration, f.HasRation = l.room.House.RationAt(f.AgeDays); !f.HasRation {
		f.Problems = append(f.Problems, l.noRation())
		return f, nil
	}
	if !f.Asked {
		return f, nil
	}
	need, err := f.need(density)
	if err != nil {
		f.Problems = append(f.Problems, err.Error())
		return f, nil
	}
	return f, need
}

// noRation says why there is none at an age that no band covers.
func (l *Ledger) noRation() string {
	if bands := l.room.House.Ration; len(bands) > 0 {
		return fmt.Sprintf("no ration before day %d", bands[0].FromDay)
	}
	return "no ration: room.toml has no [[house.ration]]"
}

// need is what the tank asks of the cultures that can be poured, nil where it
// has enough. Of a mixed diet the parts of the others are left out, and named.
func (f *TankFeeding) need(density feed.ByAlga) (*feed.Tank, error) {
	f.Part = 1
	if f.Enough() {
		return nil, nil
	}
	whole, share := feed.ByAlga(f.Ration.Share).Sum(), feed.ByAlga{}
	for _, alga := range feed.ByAlga(f.Ration.Share).Names() {
		part := f.Ration.Share[alga]
		if _, pourable := density[alga]; part <= 0 || pourable {
			share[alga] = part
			continue
		}
		f.Problems = append(f.Problems, fmt.Sprintf("%s, %.0f %% of its ration, cannot be poured", alga, 100*part/whole))
	}
	if whole > 0 {
		f.Part = share.Sum() / whole
	}
	if len(share) == 0 && whole > 0 {
		return nil, errNoAlga
	}
	there := f.Left.Reckoned()
	need := feed.Need{Litres: f.Tank.Tank.Litres, Want: there + f.ToAdd()*f.Part, There: there, Share: share}
	if _, err := feed.RationFor(need, density, feed.Plain); err != nil {
		return nil, err
	}
	return &feed.Tank{Name: f.Tank.Tank.Name, Need: need, CapacityLitres: f.Tank.Tank.Litres}, nil
}

// errNoAlga is the problem of a tank of which no alga can be poured.
var errNoAlga = errors.New("so nothing can be poured")

// deal gives each tank its feed of the round.
func (f *Feeding) deal() {
	pours := map[string][]feed.Pour{}
	for _, p := range f.Round.Pours() {
		pours[p.Tank] = append(pours[p.Tank], p)
	}
	next := 0
	for i := range f.Tanks {
		t := &f.Tanks[i]
		if !t.InRound || next >= len(f.Round.Tanks) {
			continue
		}
		t.Feed = f.Round.Tanks[next]
		t.Part *= t.Feed.Part
		t.Pours = pours[t.Feed.Tank]
		next++
	}
}
