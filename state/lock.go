package state

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/gofrs/flock"
)

const lockFile = "lock"

// takeLock takes the room for writing, or says by ErrHeld who has it. The
// operating system gives a lock free when its holder ends, however it ends, so
// what a lock file says counts only while it is held.
func takeLock(dir, who string, now time.Time) (*flock.Flock, error) {
	path := filepath.Join(dir, lockFile)
	lock := flock.New(path, flock.SetFlag(os.O_CREATE|os.O_RDWR), flock.SetPermissions(0o644))
	held, err := lock.TryLock()
	switch {
	case err != nil:
		return nil, err
	case !held:
		return nil, ErrHeld{Dir: dir, Holder: holder(path)}
	}
	if err := sign(path, who, now); err != nil {
		_ = lock.Unlock()
		return nil, err
	}
	return lock, nil
}

// sign writes who holds the room. The first byte is left alone: where locks bar
// reading (Windows) it is the one that is locked.
func sign(path, who string, now time.Time) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	host, err := os.Hostname()
	if err != nil {
		host = "this machine"
	}
	text := fmt.Sprintf("process %d on %s since %s\n", os.Getpid(), host, now.Format("2006-01-02 15:04"))
	if who != "" {
		text = who + ", " + text
	}
	if err := f.Truncate(1); err != nil {
		return err
	}
	// Best effort: a blank first line reads better than a NUL.
	_, _ = f.WriteAt([]byte("\n"), 0)
	_, err = f.WriteAt([]byte(text), 1)
	return err
}

// holder reads who holds the room.
func holder(path string) string {
	f, err := os.Open(path)
	if err != nil {
		return "another program"
	}
	defer f.Close()
	b := make([]byte, 200)
	n, _ := f.ReadAt(b, 1)
	line, _, _ := strings.Cut(string(b[:n]), "\n")
	if line == "" {
		return "another program"
	}
	return strings.ToValidUTF8(line, "?")
}
