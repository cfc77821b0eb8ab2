package board

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

// mostAlarms is how many alarm lines are shown; from the next on they fold into
// one with a number.
const mostAlarms = 5

// View draws the board in exactly h rows of w cells. The root draws the footer
// beneath it.
func (b *Board) View(w, h int) []string {
	b.look()
	if w < listWidth || h < listHeight-1 {
		return text.Frame([]string{b.nextLine(w)}, w, h)
	}
	lines := []string{b.nextLine(w), b.statusLine(w)}
	return text.Frame(append(lines, b.below(w, h-len(lines), w < tileWidth || h < tileHeight-1)...), w, h)
}

// drawing is the tanks and alarms as they were drawn last, and what for. Only
// the clock changes each second; all else is drawn anew every few seconds.
type drawing struct {
	stamp         stamp
	w, h          int
	chosen        string
	byPlace, wall bool
	lines         []string
}

// same reports whether two drawings are of the same things.
func (d drawing) same(o drawing) bool {
	return d.stamp == o.stamp && d.w == o.w && d.h == o.h && d.chosen == o.chosen && d.byPlace == o.byPlace && d.wall == o.wall
}

const redrawn = 5 * time.Second

// below draws the tanks and the alarms in h rows.
func (b *Board) below(w, h int, small bool) []string {
	now := drawing{
		stamp: stamp{b.desk.Ledger, b.desk.Ledger.Next(), b.desk.Now.Truncate(redrawn)},
		w:     w, h: h, chosen: b.chosen, byPlace: b.byPlace, wall: b.wall,
	}
	if now.same(b.drawn) {
		return b.drawn.lines
	}
	alarms := b.alarmLines(w)
	now.lines = append(b.tanksView(w, max(1, h-len(alarms)), small), alarms...)
	b.drawn = now
	return now.lines
}

// look takes in what the frame needs of the ledger, once for each change of the
// ledger or the clock.
func (b *Board) look() {
	d := b.desk
	if stamp := (stamp{d.Ledger, d.Ledger.Next(), d.Now}); stamp != b.looked {
		b.looked = stamp
		b.take()
	}
	b.order = b.sorted()
	if !slices.ContainsFunc(b.order, func(t model.TankNow) bool { return t.Tank.Name == b.chosen }) && len(b.order) > 0 {
		b.chosen = b.order[0].Tank.Name
	}
}

// stamp tells whether what a frame shows may have changed.
type stamp struct {
	ledger *model.Ledger
	next   int
	now    time.Time
}

func (b *Board) take() {
	d := b.desk
	b.alarms = d.Ledger.Alarms(d.Now)
	b.unseen = map[string]bool{}
	for _, a := range b.alarms {
		if a.Kind == model.AlarmOverdue && !a.Seen {
			b.unseen[a.Tank] = true
		}
	}
	b.next, b.into = "", ""
	if p := d.Plan(); p.Err == nil && len(p.Plan.Moves) > 0 {
		b.next, b.into = p.Name(p.Plan.Moves[0].From), p.Name(p.Plan.Moves[0].To)
	} else if t, ok := d.Ledger.NextDue(d.Now); ok {
		b.next = t.Tank.Name
	}
}

// sorted lists the overdue tanks first, then the others by rank, the empty ones
// after them: ready, washed, dirty, out of use.
func (b *Board) sorted() []model.TankNow {
	order := b.desk.Ledger.Ranked(b.desk.Now)
	slices.SortStableFunc(order, func(x, y model.TankNow) int {
		return -cmp.Compare(lateness(b.desk, x), lateness(b.desk, y))
	})
	for _, s := range []model.State{model.Ready, model.WashedDown, model.Dirty, model.Out} {
		for _, t := range b.desk.Ledger.Tanks() {
			if t.State == s {
				order = append(order, t)
			}
		}
	}
	return order
}

// lateness is how far a tank is past due where that is overdue, else 0.
func lateness(d *desk.Desk, t model.TankNow) time.Duration {
	if !d.Ledger.Overdue(t, d.Now) {
		return 0
	}
	return d.Now.Sub(d.Ledger.Due(t))
}

// nextLine answers in words which tank is next, into which, and when.
func (b *Board) nextLine(w int) string {
	d := b.desk
	clock := d.Theme.Faint.Render(d.Now.In(d.Ledger.Room().Zone).Format("Mon 2 Jan 15:04:05"))
	if d.ReadOnly != "" {
		clock = d.Theme.Action.Render(" reading along ") + " " + clock
	}
	return text.Ends(b.nextWords(), clock, w)
}

// flash is the one mark that flashes, once a second, while there is an overdue
// tank no one has seen; it rests lit. It stands in the row of the clock, which
// is drawn anew each second in any case.
func (b *Board) flash() string {
	if len(b.unseen) == 0 {
		return ""
	}
	m := b.desk.Theme.Marks
	if b.desk.Now.Nanosecond() >= int(time.Second/2) {
		return "   "
	}
	return m.Overdue + m.Overdue + " "
}

