package sequence

import (
	"slices"
	"time"
)

func (p *parted) scene() *scene { return &p.scenes[len(p.path)] }

// push makes the next move of job j, or returns false where it finds no tank or
// begins too late.
func (p *parted) push(j int) bool {
	c, d := p.scene(), len(p.path)
	if c.parts[j] == 0 {
		return false
	}
	i, _ := p.rule(c, j)
	if i == noSlot || c.begins(i)-p.jobs[j].limit > p.limit {
		return false
	}
	p.scenes[d+1].copyFrom(c)
	p.act(&p.scenes[d+1], i, j, false)
	p.path = append(p.path, j)
	return true
}

// back undoes moves until d are left.
func (p *parted) back(d int) { p.path = p.path[:d] }

// replay makes the moves of order, and says whether they settle all in time; if
// not, path is as before.
func (p *parted) replay(order []int) bool {
	from := len(p.path)
	for _, j := range order {
		if !p.push(j) {
			p.back(from)
			return false
		}
	}
	if !p.settled() {
		p.back(from)
		return false
	}
	return true
}

// greedy makes the first move of order that can be made, again and again; what is
// split is moved in one go. It says whether that settles all; if not, path is as
// before.
func (p *parted) greedy(order []int) bool {
	from := len(p.path)
	for again := true; again; {
		again = slices.ContainsFunc(order, p.finish) || slices.ContainsFunc(order, p.whole)
	}
	if p.settled() {
		return true
	}
	p.back(from)
	return false
}

// whole makes all the moves of job j that are left, or none.
func (p *parted) whole(j int) bool {
	from := len(p.path)
	for p.scene().parts[j] > 0 {
		if !p.push(j) {
			p.back(from)
			return false
		}
	}
	return len(p.path) > from
}

// finish makes the moves left of a job of which some part has been moved.
func (p *parted) finish(j int) bool { return p.scene().parts[j] < p.jobs[j].parts && p.whole(j) }

// worst is the worst overrun of an order that can be made.
func (p *parted) worst(seq []int) time.Duration {
	c, worst := p.begin(false), time.Duration(0)
	for _, j := range seq {
		i, _ := p.rule(&c, j)
		worst = max(worst, p.act(&c, i, j, false)-p.jobs[j].limit)
	}
	return worst
}
