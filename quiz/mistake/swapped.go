package mistake

import (
	"math"

	"cuesta/orient"
)

// priorSwapped is the prior that strike and dip stand in each other's place.
const priorSwapped = 0.012

// swappedWeight is prior × likelihood that the answer is the right one with
// strike and dip exchanged. It needs an azimuth that can pass for a dip.
func (e Evidence) swappedWeight() float64 {
	strike, dip, ok := e.exchange()
	if !ok {
		return 0
	}
	s := claim{sigma: half(e.Limits.Dip)}
	d := claim{sigma: half(e.Limits.Strike)}
	w := s.density(e.Entry.Plane.Strike.From(strike)) * d.density(e.Entry.Plane.Dip-dip)
	if math.IsNaN(w) {
		return 0
	}
	return priorSwapped * w
}

// exchange is the right answer with strike and dip exchanged, as it would be
// understood; false when it could not be written.
func (e Evidence) exchange() (orient.Azimuth, orient.Angle, bool) {
	switch e.Entry.Notation {
	case orient.AzimuthDip, orient.DirectionDip:
	case orient.Quadrant, orient.PoleNotation:
		return 0, 0, false
	}
	right := e.writtenFrom(e.Truth.Strike)
	strike := e.turned(e.strikeFrom(orient.AzimuthOf(e.Truth.Dip)))
	return strike, right.Angle(), right.Angle() <= orient.Right
}

// swapShows says whether the exchange makes both numbers wrong.
func (e Evidence) swapShows() bool {
	strike, dip, ok := e.exchange()
	return ok && strike.FromLine(e.Truth.Strike).Abs() > e.Limits.Strike && (dip-e.Truth.Dip).Abs() > e.Limits.Dip
}
