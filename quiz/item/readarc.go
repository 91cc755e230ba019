package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// readArc has the inclination arm read on one of its two scales.
type readArc struct{}

// arcItem is one arm.
type arcItem struct {
	quantity
	arm     orient.Angle
	percent bool // the percent scale is asked for
}

// Name, Title and OnPaper describe the kind.
func (readArc) Name() string  { return "read-arc" }
func (readArc) Title() string { return "Read the inclination arc" }
func (readArc) OnPaper() bool { return true }

// Deal draws where the arm stands and which scale is asked for: degrees two
// times in three, else 15 to 95 per cent. Below that the two scales run
// together, above 86° the percent scale has run out.
func (readArc) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if r.IntN(3) == 0 {
		return arcInPercent(s, 5*(3+r.IntN(17))), nil
	}
	from, to, err := s.dips(4, 86)
	if err != nil {
		return nil, err
	}
	d := from + r.IntN(to-from+1)
	if d%10 == 0 && from < to { // a numeral would say it without counting
		d += map[bool]int{true: 1, false: -1}[d < to]
	}
	return arcInDegrees(s, d), nil
}

func arcInDegrees(s Spec, d int) arcItem {
	t := s.tolerance()
	it := arcItem{quantity: slope("angle in degrees", d, t.Reading, t.Partial), arm: angle(d)}
	it.slip(math.Round(orient.PercentGrade(it.arm)), catalogued(mistake.PercentScale, s.Notation))
	it.slip(float64(90-d), catalogued(mistake.Complement, s.Notation))
	it.slip(miscounted(float64(d)), slipped("The marks were counted the wrong way from the nearest number."))
	return it
}

// percentReading is what a reading of the percent scale may be off by: half
// the distance of its marks.
const percentReading = 2.5

func arcInPercent(s Spec, p int) arcItem {
	q := quantity{label: "slope in per cent", unit: "%", value: float64(p), full: percentReading, most: 1000}
	it := arcItem{quantity: q, arm: orient.OfPercentGrade(float64(p)), percent: true}
	it.slip(math.Round(it.arm.Degrees()), of(mistake.PercentScale, "The degree scale was read, and per cent are asked for: read the scale on the inside."))
	return it
}

// Kind is the kind.
func (arcItem) Kind() Kind { return readArc{} }

// Prompt is the question.
func (it arcItem) Prompt() string {
	if it.percent {
		return "The tube level on the arm is centred. What slope does the arm show, in per cent?"
	}
	return "The tube level on the arm is centred. What angle does the arm show, in degrees?"
}

// Figure is the arm on its arc.
func (it arcItem) Figure() Figure { return ArcFigure{Arm: it.arm} }

// Alt gives the marks to be counted, not the sum.
func (it arcItem) Alt() string {
	text := "An inclination arm on two arcs: degrees on the outside, with a mark each degree, and per cent on the inside, with a mark every 5 up to 100. "
	d := it.arm.Degrees()
	ten := math.Floor(d/10) * 10
	outer := fmt.Sprintf("On the outside the index stands %.0f marks past the numeral %.0f", math.Round(d-ten), ten)
	p := math.Round(orient.PercentGrade(it.arm))
	if p >= 100 {
		return text + outer + "; on the inside it stands beyond 100."
	}
	twenty := math.Floor(p/20) * 20
	return text + outer + fmt.Sprintf("; on the inside about %v marks past %.0f.", math.Round((p-twenty)*2)/10, twenty)
}

// Hints help in steps.
func (it arcItem) Hints() []string {
	if it.percent {
		return []string{
			"Two scales lie side by side: degrees on the outside, per cent on the inside.",
			"The percent scale is uneven: its marks stand for 5 per cent each up to 100.",
		}
	}
	return []string{
		"Two scales lie side by side: degrees on the outside, per cent on the inside.",
		"A bed that rises as much as it runs shows 45 on one scale and 100 on the other.",
		"Count the small marks from the numeral below the index; each is one degree.",
	}
}

// Near says that both arms show the same on the same scale.
func (it arcItem) Near(other Item) bool {
	o, ok := other.(arcItem)
	return ok && it.near(o.quantity)
}

// Difficulty is how near the known mistakes lie.
func (it arcItem) Difficulty() float64 { return it.closeness() }
