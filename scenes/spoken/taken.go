package spoken

import (
	"cuesta/orient"
	"cuesta/sim"
)

// Taken says how the instrument stood when a reading was taken on a rock of
// that dip, and what it showed, as someone saw it who stood beside.
func Taken(r sim.Reading, dip orient.Angle) string {
	o := r.Shown
	way := arrow(r.Swing, dip)
	switch r.Seat {
	case sim.OnSide:
		return "The plate stands on its side. " + way + " " + face(o) + " " + tubeBubble(o.Tube) + " " + reading(o)
	case sim.OnEdge:
		return seated(o) + " " + way + " " + roundBubble(o.Round) + ring(o) + " " + reading(o)
	case sim.OnLid, sim.OnBack:
	}
	return reading(o)
}
