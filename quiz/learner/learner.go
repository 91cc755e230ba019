package learner

import (
	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// Manner is how a simulated student works.
type Manner uint8

// The manners.
const (
	Careful  Manner = iota // levels, waits, taps, and reads with a scatter of 1°
	Hurried                // reads with a scatter of 3°, often without levelling or tapping
	Guessing               // measures nothing and writes any answer there can be
	Mistaken               // careful, but for one mistake
)

// Learner is a simulated student. The zero value is a careful one.
type Learner struct {
	Manner  Manner
	Mistake mistake.Kind // of a Mistaken one
}

// All are the learners a quiz is tried with: one of each manner, and one of
// each mistake.
func All() []Learner {
	all := []Learner{{Manner: Careful}, {Manner: Hurried}, {Manner: Guessing}}
	for _, k := range Mistakes() {
		all = append(all, Learner{Mistaken, k})
	}
	return all
}

// Mistakes are those that a learner can make, in their order. Learners measure
// by the edge, so what belongs to the sensor alone is not among them.
func Mistakes() []mistake.Kind {
	var ks []mistake.Kind
	for k := range mistake.Kind(mistake.Kinds) {
		if k != mistake.NotCalibrated {
			ks = append(ks, k)
		}
	}
	return ks
}

// String is the learner in lower case: careful, hurried, guessing, or the name
// of the mistake.
func (l Learner) String() string {
	switch l.Manner {
	case Careful:
		return "careful"
	case Hurried:
		return "hurried"
	case Guessing:
		return "guessing"
	case Mistaken:
	}
	return l.Mistake.String()
}

// makes says whether the learner makes the mistake k.
func (l Learner) makes(k mistake.Kind) bool { return l.Manner == Mistaken && l.Mistake == k }

// scatter is the standard deviation of a reading.
func (l Learner) scatter() orient.Angle {
	if l.Manner == Hurried {
		return 3 * orient.Degree
	}
	return orient.Degree
}
