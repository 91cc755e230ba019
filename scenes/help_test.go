package scenes

import (
	"slices"
	"strings"
	"testing"

	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
)

// The keys that work on every screen stand in every list of keys.
func TestEveryListOfKeysTellsThoseThatWorkEverywhere(t *testing.T) {
	lecture, err := NewLecture(lesson.Shipped()[0], LectureOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		scene Scene
		key   input.Key
	}{
		{"help of the bench", mustBench(t), input.F1},
		{"keys of the bench", mustBench(t), input.F4},
		{"keys of the hall", NewHall(HallOptions{}), input.F1},
		{"keys of a lecture", lecture, input.F1},
		{"list of keys over a lecture", NewHall(HallOptions{First: lecture}), input.F4},
	} {
		for _, size := range windows[:3] {
			d := drive{size[0], size[1], c.scene}
			d.wait()
			d.key(c.key)
			told := ""
			eachPage(d, func(int) { told += treeWords(d.s.Description()) })
			for _, k := range []string{"F1", "F2", "F4", "F10", "F11"} {
				if !slices.Contains(strings.FieldsFunc(told, func(r rune) bool { return !isWord(r) }), k) {
					t.Errorf("%s, %v: %s is not told", c.name, size, k)
				}
			}
			d.key(input.Escape)
		}
	}
}
