package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/board"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// Options are what the command hands to the interface.
type Options struct {
	// Clock tells the time; it is asked once a tick.
	Clock func() time.Time
	// Follow takes in what another program has entered and returns the ledger
	// with it. It is asked once a second and must be quick when nothing is new.
	// It is nil for the writer.
	Follow func() (*model.Ledger, error)
	// Notices are lines to be shown at the start, such as a torn entry set aside.
	Notices []string
	// Bell rings the terminal's bell a number of times; nil keeps it silent.
	Bell func(times int)
}

// App is the root of the interface.
type App struct {
	desk    *desk.Desk
	options Options
	w, h    int

	stack  []screen.Screen // the one shown is the last
	cover  cover           // what lies over it, nil for nothing
	toast  toast
	guard  keys.Guard
	locked bool      // F9: keys are dead for wiping
	stop   time.Time // when ctrl+c was pressed first

	pressed time.Time // when a key was pressed last
}

// cover is a small window over the screen: help, the tank finder, a question.
type cover interface {
	update(a *App, msg tea.KeyMsg) tea.Cmd
	view(a *App, w, h int) []string
	keys() keys.Table
	capturing() bool
}

// toast is a line shown for a while in the place of the footer.
type toast struct {
	screen.Toast
	until time.Time
}

// New returns the interface of a desk, the board on top.
func New(d *desk.Desk, o Options) *App {
	a := &App{desk: d, options: o, stack: []screen.Screen{board.New(d)}}
	if len(o.Notices) > 0 {
		a.cover = newNotices(o.Notices)
	}
	return a
}

// tick brings the time. The mark of an unseen overdue tank flashes once a
// second, so the clock goes in half seconds.
type tick time.Time

const beat = time.Second / 2

func (a *App) nextTick() tea.Cmd {
	now := a.options.Clock()
	wait := beat - time.Duration(now.Nanosecond())%beat
	return tea.Tick(wait, func(time.Time) tea.Msg { return tick(a.options.Clock()) })
}

// Init starts the clock.
func (a *App) Init() tea.Cmd { return a.nextTick() }

// Update takes a message: the size, the time, a key, or what a screen asks for.
func (a *App) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		a.w, a.h = msg.Width, msg.Height
		return a, nil
	case tick:
		return a, a.onTick(time.Time(msg))
	case tea.KeyMsg:
		return a, a.onKeys(msg)
	case screen.Open:
		return a, a.open(msg)
	case screen.Back:
		a.back()
		return a, nil
	case screen.Quit:
		return a, a.quit()
	case screen.Toast:
		a.say(msg)
		return a, nil
	case screen.Beep:
		return a, a.beep(msg.Times)
	}
	return a, a.toTop(msg)
}

func (a *App) top() screen.Screen { return a.stack[len(a.stack)-1] }

// toTop hands a message to the screen that is shown.
func (a *App) toTop(msg tea.Msg) tea.Cmd {
	next, cmd := a.top().Update(msg)
	a.stack[len(a.stack)-1] = next
	return cmd
}

// calm is how long after a key the clock keeps still, so that what the key
// changed is painted by itself and at once.
const calm = 100 * time.Millisecond

func (a *App) onTick(now time.Time) tea.Cmd {
	if since := now.Sub(a.pressed); since >= 0 && since < calm {
		return tea.Tick(calm-since, func(time.Time) tea.Msg { return tick(a.options.Clock()) })
	}
	whole := now.Truncate(time.Second).After(a.desk.Now)
	a.desk.Now = now
	if whole && a.options.Follow != nil {
		a.follow()
	}
	return tea.Batch(a.nextTick(), a.toTop(screen.Tick{Now: now}))
}

// follow shows what another program has entered meanwhile.
func (a *App) follow() {
	l, err := a.options.Follow()
	if err != nil {
		a.say(screen.Toast{Text: "reading along: " + err.Error(), Mood: screen.Refused})
		return
	}
	a.desk.Ledger = l
}

func (a *App) say(t screen.Toast) {
	a.toast = toast{t, a.desk.Now.Add(6 * time.Second)}
}

// back closes the screen that is shown; the board stays.
func (a *App) back() {
	if len(a.stack) > 1 {
		a.stack = a.stack[:len(a.stack)-1]
	}
}

// quit asks first while a change session is open.
func (a *App) quit() tea.Cmd {
	if s := a.desk.Ledger.Session(); s != nil && a.desk.ReadOnly == "" {
		a.cover = newQuestion("A change session is open. Leave the program?",
			"Everything answered is saved; the session goes on at the same step.",
			func(a *App) tea.Cmd { return tea.Quit })
		return nil
	}
	return tea.Quit
}

// View draws the whole terminal, exactly as wide and as high.
func (a *App) View() string {
	if a.w < 1 || a.h < 1 {
		return ""
	}
	lines := a.lines()
	out := make([]byte, 0, len(lines)*(a.w+16))
	for i, line := range lines {
		if i > 0 {
			out = append(out, '\n')
		}
		if a.desk.Theme.ASCII {
			line = text.ASCII(line)
		}
		out = append(out, line...)
	}
	return string(out)
}

func (a *App) lines() []string {
	body := max(1, a.h-1)
	lines := a.top().View(a.w, body)
	if a.cover != nil {
		lines = a.cover.view(a, a.w, body)
	}
	lines = text.Frame(lines, a.w, body)
	if a.h > 1 {
		lines = append(lines, a.footer())
	}
	return lines
}

// footer is the last row: a message for a while, else at most seven keys.
func (a *App) footer() string {
	th := a.desk.Theme
	switch {
	case a.locked:
		return th.Action.Render(text.Fit(" KEYS LOCKED for wiping: F9 unlocks", a.w))
	case a.desk.Now.Before(a.toast.until):
		style := th.Plain
		switch a.toast.Mood {
		case screen.Saved:
			style = th.Saved
		case screen.Refused:
			style = th.Error
		}
		return style.Render(text.Fit(" "+text.Clean(a.toast.Text), a.w))
	}
	return screen.Footer(a.table(), th, a.w)
}

// table is what the keys do now, here and everywhere.
func (a *App) table() keys.Table {
	if a.cover != nil {
		return a.cover.keys()
	}
	t := everywhere()
	if a.top().Capturing() {
		t = t.Off(keys.Find, "text is being typed").Off(keys.Undo, "text is being typed")
	}
	return a.top().Keys().With(t)
}

func everywhere() keys.Table {
	t := keys.Everywhere()
	t.Bindings = append(t.Bindings, keys.Binding{
		Action: lock, Keys: []string{"f9"}, Long: "Lock the keys to wipe the keyboard; F9 again unlocks.",
	})
	return t
}

const lock keys.Action = "lock"

// beep rings the bell.
func (a *App) beep(times int) tea.Cmd {
	if a.options.Bell == nil || times < 1 {
		return nil
	}
	return func() tea.Msg {
		a.options.Bell(times)
		return nil
	}
}
