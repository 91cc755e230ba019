package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// folder is a folder in the making: it gets its name when all its files are
// written.
type folder struct {
	path string // where it is to stand
	temp string // where it is made
	over bool   // path has files already, some of which will be replaced
}

// newFolder begins a folder. One that is there already must be empty, unless
// force is set; then its files are replaced one by one and others stay.
func newFolder(path string, force bool) (*folder, error) {
	f := &folder{path: path}
	in := filepath.Dir(filepath.Clean(path))
	there, err := os.ReadDir(path)
	switch {
	case err == nil && len(there) > 0 && !force:
		return nil, fmt.Errorf("the folder %s is not empty; --force replaces the files in it", path)
	case err == nil:
		f.over, in = true, path
	case !os.IsNotExist(err):
		return nil, err
	default:
		if err := os.MkdirAll(in, 0o755); err != nil {
			return nil, err
		}
	}
	f.temp, err = os.MkdirTemp(in, ".cuesta-*")
	if err != nil {
		return nil, err
	}
	return f, os.Chmod(f.temp, 0o755)
}

// write writes a file of the folder, or writes it anew; the name may lead into
// a folder below.
func (f *folder) write(name string, fill func(io.Writer) error) error {
	path := filepath.Join(f.temp, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	if err := os.Remove(path); err != nil && !os.IsNotExist(err) {
		return err
	}
	return fileIn(path, fill)
}

// drop removes what was made so far.
func (f *folder) drop() { os.RemoveAll(f.temp) }

// keep gives the folder its name, or moves its files to where they belong.
func (f *folder) keep() error {
	if !f.over {
		return os.Rename(f.temp, f.path)
	}
	err := filepath.WalkDir(f.temp, func(path string, d os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(f.temp, path)
		if err != nil {
			return err
		}
		if d.IsDir() {
			return os.MkdirAll(filepath.Join(f.path, rel), 0o755)
		}
		return os.Rename(path, filepath.Join(f.path, rel))
	})
	f.drop()
	return err
}

// stale are the pages right in a folder below that are there already and that the
// new ones do not replace, by name: ours as they were written, and others.
func (f *folder) stale(below string, ours func([]byte) bool) (own, others []string, err error) {
	there, err := os.ReadDir(filepath.Join(f.path, below))
	if !f.over || os.IsNotExist(err) {
		return nil, nil, nil
	}
	for _, d := range there {
		name := filepath.Join(below, d.Name())
		if _, err := os.Lstat(filepath.Join(f.temp, name)); err == nil || !d.Type().IsRegular() || filepath.Ext(name) != ".html" {
			continue
		}
		text, err := os.ReadFile(filepath.Join(f.path, name))
		switch {
		case err != nil:
			return nil, nil, err
		case ours(text):
			own = append(own, name)
		default:
			others = append(others, name)
		}
	}
	return own, others, err
}
