package keep

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestFileReplacesWholeAndKeepsTheOldOnFailure(t *testing.T) {
	dir := t.TempDir()
	f := File{filepath.Join(dir, "deep", "practice.json")}
	if got, err := f.Load(); got != nil || err != nil {
		t.Fatalf("nothing yet: got %q, %v", got, err)
	}
	for _, want := range []string{"first", "second"} {
		if err := f.Save([]byte(want)); err != nil {
			t.Fatal(err)
		}
		if got, err := f.Load(); string(got) != want || err != nil {
			t.Errorf("got %q, %v; want %q", got, err, want)
		}
	}
	if names, _ := os.ReadDir(filepath.Dir(f.Path)); len(names) != 1 {
		t.Errorf("left %d files behind, want 1", len(names))
	}
	blocked := File{filepath.Join(f.Path, "practice.json")} // below a file
	if err := blocked.Save([]byte("x")); err == nil {
		t.Error("saving below a file: got no error")
	}
}

func TestSetAsideKeepsEveryDamagedFile(t *testing.T) {
	f := File{filepath.Join(t.TempDir(), "practice.json")}
	for _, s := range []string{"a", "b"} {
		if err := f.Save([]byte(s)); err != nil {
			t.Fatal(err)
		}
		where, err := f.SetAside()
		if err != nil {
			t.Fatal(err)
		}
		if got, _ := os.ReadFile(where); string(got) != s {
			t.Errorf("set aside %q, want %q", got, s)
		}
	}
	if got, err := f.Load(); got != nil || err != nil {
		t.Errorf("after setting aside: got %q, %v", got, err)
	}
}

func TestLoadRefusesWhatNoBenchWrote(t *testing.T) {
	f := File{filepath.Join(t.TempDir(), "practice.json")}
	file, err := os.Create(f.Path)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Truncate(1 << 30); err != nil {
		t.Fatal(err)
	}
	file.Close()
	if _, err := f.Load(); !errors.Is(err, ErrTooLarge) {
		t.Errorf("1 GB of zeros: got %v, want ErrTooLarge", err)
	}
}

func TestDataFolderFollowsTheStandard(t *testing.T) {
	want := t.TempDir()
	t.Setenv("XDG_DATA_HOME", want)
	if got, err := DataFolder(); got != want || err != nil {
		t.Errorf("got %q, %v; want %q", got, err, want)
	}
	t.Setenv("XDG_DATA_HOME", "not/absolute")
	if got, _ := DataFolder(); got == "not/absolute" {
		t.Error("a relative XDG_DATA_HOME must be ignored (XDG Base Directory Specification)")
	}
}
