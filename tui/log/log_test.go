package log

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/desk/desktest"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/screen/screentest"
)

func logOf(t testing.TB) (*Log, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Desk(t)
	return New(d, "").(*Log), d, k
}

// amended is the log of the invented room with an entry that is corrected and one
// that is void; their corrections are the last two entries.
func amended(t testing.TB) (*Log, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	l, d, k := logOf(t)
	desktest.Enter(t, d, 0, &model.Temperature{Tank: "K3", Celsius: 27.2})
	desktest.Enter(t, d, 0, &model.Temperature{Tank: "K1", Celsius: 29.1})
	n := d.Ledger.Next() - 1
	desktest.Enter(t, d, 0, &model.Corrected{Entry: n - 1, Why: "misread", Set: map[string]any{"celsius": 27.4}})
	desktest.Enter(t, d, 0, &model.Corrected{Entry: n, Why: "wrong tank", Void: true})
	return l, d, k
}

// typed presses keys and types words, and runs what the screen sends itself.
func typed(t testing.TB, l *Log, words ...string) []tea.Msg {
	t.Helper()
	var out []tea.Msg
	for _, w := range words {
		keys := []string{w}
		if erased, ok := strings.CutPrefix(w, "erase "); ok {
			keys = slices.Repeat([]string{"backspace"}, len(erased))
		}
		_, sent := screentest.Type(l, keys...)
		out = append(out, settle(l, sent)...)
	}
	return out
}

// eraser is so many times Backspace.
func eraser(n int) string { return "erase " + strings.Repeat("x", n) }

// settle hands the screen its own messages until the search is done, and gives
// the others.
func settle(l *Log, sent []tea.Msg) []tea.Msg {
	var out []tea.Msg
	for len(sent) > 0 {
		msg := sent[0]
		sent = sent[1:]
		if _, own := msg.(goOn); !own {
			out = append(out, msg)
			continue
		}
		_, cmd := l.Update(msg)
		sent = append(sent, screentest.Run(cmd)...)
	}
	return out
}

func frame(l *Log) string { return screentest.Join(l.View(110, 30)) }

func last(d *desk.Desk) model.Entry {
	entries := d.Ledger.Entries()
	return entries[len(entries)-1]
}

func TestListIsNewestFirst(t *testing.T) {
	l, d, _ := amended(t)
	all := d.Ledger.Next() - 1
	rows := l.View(110, 12)
	for i, want := range []string{"LOG", "wrong tank", "misread", "VOID  K1 29.1", "CORRECTED  K3 27.2"} {
		if !strings.Contains(rows[i], want) {
			t.Errorf("row %d is %q; want %q in it", i, rows[i], want)
		}
	}
	if !strings.Contains(rows[1], fmt.Sprint(all)) || !strings.Contains(rows[1], "Wed 25 Nov 09:14  KT") {
		t.Errorf("the first row is %q; want entry %d with its moment and initials", rows[1], all)
	}
}

func TestPointerStaysWithItsEntry(t *testing.T) {
	l, d, _ := logOf(t)
	l.View(80, 20)
	typed(t, l, "down", "down")
	chosen := l.list.chosen
	desktest.Enter(t, d, 0, &model.Noted{Text: "one more"})
	l.View(80, 20)
	if got := l.at(l.list.index); got != chosen {
		t.Errorf("the pointer is on entry %d; want it still on %d", got, chosen)
	}
	typed(t, l, "end")
	if got := l.at(l.list.index); got != 1 {
		t.Errorf("End goes to entry %d; want 1", got)
	}
	typed(t, l, "home")
	if got := l.at(l.list.index); got != d.Ledger.Next()-1 {
		t.Errorf("Home goes to entry %d; want the newest", got)
	}
}

// found are the entries a search lists, worded.
func found(l *Log) []string {
	var out []string
	for i := range l.count() {
		out = append(out, model.Sentence(l.entry(l.at(i)).Fact))
	}
	return out
}

