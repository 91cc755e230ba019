package lesson

import "cuesta/assets"

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
	data, err := assets.Lessons.ReadFile("lessons/" + name + ".toml")
	if err != nil {
		panic("lesson: " + err.Error())
	}
	l, err := Parse(name, data)
	if err != nil {
		panic("lesson: " + name + ": " + err.Error())
	}
	return l
}
