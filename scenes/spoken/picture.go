package spoken

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// picture draws the scene into a new file, whole or not at all.
func (b *Bench) picture(name string) Reply {
	if b.painter == nil {
		return b.refuse("This bench cannot draw pictures.")
	}
	err := newFile(name, func(f *os.File) error { return b.painter(f, b.ses) })
	switch {
	case errors.Is(err, fs.ErrExist):
		return b.refuse(fmt.Sprintf("%s is already there and was left as it is; write another name.", quoted(name)))
	case err != nil:
		return b.refuse("The picture could not be saved: " + sentence(err.Error()))
	}
	return b.say("The picture is in " + name + ".")
}

// newFile fills a file that does not exist yet. It is written under another
// name first and linked into place, so that nobody sees half of it and nothing
// that is there is lost.
func newFile(name string, fill func(*os.File) error) error {
	if _, err := os.Lstat(name); err == nil {
		return fs.ErrExist
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".picture-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	if err := errors.Join(fill(f), f.Chmod(0o644), f.Close()); err != nil {
		return err
	}
	if err := os.Link(f.Name(), name); !errors.Is(err, errors.ErrUnsupported) && !errors.Is(err, fs.ErrPermission) {
		return err
	}
	return os.Rename(f.Name(), name) // a file system without links
}
