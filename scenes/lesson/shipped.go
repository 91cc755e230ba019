package lesson

import (
	"bytes"

	"github.com/pelletier/go-toml/v2"

	"cuesta/assets"
)

// shipped are the names of the lessons that travel inside the programs, in the
// order in which a course would give them.
var shipped = [...]string{"strike-and-dip", "two-readings", "right-hand", "how-readings-go-wrong", "how-far-to-trust"}

// Shipped are the lessons that travel inside the programs, in the order in
// which a course would give them. They are read anew each time.
func Shipped() []Lesson {
	lessons := make([]Lesson, len(shipped))
	for i, name := range shipped {
		lessons[i] = mustRead(name)
	}
	return lessons
}

// Head is what a list of lessons tells of one.
type Head struct {
	Name           string // by which Named finds it
	Title, Summary string
	Minutes        int
}

// Heads are the heads of the shipped lessons, in the order of Shipped. It takes
// far less time than reading the lessons.
func Heads() []Head {
	heads := make([]Head, len(shipped))
	for i, name := range shipped {
		top, _, _ := bytes.Cut(file(name), []byte("\n[["))
		heads[i].Name = name
		if err := toml.Unmarshal(top, &heads[i]); err != nil {
			panic("lesson: " + name + ": " + err.Error())
		}
	}
	return heads
}

// Named is the shipped lesson of that name.
func Named(name string) (Lesson, bool) {
	for _, n := range shipped {
		if n == name {
			return mustRead(n), true
		}
	}
	return Lesson{}, false
}

// mustRead reads a lesson of our own; the tests read every one of them.
func mustRead(name string) Lesson {
	l, err := Parse(name, file(name))
	if err != nil {
		panic("lesson: " + name + ": " + err.Error())
	}
	return l
}

// file is the text of a lesson of our own.
func file(name string) []byte {
	data, err := assets.Lessons.ReadFile("lessons/" + name + ".toml")
	if err != nil {
		panic("lesson: " + err.Error())
	}
	return data
}
