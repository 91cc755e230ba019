package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// rightHandEnd asks which end of a strike line is written.
type rightHandEnd struct{}

// endItem is one strike line with the side it dips to.
type endItem struct {
	quantity
	plane  orient.Plane
	drawn  bool           // on a map; else in words
	named  orient.Azimuth // the end the question tells about
	letter string         // of that end, on a map
	ends   [2]string
}

// Name, Title and OnPaper describe the kind.
func (rightHandEnd) Name() string  { return "right-hand-end" }
func (rightHandEnd) Title() string { return "Right-hand end of a strike line" }
func (rightHandEnd) OnPaper() bool { return true }

// Deal draws a plane, one end of its strike line, and whether it is shown on a
// map or in words. The end is told as a quadrant bearing, so that the azimuth
// has to be found either way.
func (rightHandEnd) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.planeBetween(r, 5, 80)
	if err != nil {
		return nil, err
	}
	// Half-way between two points of the compass letters would not tell.
	for p.DipDirection().From(eighth(p.DipDirection())).Abs() > angle(18) {
		p.Strike = orient.AzimuthOf(angle(azimuth(r)))
	}
	it := endItem{plane: p, drawn: r.IntN(2) == 0, named: p.Strike}
	it.ends = [2]string{"P", "Q"}
	if r.IntN(2) == 0 {
		it.ends = [2]string{"Q", "P"}
	}
	it.letter = it.ends[0]
	if r.IntN(2) == 0 {
		it.named, it.letter = p.Strike.Opposite(), it.ends[1]
	}
	it.quantity = endOf(p, s)
	return it, nil
}

// eighth is the nearest of the eight points of the compass.
func eighth(z orient.Azimuth) orient.Azimuth {
	return orient.Azimuth(orient.Plane{Strike: z}.Rounded(45 * orient.Degree).Strike)
}

func endOf(p orient.Plane, s Spec) quantity {
	v := degrees(p.Strike)
	q := bearing("azimuth of the right-hand end", v, exact, s.tolerance().Partial)
	x := float64(v)
	q.slip(x+180, catalogued(mistake.OtherEnd, orient.AzimuthDip))
	q.slip(x+90, catalogued(mistake.DirectionForStrike, orient.AzimuthDip))
	q.slip(x-90, of(mistake.DirectionForStrike, "This is at a right angle to the strike line, on the side that rises. Write one of the two ends of the line."))
	q.slip(360-x, of(mistake.EastWest, "East and west were exchanged: azimuths grow from north towards east."))
	q.slip(180-x, of(mistake.EastWest, "East and west were exchanged: azimuths grow from north towards east."))
	return q
}

// degrees is a whole azimuth.
func degrees(z orient.Azimuth) int { return int(z.Degrees()+0.5) % 360 }

// Kind is the kind.
func (endItem) Kind() Kind { return rightHandEnd{} }

// Prompt is the question.
func (it endItem) Prompt() string {
	const ask = "Write the azimuth of the end that the right-hand convention takes."
	if it.drawn {
		return fmt.Sprintf("The map shows a strike line from P to Q; the tick shows the side to which the bed dips. The end %s lies towards %s. ", it.letter, it.named.Quadrant()) + ask
	}
	return fmt.Sprintf("One end of a strike line points to %s, and the bed dips to the %s. ", it.named.Quadrant(), pointNames[it.plane.DipDirection().Letters()]) + ask
}

// pointNames are the eight points of the compass in words.
var pointNames = map[string]string{
	"N": "north", "NE": "north-east", "E": "east", "SE": "south-east",
	"S": "south", "SW": "south-west", "W": "west", "NW": "north-west",
}

// Figure is the map, or nil.
func (it endItem) Figure() Figure {
	if !it.drawn {
		return nil
	}
	return MapFigure{Plane: it.plane, LineOnly: true, Ends: it.ends}
}

// Alt says on which side of the line from P to Q the tick stands.
func (it endItem) Alt() string {
	if !it.drawn {
		return ""
	}
	side := "left"
	if it.ends[0] == "Q" { // the line from P to Q runs to the right-hand end
		side = "right"
	}
	return "A map, north up, with a strike line that ends in P and Q. A short tick at its middle shows the side to which the bed dips: seen along the line from P to Q it stands on the " + side + "."
}

// Hints help in steps.
func (endItem) Hints() []string {
	return []string{
		"Stand on the line and look along it: from one end the bed drops to your right, from the other to your left.",
		"Lay the right hand on the bed, fingers down the dip: the thumb points to the end to write.",
		"N or S with a number and E or W is a quadrant bearing: count the number from north or south towards the last letter.",
	}
}

// Near says that both lines have the same end.
func (it endItem) Near(other Item) bool {
	o, ok := other.(endItem)
	return ok && it.near(o.quantity)
}

// Difficulty is higher where the other end is told, and west of north.
func (it endItem) Difficulty() float64 {
	d := 0.2
	if it.named != it.plane.Strike {
		d += 0.4
	}
	if it.plane.Strike.Angle() > orient.Half {
		d += 0.2
	}
	return d
}