func TestSearch(t *testing.T) {
	l, d, _ := logOf(t)
	desktest.Enter(t, d, 0, &model.Noted{Text: "Header filter changed"})
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K1", Text: "header near K12"})
	cases := map[string]struct {
		typed string
		holds func(model.Entry) bool // the obvious way, entry by entry
	}{
		"a tank":     {"k1", func(e model.Entry) bool { return model.SpeaksOf(e.Fact, "K1") }},
		"a kind":     {"sizes", func(e model.Entry) bool { return e.Kind() == model.KindSizes }},
		"initials":   {"tr", func(e model.Entry) bool { return e.By == "TR" || contains(e, "tr") }},
		"a sentence": {"HEADER", func(e model.Entry) bool { return contains(e, "header") }},
		"a date": {"2026-11-20", func(e model.Entry) bool {
			return strings.HasPrefix(e.At.In(d.Ledger.Room().Zone).Format(time.RFC3339), "2026-11-20")
		}},
		"a day": {"11-20", func(e model.Entry) bool {
			return strings.HasPrefix(e.At.In(d.Ledger.Room().Zone).Format(time.RFC3339), "2026-11-20")
		}},
		"two words": {"k3 moved", func(e model.Entry) bool { return e.Kind() == model.KindMoved && model.SpeaksOf(e.Fact, "K3") }},
		"a figure":  {"27.4", func(e model.Entry) bool { return contains(e, "27.4") }},
		"nothing":   {"zzz", func(model.Entry) bool { return false }},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			typed(t, l, "s", c.typed)
			var want []string
			for _, e := range slices.Backward(d.Ledger.Entries()) {
				if c.holds(e) {
					want = append(want, model.Sentence(e.Fact))
				}
			}
			if got := found(l); !slices.Equal(got, want) {
				t.Errorf("found %d, want %d:\n%q\n%q", len(got), len(want), got, want)
			}
			if name != "nothing" && len(want) == 0 {
				t.Error("the case finds nothing at all")
			}
			typed(t, l, "esc")
		})
	}
	typed(t, l, "s", fmt.Sprint(3))
	if got := l.at(l.count() - 1); got > 3 {
		t.Errorf("searching for 3 ends at entry %d; want entry 3 among the found", got)
	}
}

func contains(e model.Entry, s string) bool {
	return strings.Contains(strings.ToLower(model.Sentence(e.Fact)), s) || strings.Contains(string(e.Kind()), s)
}

func TestSearchKeys(t *testing.T) {
	l, d, _ := logOf(t)
	typed(t, l, "/", "look")
	if !l.Capturing() {
		t.Fatal("the search does not capture letters")
	}
	typed(t, l, "enter")
	if l.Capturing() || !strings.Contains(frame(l), "search: look") {
		t.Errorf("Enter does not go to the list:\n%s", frame(l))
	}
	typed(t, l, "down", "enter")
	if l.page == nil || l.entry(l.page.n).Kind() != model.KindLook {
		t.Fatal("Enter in the found list opens no look")
	}
	first := l.page.n
	typed(t, l, "right")
	if l.entry(l.page.n).Kind() != model.KindLook || l.page.n >= first {
		t.Errorf("older goes from entry %d to %d, a %s", first, l.page.n, l.entry(l.page.n).Kind())
	}
	typed(t, l, "left")
	if l.page.n != first {
		t.Errorf("newer goes back to entry %d; want %d", l.page.n, first)
	}
	typed(t, l, "esc", "esc")
	if l.seek.on() || l.count() != d.Ledger.Next()-1 {
		t.Error("Esc in the list keeps the search")
	}
	l.View(80, 20)
	if l.at(l.list.index) != first {
		t.Errorf("the pointer is on entry %d; want %d, which was read", l.at(l.list.index), first)
	}
	if sent := typed(t, l, "esc"); len(sent) != 1 || sent[0] != (screen.Back{}) {
		t.Errorf("sent %v; want Back", sent)
	}
	typed(t, l, "s", "x", "backspace", "backspace")
	if l.seek.typing {
		t.Error("Backspace in an empty search does not close it")
	}
}

