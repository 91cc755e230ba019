package lesson

import (
	"fmt"
	"math"
	"strings"

	"cuesta/orient"
	"cuesta/scenes/spoken"
	"cuesta/sim"
)

// Told is what is to be seen beside the line, in words: how the slab lies to the
// eye, then a sentence or two for each thing, in the order of the things. It
// tells no number that the screen does not show.
func (p *Player) Told() []string {
	out := []string{p.tellSlab()}
	for t := range Things {
		if !p.Shows(t) {
			continue
		}
		if s := p.tellThing(t); s != "" {
			out = append(out, s)
		}
	}
	if p.Shows(Student) {
		out = append(out, p.tellStudent()...)
	}
	return out
}

func (p *Player) tellThing(t Thing) string {
	truth := p.ses.Truth()
	if truth.Dip < orient.Degree/2 {
		if s, ok := tellLevel(t); ok {
			return s
		}
	}
	switch t {
	case Water:
		return "A sheet of still water stands against the rock: its shoreline is one level line across the slope."
	case Strike:
		return "The strike line is drawn on the rock, level across the slope: it runs from " + line(truth.Strike) + "."
	case Arrow:
		return "An arrow points straight down the slope, to the " + way(truth.DipDirection()) + "."
	case Hand:
		return "A right hand lies flat on the rock, fingers straight down the slope, to the " + way(truth.DipDirection()) +
			"; its thumb lies along the strike and points to the " + way(truth.Strike) + "."
	case Numbers:
		return "In figures: " + p.figures() + "."
	case Ball:
		return "A ball rolls straight down the slope, to the " + way(truth.DipDirection()) + ", and stops at the lower rim."
	case Instrument:
		if p.watched() {
			return ""
		}
		return spoken.Glance(p.ses, p.ses.World().Observe())
	case Levels: // what it shows is told with the instrument
		return ""
	case Scale:
		return "The " + p.scale() + " is shown magnified, to be read."
	case Curve:
		return p.tellCurve()
	case Ends:
		return fmt.Sprintf("The ends of the strike line lie at %s and %s.", whole(truth.Strike), whole(truth.Strike.Opposite()))
	case Reading:
		return spoken.Reading(p.ses)
	case Student, Things: // the student takes several
	}
	return ""
}

// watched says that the instrument stands as the student left it, which is told
// with the student.
func (p *Player) watched() bool {
	_, ok := p.Written()
	return ok && p.Shows(Student) && p.Step().Mistake != "" && !p.live
}

// tellSlab is how the slab lies on the ring of directions, to the eye.
func (p *Player) tellSlab() string {
	switch t := p.ses.Truth(); {
	case t.Dip < orient.Degree/2:
		return "The slab lies level."
	case t.Dip > orient.Right-orient.Degree/2:
		return "The slab stands upright, from " + line(t.Strike) + "."
	default:
		return "The slab falls " + steepness(t.Dip) + "to the " + way(t.DipDirection()) + "."
	}
}

// steepness is a word for the eye, or "" where there is none to say.
func steepness(dip orient.Angle) string {
	switch {
	case dip < 20*orient.Degree:
		return "gently "
	case dip > 55*orient.Degree:
		return "steeply "
	}
	return ""
}

// tellLevel is for a bed that has no strike.
func tellLevel(t Thing) (string, bool) {
	switch t {
	case Water:
		return "Still water covers the rock all at once: there is no shoreline across it.", true
	case Strike, Arrow, Hand, Ends:
		return "", true
	case Ball:
		return "A ball lies on the rock and does not roll.", true
	case Numbers, Instrument, Levels, Scale, Curve, Reading, Student, Things:
	}
	return "", false
}

// figures are strike, dip and dip direction.
func (p *Player) figures() string {
	t := p.ses.Truth().Rounded(orient.Degree / 10)
	switch {
	case t.Dip < orient.Degree/2:
		return "dip 0°, no strike"
	case t.Dip > orient.Right-orient.Degree/2:
		return fmt.Sprintf("%s: strike %s or %s, dip 90°", orient.Format(t, orient.AzimuthDip), whole(t.Strike), whole(t.Strike.Opposite()))
	}
	return fmt.Sprintf("%s: strike %s, dip %.0f°, dip direction %s", orient.Format(t, orient.AzimuthDip), whole(t.Strike), t.Dip.Degrees(), whole(t.DipDirection()))
}

// scale is the scale that is read on this seat.
func (p *Player) scale() string {
	if p.ses.World().Observe().Seat == sim.OnSide {
		return "arc"
	}
	return "dial"
}

// dipsTold are the dips at which the curve is told.
var dipsTold = [...]float64{5, 15, 30, 60}

func (p *Player) tellCurve() string {
	tilt := orient.Asin(p.ses.World().Observe().Frame.Forward.Z).Abs()
	var at []string
	for _, d := range dipsTold {
		at = append(at, fmt.Sprintf("%.0f° at a dip of %.0f°", orient.StrikeError(tilt, orient.Angle(d)*orient.Degree).Degrees(), d))
	}
	return fmt.Sprintf("A curve: how far off the strike can be for this tilt of the edge, %.1f°: %s. On this bed: %.0f°.",
		tilt.Degrees(), strings.Join(at, ", "), orient.StrikeError(tilt, p.ses.Truth().Dip).Degrees())
}

// tellStudent is how the simulated student took both readings, what came of
// them, and the verdict once it is out.
func (p *Player) tellStudent() []string {
	s, ok := p.Written()
	if !ok {
		return nil
	}
	var out []string
	if r, ok := p.taken(sim.OnEdge); ok {
		out = append(out, "The student reads the dial. "+r)
	}
	if r, ok := p.taken(sim.OnSide); ok {
		out = append(out, "The student reads the arc. "+r)
	}
	out = append(out, "The student wrote "+s.Text+".")
	if verdict := append([]string{s.Outcome}, s.Reasons...); s.Outcome != "" {
		out = append(out, strings.Join(verdict, " "))
	}
	return out
}

// taken is the last reading on a seat, in words.
func (p *Player) taken(s sim.Seat) (string, bool) {
	r, ok := p.ses.World().Reading(s)
	return spoken.Taken(r, p.ses.Truth().Dip), ok
}

// whole is an azimuth in three digits.
func whole(z orient.Azimuth) string {
	return fmt.Sprintf("%03d", int(math.Round(z.Degrees()))%360)
}

var ways = [...]string{
	"north", "north-north-east", "north-east", "east-north-east", "east", "east-south-east", "south-east", "south-south-east",
	"south", "south-south-west", "south-west", "west-south-west", "west", "west-north-west", "north-west", "north-north-west",
}

// line is a direction that may run either way: the end in the eastern half of
// the circle comes second, so that the words favour neither.
func line(z orient.Azimuth) string {
	if z.Degrees() >= 180 {
		z = z.Opposite()
	}
	return way(z.Opposite()) + " to " + way(z)
}

// way is a direction as the ring round the slab shows it to the eye, to the
// nearest sixteenth of the circle.
func way(z orient.Azimuth) string {
	return ways[int(math.Round(z.Degrees()/22.5))%len(ways)]
}
