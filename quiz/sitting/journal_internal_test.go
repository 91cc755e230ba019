package sitting

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/form"
)

// full is a file on a disk that fills up after some bytes.
type full struct {
	*os.File
	room int
	sync error
}

var errFull = errors.New("the disk is full")

func (f *full) Write(b []byte) (int, error) {
	if len(b) <= f.room {
		f.room -= len(b)
		return f.File.Write(b)
	}
	n, err := f.File.Write(b[:f.room])
	return n, errors.Join(err, errFull)
}

func (f *full) Sync() error { return errors.Join(f.sync, f.File.Sync()) }

// TestWhatCannotBeSavedDoesNotCount fills the disk in the middle of an entry.
func TestWhatCannotBeSavedDoesNotCount(t *testing.T) {
	b, err := form.ReadBlueprint(strings.NewReader("title = \"a\"\n[[item]]\nkind = \"read-dial\"\nattempts = 9\n"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "tf1"}}, form.Options{})
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "a"+Ending)
	j, err := Open(path, d.Forms[0], "")
	if err != nil {
		t.Fatal(err)
	}
	defer j.Close()
	disk := &full{File: j.file.(*os.File), room: 20}
	j.file = disk
	answer := Entry{Do: Answer, Text: "12"}
	for _, step := range []struct {
		room    int
		sync    error
		want    error
		answers int
	}{{20, nil, errFull, 0}, {1000, errFull, errFull, 0}, {1000, nil, nil, 1}, {0, nil, errFull, 1}, {1000, nil, nil, 2}} {
		disk.room, disk.sync = step.room, step.sync
		if err := j.Do(answer); !errors.Is(err, step.want) || len(j.Answer(0).Texts) != step.answers {
			t.Errorf("got %v and %d answers, want %v and %d", err, len(j.Answer(0).Texts), step.want, step.answers)
		}
	}
	again, err := Open(path, d.Forms[0], "")
	if err != nil || again.Torn() || len(again.Answer(0).Texts) != 2 {
		t.Fatalf("got %v; want both answers", err)
	}
	again.Close()
}