// A long search goes on in pieces, from messages of its own and, where those went
// to another screen, from the clock; letters typed meanwhile begin it anew.
func TestSearchInPieces(t *testing.T) {
	l, d, _ := many(t, 3*piece)
	all := d.Ledger.Next() - 1
	_, sent := screentest.Type(l, "s", "r", "e")
	if len(l.seek.hits) != piece || l.seek.done() {
		t.Fatalf("the first piece found %d, done %v; want %d and not", len(l.seek.hits), l.seek.done(), piece)
	}
	if !strings.Contains(frame(l), "searching") {
		t.Errorf("it is not said that the search goes on:\n%s", frame(l))
	}
	l.Update(sent[len(sent)-2]) // asked for before the second letter
	if len(l.seek.hits) != piece {
		t.Errorf("an old piece was looked at: %d found", len(l.seek.hits))
	}
	_, cmd := l.Update(screen.Tick{Now: d.Now})
	settle(l, screentest.Run(cmd))
	if !l.seek.done() || len(l.seek.hits) != all || !slices.IsSortedFunc(l.seek.hits, func(a, b int) int { return b - a }) {
		t.Errorf("found %d of %d, done %v", len(l.seek.hits), all, l.seek.done())
	}
}

func TestSearchFollowsTheLedger(t *testing.T) {
	l, d, _ := logOf(t)
	typed(t, l, "s", "airlift", "enter")
	if l.count() != 0 || !strings.Contains(frame(l), "nothing found") {
		t.Fatalf("frame\n%s", frame(l))
	}
	desktest.Enter(t, d, 0, &model.Noted{Text: "airlift turned down"})
	if !strings.Contains(frame(l), "airlift turned down") {
		t.Errorf("a new entry is not found:\n%s", frame(l))
	}
}

func TestEntryInFull(t *testing.T) {
	l, d, _ := amended(t)
	n := d.Ledger.Next() - 1
	for entry, want := range map[int][]string{
		n - 3: {"temperature", "CORRECTED", "K3 27.2 °C", "Wed 25 Nov 2026 09:14:05 -05:00", "at once", "KT", "celsius          27.2 °C", "Reads now", "K3 27.4 °C", fmt.Sprint("entry ", n-1), "misread"},
		n - 2: {"VOID", "K1 29.1 °C", fmt.Sprint("entry ", n), "wrong tank"},
		n - 1: {"corrected", "set              celsius 27.4", "of which it speaks", "K3 27.2 °C"},
	} {
		l.page = &page{n: entry}
		for _, w := range want {
			if f := frame(l); !strings.Contains(f, w) {
				t.Errorf("entry %d lacks %q:\n%s", entry, w, f)
			}
		}
	}
}

// openEntry reads the entry so many rows from the newest.
func openEntry(t *testing.T, l *Log, row int) {
	t.Helper()
	l.View(80, 23)
	for range row {
		typed(t, l, "down")
	}
	typed(t, l, "enter")
	if l.page == nil {
		t.Fatal("no entry is open")
	}
}

func TestVoid(t *testing.T) {
	l, d, k := logOf(t)
	desktest.Enter(t, d, 0, &model.Noted{Text: "a slip"})
	n := d.Ledger.Next() - 1
	openEntry(t, l, 0)
	typed(t, l, "x", "enter")
	if l.slip == nil || !strings.Contains(frame(l), "must not be empty") && !strings.Contains(frame(l), "is missing") {
		t.Fatalf("void without a reason:\n%s", frame(l))
	}
	k.Fail = errors.New("no space left on device")
	typed(t, l, "written twice", "enter")
	if l.slip == nil || !strings.Contains(frame(l), "not saved: no space left") || !strings.Contains(frame(l), "written twice") {
		t.Fatalf("a failing disk:\n%s", frame(l))
	}
	k.Fail = nil
	sent := typed(t, l, "enter")
	if got := model.Sentence(last(d).Fact); got != fmt.Sprintf("entry %d void (written twice)", n) {
		t.Errorf("entered %q", got)
	}
	if toast := sent[0].(screen.Toast); toast.Mood != screen.Saved {
		t.Errorf("sent %v", sent)
	}
	if f := frame(l); !strings.Contains(f, "VOID") {
		t.Errorf("the entry that is read is not void:\n%s", f)
	}
	if sent := typed(t, l, "x"); l.slip != nil || !strings.Contains(sent[0].(screen.Toast).Text, "void already") {
		t.Errorf("a void entry is made void again: %v", sent)
	}
}

