package state

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"drainboard/model"
)

// append makes entries durable: it writes them in one go, flushes the file and,
// where it is new, the folders that hold it. When it returns an error none of
// them is kept.
func (j *journal) append(entries []model.Entry) error {
	if len(entries) == 0 {
		return nil
	}
	if err := j.addAll(entries); err != nil {
		return fmt.Errorf("not saved: %w", err)
	}
	return nil
}

func (j *journal) addAll(entries []model.Entry) error {
	if err := j.restore(); err != nil {
		return err
	}
	written, err := j.encode(entries)
	if err != nil {
		return err
	}
	if err := j.makeFolder(); err != nil {
		return err
	}
	t, err := j.open(j.fileFor(entries[0]))
	if err != nil {
		return err
	}
	defer t.f.Close()
	text := append(bytes.Clone(t.lead), bytes.Join(written.texts, []byte("\n"))...)
	if err := j.flush(t, text); err != nil {
		j.broken = &unwritten{t.file, t.size}
		// Where this does not succeed either, the next append does it first.
		_ = j.restore()
		return err
	}
	j.advance(t, written)
	return nil
}

// block is new entries as they are written, and the sum of the last.
type block struct {
	texts [][]byte // each with its sum
	sum   string
}

// encode writes the text of entries that follow the cursor and reads it back:
// what could not be read later is not written now.
func (j *journal) encode(entries []model.Entry) (block, error) {
	b := block{sum: j.at.sum}
	d := newDecoder(j.zone)
	for i, e := range entries {
		if e.N != j.at.n+i+1 {
			return b, fmt.Errorf("entry %d cannot follow entry %d", e.N, j.at.n+i)
		}
		text := appendEntry(nil, e, j.zone)
		if _, err := d.entry(string(text)); err != nil {
			return b, fmt.Errorf("entry %d would not read back: %w", e.N, err)
		}
		b.sum = sumOf(b.sum, string(text))
		b.texts = append(b.texts, append(text, sumHead+b.sum+"\"\n"...))
	}
	return b, nil
}

// fileFor names the file for an entry: that of its month, but never an earlier
// one than the last.
func (j *journal) fileFor(e model.Entry) string {
	return max(monthOf(e.TypedAt())+".toml", j.at.file)
}

// makeFolder makes the journal's folder where there is none yet.
func (j *journal) makeFolder() error {
	err := os.Mkdir(filepath.Join(j.dir, journalDir), 0o755)
	switch {
	case err == nil:
		j.folderDue = true
	case !errors.Is(err, fs.ErrExist):
		return err
	}
	if !j.folderDue {
		return nil
	}
	if err := j.disk.syncDir(j.dir); err != nil {
		return err
	}
	j.folderDue = false
	return nil
}

// target is the file that entries are added to.
type target struct {
	f    *os.File
	file string
	size int64  // its length before
	lead []byte // the blank line, and the line break the last entry may lack
	line int    // line on which the first new entry begins
}

// open opens a file to add to. One that is not as this program left it is not
// written to.
func (j *journal) open(file string) (target, error) {
	f, err := os.OpenFile(j.path(file), os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return target{}, err
	}
	t, err := j.measure(f, file)
	if err != nil {
		f.Close()
	}
	return t, err
}

func (j *journal) measure(f *os.File, file string) (target, error) {
	t := target{f: f, file: file, line: 1}
	changed := fmt.Errorf("%s was changed by another program; close the room and open it again", j.name(file))
	info, err := f.Stat()
	if err != nil {
		return t, err
	}
	end := j.endIn(file)
	if file == j.at.file {
		t.line = j.at.line
	}
	t.size = info.Size()
	if t.size < int64(end) {
		return t, changed
	}
	// Nothing but blank lines may stand behind the last entry.
	tail := make([]byte, t.size-int64(end))
	if _, err := f.ReadAt(tail, int64(end)); err != nil && len(tail) > 0 {
		return t, err
	}
	if len(bytes.Trim(tail, "\n")) > 0 {
		return t, changed
	}
	t.lead = j.lead(f, t.size)
	t.line += len(tail) + len(t.lead)
	return t, nil
}

// lead is what parts a new entry from what ends at an offset.
func (j *journal) lead(f *os.File, size int64) []byte {
	if size == 0 {
		return nil
	}
	last := make([]byte, 1)
	if _, err := f.ReadAt(last, size-1); err == nil && last[0] == '\n' {
		return []byte("\n")
	}
	return []byte("\n\n")
}

// flush writes and waits until the device has it.
func (j *journal) flush(t target, text []byte) error {
	if _, err := j.disk.write(t.f, text, t.size); err != nil {
		return err
	}
	if err := j.disk.sync(t.f); err != nil {
		return err
	}
	if t.size > 0 {
		return nil
	}
	return j.disk.syncDir(filepath.Join(j.dir, journalDir))
}

// unwritten is what a failed append may have left in a file.
type unwritten struct {
	file string
	size int64 // length to go back to
}

// restore takes back what a failed append may have left.
func (j *journal) restore() error {
	if j.broken == nil {
		return nil
	}
	if err := j.cut(j.broken.file, j.broken.size); err != nil {
		return err
	}
	j.broken = nil
	return nil
}

// cut shortens a journal file and waits until the device has it so.
func (j *journal) cut(file string, size int64) error {
	f, err := os.OpenFile(j.path(file), os.O_RDWR, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := j.disk.truncate(f, size); err != nil {
		return err
	}
	return j.disk.sync(f)
}

// advance sets the cursor behind entries that were written.
func (j *journal) advance(t target, b block) {
	line, end := t.line, t.size+int64(len(t.lead))
	for i, text := range b.texts {
		if i > 0 {
			line, end = line+1, end+1 // the blank line
		}
		j.places = append(j.places, place{t.file, line})
		line += bytes.Count(text, []byte("\n"))
		end += int64(len(text))
	}
	j.at = cursor{file: t.file, end: int(end), line: line, n: j.at.n + len(b.texts), sum: b.sum}
}
