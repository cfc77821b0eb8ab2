package sequence

import "time"

// floor is the state of the session between two moves: when the mover is free
// and which empty tanks are ready or will be. Times are durations since Now.
//
// A tank in slots carries the time it is ready if the washing goes on without
// interruption. With two people that time is final. With one, each move puts off
// what was not yet ready by the time the move takes; the start of a move is always
// a moment when nothing is half prepared.
type floor struct {
	free     time.Duration // the mover has finished
	tail     time.Duration // every tank emptied so far is ready
	standing int           // slots[:standing] stood ready when the session began
	slots    []slot        // after standing: in the order emptied, so ready in that order
}

// slot is an empty tank.
type slot struct {
	tank  int
	ready time.Duration
}

// open returns the floor when the session begins. With all false, tanks no source
// fits in are prepared in their turn but not kept.
func (r *room) open(all bool) floor {
	var f floor
	for _, tank := range r.readyTanks() {
		if all || r.useful[tank] {
			f.slots = append(f.slots, slot{tank: tank})
		}
	}
	f.standing = len(f.slots)
	for _, tank := range r.emptiedTanks() {
		f.tail += r.prepare[tank]
		if all || r.useful[tank] {
			f.slots = append(f.slots, slot{tank: tank, ready: f.tail})
		}
	}
	return f
}

// pick returns the slot the rule chooses for the job, or -1 when no empty tank
// fits. A tank that stood ready comes before any made ready in the session: its
// difference may be known, and it has been ready longer.
func (r *room) pick(f *floor, j int) int {
	jb := &r.jobs[j]
	return f.choose(jb.fits, jb.prefer)
}

// choose is the rule itself: of the slots whose tanks fit.
func (f *floor) choose(fits []bool, prefer []int) int {
	best := -1
	for i := range f.slots[:f.standing] {
		tank := f.slots[i].tank
		if fits[tank] && (best < 0 || prefer[tank] < prefer[f.slots[best].tank]) {
			best = i
		}
	}
	if best >= 0 {
		return best
	}
	for i := f.standing; i < len(f.slots); i++ {
		if fits[f.slots[i].tank] {
			return i
		}
	}
	return -1
}

// start is when a move into slot i begins.
func (f *floor) start(i int) time.Duration { return max(f.free, f.slots[i].ready) }

// move makes the job's move into slot i and returns its start.
func (r *room) move(f *floor, i, j int, all bool) time.Duration {
	start := f.start(i)
	f.fill(i)
	r.work(f, start, r.jobs[j].move)
	r.vacate(f, j, all)
	return start
}

// fill takes slot i: its tank holds larvae now.
func (f *floor) fill(i int) {
	f.slots = append(f.slots[:i], f.slots[i+1:]...)
	if i < f.standing {
		f.standing--
	}
}

// work is the mover busy for a while from start on.
func (r *room) work(f *floor, start, took time.Duration) {
	if r.Crew == 1 {
		f.putOff(start, took)
	}
	f.free = start + took
}

// vacate leaves the job's tank empty, to be made ready in its turn.
func (r *room) vacate(f *floor, j int, all bool) {
	jb := &r.jobs[j]
	f.tail = max(f.tail, f.free) + jb.prepare
	if all || r.useful[jb.tank] {
		f.slots = append(f.slots, slot{tank: jb.tank, ready: f.tail})
	}
}

// putOff delays what is not ready at start, as one person moves for a while.
func (f *floor) putOff(start, by time.Duration) {
	for i := range f.slots {
		if f.slots[i].ready > start {
			f.slots[i].ready += by
		}
	}
	if f.tail > start {
		f.tail += by
	}
}

// copyFrom makes f equal to g, keeping f's memory.
func (f *floor) copyFrom(g *floor) {
	slots := append(f.slots[:0], g.slots...)
	*f = *g
	f.slots = slots
}