func TestEditSetsOnlyWhatWasChanged(t *testing.T) {
	cases := map[string]struct {
		keys []string
		want string // the correction, or words of the refusal
		ok   bool
	}{
		"a field":            {[]string{"down", "down", "backspace", "5", "down", "down", "down", "misread", "enter"}, "celsius = 27.5 (misread)", true},
		"initials":           {[]string{"down", "down", "down", "down", "backspace", "backspace", "MO", "down", "his", "enter"}, "by = MO (his)", true},
		"the moment":         {[]string{"down", "down", "down", eraser(19), "09:00", "down", "down", "earlier", "enter"}, "at = 2026-11-25 09:00:00 -0500 EST (earlier)", true},
		"the supply's":       {[]string{eraser(2), "down", "header", "down", "down", "down", "down", "of the header", "enter"}, "supply = header, tank =  (of the header)", true},
		"nothing":            {[]string{"down", "down", "down", "down", "down", "why", "enter"}, "nothing was changed", false},
		"no reason":          {[]string{"down", "down", "backspace", "5", "down", "down", "down", "enter"}, "say why it is corrected", false},
		"impossible":         {[]string{"down", "down", eraser(4), "270", "down", "down", "down", "x", "enter"}, "cannot be true", false},
		"no moment":          {[]string{"down", "down", "down", "x", "down", "down", "x", "enter"}, "is no moment", false},
		"the future":         {[]string{"down", "down", "down", eraser(19), "2026-11-26 09:00", "down", "down", "x", "enter"}, "after the correction itself", false},
		"a number taken out": {[]string{"down", "down", eraser(4), "down", "down", "down", "x", "enter"}, "make the entry void", false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			l, d, k := logOf(t)
			desktest.Enter(t, d, 0, &model.Temperature{Tank: "K3", Celsius: 27.4})
			n, before := d.Ledger.Next()-1, len(k.Entries)
			openEntry(t, l, 0)
			typed(t, l, "e")
			typed(t, l, c.keys...)
			switch {
			case c.ok && len(k.Entries) == before:
				t.Errorf("not entered:\n%s", frame(l))
			case c.ok && model.Sentence(last(d).Fact) != fmt.Sprintf("entry %d reads %s", n, c.want):
				t.Errorf("entered %q; want %q", model.Sentence(last(d).Fact), c.want)
			case !c.ok && (len(k.Entries) != before || !strings.Contains(strings.Join(strings.Fields(frame(l)), " "), c.want)):
				t.Errorf("%d entered; want a refusal with %q:\n%s", len(k.Entries)-before, c.want, frame(l))
			}
		})
	}
}

// An entry that others stand on cannot be taken away; the refusal names the first
// of them, and what was typed stays.
func TestRefusalNamesTheLaterEntry(t *testing.T) {
	l, d, k := logOf(t)
	desktest.Enter(t, d, 2*time.Minute, &model.Moved{From: "K3", To: "L2"})
	desktest.Enter(t, d, time.Minute, &model.Fed{Tank: "L2", Litres: map[string]float64{"iso": 0.3}})
	n, before := d.Ledger.Next()-1, len(k.Entries)
	openEntry(t, l, 1)
	typed(t, l, "x", "never done", "enter")
	f := strings.Join(strings.Fields(frame(l)), " ")
	if len(k.Entries) != before || !strings.Contains(f, fmt.Sprintf("entry %d (fed", n)) || !strings.Contains(f, "never done") {
		t.Errorf("the refusal does not name entry %d:\n%s", n, frame(l))
	}
}

