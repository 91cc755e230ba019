package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

// readSymbol has a map symbol read.
type readSymbol struct{}

// symbolItem is one symbol.
type symbolItem struct{ planar }

// Name, Title and OnPaper describe the kind.
func (readSymbol) Name() string  { return "read-symbol" }
func (readSymbol) Title() string { return "Read a map symbol" }
func (readSymbol) OnPaper() bool { return true }

// byEye is what the direction of a drawn line may be off by, our choice: a
// protractor on paper does better, an eye on a screen hardly.
const byEye = 5 * orient.Degree

// drawn is the tolerance for a symbol: its direction is drawn, its dip
// written.
func drawn(t quiz.Tolerance) quiz.Tolerance {
	return quiz.Tolerance{Reading: max(t.Reading, byEye), Dip: exact, Partial: t.Partial, Side: t.Side}
}

// Deal draws a plane. Where no dips are asked for one symbol in ten is of a
// level bed, one of a vertical and one of an overturned one.
func (readSymbol) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.symbol(r)
	if err != nil {
		return nil, err
	}
	return symbolItem{symbolPlane(p, s)}, nil
}

// symbol draws the plane of a symbol.
func (s Spec) symbol(r *rand.Rand) (orient.Plane, error) {
	p, err := s.planeBetween(r, 5, 85)
	special := r.IntN(10)
	if s.DipMin != 0 || s.DipMax != 0 {
		return p, err
	}
	switch special {
	case 0:
		p = orient.Plane{}
	case 1:
		p.Dip = orient.Right
	case 2:
		p.Overturned = true
	}
	return p, err
}

// symbolPlane is the plane as it is asked for, with the known mistakes.
func symbolPlane(p orient.Plane, s Spec) planar {
	a := planar{truth: p, notation: s.Notation, tolerance: drawn(s.tolerance())}
	if p.Dip == 0 {
		a.slip(orient.Plane{Dip: orient.Right}, slipped("A circle with a cross in it stands for a bed without a strike."))
		return a
	}
	if p.Overturned {
		a.slip(orient.Plane{Strike: p.Strike, Dip: p.Dip}, slipped("The hook at the tick says that the bed is overturned; write the word behind."))
	}
	for _, e := range exchanges(p, s.Notation) {
		e.plane.Overturned = p.Overturned
		if e.known && e.kind != mistake.Complement {
			a.slip(e.plane, e.reason)
		}
	}
	return a
}

// Ask is what is asked for.
func (it symbolItem) Ask() Ask {
	a := it.planar.Ask()
	a.WayUp = true
	return a
}

// Kind is the kind.
func (symbolItem) Kind() Kind { return readSymbol{} }

// Prompt is the question; what it asks for is the same at every symbol, so that
// it does not tell which one is meant.
func (it symbolItem) Prompt() string {
	return it.asked(", and write overturned behind it where the bed is")
}

// InBoxes is the question where strike and dip have a box each, in which no word
// can be written.
func (it symbolItem) InBoxes() string { return it.asked("") }

func (it symbolItem) asked(more string) string {
	return "Which plane does the symbol on the map stand for? Write it as " + notationNames[it.notation] + more + ". North is up; a direction within 5° will do."
}

// Figure is the map with the symbol.
func (it symbolItem) Figure() Figure { return MapFigure{Plane: it.truth} }

// Alt describes the strokes of the symbol on the page.
func (it symbolItem) Alt() string {
	p := it.truth
	const north = "A map, north up, with one symbol: "
	switch {
	case p.Dip == 0:
		return north + "a circle with a cross in it."
	case p.Dip == orient.Right:
		return north + "a long line that " + slant(p.Strike) + ", with a short stroke across its middle, to both sides alike."
	}
	text := north + "a long line that " + slant(p.Strike) + ", and at its middle a short tick " + beside(p.DipDirection())
	if p.Overturned {
		text = north + "a long line that " + slant(p.Strike) + ", and a hook that leaves the line " + beside(p.DipDirection().Opposite()) +
			" and comes back through its middle as a short tick " + beside(p.DipDirection())
	}
	return text + fmt.Sprintf(". At the tick stands the number %.0f.", p.Dip.Degrees())
}

// slant says how a line lies on the page.
func slant(z orient.Azimuth) string {
	a := math.Mod(z.Degrees(), 180)
	switch {
	case a == 0:
		return "runs straight up the page"
	case a == 90:
		return "runs straight across the page"
	case a < 90:
		return fmt.Sprintf("rises to the right at %.0f degrees from the lower edge", 90-a)
	}
	return fmt.Sprintf("rises to the left at %.0f degrees from the lower edge", a-90)
}

// beside says on which side of its line a tick stands on the page.
func beside(z orient.Azimuth) string {
	const eps = 1e-9
	switch v := z.Vec(); {
	case v.Y > eps:
		return "above it"
	case v.Y < -eps:
		return "below it"
	case v.X > 0:
		return "on its right"
	}
	return "on its left"
}

// Hints help in steps.
func (symbolItem) Hints() []string {
	return []string{
		"The long line lies along the strike, the short tick points down the dip, and the number is the dip.",
		"A stroke across both sides stands for a vertical bed, a circle with a cross for a level one, a hook for an overturned one.",
		"Measure the direction of the line clockwise from north, and look to which side of it the tick points.",
	}
}

// Near says that both symbols stand for the same plane.
func (it symbolItem) Near(other Item) bool {
	o, ok := other.(symbolItem)
	return ok && it.near(o.planar)
}

// Difficulty is higher for the rarer symbols, and where the right-hand strike
// is the lower end of the line on the page.
func (it symbolItem) Difficulty() float64 { return symbolDifficulty(it.truth) }

func symbolDifficulty(p orient.Plane) float64 {
	d := 0.2
	if p.Overturned || p.Dip == 0 || p.Dip == orient.Right {
		d += 0.4
	}
	if p.Strike.Vec().Y < 0 {
		d += 0.3
	}
	return d
}
