package lesson_test

import (
	"io/fs"
	"strings"
	"testing"

	"cuesta/assets"
	"cuesta/scenes/lesson"
)

func TestEveryShippedLessonReads(t *testing.T) {
	files, err := fs.Glob(assets.Lessons, "lessons/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := strings.TrimSuffix(strings.TrimPrefix(f, "lessons/"), ".toml")
		data, err := assets.Lessons.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := lesson.Parse(name, data); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if _, ok := lesson.Named(name); !ok {
			t.Errorf("%s is not among the shipped", name)
		}
	}
	if !t.Failed() && len(lesson.Shipped()) != len(files) {
		t.Errorf("%d lessons are shipped, want %d", len(lesson.Shipped()), len(files))
	}
}
