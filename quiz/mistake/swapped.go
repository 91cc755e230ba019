package mistake

import (
	"math"

	"cuesta/orient"
)

// priorSwapped is the prior that strike and dip stand in each other's place.
const priorSwapped = 0.01

// swappedWeight is prior × likelihood that the answer is the right one with
// strike and dip exchanged. It needs an azimuth that can pass for a dip.
func (e Evidence) swappedWeight() float64 {
	right := e.writtenFrom(e.Truth.Strike)
	if e.Entry.Notation == orient.Quadrant || e.Entry.Notation == orient.PoleNotation || right.Angle() > orient.Right {
		return 0
	}
	strike := e.turned(e.strikeFrom(orient.AzimuthOf(e.Truth.Dip)))
	s := claim{sigma: half(e.Limits.Dip)}
	d := claim{sigma: half(e.Limits.Strike)}
	w := s.density(e.Entry.Plane.Strike.From(strike)) * d.density(e.Entry.Plane.Dip-right.Angle())
	if math.IsNaN(w) {
		return 0
	}
	return priorSwapped * w
}