func TestACorrectionIsNotEditedButMadeVoid(t *testing.T) {
	l, d, _ := amended(t)
	openEntry(t, l, 0)
	if sent := typed(t, l, "e"); l.slip != nil || !strings.Contains(sent[0].(screen.Toast).Text, "corrected anew") {
		t.Errorf("a correction is edited: %v", sent)
	}
	typed(t, l, "x", "it was right", "enter")
	if d.Ledger.Void()[d.Ledger.Next()-4] {
		t.Error("the entry is void though the correction is")
	}
}

// An entry corrected before is edited from what it reads now.
func TestEditBeginsWithWhatCounts(t *testing.T) {
	l, d, _ := amended(t)
	openEntry(t, l, 3)
	typed(t, l, "e")
	if got := l.slip.Form.Text("celsius"); got != "27.4" {
		t.Errorf("the form begins with %q; want 27.4, as corrected", got)
	}
	typed(t, l, "down", "down", "backspace", "6", "down", "down", "down", "again", "enter")
	if now, _ := l.now(); model.Sentence(now.Fact) != "K3 27.6 °C" || len(l.known.by[d.Ledger.Next()-5]) != 2 {
		t.Errorf("it reads %q", model.Sentence(now.Fact))
	}
}

func TestLateEntry(t *testing.T) {
	l, d, k := logOf(t)
	typed(t, l, "+")
	if f := frame(l); !strings.Contains(f, "temperature") || strings.Contains(f, "opened") {
		t.Fatalf("the kinds are\n%s", f)
	}
	typed(t, l, "down", "down", "down", "down", "enter", "K3", "enter", "enter", "27.6", "enter", eraser(5), "08:30", "enter")
	e := last(d)
	if e.Kind() != model.KindTemperature || e.At.In(d.Ledger.Room().Zone).Format("2006-01-02 15:04") != "2026-11-25 08:30" || e.TypedAt() != d.Now {
		t.Errorf("entered %q at %v, keyed %v\n%s", model.Sentence(e.Fact), e.At, e.Keyed, frame(l))
	}
	if k.Entries[len(k.Entries)-1].N != e.N {
		t.Error("it is not kept")
	}
	d.Now = d.Now.Add(3 * time.Minute)
	typed(t, l, "+", "end", "enter", "a remark", "enter", "enter", "enter")
	if e := last(d); !e.At.Equal(d.Now) || !e.Keyed.IsZero() {
		t.Errorf("left as it was, the moment is %v, keyed %v; want now", e.At, e.Keyed)
	}
}

func TestLateEntryRefused(t *testing.T) {
	l, _, k := logOf(t)
	before := len(k.Entries)
	l.openLate(model.KindEnded)
	typed(t, l, "K3", "enter", "lost", "enter", "enter", eraser(5), "2026-11-20 08:30", "enter")
	f := strings.Join(strings.Fields(frame(l)), " ")
	if len(k.Entries) != before || !strings.Contains(f, "would become impossible") || !strings.Contains(f, "2026-11-20 08:30") {
		t.Errorf("%d entered; want a refusal that names a later entry:\n%s", len(k.Entries)-before, frame(l))
	}
	if sent := typed(t, l, "esc", "enter"); l.slip != nil || len(sent) != 0 {
		t.Errorf("sent %v", sent)
	}
}

func TestOddLateEntryIsRung(t *testing.T) {
	l, _, _ := logOf(t)
	l.openLate(model.KindTemperature)
	sent := typed(t, l, "K3", "enter", "enter", "33", "enter", "enter")
	if len(sent) != 2 || sent[1] != (screen.Beep{Times: 2}) || !strings.Contains(sent[0].(screen.Toast).Text, "odd: 33 °C lies outside") {
		t.Errorf("sent %v", sent)
	}
}

