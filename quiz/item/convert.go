package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

// convertNotation has a plane written in another notation.
type convertNotation struct{}

// convertItem is one plane and two notations.
type convertItem struct {
	planar // its notation is the one asked for
	bare
	from orient.Notation
}

// Name, Title and OnPaper describe the kind.
func (convertNotation) Name() string  { return "convert-notation" }
func (convertNotation) Title() string { return "Convert a notation" }
func (convertNotation) OnPaper() bool { return true }

// exact is what an answer that follows by reckoning alone may be off by.
const exact = 0.5 * orient.Degree

// exactly tolerates no reading error; a part of the points is given as asked.
func exactly(t quiz.Tolerance) quiz.Tolerance {
	return quiz.Tolerance{Reading: exact, Dip: exact, Partial: t.Partial, Side: t.Side}
}

// Deal draws a plane and a pair of notations, all pairs alike.
func (convertNotation) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.planeBetween(r, 2, 88)
	if err != nil {
		return nil, err
	}
	from := orient.Notation(r.IntN(4))
	to := (from + 1 + orient.Notation(r.IntN(3))) % 4
	return newConvert(p, from, to, s), nil
}

func newConvert(p orient.Plane, from, to orient.Notation, s Spec) convertItem {
	it := convertItem{planar: planar{truth: p, notation: to, tolerance: exactly(s.tolerance())}, from: from}
	for _, e := range exchanges(p, to) {
		it.slip(e.plane, e.reason)
	}
	return it
}

// exchanges are the known mistakes of reckoning with a plane written in the
// notation n, as the plane that is then understood.
func exchanges(p orient.Plane, n orient.Notation) []planeSlip {
	turned := func(a orient.Angle) orient.Plane { return orient.Plane{Strike: p.Strike.Add(a), Dip: p.Dip} }
	steep := orient.Plane{Strike: p.Strike, Dip: orient.Right - p.Dip}
	beside := of(mistake.DirectionForStrike, "The direction is a quarter turn off: strike and dip direction are at right angles, the dip direction clockwise from the right-hand strike.")
	s := []planeSlip{
		{turned(orient.Half), of(mistake.OtherEnd, "The bed would dip to the opposite side: the dip lies to the right of the strike that is written.")},
		{turned(orient.Right), beside}, {turned(-orient.Right), beside},
		{mirrored(p, n), of(mistake.EastWest, "East and west were exchanged.")},
		{reflected(p, n), of(mistake.EastWest, "East and west were exchanged.")},
		{steep, of(mistake.Complement, "The angle is the complement: dip and plunge of the pole add up to 90°, and only the pole takes the plunge.")},
	}
	s[0].kind = opposed(n)
	return append(s, planeSlip{orient.Plane{Strike: p.Strike.Opposite(), Dip: steep.Dip},
		slipped("The pole points away from the dip, and its plunge is 90° less the dip: one of the two is missing here.")})
}

// opposed is the mistake that takes a bed to its opposite side: the wrong
// letters where letters settle it, else the other end.
func opposed(n orient.Notation) mistake.Kind {
	if n == orient.Quadrant {
		return mistake.WrongLetters
	}
	return mistake.OtherEnd
}

// shifts are what the notations add to the right-hand strike.
var shifts = [...]orient.Angle{orient.DirectionDip: orient.Right, orient.PoleNotation: -orient.Right}

// mirrored is the plane understood when east and west are exchanged in the
// direction that is written; letters go on naming the side they can.
func mirrored(p orient.Plane, n orient.Notation) orient.Plane {
	shift := shifts[n]
	written := p.Strike.Add(shift).Angle()
	m := orient.Plane{Strike: orient.AzimuthOf(-written - shift), Dip: p.Dip}
	if n == orient.Quadrant && m.Strike.From(p.Strike).Abs() > orient.Right {
		m.Strike = m.Strike.Opposite()
	}
	return m
}

// reflected is the same where the letters of a dip are exchanged too.
func reflected(p orient.Plane, n orient.Notation) orient.Plane {
	if n == orient.Quadrant {
		n = orient.DirectionDip
	}
	return mirrored(p, n)
}

// Kind is the kind.
func (convertItem) Kind() Kind { return convertNotation{} }

// Prompt is the question.
func (it convertItem) Prompt() string {
	return fmt.Sprintf("A plane is written %s (%s). Write it as %s.",
		orient.Format(it.truth, it.from), notationNames[it.from], notationNames[it.notation])
}

// Mark marks the plane, and asks that it is written in the notation asked for.
func (it convertItem) Mark(answer string, e Evidence) Mark {
	if len(answer) <= longest {
		if entry, err := orient.Parse(answer, it.notation); err == nil && entry.Notation != it.notation {
			return refused(fmt.Errorf("this is written as %s, and %s is asked for", notationNames[entry.Notation], notationNames[it.notation]))
		}
	}
	m := it.planar.Mark(answer, e)
	if m.Right {
		m.Said = "Right: this is the same plane."
	}
	return m
}

// Hints help in steps.
func (it convertItem) Hints() []string {
	return []string{
		"Draw a small map: north up, the strike line, and the side the bed dips to.",
		"The dip direction is a quarter turn clockwise from the right-hand strike; the pole points the opposite way.",
		hintFor[it.notation],
	}
}

// hintFor is the last step to a notation.
var hintFor = [...]string{
	orient.AzimuthDip:   "Take the end of the strike line from which the bed dips to the right, as three digits, then the dip as two.",
	orient.Quadrant:     "Start from N or S, whichever is nearer to the strike line, say how far it turns to E or W, and name the side of the dip with letters.",
	orient.DirectionDip: "Write the direction of steepest descent with three digits, then the dip with two.",
	orient.PoleNotation: "The pole plunges 90° less the dip, on the side away from the dip direction.",
}

// Near says that both planes lie alike.
func (it convertItem) Near(other Item) bool {
	o, ok := other.(convertItem)
	return ok && it.near(o.planar)
}

// Difficulty is higher for a pole, which changes both numbers, and between
// letters and azimuths; a quarter of it is for numbers that wrap.
func (it convertItem) Difficulty() float64 {
	d := 0.25
	if it.from == orient.PoleNotation || it.notation == orient.PoleNotation {
		d += 0.3
	}
	if it.from == orient.Quadrant || it.notation == orient.Quadrant {
		d += 0.2
	}
	if it.truth.Strike.Angle() >= 3*orient.Right {
		d += 0.25
	}
	return d
}
