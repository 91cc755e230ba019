package orient

import "math"

// ApparentDip is the dip seen in a vertical section that runs along the
// azimuth: tan α = tan d · sin ψ, ψ the angle from the strike to the section.
// It lies in [−d, d] and is negative where the surface rises along the
// section. In a section along the strike it is 0, for a vertical plane too,
// though that section then holds the whole plane.
func (p Plane) ApparentDip(section Azimuth) Angle {
	s := section.From(p.Strike).Sin()
	if math.Abs(s) <= level {
		return 0
	}
	return Atan2(float64(p.Dip.Sin()*s), max(0, p.Dip.Cos()))
}

// TrueDip is the dip of a plane that shows the apparent dip α in a vertical
// section at the angle ψ from the strike: tan d = tan α / sin ψ, in [0, π/2].
// A section along the strike shows no dip and tells none: the result is then
// 0 for α = 0 and π/2 otherwise.
func TrueDip(apparent, fromStrike Angle) Angle {
	s := math.Abs(fromStrike.Sin())
	if s <= level {
		s = 0
	}
	t := math.Abs(apparent.Sin())
	if t <= level {
		return 0
	}
	return Atan2(t, float64(s*math.Abs(apparent.Cos())))
}

// LineAt is the line of the plane in the vertical section along the azimuth.
// Its trend is the end that goes down: the azimuth itself or its opposite.
func (p Plane) LineAt(trend Azimuth) Line {
	a := p.ApparentDip(trend)
	if a < 0 {
		return Line{Trend: trend.Opposite(), Plunge: -a}
	}
	return Line{Trend: trend, Plunge: a}
}
