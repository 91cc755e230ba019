package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// applyDeclination has a declination added or taken off by hand.
type applyDeclination struct{}

// declinationItem is one azimuth and one declination.
type declinationItem struct {
	quantity
	bare
	given       int  // degrees
	declination int  // degrees, east positive
	back        bool // a magnetic azimuth is asked for
}

// Name, Title and OnPaper describe the kind.
func (applyDeclination) Name() string  { return "apply-declination" }
func (applyDeclination) Title() string { return "Apply the declination" }
func (applyDeclination) OnPaper() bool { return true }

// Deal draws the declination, the azimuth and the way. One item in three takes
// the declination of the place, where it is a degree or more; the others are
// from 2° to 25° of either sign. One in three crosses north.
func (applyDeclination) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	d, back := signed(r, 2, 25), r.IntN(2) == 0
	if place := whole(s.field().Declination); r.IntN(3) == 0 && place != 0 {
		d = place
	}
	given := azimuth(r)
	if r.IntN(3) == 0 {
		given = crossing(r, turn(d, back))
	}
	return newDeclination(given, d, back, s), nil
}

// turn is what is added to the azimuth that is given.
func turn(declination int, back bool) int {
	if back {
		return -declination
	}
	return declination
}

// crossing is an azimuth from which the turn crosses north.
func crossing(r *rand.Rand, turn int) int {
	if turn > 0 {
		return 360 - 1 - r.IntN(turn)
	}
	return r.IntN(-turn)
}

func newDeclination(given, declination int, back bool, s Spec) declinationItem {
	it := declinationItem{given: given, declination: declination, back: back}
	label := "true azimuth"
	if back {
		label = "magnetic azimuth"
	}
	by := turn(declination, back)
	right := orient.TrueFromMagnetic(orient.AzimuthOf(angle(given)), angle(declination))
	if back {
		right = orient.MagneticFromTrue(orient.AzimuthOf(angle(given)), angle(declination))
	}
	it.quantity = bearing(label, degrees(right), exact, s.tolerance().Partial)
	it.slip(float64(given-by), of(mistake.DeclinationWrongSign, "The declination was taken with the wrong sign. East declination is added to a magnetic azimuth to make it true, west is taken off; the other way about it is the reverse."))
	it.slip(float64(given), of(mistake.DeclinationNotSet, "The declination was left out."))
	it.slip(float64(given+2*by), of(mistake.DeclinationTwice, "The declination was applied twice."))
	return it
}

// Kind is the kind.
func (declinationItem) Kind() Kind { return applyDeclination{} }

// Prompt is the question.
func (it declinationItem) Prompt() string {
	d := declinationWords(angle(it.declination))
	if it.back {
		return fmt.Sprintf("A bed strikes %03d° from true north. The declination is %s. What does the needle read while the ring of the dial stands at zero?", it.given, d)
	}
	return fmt.Sprintf("The ring of the dial stands at zero, and the needle reads %03d°. The declination is %s. What is the azimuth from true north?", it.given, d)
}

// Hints help in steps.
func (it declinationItem) Hints() []string {
	hints := []string{
		"Sketch true north up, and magnetic north beside it: to the right for an east declination, to the left for a west one.",
		"Angles from true north are the greater ones where magnetic north lies to the east.",
	}
	if it.wrapped() {
		return append(hints, "An azimuth lies between 000 and 360: add or take off a full turn.")
	}
	return hints
}

// wrapped says that the sum leaves the circle.
func (it declinationItem) wrapped() bool {
	sum := it.given + turn(it.declination, it.back)
	return sum < 0 || sum >= 360
}

// Near says that both have the same answer.
func (it declinationItem) Near(other Item) bool {
	o, ok := other.(declinationItem)
	return ok && it.near(o.quantity)
}

// Difficulty is higher for a west declination, for the way back and where the
// number wraps.
func (it declinationItem) Difficulty() float64 {
	d := 0.2
	for _, harder := range []bool{it.declination < 0, it.back, it.wrapped()} {
		if harder {
			d += 0.2
		}
	}
	return d
}
