package main

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"drainboard/cmd/drainboard/document"
)

// replacePaper writes a paper. One that was written before is replaced whole or
// not at all; any other file of that name is left alone.
func replacePaper(path string, html []byte) error {
	if err := isPaper(path); err != nil {
		return err
	}
	dir, name := filepath.Split(path)
	f, err := os.CreateTemp(dir, "."+name+".*")
	if err != nil {
		return plainly(err)
	}
	_, err = f.Write(html)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if err == nil {
		err = f.Sync()
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	return plainly(err)
}

// isPaper refuses a file that holds something else than a paper; one that is not
// there may be written.
func isPaper(path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return plainly(err)
	case !info.Mode().IsRegular():
		return errors.New("is no plain file; name a file to be written")
	}
	f, err := os.Open(path)
	if err != nil {
		return plainly(err)
	}
	defer f.Close()
	head := make([]byte, len(document.Mark))
	n, err := io.ReadFull(f, head)
	if n == 0 && errors.Is(err, io.EOF) {
		return nil // empty
	}
	if !bytes.Equal(head[:n], []byte(document.Mark)) {
		return errors.New("holds something that drainboard did not write; name another file or move it away")
	}
	return nil
}

// plainly takes the path out of an error of the disk: the caller names the file
// as it was typed.
func plainly(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
