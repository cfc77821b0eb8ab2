package state

import (
	"archive/zip"
	"bufio"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// backupLimits bound what is read from a zip file, which may lie about itself.
type backupLimits struct {
	bytes int64 // of all files together
	files int
}

// atMost is the most a room can be. A year of 100,000 entries is some 20 MB.
func atMost() backupLimits { return backupLimits{bytes: 4 << 30, files: 20_000} }

// Restore writes the room of a backup into a folder that is not there yet, or is
// empty. Every byte is held against its sum before the folder gets its name. A
// name that leads out of the folder, a file that no backup holds and one that is
// missing are refused, and nothing stays.
func Restore(file, dir string) (Archive, error) {
	return restoreWithin(file, dir, atMost())
}

func restoreWithin(file, dir string, most backupLimits) (Archive, error) {
	if err := isFree(dir); err != nil {
		return Archive{}, err
	}
	parent := filepath.Dir(filepath.Clean(dir))
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return Archive{}, err
	}
	scratch, err := os.MkdirTemp(parent, ".drainboard-restore-*")
	if err != nil {
		return Archive{}, err
	}
	defer os.RemoveAll(scratch)
	done, err := extract(file, scratch, dir, most)
	if err != nil {
		return Archive{}, err
	}
	if err := os.Chmod(scratch, 0o755); err != nil {
		return Archive{}, err
	}
	// An empty folder gives way; one that is filled meanwhile does not.
	if err := os.Remove(dir); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return Archive{}, err
	}
	if err := os.Rename(scratch, dir); err != nil {
		return Archive{}, err
	}
	return done, syncDir(parent)
}

// isFree refuses a folder that holds anything.
func isFree(dir string) error {
	list, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case len(list) > 0:
		return fmt.Errorf("%s is not empty; name a new folder", dir)
	}
	return nil
}

// extract writes the files of a backup into an empty folder, holds them against
// their sums and the room against Verify. as is the folder's name in problems;
// empty for the name of the zip file.
func extract(file, to, as string, most backupLimits) (Archive, error) {
	z, err := zip.OpenReader(file)
	if err != nil {
		if errors.Is(err, zip.ErrFormat) {
			return Archive{}, fmt.Errorf("%s is no whole zip file: %w", file, err)
		}
		return Archive{}, err
	}
	defer z.Close()
	sums, err := readSums(z, file, most)
	if err != nil {
		return Archive{}, err
	}
	e := extraction{file: file, to: to, left: most.bytes, sums: sums}
	for _, f := range z.File {
		if f.Name == sumsFile {
			continue
		}
		if err := e.one(f); err != nil {
			return Archive{}, fmt.Errorf("%s: %s: %w", file, f.Name, err)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(e.sums)) {
		if e.sums[name] != "" {
			return Archive{}, fmt.Errorf("%s: %s is missing; this backup is not whole", file, name)
		}
	}
	if err := syncTree(to); err != nil {
		return Archive{}, err
	}
	if as == "" {
		as = file
	}
	e.done.Problems, err = verifyAs(to, as)
	return e.done, err
}

// verifyAs is Verify of a folder that goes by another name.
func verifyAs(dir, as string) ([]Problem, error) {
	problems, err := Verify(dir)
	for i, p := range problems {
		if rest, ok := strings.CutPrefix(p.File, dir); ok {
			problems[i].File = as + rest
		}
	}
	return problems, err
}

// extraction is a backup being written out.
type extraction struct {
	file, to string
	left     int64             // bytes that may still come
	sums     map[string]string // by name; empty once the file is written
	done     Archive
}

// one writes one file and holds it against its sum.
func (e *extraction) one(f *zip.File) error {
	if err := keepable(f.Name); err != nil {
		return err
	}
	want, listed := e.sums[f.Name]
	switch {
	case !listed:
		return fmt.Errorf("has no line in %s; this is no backup as drainboard writes it", sumsFile)
	case want == "":
		return errors.New("stands there twice")
	case !f.Mode().IsRegular():
		return errors.New("is no plain file")
	}
	sum, err := e.write(f)
	if err != nil {
		return err
	}
	if sum != want {
		return errors.New("does not match its sum; the backup was damaged or changed")
	}
	e.sums[f.Name] = ""
	e.done.Files++
	return nil
}

func (e *extraction) write(f *zip.File) (sum string, err error) {
	target := filepath.Join(e.to, filepath.FromSlash(f.Name))
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return "", err
	}
	in, err := f.Open()
	if err != nil {
		return "", err
	}
	defer in.Close()
	out, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return "", err
	}
	hash := sha256.New()
	n, err := io.Copy(io.MultiWriter(out, hash), io.LimitReader(in, e.left+1))
	e.left -= n
	e.done.Bytes += n
	if e.left < 0 {
		err = errors.New("makes the room larger than a room can be")
	}
	if err == nil {
		err = out.Sync()
	}
	if closing := out.Close(); err == nil {
		err = closing
	}
	return hex.EncodeToString(hash.Sum(nil)), err
}

// keepable refuses a name that no backup holds: one that leads out of the folder,
// is written in the way of another system, or is of no file of a room.
func keepable(name string) error {
	switch {
	case name == roomFile, name == procedureFile:
		return nil
	case path.Clean(name) != name, !filepath.IsLocal(filepath.FromSlash(name)), strings.ContainsAny(name, "\\:\x00"):
		return errors.New("leads out of the room; this is no backup as drainboard writes it")
	case !strings.HasPrefix(name, journalDir+"/"):
		return errors.New("is no file of a room; this is no backup as drainboard writes it")
	}
	return nil
}

// mostSums bounds the file of sums, in bytes.
const mostSums = 8 << 20

// readSums reads the sums of a backup, by name.
func readSums(z *zip.ReadCloser, file string, most backupLimits) (map[string]string, error) {
	i := slices.IndexFunc(z.File, func(f *zip.File) bool { return f.Name == sumsFile })
	switch {
	case i < 0:
		return nil, fmt.Errorf("%s holds no %s; it is no backup, or not a whole one", file, sumsFile)
	case len(z.File) > most.files:
		return nil, fmt.Errorf("%s holds %d files; a room has at most %d", file, len(z.File), most.files)
	}
	in, err := z.File[i].Open()
	if err != nil {
		return nil, fmt.Errorf("%s: %s: %w", file, sumsFile, err)
	}
	defer in.Close()
	sums := map[string]string{}
	lines := bufio.NewScanner(io.LimitReader(in, mostSums))
	for lines.Scan() {
		sum, name, ok := strings.Cut(lines.Text(), "  ")
		if !ok || len(sum) != 2*sha256.Size || name == "" {
			return nil, fmt.Errorf("%s: %s: %q is no sum of a file", file, sumsFile, lines.Text())
		}
		sums[name] = sum
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("%s: %s: %w", file, sumsFile, err)
	}
	return sums, nil
}

// syncTree makes the names within a folder, and within those below it, durable.
func syncTree(dir string) error {
	return filepath.WalkDir(dir, func(at string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		return syncDir(at)
	})
}
