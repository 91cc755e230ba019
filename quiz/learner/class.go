package learner

import (
	"math/rand/v2"

	"cuesta/quiz/mistake"
)

// habits are the mistakes that students of a made-up class are given, the
// common ones more than once; our choice, not a survey.
var habits = []mistake.Kind{
	mistake.OtherEnd, mistake.DeclinationNotSet, mistake.LevelNotCentred, mistake.PercentScale,
	mistake.EdgeNotDownDip, mistake.DirectionForStrike, mistake.SouthEnd, mistake.NeedleMoving,
	mistake.OtherEnd, mistake.DeclinationWrongSign, mistake.LevelNotCentred, mistake.TubeNotCentred,
	mistake.EastWest, mistake.BodyLeaning, mistake.DigitsSwapped, mistake.StrikeDipSwapped,
}

// Class is a made-up class of n: of every thirty, about half work with care,
// seven hurry, one guesses and eight have the habit of a mistake. The order
// follows from the seed.
func Class(n int, seed uint64) []Learner {
	class := make([]Learner, n)
	next := 0
	for i := range class {
		switch at := i % 30; {
		case at < 14:
			class[i] = Learner{Manner: Careful}
		case at < 21:
			class[i] = Learner{Manner: Hurried}
		case at < 22:
			class[i] = Learner{Manner: Guessing}
		default:
			class[i] = Learner{Mistaken, habits[next%len(habits)]}
			next++
		}
	}
	r := rand.New(rand.NewPCG(seed, stream))
	r.Shuffle(n, func(i, j int) { class[i], class[j] = class[j], class[i] })
	return class
}
