package state

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// setAside copies the rest of the journal into the quarantine and cuts it off,
// with the blank lines before it. Nothing is cut before its copy is durable, and
// the last file is cut first, so that being cut off itself leaves but a shorter
// rest. It returns the copies.
func (j *journal) setAside(r *rest, now time.Time) ([]string, error) {
	var kept []string
	for i := len(r.later) - 1; i >= 0; i-- {
		name, err := j.setAsideFrom(r.later[i], 0, 0, r.n, now)
		if err != nil {
			return nil, err
		}
		kept = append([]string{name}, kept...)
	}
	name, err := j.setAsideFrom(r.file, r.from, r.end, r.n, now)
	if err != nil {
		return nil, err
	}
	return append([]string{name}, kept...), nil
}

// setAsideFrom sets aside what a file holds from an offset on and leaves it with
// a length of size.
func (j *journal) setAsideFrom(file string, from, size, n int, now time.Time) (string, error) {
	text, err := os.ReadFile(j.path(file))
	if err != nil {
		return "", err
	}
	name := fmt.Sprintf("%s-%d-%s", strings.TrimSuffix(file, ".toml"), n, now.UTC().Format("20060102T150405Z"))
	kept, err := j.keep(name, text[from:])
	if err != nil {
		return "", err
	}
	return kept, j.cut(file, int64(size))
}

// keep writes a new file into the quarantine, durably.
func (j *journal) keep(name string, text []byte) (string, error) {
	folder := filepath.Join(j.dir, journalDir, quarantineDir)
	if there, err := isFolder(j.dir, journalDir, quarantineDir); err != nil {
		return "", err
	} else if !there {
		if err := os.Mkdir(folder, 0o755); err != nil {
			return "", err
		}
	}
	f, err := createFree(folder, name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	if _, err := j.disk.write(f, text, 0); err != nil {
		return "", err
	}
	if err := j.disk.sync(f); err != nil {
		return "", err
	}
	for _, dir := range []string{folder, filepath.Dir(folder)} {
		if err := j.disk.syncDir(dir); err != nil {
			return "", err
		}
	}
	return f.Name(), nil
}

// createFree creates a file under a name that is free, with a number behind it
// where it is not.
func createFree(folder, name string) (*os.File, error) {
	for i := 1; ; i++ {
		full := name
		if i > 1 {
			full = fmt.Sprintf("%s-%d", name, i)
		}
		f, err := os.OpenFile(filepath.Join(folder, full+".toml"), os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o644)
		if !errors.Is(err, fs.ErrExist) || i > 1000 {
			return f, err
		}
	}
}
