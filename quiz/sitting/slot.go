package sitting

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"time"

	"cuesta/quiz/form"
)

// Slot holds one piece of data that is replaced whole or not at all, as the
// storage of a browser does.
type Slot interface {
	// Load returns the data, or nil where there is none yet.
	Load() ([]byte, error)
	// Save replaces the data; after an error the old data still stands.
	Save([]byte) error
}

// OpenIn begins the journal of a form in a slot, or goes on with the one that
// is there, as Open does with a file.
func OpenIn(s Slot, f form.Form, at string) (*Journal, error) {
	data, err := s.Load()
	if err != nil {
		return nil, err
	}
	return open(&slotFile{slot: s, data: data, safe: len(data)}, f, at)
}

// slotFile is a slot as a file that is appended to. What is written counts when
// Sync has put it into the slot.
type slotFile struct {
	slot Slot
	data []byte
	safe int // bytes of data that stand in the slot
	read int
}

func (f *slotFile) Read(p []byte) (int, error) {
	if f.read >= len(f.data) {
		return 0, io.EOF
	}
	n := copy(p, f.data[f.read:])
	f.read += n
	return n, nil
}

func (f *slotFile) Write(p []byte) (int, error) {
	f.data = append(f.data, p...)
	return len(p), nil
}

func (f *slotFile) Sync() error {
	if err := f.slot.Save(f.data); err != nil {
		return err
	}
	f.safe = len(f.data)
	return nil
}

// Truncate cuts off what is behind size. Where that has never been saved there
// is nothing to save.
func (f *slotFile) Truncate(size int64) error {
	if size < 0 || size > int64(len(f.data)) {
		return fmt.Errorf("cut at %d of %d bytes", size, len(f.data))
	}
	f.data = f.data[:size]
	if f.safe <= len(f.data) {
		return nil
	}
	return f.Sync()
}

// Stat tells how much stands in the slot now, so that a second writer is found
// out.
func (f *slotFile) Stat() (fs.FileInfo, error) {
	now, err := f.slot.Load()
	if err != nil {
		return nil, err
	}
	if !bytes.Equal(now, f.data[:f.safe]) {
		return slotInfo(-1), nil
	}
	return slotInfo(len(now)), nil
}

func (f *slotFile) Close() error { return nil }

// slotInfo is the size of a slot, as a file tells it.
type slotInfo int

func (i slotInfo) Name() string       { return "" }
func (i slotInfo) Size() int64        { return int64(i) }
func (i slotInfo) Mode() fs.FileMode  { return 0o600 }
func (i slotInfo) ModTime() time.Time { return time.Time{} }
func (i slotInfo) IsDir() bool        { return false }
func (i slotInfo) Sys() any           { return nil }
