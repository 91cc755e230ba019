package instrument

import (
	"math"

	"cuesta/orient"
)

// Needle is a counterweighted magnetised needle on a point pivot. It stays
// horizontal by its weight and obeys, in the plane of the dial,
//
//	I ψ″ + c ψ′ + m H sin(ψ − ψN) = friction
//
// with ψ its direction, ψN that of the horizontal field H.
type Needle struct {
	Moment   float64 // m, A m²
	Inertia  float64 // I, kg m²
	Damping  float64 // c, N m s
	Friction float64 // of the pivot, N m

	// Clearance is the tilt of the case, measured against the needle, beyond
	// which it rubs on the glass; a needle that rubs comes free by itself below
	// Release.
	Clearance, Release orient.Angle

	// Droop is the angle by which one tesla of vertical field, over the one the
	// counterweight was set for, pulls the north end down.
	Droop orient.Angle
}

// Figures of the standard needle. All are design assumptions.
const (
	standardField   = 20e-6 // T
	standardPeriod  = 1.6   // s, at standardField
	standardMoment  = 0.05  // A m²
	standardRatio   = 0.25  // of the critical damping, at standardField
	standardBand    = 0.5 * orient.Degree
	droopOfOneTesla = 0.08e6 * orient.Degree
)

// StandardNeedle is the dry needle of the bench: a period of 1.6 s and a
// damping ratio of 0.25 at 20 µT, where the pivot leaves up to ±0.5°.
func StandardNeedle() Needle {
	w := 2 * math.Pi / standardPeriod
	i := standardMoment * standardField / (w * w)
	return Needle{
		Moment:    standardMoment,
		Inertia:   i,
		Damping:   2 * standardRatio * i * w,
		Friction:  standardMoment * standardField * standardBand.Sin(),
		Clearance: 5 * orient.Degree,
		Release:   3 * orient.Degree,
		Droop:     droopOfOneTesla,
	}
}

// Bearing is the state of a needle: its direction, clockwise from north, and
// how fast it turns, an angle a second.
type Bearing struct {
	At, Rate orient.Angle
}

// Pull is the horizontal field at the needle.
type Pull struct {
	North      orient.Angle // the direction it pulls the north end to, clockwise from north
	Horizontal float64      // T
}

// Period is that of small swings without damping or friction,
// 2π·√(I/(m·H)) seconds; +Inf where the field has no horizontal part.
func (n Needle) Period(horizontal float64) float64 {
	return 2 * math.Pi * math.Sqrt(n.Inertia/(n.Moment*horizontal))
}

// Band is the largest angle off the field at which the pivot still holds the
// needle, in [0, π/2]: it widens as the horizontal field weakens. At π/2 the
// pivot holds it anywhere.
func (n Needle) Band(horizontal float64) orient.Angle {
	return orient.Asin(n.Friction / (n.Moment * horizontal))
}

// torque is that of the field, N m.
func (n Needle) torque(b Bearing, p Pull) float64 {
	return -n.Moment * p.Horizontal * (b.At - p.North).Sin()
}

// Step turns the needle for dt seconds. Grip in [0, 1] is the part of the
// pivot friction that acts: 1 at rest, less while the case trembles from a
// tap. Friction opposes the motion and never reverses it; a needle it has
// stopped stays until the field pulls harder than the pivot holds.
func (n Needle) Step(b Bearing, p Pull, grip, dt float64) Bearing {
	k := dt / n.Inertia
	rate := b.Rate.Radians() + float64(k*n.torque(b, p))
	held := k * n.Friction * grip
	switch {
	case rate > held:
		rate -= held
	case rate < -held:
		rate += held
	default:
		rate = 0
	}
	rate /= 1 + float64(k*n.Damping)
	at := b.At + orient.Angle(float64(rate*dt))
	if at > orient.Half || at <= -orient.Half {
		at = at.Wrapped()
	}
	return Bearing{At: at, Rate: orient.Angle(rate)}
}

// edge is the part by which the pull may seem to exceed the friction where the
// two are equal to rounding.
const edge = 1e-9

// Held says whether the needle stands and the whole pivot friction can keep it
// there.
func (n Needle) Held(b Bearing, p Pull) bool {
	return b.Rate == 0 && math.Abs(n.torque(b, p)) <= n.Friction*(1+edge)
}

// jolt is the turn a second that a shake gives a needle which stands against
// the field (design assumption).
const jolt = 5 * orient.Degree

// Shaken is the needle after a shake of the case. One that stands still against
// the field, where the pull is next to nothing, starts to turn; others only
// lose their hold, which Step takes as a smaller grip.
func (n Needle) Shaken(b Bearing, p Pull) Bearing {
	off := (b.At - p.North).Wrapped()
	switch {
	case b.Rate != 0 || off.Abs() < orient.Right:
		return b
	case off > 0:
		return Bearing{At: b.At, Rate: -jolt}
	}
	return Bearing{At: b.At, Rate: jolt}
}

// Dip is the angle by which the vertical field, over the one the needle was
// balanced for, tips it off the horizontal. It uses up clearance.
func (n Needle) Dip(vertical, balancedFor float64) orient.Angle {
	return n.Droop * orient.Angle(math.Abs(vertical-balancedFor))
}

// Rubs says whether a needle tipped by dip touches the glass of a case tilted
// by tilt; rubbing says whether it did before.
func (n Needle) Rubs(tilt, dip orient.Angle, rubbing bool) bool {
	if rubbing {
		return tilt+dip >= n.Release
	}
	return tilt+dip > n.Clearance
}
