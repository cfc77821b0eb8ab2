package state

import (
	"archive/zip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// A backup is a zip file of room.toml, procedure.toml and all that stands in the
// journal, the quarantine with it, and of sumsFile: a line for each of them with
// the SHA-256 of its bytes, as sha256sum writes and checks it. The cache and the
// lock are left out.

// sumsFile is the last file of a backup.
const sumsFile = "SHA256SUMS"

// Archive is what a backup or a restore came to.
type Archive struct {
	Files int
	Bytes int64
	// Problems are what is wrong with the room that was kept, as Verify finds it:
	// the bytes are right, and what they say was wrong before.
	Problems []Problem
}

// Backup writes a room into a new zip file, reads it back into a scratch folder,
// holds every byte against its sum and the room against Verify, and only then
// gives the file its name. It takes no lock; a room that another program writes
// to is copied as it stands between two entries. A file that is there already is
// refused.
func Backup(dir, file string) (Archive, error) {
	if err := isRoom(dir); err != nil {
		return Archive{}, err
	}
	if within(filepath.Join(dir, journalDir), file) {
		return Archive{}, fmt.Errorf("%s lies in the journal; name a file outside of it", file)
	}
	claim, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return Archive{}, fmt.Errorf("%s is there already; name a new file", file)
	}
	if err != nil {
		return Archive{}, err
	}
	claim.Close()
	done, err := backupInto(dir, file)
	if err != nil {
		_ = os.Remove(file)
	}
	return done, err
}

// backupTries is how often a backup begins anew where an entry was being written.
const backupTries = 5

// backupInto writes a zip file beside the name that is claimed, and moves it there
// when it is known to be right.
func backupInto(dir, file string) (done Archive, err error) {
	for range backupTries {
		var scratch string
		if scratch, err = writeBackup(dir, filepath.Dir(file)); err != nil {
			return Archive{}, err
		}
		if done, err = readBack(scratch); err == nil && !cutOff(done, dir) {
			if err = os.Rename(scratch, file); err == nil {
				return done, syncDir(filepath.Dir(file))
			}
		}
		_ = os.Remove(scratch)
		if err != nil {
			return Archive{}, err
		}
	}
	return Archive{}, fmt.Errorf("%s is being written to all the time; try again", dir)
}

// cutOff reports whether a copy has problems that the room itself has not: an
// entry was being written while it was read.
func cutOff(done Archive, dir string) bool {
	if len(done.Problems) == 0 {
		return false
	}
	now, err := Verify(dir)
	return err == nil && len(now) == 0
}

// within reports whether a file lies in a folder.
func within(dir, file string) bool {
	d, errDir := filepath.Abs(dir)
	f, errFile := filepath.Abs(file)
	if errDir != nil || errFile != nil {
		return false
	}
	rel, err := filepath.Rel(d, f)
	return err == nil && filepath.IsLocal(rel)
}

// readBack restores a backup into a scratch folder and verifies what came out.
func readBack(file string) (Archive, error) {
	scratch, err := os.MkdirTemp("", "drainboard-backup-*")
	if err != nil {
		return Archive{}, err
	}
	defer os.RemoveAll(scratch)
	return extract(file, scratch, "", atMost())
}

// writeBackup writes the files of a room into a zip file under a passing name in
// a folder.
func writeBackup(dir, folder string) (name string, err error) {
	files, err := keptFiles(dir)
	if err != nil {
		return "", err
	}
	f, err := os.CreateTemp(folder, ".drainboard-backup-*")
	if err != nil {
		return "", err
	}
	defer func() {
		if closing := f.Close(); err == nil {
			err = closing
		}
		if err != nil {
			_ = os.Remove(f.Name())
		}
	}()
	if err := f.Chmod(0o644); err != nil {
		return "", err
	}
	if err := zipFiles(f, dir, files); err != nil {
		return "", err
	}
	return f.Name(), f.Sync()
}

func zipFiles(to io.Writer, dir string, files []string) error {
	z := zip.NewWriter(to)
	var sums strings.Builder
	var newest time.Time
	for _, name := range files {
		sum, changed, err := zipFile(z, dir, name)
		if err != nil {
			return err
		}
		if changed.After(newest) {
			newest = changed
		}
		fmt.Fprintf(&sums, "%s  %s\n", sum, name)
	}
	w, err := z.CreateHeader(&zip.FileHeader{Name: sumsFile, Method: zip.Deflate, Modified: newest})
	if err != nil {
		return err
	}
	if _, err := io.WriteString(w, sums.String()); err != nil {
		return err
	}
	return z.Close()
}

// zipFile adds one file and returns its sum in hexadecimal, and when it was
// changed last.
func zipFile(z *zip.Writer, dir, name string) (sum string, changed time.Time, err error) {
	f, err := os.Open(filepath.Join(dir, filepath.FromSlash(name)))
	if err != nil {
		return "", changed, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return "", changed, err
	}
	changed = info.ModTime().UTC().Truncate(time.Second)
	w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: changed})
	if err != nil {
		return "", changed, err
	}
	hash := sha256.New()
	_, err = io.Copy(io.MultiWriter(w, hash), f)
	return hex.EncodeToString(hash.Sum(nil)), changed, err
}

// keptFiles lists what a backup keeps, by names with /. What is no plain file
// there is refused: it could not come back as it is.
func keptFiles(dir string) ([]string, error) {
	files := []string{roomFile}
	if _, err := os.Stat(filepath.Join(dir, procedureFile)); err == nil {
		files = append(files, procedureFile)
	}
	there, err := isFolder(dir, journalDir)
	if err != nil || !there {
		return files, err
	}
	err = filepath.WalkDir(filepath.Join(dir, journalDir), func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		if !d.Type().IsRegular() {
			return Problem{File: at, Text: "is no plain file", Hint: "move it out of the journal"}
		}
		rel, err := filepath.Rel(dir, at)
		files = append(files, filepath.ToSlash(rel))
		return err
	})
	return files, err
}
