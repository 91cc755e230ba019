package lesson_test

import (
	"errors"
	"fmt"

	"cuesta/quiz/written"
	"cuesta/scenes/lesson"
)

func ExampleParse() {
	_, err := lesson.Parse("water", []byte(`title = "Water lines"
plane = "035/30"
[[step]]
say = "Still water is level."
shwo = ["water"]
[[step]]
ask = "Which way would it run?"
`))
	var wrong *written.Wrong
	if errors.As(err, &wrong) {
		for _, p := range wrong.Problems {
			fmt.Println(p)
		}
	}
	// Output:
	// line 5, column 1: read the key "shwo", which is not known here; perhaps show was meant
	// line 7, column 1: ask: there is no answer to it; write answer = "…" in the same step
}

func ExamplePlayer() {
	l, err := lesson.Parse("ends", []byte(`title = "Two ends"
plane = "035/30"
seed = 7
[[step]]
ask = "What will this student write?"
answer = "The other end of the strike line."
mistake = "other-end"
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := lesson.NewPlayer(l)
	if err != nil {
		fmt.Println(err)
		return
	}
	p.Finish()
	w, _ := p.Written()
	fmt.Println("before the answer the judge names", len(w.Named), "mistakes")
	p.Reveal()
	w, _ = p.Written()
	fmt.Println(p.Answer(), w.Named)
	// Output:
	// before the answer the judge names 0 mistakes
	// The other end of the strike line. [other-end]
}
