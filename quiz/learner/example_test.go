package learner_test

import (
	"fmt"

	"cuesta/quiz/form"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
)

// A student who exchanges east and west reads a dial, and is told so.
func ExampleLearner_Sit() {
	dial := form.Form{
		Blueprint: form.Blueprint{Parts: []form.Part{{Kind: "read-dial", Count: 1, Points: 1, Attempts: 1}}},
		Items:     []form.Dealt{{Seed: 3}},
	}
	student := learner.Learner{Manner: learner.Mistaken, Mistake: mistake.EastWest}
	work, err := student.Sit(dial, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	done := work.Done[0]
	mark := done.Item.Mark(done.Text, done.Evidence)
	fmt.Println("right would be", done.Item.Key(), "and the answer is", done.Text)
	fmt.Println("made:", done.Made, "named:", mark.Mistakes[0].Kind)
	// Output:
	// right would be 266° and the answer is 94
	// made: [east-west-exchanged] named: east-west-exchanged
}
