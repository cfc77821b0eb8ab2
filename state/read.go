package state

import (
	"os"
	"strings"
	"sync"

	"drainboard/model"
)

// read returns the good entries behind the cursor and moves it behind them.
// What follows and is no good entry is the rest, nil where there is nothing.
// Files are decoded side by side: where one begins in the chain can be seen from
// the end of the one before it, and is held against it afterwards.
func (j *journal) read() ([]model.Entry, *rest, error) {
	files, err := j.files()
	if err != nil {
		return nil, nil, err
	}
	chapters, err := j.chapters(files)
	if err != nil {
		return nil, nil, err
	}
	var group sync.WaitGroup
	most := 0
	for _, c := range chapters {
		group.Go(func() { c.read(j) })
		most += strings.Count(c.text[c.from.end:], entryHead)
	}
	group.Wait()
	entries := make([]model.Entry, 0, most)
	for i, c := range chapters {
		if !c.from.continues(j.at) {
			c.from.n, c.from.sum = j.at.n, j.at.sum
			c.read(j)
		}
		if c.err != nil {
			return nil, nil, c.err
		}
		entries = append(entries, c.entries...)
		j.places = append(j.places, c.places...)
		j.at = c.to
		if c.bad {
			return entries, j.restOf(c.text, chapters[i+1:]), nil
		}
	}
	return entries, nil, nil
}

// continues reports whether a cursor stands in the chain where another does.
func (c cursor) continues(at cursor) bool { return c.n == at.n && c.sum == at.sum }

// chapter is one journal file: its text, where its unread entries begin and what
// was read of them.
type chapter struct {
	text     string
	from, to cursor
	entries  []model.Entry
	places   []place
	bad      bool  // something else than a good entry follows
	err      error // an entry that is whole cannot be read
}

// chapters reads the files from that of the cursor on.
func (j *journal) chapters(files []string) ([]*chapter, error) {
	var chapters []*chapter
	at := j.at
	for _, file := range files {
		if file < j.at.file {
			continue
		}
		b, err := os.ReadFile(j.path(file))
		if err != nil {
			return nil, err
		}
		c := &chapter{text: string(b), from: at}
		if file != at.file {
			c.from.file, c.from.end, c.from.line = file, 0, 1
		}
		if !c.begins() {
			return nil, Problem{File: j.name(file), Text: "is not as it was read", Hint: "close the room and open it again"}
		}
		chapters = append(chapters, c)
		at = c.lastOf()
	}
	return chapters, nil
}

// begins reports whether the last good entry still ends where reading begins.
func (c *chapter) begins() bool {
	if c.from.end == 0 {
		return true
	}
	return len(c.text) >= c.from.end && strings.HasSuffix(strings.TrimSuffix(c.text[:c.from.end], "\n"), sumHead+c.from.sum+`"`)
}

// lastOf looks up where the chain stands at the end of the file, if its entries
// are good.
func (c *chapter) lastOf() cursor {
	at := c.from
	if i := strings.LastIndex(c.text[at.end:], entryHead); i >= 0 {
		p, _ := nextPiece(c.text, at.end+i, 1)
		at.n, at.sum = numberOf(p), p.sum
	}
	return at
}

// read takes the good entries from where the chapter begins.
func (c *chapter) read(j *journal) {
	d := newDecoder(j.zone)
	c.to, c.entries, c.places, c.bad, c.err = c.from, nil, nil, false, nil
	for {
		p, more := nextPiece(c.text, c.to.end, c.to.line)
		if !more {
			return
		}
		if c.bad = p.sum == "" || sumOf(c.to.sum, p.text) != p.sum; c.bad {
			return
		}
		e, err := d.entry(p.text)
		if err == nil && e.N != c.to.n+1 {
			err = wrongKey("n", "entry %d stands where entry %d is expected", e.N, c.to.n+1)
		}
		if err != nil {
			c.err = j.unreadable(c.to.file, p, c.to.n+1, err)
			return
		}
		c.entries = append(c.entries, e)
		c.places = append(c.places, place{c.to.file, p.line})
		c.to.end, c.to.line, c.to.n, c.to.sum = p.end, p.line+strings.Count(c.text[p.from:p.end], "\n"), e.N, p.sum
	}
}