func TestEscapeAsksWhereSomethingWasTyped(t *testing.T) {
	l, _, _ := logOf(t)
	openEntry(t, l, 0)
	typed(t, l, "x", "a reason", "esc")
	if l.slip == nil || !strings.Contains(frame(l), "Throw away") {
		t.Fatalf("frame\n%s", frame(l))
	}
	typed(t, l, "enter", "esc")
	if l.slip != nil || l.page != nil {
		t.Error("the levels do not close one after the other")
	}
	typed(t, l, "+", "esc")
	if l.pick != nil {
		t.Error("Esc does not close the kinds")
	}
}

func TestEmptyLog(t *testing.T) {
	d, _ := desktest.Empty(t)
	l := New(d, "").(*Log)
	if f := frame(l); !strings.Contains(f, "nothing was entered yet") {
		t.Errorf("frame\n%s", f)
	}
	typed(t, l, "enter", "end", "down")
	if l.page != nil {
		t.Error("an entry is open where there is none")
	}
}

func TestKeyTables(t *testing.T) {
	l, _, _ := amended(t)
	check := func(name string) {
		if got := keys.Problems(l.Keys()); len(got) > 0 {
			t.Errorf("%s: %v", name, got)
		}
	}
	check("list")
	typed(t, l, "s")
	check("search")
	typed(t, l, "esc", "enter")
	check("entry")
	typed(t, l, "x")
	check("void")
	typed(t, l, "esc", "esc", "+")
	check("kinds")
}

func TestEverySize(t *testing.T) {
	l, d, _ := amended(t)
	desktest.Enter(t, d, 0, &model.Noted{Tank: "K3", Text: "室\u0301 wide \U0001F980 \u202e and\nbroken " + strings.Repeat("long ", 80)})
	screentest.EverySize(t, l.View)
	typed(t, l, "s", "27")
	screentest.EverySize(t, l.View)
	typed(t, l, "esc", "home", "enter")
	screentest.EverySize(t, l.View)
	typed(t, l, "e", "x")
	screentest.EverySize(t, l.View)
	typed(t, l, "esc", "enter", "esc", "+")
	screentest.EverySize(t, l.View)
}

// many is a log of n entries, put into the ledger as a journal would be.
func many(t testing.TB, n int) (*Log, *desk.Desk, *desktest.Keeper) {
	t.Helper()
	d, k := desktest.Empty(t)
	entries := make([]model.Entry, n)
	for i := range entries {
		entries[i] = model.Entry{
			N: i + 1, At: d.Now.Add(time.Duration(i-n) * time.Minute), By: "KT",
			Fact: &model.Noted{Tank: []string{"K1", "K3"}[i%2], Text: fmt.Sprint("remark ", i)},
		}
	}
	for i := 2; i < n; i += 500 {
		entries[i].Fact = &model.Corrected{Entry: i, Why: "twice", Void: true}
	}
	ledger, err := model.LoadLedger(d.Ledger.Room(), entries)
	if err != nil {
		t.Fatal(err)
	}
	d.Ledger = ledger
	return New(d, "").(*Log), d, k
}

// BenchmarkView is a frame of a log of 100,000 entries, in the list and in a
// search.
func BenchmarkView(b *testing.B) {
	for _, words := range []string{"", "k3 remark"} {
		b.Run("search="+words, func(b *testing.B) {
			l, _, _ := many(b, 100_000)
			if words != "" {
				typed(b, l, "s", words)
			}
			b.ReportAllocs()
			for b.Loop() {
				l.View(120, 39)
			}
		})
	}
}

// BenchmarkKey is the worst key: a letter of a search that finds nothing, with
// the frame after it.
func BenchmarkKey(b *testing.B) {
	l, _, _ := many(b, 100_000)
	typed(b, l, "s", "zz")
	for b.Loop() {
		screentest.Type(l, "z")
		screentest.Type(l, "backspace")
		l.View(120, 39)
	}
}

// BenchmarkRefresh is what the first frame after a new entry costs more.
func BenchmarkRefresh(b *testing.B) {
	l, _, _ := many(b, 100_000)
	for b.Loop() {
		l.known.made = 0
		l.refresh()
	}
}
