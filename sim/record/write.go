package record

import (
	"bufio"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Write writes the recording. The error is that of the writer.
func (r Recording) Write(to io.Writer) error {
	b := bufio.NewWriter(to)
	put := func(line any) {
		b.Write(encode(line)) // bufio keeps the first error for Flush
		b.WriteByte('\n')
	}
	put(headOf(r))
	for _, e := range r.Entries {
		put(lineOf(e))
	}
	put(tailOf(r))
	return b.Flush()
}

// WriteFile writes the recording to a new file, whole or not at all. A file
// that is there already stays, and the error wraps fs.ErrExist, unless force
// is set.
func (r Recording) WriteFile(path string, force bool) (err error) {
	if _, err := os.Lstat(path); err == nil && !force {
		return fmt.Errorf("%s: %w", path, fs.ErrExist)
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".recording-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if err := r.fill(f); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// fill writes the file, safely on the disk, and closes it.
func (r Recording) fill(f *os.File) error {
	err := r.Write(f)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}
