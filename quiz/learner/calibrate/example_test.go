package calibrate_test

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/learner"
	"cuesta/quiz/learner/calibrate"
)

// An instructor looks whether guessing would pay.
func ExampleRun() {
	quiz, err := form.ReadBlueprint(strings.NewReader(`
title = "Directions"
pass = 0.5
[[item]]
kind = "dip-direction"
count = 4
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	table, err := calibrate.Run(quiz, calibrate.Options{
		Students: 100,
		Learners: []learner.Learner{{Manner: learner.Careful}, {Manner: learner.Guessing}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range table.Scores {
		fmt.Printf("%s: %.0f %% of the points, %.0f %% pass\n", s.Learner, 100*s.Mean, 100*s.Pass)
	}
	// Output:
	// careful: 100 % of the points, 100 % pass
	// guessing: 0 % of the points, 0 % pass
}
