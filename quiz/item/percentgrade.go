package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// percentGrade has degrees turned into per cent, and back.
type percentGrade struct{}

// gradeItem is one slope.
type gradeItem struct {
	quantity
	bare
	given int  // degrees, or per cent for the way back
	back  bool // degrees are asked for
}

// Name, Title and OnPaper describe the kind.
func (percentGrade) Name() string  { return "percent-grade" }
func (percentGrade) Title() string { return "Percent grade and degrees" }
func (percentGrade) OnPaper() bool { return true }

// Deal draws a slope of 4° to 60°, or of 7 to 175 per cent, and the way.
// Without the numbers at which a known mistake is right: 45° is 100 per cent
// and its own complement.
func (percentGrade) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	d, err := s.dip(r, 4, 60)
	if err != nil {
		return nil, err
	}
	if r.IntN(2) == 0 {
		return newGrade(d, false, s), nil
	}
	p := whole(orient.Angle(orient.PercentGrade(angle(d)))*orient.Degree) + r.IntN(3) - 1
	return newGrade(p, true, s), nil
}

func newGrade(given int, back bool, s Spec) gradeItem {
	it := gradeItem{given: given, back: back}
	if back {
		it.quantity = slope("slope in degrees", whole(orient.OfPercentGrade(float64(given))), slopeReckoned, s.tolerance().Partial)
		it.slipsToDegrees(float64(given))
	} else {
		p := math.Round(orient.PercentGrade(angle(given)))
		it.quantity = quantity{label: "slope in per cent", unit: "%", value: p, full: max(1, math.Round(p/50)), most: 1e4}
		it.slipsToPercent(float64(given))
	}
	it.exact = true
	return it
}

const halfway = "A slope of 100 per cent rises as much as it runs: that is 45°, not 90°."

func (it *gradeItem) slipsToPercent(d float64) {
	it.slip(d, slipped("This is the number of degrees; a slope in per cent is 100 times its tangent."))
	it.slip(math.Round(d/0.9), slipped(halfway))
	it.slip(math.Round(d/0.45), slipped("Per cent do not grow evenly with the angle: they are 100 times its tangent."))
	it.slip(math.Round(orient.PercentGrade(orient.Right-orient.Angle(d)*orient.Degree)), of(mistake.Complement, "This is the slope counted from the vertical."))
}

func (it *gradeItem) slipsToDegrees(p float64) {
	it.slip(p, of(mistake.PercentScale, "This is the number of per cent; the slope in degrees is the angle whose tangent is a hundredth of it."))
	it.slip(math.Round(p*0.9), slipped(halfway))
	it.slip(math.Round(p*0.45), slipped("Per cent do not grow evenly with the angle: they are 100 times its tangent."))
	it.slip(90-it.value, of(mistake.Complement, "This is the slope counted from the vertical."))
}

// Kind is the kind.
func (gradeItem) Kind() Kind { return percentGrade{} }

// Prompt is the question.
func (it gradeItem) Prompt() string {
	if it.back {
		return fmt.Sprintf("A slope rises %d in every 100 along the level: a grade of %d per cent. What is it in degrees, to the nearest one?", it.given, it.given)
	}
	return fmt.Sprintf("A slope dips %d°. What is its grade in per cent, to the nearest one?", it.given)
}

// Hints help in steps.
func (gradeItem) Hints() []string {
	return []string{
		"Per cent say how much a slope rises for a hundred along the level.",
		"Draw the triangle: the rise stands opposite the angle, the run beside it; rise over run is the tangent.",
	}
}

// Near says that both have the same answer.
func (it gradeItem) Near(other Item) bool {
	o, ok := other.(gradeItem)
	return ok && it.near(o.quantity)
}

// Difficulty is how near the known mistakes lie.
func (it gradeItem) Difficulty() float64 { return it.closeness() }
