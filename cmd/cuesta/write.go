package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"cuesta/quiz/form"
)

// alreadyThere is the error for a file that stands in the way.
func alreadyThere(path string) error {
	return fmt.Errorf("%s is already there; --force replaces it", path)
}

// writable says early what would keep a file from being written.
func writable(path string, force bool) error {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return misreadf("%s is a folder; name a file in it", path)
	}
	if _, err := os.Lstat(path); err == nil && !force {
		return alreadyThere(path)
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return fmt.Errorf("%s: there is no folder %s", path, filepath.Dir(path))
	}
	return nil
}

// writeWhole fills a file, whole or not at all: it is written under another
// name, safe on the disk, and then put in its place. Without force nothing that
// is there is lost.
func writeWhole(path string, force bool, fill func(io.Writer) error) (err error) {
	if err := writable(path, force); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".cuesta-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // when all went well it is gone already
	if err := errors.Join(filled(f, fill), f.Close()); err != nil {
		return err
	}
	return putInPlace(f.Name(), path, force)
}

func filled(f *os.File, fill func(io.Writer) error) error {
	b := bufio.NewWriterSize(f, 1<<16)
	if err := fill(b); err != nil {
		return err
	}
	return errors.Join(b.Flush(), f.Chmod(0o644), f.Sync())
}

// putInPlace gives the file its name. A link fails where something has come to
// stand there in the meantime; a file system without links gets a rename.
func putInPlace(from, to string, force bool) error {
	if force {
		return os.Rename(from, to)
	}
	switch err := os.Link(from, to); {
	case errors.Is(err, fs.ErrExist):
		return alreadyThere(to)
	case errors.Is(err, errors.ErrUnsupported) || errors.Is(err, fs.ErrPermission):
		return os.Rename(from, to)
	default:
		return err
	}
}

// readFile reads a file of the quiz. What is wrong with it ends the program with
// status 2, and is told line by line where there is more than one problem.
func readFile[T any](e env, path string, read func(io.Reader) (T, error)) (T, error) {
	var none T
	f, err := os.Open(path)
	if err != nil {
		return none, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return none, misreadf("%s is a folder; name a file in it", path)
	}
	v, err := read(f)
	var wrong *form.Wrong
	if !errors.As(err, &wrong) {
		return v, err
	}
	if len(wrong.Problems) == 1 {
		return none, wrongWords{fmt.Errorf("%s: %w", path, err)}
	}
	for _, p := range wrong.Problems {
		fmt.Fprintf(e.err, "%s: %s\n", path, oneLine(p.String()))
	}
	return none, misreadf("%s: %w; %d problems, told above", path, wrong.Err, len(wrong.Problems))
}
