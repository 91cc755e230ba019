package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// apparentDip asks for the dip in a section, or for the true dip behind it.
type apparentDip struct{}

// apparentItem is one bed and one section.
type apparentItem struct {
	quantity
	bare
	plane    orient.Plane // as far as the question tells it
	notation orient.Notation
	section  orient.Azimuth
	shown    int  // the apparent dip in degrees, where it is given
	back     bool // the true dip is asked for
}

// Name, Title and OnPaper describe the kind.
func (apparentDip) Name() string  { return "apparent-dip" }
func (apparentDip) Title() string { return "Apparent dip from true, and back" }
func (apparentDip) OnPaper() bool { return true }

// slopeReckoned is what a slope found with a calculator, a table or a drawing
// may be off by, our choice.
const slopeReckoned = orient.Degree

// Deal draws a bed and a section from 15° to 75° off its strike, and the way.
// It draws again where true and apparent dip are as good as equal, or the true
// dip is above 80°, where a degree in the section says little.
func (apparentDip) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	for {
		p, err := s.planeBetween(r, 8, 80)
		if err != nil {
			return nil, err
		}
		it := newApparent(p, p.Strike.Add(angle(sectionOff(r))), r.IntN(2) == 0, s)
		if it.told() {
			return it, nil
		}
	}
}

// sectionOff is the angle from the strike to the section.
func sectionOff(r *rand.Rand) int {
	psi := signed(r, 15, 75)
	if r.IntN(2) == 0 {
		return psi + 180
	}
	return psi
}

func newApparent(p orient.Plane, section orient.Azimuth, back bool, s Spec) apparentItem {
	it := apparentItem{plane: p, notation: s.Notation, section: section, back: back}
	psi := section.From(p.Strike)
	apparent := whole(p.ApparentDip(section).Abs())
	part := s.tolerance().Partial
	if back {
		it.shown = apparent
		it.quantity = slope("true dip", whole(orient.TrueDip(angle(apparent), psi)), slopeReckoned, part)
		it.slipsBack(angle(apparent), psi)
	} else {
		it.quantity = slope("apparent dip", apparent, slopeReckoned, part)
		it.slipsForth(p.Dip, psi)
	}
	it.exact = true
	return it
}

// whole rounds to whole degrees.
func whole(a orient.Angle) int { return int(math.Round(a.Degrees())) }

// slipsForth are the known mistakes on the way to the apparent dip.
func (it *apparentItem) slipsForth(dip, psi orient.Angle) {
	it.slip(dip.Degrees(), slipped("This is the true dip; a section that does not run straight down the dip shows less."))
	it.slip(degreesOf(dip.Tan()*math.Abs(psi.Cos())), slipped("The angle was counted from the dip direction; it is counted from the strike."))
	it.slip(degreesOf(dip.Tan()/math.Abs(psi.Sin())), slipped("An apparent dip is never greater than the true one: multiply by the sine, do not divide."))
	it.slip(float64(90-int(it.value)), of(mistake.Complement, "The angle is counted from the vertical here; dip is counted from the horizontal."))
}

// slipsBack are the known mistakes on the way to the true dip.
func (it *apparentItem) slipsBack(apparent, psi orient.Angle) {
	it.slip(apparent.Degrees(), of(mistake.EdgeNotDownDip, "This is the apparent dip; the true dip is greater."))
	it.slip(degreesOf(apparent.Tan()/math.Abs(psi.Cos())), slipped("The angle was counted from the dip direction; it is counted from the strike."))
	it.slip(degreesOf(apparent.Tan()*math.Abs(psi.Sin())), slipped("A true dip is never less than an apparent one: divide by the sine, do not multiply."))
	it.slip(float64(90-int(it.value)), of(mistake.Complement, "The angle is counted from the vertical here; dip is counted from the horizontal."))
}

// degreesOf is the slope of the tangent t, in degrees.
func degreesOf(t float64) float64 { return orient.Atan2(t, 1).Degrees() }

// told says that the question can be told from its given numbers.
func (it apparentItem) told() bool {
	given := it.plane.Dip.Degrees()
	if it.back {
		given = float64(it.shown)
	}
	return it.apart(given, it.value) > 2*it.full && it.value >= 3 && it.value <= 80 && (!it.back || it.shown >= 3)
}

// Kind is the kind.
func (apparentItem) Kind() Kind { return apparentDip{} }

// Prompt is the question.
func (it apparentItem) Prompt() string {
	section := fmt.Sprintf("a vertical section that runs along %s°–%s°", it.section, it.section.Opposite())
	if it.back {
		return fmt.Sprintf("In %s a bed shows a dip of %d°. The strike line of the bed runs along %s°–%s°. What is its true dip, to the nearest degree?",
			section, it.shown, it.plane.Strike, it.plane.Strike.Opposite())
	}
	return fmt.Sprintf("A bed is written %s (%s). What dip does it show in %s, to the nearest degree?",
		orient.Format(it.plane, it.notation), notationNames[it.notation], section)
}

// Hints help in steps.
func (it apparentItem) Hints() []string {
	last := "The tangent of the apparent dip is the tangent of the true dip times the sine of the angle between section and strike."
	return []string{
		"First find the angle between the section and the strike line; in a section along the strike the bed shows no dip, straight across it the true one.",
		"The apparent dip is never greater than the true dip.",
		last,
	}
}

// Near says that both have the same answer.
func (it apparentItem) Near(other Item) bool {
	o, ok := other.(apparentItem)
	return ok && it.near(o.quantity)
}

// Difficulty is how near the known mistakes lie, and higher for the way back.
func (it apparentItem) Difficulty() float64 {
	d := 0.6 * it.closeness()
	if it.back {
		d += 0.3
	}
	return d
}
