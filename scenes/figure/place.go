package figure

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
)

// at is the point at radius r and angle a about c, from +x towards +y.
func at(c draw.Point, r float64, a orient.Angle) draw.Point {
	s, k := math.Sincos(a.Radians())
	return draw.Point{X: c.X + r*k, Y: c.Y + r*s}
}

// ray adds a straight line along a radius.
func ray(p *draw.Path, c draw.Point, r0, r1 float64, a orient.Angle) {
	q, s := at(c, r0, a), at(c, r1, a)
	p.MoveTo(q.X, q.Y)
	p.LineTo(s.X, s.Y)
}

// halfDigit is half the height of a digit in em.
const halfDigit = 0.334

// label is a text centred on a point, both ways, turned by a.
func label(s string, c draw.Point, size float64, a orient.Angle, f draw.Font, col draw.Color) draw.Text {
	base := at(c, halfDigit*size, a+orient.Right)
	return draw.Text{S: s, At: base, Size: size, Font: f, Color: col, Align: draw.AlignCentre, Rotate: a.Radians()}
}

// shifted is an outline moved by d.
func shifted(pts []draw.Point, d draw.Point) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, p := range pts {
		out[i] = draw.Point{X: p.X + d.X, Y: p.Y + d.Y}
	}
	return out
}

func shape(pts []draw.Point) draw.Path { return draw.Polyline(true, pts...) }

// mix is the way t from a to b.
func mix(a, b draw.Color, t float64) draw.Color {
	m := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + t*(float64(y)-float64(x)))) }
	return draw.Color{R: m(a.R, b.R), G: m(a.G, b.G), B: m(a.B, b.B), A: m(a.A, b.A)}
}

// faded is c at the opacity alpha in [0, 1].
func faded(c draw.Color, alpha float64) draw.Color {
	c.A = uint8(math.Round(255 * alpha))
	return c
}
