// Package keep stores what a student's own bench remembers from day to day.
// A store holds one piece of data, replaced whole or not at all.
package keep

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Store holds one piece of data.
type Store interface {
	// Load returns the data, or nil and no error when there is none yet.
	Load() ([]byte, error)
	// Save replaces the data; after an error the old data still stands.
	Save([]byte) error
	// SetAside moves data that cannot be read out of the way, without
	// destroying it, and says where it went.
	SetAside() (where string, err error)
}

// File is a store in a file.
type File struct{ Path string }

// maxSize is far above anything a bench writes; a larger file is not ours.
const maxSize = 4 << 20

// ErrTooLarge is the error for a file that no bench has written.
var ErrTooLarge = errors.New("the file is too large to be a record of practice")

// Load reads the file.
func (f File) Load() ([]byte, error) {
	info, err := os.Stat(f.Path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if info.Size() > maxSize {
		return nil, fmt.Errorf("%s: %w", f.Path, ErrTooLarge)
	}
	return os.ReadFile(f.Path)
}

// Save writes a new file beside the old one and then takes its place.
func (f File) Save(data []byte) error {
	dir := filepath.Dir(f.Path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	t, err := os.CreateTemp(dir, ".practice-*")
	if err != nil {
		return err
	}
	defer os.Remove(t.Name())
	if _, err := t.Write(data); err != nil {
		t.Close()
		return err
	}
	if err := t.Sync(); err != nil {
		t.Close()
		return err
	}
	if err := t.Close(); err != nil {
		return err
	}
	return os.Rename(t.Name(), f.Path)
}

// SetAside renames the file to the first free name of the form NAME.damaged-N.
func (f File) SetAside() (string, error) {
	for n := 1; n < 1000; n++ {
		to := fmt.Sprintf("%s.damaged-%d", f.Path, n)
		if _, err := os.Lstat(to); errors.Is(err, fs.ErrNotExist) {
			return to, os.Rename(f.Path, to)
		}
	}
	return "", fmt.Errorf("%s: too many damaged files beside it; move them away", f.Path)
}

// DataFolder is the user's own folder for data of programs: XDG_DATA_HOME or
// its default on Unix (XDG Base Directory Specification), the usual places on
// macOS and Windows.
func DataFolder() (string, error) {
	if d := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(d) {
		return d, nil
	}
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		return os.UserConfigDir()
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(home, ".local", "share"), nil
}
