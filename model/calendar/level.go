package calendar

import (
	"cmp"
	"slices"
	"time"

	"drainboard/model"
)

// The number of search nodes [Calendar.Level] opens when it is given none: the
// fewer the larger the room and the further the calendar looks, so that the time
// it takes stays about the same.
const (
	mostNodes  = 10_000
	leastNodes = 500
	nodeWork   = 4_000_000 // nodes by tanks by days
)

// defaultNodes is that number for so many tanks and days.
func defaultNodes(tanks, days int) int {
	return max(leastNodes, min(mostNodes, nodeWork/max(1, tanks*days)))
}

// Level is a proposal by which no day is too full, or as little as can be.
type Level struct {
	// Early are the changes to be made before they fall due, in the order of the
	// days. Each one shifts all later changes of its larvae.
	Early []Early
	Days  []LevelDay // as they are then
	// Over is the days that are too full even so, OverBy their time too much in all.
	Over   int
	OverBy time.Duration
	// Best says that no other proposal has less time too much or, of those, fewer
	// early changes or, of those, fewer hours early. It is false where the nodes ran
	// out before that was proved.
	Best  bool
	Nodes int // search nodes opened
}

// Early is one change that is put ahead of its due time.
type Early struct {
	Tank  string // that holds the larvae today
	Batch string
	Day   model.Day // to which it is put ahead
	Due   time.Time // when it would fall due
	// From is when it may be made at the earliest by house.early_hours, By when it is
	// made at the latest for its move to end that day. It is reckoned at By.
	From, By time.Time
}

// Ahead is by how much the change is early at the least.
func (e Early) Ahead() time.Duration { return e.Due.Sub(e.By) }

// LevelDay is a day of the calendar when the proposal is followed.
type LevelDay struct {
	Date  model.Day
	Moves int
	Work  time.Duration
	Full  Fullness
}

// Level proposes which changes to make a little early so that no day is too full:
// none of them later than it falls due, none earlier than house.early_hours
// before. Of all proposals it takes the one with the least time too much over the
// days, with the fewest early changes of those, with the fewest hours early of
// those. It opens at most so many search nodes; 0 leaves their number to the size
// of the room.
func (c Calendar) Level(nodes int) Level {
	s := newSearch(&c, cmp.Or(nodes, defaultNodes(len(c.larvae), len(c.Days))))
	s.run()
	l := Level{Best: !s.cut, Nodes: s.nodes, OverBy: s.best.over}
	for _, p := range s.best.pulls {
		k := &s.chains[p.chain]
		from, at, due := k.window(c.horizon, p.phase, p.day, c.change.early)
		l.Early = append(l.Early, Early{k.tank, k.batch, c.Days[p.day].Date, due, from, at})
	}
	slices.SortStableFunc(l.Early, func(a, b Early) int { return a.By.Compare(b.By) })
	l.Days = s.days(&c)
	for _, d := range l.Days {
		if d.Full != Fits {
			l.Over++
		}
	}
	return l
}

// days is the days when the best proposal is followed.
func (s *search) days(c *Calendar) []LevelDay {
	days := make([]LevelDay, len(c.Days))
	for d := range days {
		moves := 0
		for i := range s.chains {
			moves += int(s.best.counts[i][d])
		}
		work := s.best.work[d]
		days[d] = LevelDay{c.Days[d].Date, moves, work, fullness(work, c.Days[d].Limit, c.horizon.left(d))}
	}
	return days
}
