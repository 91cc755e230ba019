package orient

import "math"

// Plane is a planar surface in rock: right-hand strike in [0, 2π) and dip in
// [0, π/2]. With dip 0 the strike means nothing; with dip π/2 both ends do.
// Overturned marks a bed whose younger side is its lower side. The zero value
// is a horizontal, upright plane.
type Plane struct {
	Strike     Azimuth
	Dip        Angle
	Overturned bool
}

// PlaneOf returns the plane of right-hand strike s and dip d.
func PlaneOf(s, d Angle) Plane { return Plane{Strike: AzimuthOf(s), Dip: d} }

// DipDirection is the azimuth of steepest descent, strike + 90°.
func (p Plane) DipDirection() Azimuth { return p.Strike.Add(Right) }

// StrikeVec is S, the horizontal unit vector along the strike.
func (p Plane) StrikeVec() Vec { return p.Strike.Vec() }

// DownDip is D, the unit vector of steepest descent.
func (p Plane) DownDip() Vec {
	h := p.DipDirection().Vec()
	return Vec{X: p.Dip.Cos() * h.X, Y: p.Dip.Cos() * h.Y, Z: -p.Dip.Sin()}
}

// Normal is N, the upward unit normal.
func (p Plane) Normal() Vec {
	h := p.DipDirection().Vec()
	return Vec{X: p.Dip.Sin() * h.X, Y: p.Dip.Sin() * h.Y, Z: p.Dip.Cos()}
}

// IsValid says whether strike and dip lie in their ranges.
func (p Plane) IsValid() bool {
	return p.Strike >= 0 && p.Strike < Azimuth(Full) && p.Dip >= 0 && p.Dip <= Right
}

// Rounded is the plane to the nearest step of strike and dip, as a circle
// graduated in steps would show it. It panics unless the step is positive.
func (p Plane) Rounded(step Angle) Plane {
	if !(step > 0) {
		panic("orient: Rounded needs a positive step")
	}
	p.Strike = AzimuthOf(toStep(p.Strike.Angle(), step))
	p.Dip = min(Right, toStep(p.Dip, step))
	return p
}

func toStep(a, step Angle) Angle {
	n := step.Degrees()
	return Angle(math.Round(a.Degrees()/n)*n) * Degree
}