func (b *Board) nextWords() string {
	d := b.desk
	if s := d.Ledger.Session(); s != nil {
		return d.Theme.Moving.Render(" " + b.flash() + sessionWords(d.Ledger, s) + " ")
	}
	t, ok := d.Ledger.Tank(b.next)
	if !ok {
		return d.Theme.Strong.Render(" NEXT nothing: no tank holds larvae ")
	}
	words := "NEXT " + text.Clean(t.Tank.Name)
	if b.into != "" {
		words += " into " + text.Clean(b.into)
	}
	over := d.Ledger.Overdue(t, d.Now)
	words += ", " + untilWords(text.Until(d.Ledger.Due(t).Sub(d.Now), over))
	if b.into == "" && d.Ledger.InWindow(t, d.Now) {
		words += ", NO READY TANK"
	}
	style := urgencyOf(d, t).style(d.Theme)
	if urgencyOf(d, t) == calm {
		style = d.Theme.Strong
	}
	return style.Render(" " + b.flash() + words + " ")
}

// untilWords says of a time that is not overdue that it is the due time.
func untilWords(s string) string {
	if strings.HasPrefix(s, "overdue") {
		return s
	}
	return "due " + s
}

// sessionWords says where the open session stands.
func sessionWords(l *model.Ledger, s *model.SessionNow) string {
	p, ok := s.MoverPrompt(l.Room().Procedure)
	switch {
	case !ok:
		return fmt.Sprintf("SESSION %d: all moves done, close it", s.N)
	case p.Move == 0:
		return fmt.Sprintf("SESSION %d: before the first move", s.N)
	}
	return fmt.Sprintf("SESSION %d: %s into %s, move %d of %d", s.N, text.Clean(p.Leg.From), text.Clean(p.Leg.To), p.Move, len(s.Legs))
}

// statusLine names the room and counts what stands in it.
func (b *Board) statusLine(w int) string {
	d := b.desk
	count := map[model.State]int{}
	for _, t := range d.Ledger.Tanks() {
		count[t.State]++
	}
	var parts []string
	for _, s := range []model.State{model.Holding, model.Ready, model.WashedDown, model.Dirty, model.Out} {
		if count[s] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", count[s], s))
		}
	}
	plan := d.Plan()
	right := ""
	if plan.Err == nil && len(plan.Plan.Moves) > 0 && d.Ledger.Session() == nil {
		zone := d.Ledger.Room().Zone
		right = fmt.Sprintf("next session: %d tanks, done by %s", len(plan.Plan.Moves), plan.Plan.Finish.In(zone).Format("15:04"))
	}
	return text.Ends(d.Theme.Faint.Render(" "+text.Clean(d.Ledger.Room().Name)+"   "+strings.Join(parts, ", ")), d.Theme.Faint.Render(right), w)
}

// tanksView draws the tanks in h rows.
func (b *Board) tanksView(w, h int, small bool) []string {
	g := arrange(w, h, len(b.order), b.wall, small)
	tiles := make([]*model.TankNow, len(b.order))
	for i := range b.order {
		tiles[i] = &b.order[i]
	}
	if b.byPlace && g.kind != asList && g.kind != asWall {
		if places, pg, ok := placed(b.order, w, h); ok {
			tiles, g = places, pg
		}
	}
	b.grid = g
	if g.kind == asList {
		return b.listView(w, h)
	}
	var lines []string
	for row := range g.rows {
		var columns []text.Column
		for col := range g.cols {
			i := row*g.cols + col
			if i >= len(tiles) {
				break
			}
			columns = append(columns, text.Column{Lines: b.draw(tiles[i], g), W: g.tileW})
		}
		lines = append(lines, text.Beside(g.tileH, 0, columns...)...)
	}
	return text.Frame(lines, w, h)
}

func (b *Board) draw(t *model.TankNow, g grid) []string {
	if g.kind == asWall && t != nil {
		return b.wallTile(*t, g)
	}
	return b.tile(t, g)
}

// listView shows as many rows as fit around the chosen tank.
func (b *Board) listView(w, h int) []string {
	at := slices.IndexFunc(b.order, func(t model.TankNow) bool { return t.Tank.Name == b.chosen })
	from := max(0, min(at-h/2, len(b.order)-h))
	var lines []string
	for i := from; i < len(b.order) && len(lines) < h; i++ {
		lines = append(lines, b.row(b.order[i], w))
	}
	return text.Frame(lines, w, h)
}

// alarmLines are what is wrong, one line each, the unseen first; from the sixth
// on they fold into one with a number.
func (b *Board) alarmLines(w int) []string {
	d := b.desk
	shown := slices.Clone(b.alarms)
	slices.SortStableFunc(shown, func(x, y model.Alarm) int {
		switch {
		case x.Seen == y.Seen:
			return 0
		case x.Seen:
			return 1
		}
		return -1
	})
	var lines []string
	for i, a := range shown {
		if i == mostAlarms-1 && len(shown) > mostAlarms {
			lines = append(lines, d.Theme.Strong.Render(text.Fit(fmt.Sprintf(" and %d more: press a to go through them", len(shown)-i), w)))
			break
		}
		lines = append(lines, b.alarmLine(a, w))
	}
	return lines
}

func (b *Board) alarmLine(a model.Alarm, w int) string {
	d := b.desk
	line := fmt.Sprintf("%s %s: %s", d.Theme.Marks.Overdue, text.Clean(a.Tank), text.Clean(a.Text))
	if a.Seen {
		by := ""
		if a.SeenBy != "" {
			by = " by " + text.Clean(a.SeenBy)
		}
		return d.Theme.Faint.Render(text.Fit(" "+line+" (seen"+by+")", w))
	}
	return d.Theme.Strong.Render(text.Fit(" "+line, w))
}
