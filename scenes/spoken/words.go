package spoken

import (
	"fmt"
	"math"
	"strconv"

	"cuesta/orient"
	"cuesta/sim"
	"cuesta/sim/instrument"
)

// short is an angle in degrees to the tenth, without a sign.
func short(a orient.Angle) string {
	return strconv.FormatFloat(math.Round(a.Abs().Degrees()*10)/10, 'f', -1, 64)
}

// fine is the size of an angle as it was typed, to the thousandth.
func fine(a orient.Angle) string {
	return strconv.FormatFloat(math.Round(a.Abs().Degrees()*1000)/1000, 'f', -1, 64)
}

// eastWest is a declination in words.
func eastWest(d orient.Angle) string {
	if d < 0 {
		return short(d) + "° west"
	}
	return short(d) + "° east"
}

func seated(o sim.Observation) string {
	switch o.Seat {
	case sim.OnEdge:
		return "The plate stands on its " + edge(o.Seated) + " long edge, face up."
	case sim.OnSide:
		return "The plate stands on its side, on its " + edge(o.Seated) + " long edge, face upright."
	case sim.OnLid:
		return "The lid lies flush on the rock, the body hinged to it at its back end."
	case sim.OnBack:
		return "The instrument lies flat on the rock, face up."
	}
	return ""
}

func edge(s sim.Side) string {
	if s == sim.RightSide {
		return "right"
	}
	return "left"
}

func turned(verb string, a orient.Angle, plus, minus string) string {
	way := plus
	if a < 0 {
		way = minus
	}
	return verb + " " + fine(a) + "°, " + way + "."
}

// least is what rounding leaves of a turn that went nowhere.
const least orient.Angle = 1e-9

// unmoved says that a turn was too small to be told in figures, or is "".
func unmoved(what string, a orient.Angle) string {
	switch {
	case a.Abs() < least:
		return what + " did not move."
	case a.Abs() < orient.Degree/2000:
		return what + " hardly moved."
	}
	return ""
}

func ringSet(o sim.Observation) string {
	if short(o.Dial.Ring) == "0" {
		return "0"
	}
	return eastWest(o.Dial.Ring)
}

func freed(o sim.Observation) string {
	if o.Dial.State == sim.NeedleRubbing {
		return "The lock is off, but the case is tilted and the needle rubs on the glass."
	}
	return "The needle is free."
}

func waited(ticks int) string {
	s := float64(ticks) / sim.TicksPerSecond
	if ticks == sim.TicksPerSecond {
		return "1 second has passed."
	}
	return strconv.FormatFloat(math.Round(s*100)/100, 'f', -1, 64) + " seconds have passed."
}

// state is the level in few words and the needle where it matters: what one
// sees at a glance after a move.
func (b *Bench) state() string {
	o := b.seen()
	if o.Seat == sim.OnEdge || o.Seat == sim.OnLid {
		return roundBubble(o.Round) + needleAtAGlance(o.Dial)
	}
	return bubble(o)
}

// bubble is the level that matters on this seat; flat on the rock there is
// none, but what the sensor shows.
func bubble(o sim.Observation) string {
	switch o.Seat {
	case sim.OnSide:
		return tubeBubble(o.Tube)
	case sim.OnBack:
		return sensor(o.Sensor)
	case sim.OnEdge, sim.OnLid:
	}
	return roundBubble(o.Round)
}

func sensor(s sim.Sensor) string {
	direction, dip := s.Degrees()
	text := fmt.Sprintf("The sensor shows dip direction %03d, dip %d.", direction, dip)
	if !s.Calibrated {
		text += " It has not been calibrated."
	}
	return text
}

// roundBubble says where the bubble of the round level is, in radii of the
// marked ring, and how far out is still inside.
func roundBubble(l sim.RoundLevel) string {
	r := instrument.StandardRound()
	where := fmt.Sprintf("%s, %s, in ring radii; up to %.2f is inside.", offset(l.Right, "right", "left"), offset(l.Forward, "forward", "back"), (r.Ring-r.Bubble)/r.Ring)
	switch {
	case l.Centred:
		return "Bubble inside the ring: " + where
	case l.AtWall:
		return "Bubble at the wall, far outside the ring: " + where
	}
	return "Bubble not inside the ring: " + where
}

func offset(x float64, plus, minus string) string {
	if hundredth(x) < 0 {
		return fmt.Sprintf("%.2f %s", -hundredth(x), minus)
	}
	return fmt.Sprintf("%.2f %s", hundredth(x), plus)
}

// tubeBubble says where the bubble of the tube level is, in half gaps between
// the marks, and how far out is still between them.
func tubeBubble(l sim.TubeLevel) string {
	t := instrument.StandardTube()
	limit, off := (t.Mark-t.Bubble)/t.Mark, l.Off
	if !l.Centred && hundredth(math.Abs(off)) <= hundredth(limit) { // by rounding alone
		off = math.Copysign(hundredth(limit)+.01, off)
	}
	where := fmt.Sprintf("%s, in half gaps; up to %.2f is between the marks.", offset(off, "towards the index end", "away from the index end"), limit)
	switch {
	case l.Centred:
		return "Tube bubble between the marks: " + where
	case l.AtEnd:
		return "Tube bubble at the end of the tube: " + where
	}
	return "Tube bubble not between the marks: " + where
}

func needleAtAGlance(d sim.Dial) string {
	switch {
	case d.State == sim.NeedleRubbing:
		return " Needle rubbing on the glass."
	case d.State == sim.NeedleLocked:
		return " Needle locked."
	case !d.Resting:
		return " Needle swinging."
	}
	return " Needle at rest."
}

// reading is what the scale shows, and what an eye sees of the needle.
func reading(o sim.Observation) string {
	switch o.Seat {
	case sim.OnSide:
		return fmt.Sprintf("The index stands at %d on the degree scale, %s.", o.Arc.Degree(), percentWords(o.Arc))
	case sim.OnLid:
		return fmt.Sprintf("The north end stands at %d, the hinge at %.0f.%s", o.Dial.Degree(), o.Hinge.Degrees(), needleRemark(o.Dial))
	case sim.OnBack:
		return sensor(o.Sensor)
	case sim.OnEdge:
	}
	return fmt.Sprintf("The north end stands at %d.%s", o.Dial.Degree(), needleRemark(o.Dial))
}

// lastFigure is the last number on the percent scale.
const lastFigure = 500

func percentWords(a sim.Arc) string {
	if p := percent(a); p != nil && *p <= lastFigure {
		return fmt.Sprintf("%.0f on the percent scale", *p)
	}
	return fmt.Sprintf("beyond the last figure, %d, on the percent scale", lastFigure)
}

func needleRemark(d sim.Dial) string {
	switch {
	case d.State == sim.NeedleRubbing:
		return " The needle rubs on the glass and does not turn."
	case d.State == sim.NeedleLocked:
		return " The needle is locked."
	case !d.Resting:
		return " The needle is still swinging."
	}
	return ""
}
