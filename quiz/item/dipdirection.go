package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/quiz/mistake"
)

// dipDirection asks for the dip direction of a strike, or the strike of a dip
// direction.
type dipDirection struct{}

// directionItem is one of the two.
type directionItem struct {
	quantity
	bare
	given int  // degrees
	back  bool // the strike is asked for
}

// Name, Title and OnPaper describe the kind.
func (dipDirection) Name() string  { return "dip-direction" }
func (dipDirection) Title() string { return "Dip direction from strike, and back" }
func (dipDirection) OnPaper() bool { return true }

// Deal draws the strike and the way asked for.
func (dipDirection) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	return newDirection(azimuth(r), r.IntN(2) == 0, s), nil
}

func newDirection(given int, back bool, s Spec) directionItem {
	it := directionItem{given: given, back: back}
	turn, label := 90, "dip direction"
	if back {
		turn, label = -90, "right-hand strike"
	}
	it.quantity = bearing(label, given+turn, exact, s.tolerance().Partial)
	it.slip(float64(given-turn), of(mistake.OtherEnd, "This is the opposite direction. The dip direction is a quarter turn clockwise from the right-hand strike."))
	it.slip(float64(given), of(mistake.DirectionForStrike, "This is the number that was given. Strike and dip direction are at right angles to each other."))
	it.slip(float64(given+180), slipped("This is the other end of the given line; strike and dip direction are at right angles to each other."))
	return it
}

// Kind is the kind.
func (directionItem) Kind() Kind { return dipDirection{} }

// Prompt is the question.
func (it directionItem) Prompt() string {
	if it.back {
		return fmt.Sprintf("A bed dips towards %03d°. What is its right-hand strike?", it.given)
	}
	return fmt.Sprintf("A bed has the right-hand strike %03d°. What is its dip direction?", it.given)
}

// Hints help in steps.
func (it directionItem) Hints() []string {
	hints := []string{
		"Strike and dip direction are at right angles.",
		"Look along the right-hand strike: the bed drops to your right, a quarter turn clockwise.",
	}
	if it.wrapped() {
		return append(hints, "An azimuth lies between 000 and 360: add or take off a full turn.")
	}
	return hints
}

// wrapped says that the sum leaves the circle.
func (it directionItem) wrapped() bool {
	return it.back && it.given < 90 || !it.back && it.given >= 270
}

// Near says that both have the same answer.
func (it directionItem) Near(other Item) bool {
	o, ok := other.(directionItem)
	return ok && it.near(o.quantity)
}

// Difficulty is higher for the way back and where the number wraps.
func (it directionItem) Difficulty() float64 {
	d := 0.2
	if it.back {
		d += 0.2
	}
	if it.wrapped() {
		d += 0.3
	}
	return d
}
