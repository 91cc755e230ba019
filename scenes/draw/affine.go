package draw

import (
	"image"
	"math"
)

// At maps a point.
func (m Affine) At(p Point) Point {
	return Point{m.A*p.X + m.C*p.Y + m.E, m.B*p.X + m.D*p.Y + m.F}
}

// After returns the map that does n first and m next.
func (m Affine) After(n Affine) Affine {
	return Affine{
		A: m.A*n.A + m.C*n.B, B: m.B*n.A + m.D*n.B,
		C: m.A*n.C + m.C*n.D, D: m.B*n.C + m.D*n.D,
		E: m.A*n.E + m.C*n.F + m.E, F: m.B*n.E + m.D*n.F + m.F,
	}
}

// Scale is the factor by which lengths grow: the root of the area factor.
func (m Affine) Scale() float64 { return math.Sqrt(math.Abs(m.A*m.D - m.B*m.C)) }

// Map returns the map from a texture's list to its pixels: Under, or Identity
// when Under is zero.
func (t *Texture) Map() Affine {
	if t.Under == (Affine{}) {
		return Identity
	}
	return t.Under
}

// Pixels is the rectangle in whole pixels, edges rounded to the nearest, so
// that rectangles that share an edge neither overlap nor leave a gap.
func (r Rect) Pixels() image.Rectangle {
	return image.Rect(round(r.X), round(r.Y), round(r.X+r.W), round(r.Y+r.H))
}

func round(v float64) int { return int(math.Floor(v + 0.5)) }
