package quiz

import (
	"fmt"
	"math"

	"cuesta/orient"
)

// Tolerance is what a careful reading is allowed to be off by. It is fair to
// gentle beds: there a bubble off by a little turns the strike by a lot. The
// zero value tolerates nothing.
type Tolerance struct {
	Reading   orient.Angle // of the dial, ≥ 0
	Levelling orient.Angle // τ, tilt left along the edge by a careful student, ≥ 0
	Dip       orient.Angle // of the dip, ≥ 0
	Partial   Partial      // marks for answers that are near; the zero value gives none
	Side      float64      // share of the mark for the side, in (0, MostSide]; 0 stands for DefaultSide
}

// The share of the mark for the side a bed dips to: the dip has half of the mark,
// and the strike line what the side leaves of the other half.
const (
	DefaultSide = 0.25
	LeastSide   = 0.05
	MostSide    = 0.5
)

// side is the share of the mark for the side.
func (t Tolerance) side() float64 {
	if t.Side == 0 {
		return DefaultSide
	}
	return t.Side
}

// Shares says in words what the mark of a plane is made of.
func (t Tolerance) Shares() string {
	return fmt.Sprintf("Of the points of a plane 50 %% are for the dip, %.0f %% for the strike line and %.0f %% for the side it dips to, which counts only where the line does.",
		100*(0.5-t.side()), 100*t.side())
}

// Partial gives a share of the marks to an answer outside the tolerance but
// inside a wider limit.
type Partial struct {
	Strike, Dip orient.Angle // the wider limits
	Share       float64      // of the marks of that part, in [0, 1]
}

// DefaultTolerance is our own choice: 2° of reading, 1° of levelling, 3° of
// dip, no marks for near misses.
var DefaultTolerance = Tolerance{Reading: 2 * orient.Degree, Levelling: orient.Degree, Dip: 3 * orient.Degree}

// SteppedTolerance is the marking of one published course: strike full within
// 1° and half within 8°, dip full within 3° and half within 8° (S. Martel,
// University of Hawaii, GG303 lab 1, 2011).
var SteppedTolerance = Tolerance{
	Reading: orient.Degree, Dip: 3 * orient.Degree,
	Partial: Partial{Strike: 8 * orient.Degree, Dip: 8 * orient.Degree, Share: 0.5},
}

// NoStrikeBelow is the dip below which the strike is not asked for: a bed that
// flat has no strike worth measuring (common practice).
const NoStrikeBelow = 2 * orient.Degree

// Strike returns what the strike of a bed of dip d may be off by, in [0, π/2]:
//
//	reading + asin(min(1, tan τ / tan d))
//
// after D. M. Ragan, Structural Geology, ch. 1 (from memory): an edge that
// plunges τ on a bed that dips d lies asin(tan τ/tan d) off the strike.
func (t Tolerance) Strike(d orient.Angle) orient.Angle {
	return min(t.Reading+swungBy(t.Levelling, d), orient.Right)
}

// swungBy is how far an edge of plunge tau lies off the strike of a dip d.
func swungBy(tau, d orient.Angle) orient.Angle {
	if tau <= 0 {
		return 0
	}
	if d <= tau {
		return orient.Right
	}
	return orient.Asin(tau.Tan() / d.Tan())
}

// Widened is the tolerance against a true plane that is itself a measured one:
// of dip d, its strike known to ±strike and its dip to ±dip, both in [0, π/2].
// What the student and the instructor may each be off by adds, which is the
// worst case: both careful, and off to opposite sides. The bed may also be
// gentler than it was measured, where a strike is worth less:
//
//	strike: reading + asin(min(1, tan τ / tan(d − dip))) + strike
//	dip:    dip tolerance + dip
//
// The wider limits of partial marks grow by as much. Used with Strike(d) it
// gives the first line.
func (t Tolerance) Widened(d, strike, dip orient.Angle) Tolerance {
	turn := strike + swungBy(t.Levelling, d-dip) - swungBy(t.Levelling, d)
	t.Reading = min(t.Reading+turn, orient.Right)
	t.Dip = min(t.Dip+dip, orient.Right)
	if t.Partial.Strike > 0 {
		t.Partial.Strike = min(t.Partial.Strike+turn, orient.Right)
	}
	if t.Partial.Dip > 0 {
		t.Partial.Dip = min(t.Partial.Dip+dip, orient.Right)
	}
	return t
}

// IsValid says whether every angle is in [0, π/2] and the shares in their ranges.
func (t Tolerance) IsValid() bool {
	for _, a := range []orient.Angle{t.Reading, t.Levelling, t.Dip, t.Partial.Strike, t.Partial.Dip} {
		if !(a >= 0 && a <= orient.Right) {
			return false
		}
	}
	return t.Partial.Share >= 0 && t.Partial.Share <= 1 && t.Side >= 0 && t.Side <= MostSide
}

// marks returns the share of the marks for an error e: 1 within full, the
// partial share within near, else 0.
func (p Partial) marks(e, full, near orient.Angle) float64 {
	switch e = e.Abs(); {
	case within(e, full):
		return 1
	case within(e, near):
		return p.Share
	default:
		return 0
	}
}

// within is e ≤ limit with room for rounding, so that a reading of exactly the
// tolerance is inside it whatever the azimuth.
func within(e, limit orient.Angle) bool {
	return !math.IsNaN(float64(e)) && e <= limit+1e-9
}
