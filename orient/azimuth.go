package orient

import "math"

// Azimuth is a horizontal direction, radians clockwise from true north in
// [0, 2π). Make one with AzimuthOf; the zero value is north.
type Azimuth float64

// AzimuthOf returns the azimuth of the angle a counted clockwise from north,
// wrapped into [0, 2π): 360° is 0°.
func AzimuthOf(a Angle) Azimuth {
	w := math.Mod(float64(a), float64(Full))
	if w < 0 {
		w += float64(Full)
	}
	if w >= float64(Full) {
		w = 0
	}
	return Azimuth(w)
}

// Angle returns the azimuth as an angle in [0, 2π).
func (z Azimuth) Angle() Angle { return Angle(z) }

// Degrees returns the azimuth in degrees, in [0, 360).
func (z Azimuth) Degrees() float64 { return Angle(z).Degrees() }

// Add turns the azimuth clockwise by a.
func (z Azimuth) Add(a Angle) Azimuth { return AzimuthOf(Angle(z) + a) }

// Opposite is the other end of the same line.
func (z Azimuth) Opposite() Azimuth { return z.Add(Half) }

// From returns the turn from y to z, in (−π, π], clockwise positive.
func (z Azimuth) From(y Azimuth) Angle { return (Angle(z) - Angle(y)).Wrapped() }

// FromLine returns the turn from the line that y is an end of to the line of z,
// in (−π/2, π/2], clockwise positive: which end either is does not matter.
func (z Azimuth) FromLine(y Azimuth) Angle {
	switch d := z.From(y); {
	case d > Right:
		return d - Half
	case d <= -Right:
		return d + Half
	default:
		return d
	}
}

// Vec returns h(z), the horizontal unit vector.
func (z Azimuth) Vec() Vec { return Vec{X: Angle(z).Sin(), Y: Angle(z).Cos()} }
