package spoken

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/sim"
)

// look says where everything is, as a student sees it who stands before the
// rock: which way things fall, to the eye, and no azimuth.
func look(s *session.Session, o sim.Observation) string {
	dip := s.Truth().Dip
	text := slope(dip) + " " + seated(o) + " " + arrow(s.World().Pose().Swing, dip)
	switch o.Seat {
	case sim.OnSide:
		return text + " " + face(o) + " " + armWords(o) + " " + tubeBubble(o.Tube)
	case sim.OnLid:
		text += " " + hinge(o)
	case sim.OnBack:
		return text + " " + sensor(o.Sensor) + ring(o)
	case sim.OnEdge:
	}
	return text + " " + tilt(o.Frame) + " " + roundBubble(o.Round) + needleAtAGlance(o.Dial) + ring(o)
}

// slope is how steep the rock looks: a word, not a number.
func slope(dip orient.Angle) string {
	switch d := dip.Degrees(); {
	case d < 2:
		return "The rock surface looks level."
	case d < 20:
		return "The rock surface slopes gently."
	case d < 55:
		return "The rock surface slopes."
	case d < 80:
		return "The rock surface slopes steeply."
	}
	return "The rock surface stands almost upright."
}

// eye is how well a direction is judged without an instrument.
const eye = 8 * orient.Degree

// arrow says where the arrow on the plate points on the slope, and to which
// side of it the rock falls away.
func arrow(swing, dip orient.Angle) string {
	if dip < 2*orient.Degree {
		return "No way on it looks like down."
	}
	up := math.Abs(swing.Sin())
	side := "right"
	if swing.Cos() < 0 {
		side = "left"
	}
	way := "down"
	if swing < 0 {
		way = "up"
	}
	falls := " Seen along it, the rock falls away to the " + side + "."
	switch {
	case up < eye.Sin():
		return "To the eye the arrow runs level across the slope." + falls
	case up < (30 * orient.Degree).Sin():
		return "The arrow points across the slope and a little " + way + "." + falls
	case up < (orient.Right - eye).Sin():
		return "The arrow points slantwise " + way + " the slope." + falls
	}
	return "To the eye the arrow points straight " + way + " the slope."
}

// tilt is how the face lies, to the nearest five degrees.
func tilt(f sim.Frame) string {
	if f.Out.Z < 0 {
		return "The face looks down."
	}
	side := lean(orient.Asin(-f.Right.Z), "right side", "left side")
	end := lean(orient.Asin(-f.Forward.Z), "forward end", "back end")
	switch {
	case side == "" && end == "":
		return "The face looks level, as far as the eye can tell."
	case side == "":
		return "The face tilts: its " + end + "."
	case end == "":
		return "The face tilts: its " + side + "."
	}
	return "The face tilts: its " + side + ", its " + end + "."
}

// lean says which of two is low, or "" when an eye sees no difference.
func lean(down orient.Angle, plus, minus string) string {
	deg := math.Round(down.Degrees()/5) * 5
	switch {
	case deg > 0:
		return fmt.Sprintf("%s is low by some %.0f°", plus, deg)
	case deg < 0:
		return fmt.Sprintf("%s is low by some %.0f°", minus, -deg)
	}
	return ""
}

// face is how far the face of the plate on its side is off the vertical.
func face(o sim.Observation) string {
	switch deg := math.Round(o.Lean.Degrees()); {
	case deg > 0:
		return fmt.Sprintf("The face leans %.0f° off the vertical, turned up.", deg)
	case deg < 0:
		return fmt.Sprintf("The face leans %.0f° off the vertical, turned down.", -deg)
	}
	return "The face is upright."
}

func armWords(o sim.Observation) string {
	switch deg := math.Round(o.Arc.Arm.Degrees()/5) * 5; {
	case o.Arc.Arm <= 0:
		return "The arm lies along the seated edge, at its stop."
	case o.Arc.Arm >= orient.Right:
		return "The arm stands straight across the edge, at its stop."
	case deg == 0:
		return "The arm stands a little off the seated edge."
	default:
		return fmt.Sprintf("The arm stands some %.0f° from the seated edge.", deg)
	}
}

func hinge(o sim.Observation) string {
	switch deg := math.Round(o.Hinge.Degrees()/5) * 5; {
	case o.Hinge <= 0:
		return "The hinge is closed."
	case o.Hinge >= orient.Half:
		return "The hinge is folded right back."
	case deg == 0:
		return "The hinge is hardly open."
	default:
		return fmt.Sprintf("The hinge stands open by some %.0f°.", deg)
	}
}

func ring(o sim.Observation) string {
	return " The dial is set to a declination of " + ringSet(o) + "."
}

// truth is the true plane and what lies over it when it is shown, in words.
func (b *Bench) truth() string {
	p := b.ses.Truth().Rounded(orient.Degree / 10)
	written := orient.Format(p, b.ses.Options().Notation)
	switch {
	case p.Dip < orient.Degree/2:
		return "The true plane is horizontal: it has no strike."
	case p.Dip > orient.Right-orient.Degree/2:
		return fmt.Sprintf("The true plane is vertical; it strikes %s and %s: %s.", p.Strike, p.Strike.Opposite(), written)
	}
	return fmt.Sprintf("The true plane is %s. Water against the rock would leave a shoreline along %s and %s: the strike. "+
		"The steepest way down, at right angles to it, runs towards %s and dips %s°. "+
		"The right hand flat on the rock, fingers down that way, points its thumb to %s: the strike to write.",
		written, p.Strike, p.Strike.Opposite(), p.DipDirection(), short(p.Dip), p.Strike)
}
