package draw

import "math"

// SegKind is the kind of a path segment.
type SegKind uint8

// The segments and the number of points each takes: 1, 1, 2, 3, 0.
const (
	Move SegKind = iota
	LineTo
	Quad
	Cube
	Close
)

// Path is an outline. The zero value is empty.
type Path struct {
	Kinds  []SegKind
	Points []Point
}

// MoveTo starts a new outline at (x, y).
func (p *Path) MoveTo(x, y float64) { p.add(Move, Point{x, y}) }

// LineTo adds a straight segment.
func (p *Path) LineTo(x, y float64) { p.add(LineTo, Point{x, y}) }

// QuadTo adds a quadratic Bézier segment.
func (p *Path) QuadTo(x1, y1, x, y float64) { p.add(Quad, Point{x1, y1}, Point{x, y}) }

// CubeTo adds a cubic Bézier segment.
func (p *Path) CubeTo(x1, y1, x2, y2, x, y float64) {
	p.add(Cube, Point{x1, y1}, Point{x2, y2}, Point{x, y})
}

// Close ends the outline where it began.
func (p *Path) Close() { p.add(Close) }

func (p *Path) add(k SegKind, pts ...Point) {
	p.Kinds = append(p.Kinds, k)
	p.Points = append(p.Points, pts...)
}

// Arc adds an arc of the circle about (cx, cy) from angle a0 to a1, radians
// from +x towards +y (clockwise on the screen); it starts with a line from the
// current point, or a move when the path is empty.
func (p *Path) Arc(cx, cy, r, a0, a1 float64) {
	n := int(math.Ceil(math.Abs(a1-a0) / (math.Pi / 4)))
	if n == 0 {
		return
	}
	d := (a1 - a0) / float64(n)
	k := 4.0 / 3 * math.Tan(d/4)
	s, c := math.Sincos(a0)
	if len(p.Kinds) == 0 {
		p.MoveTo(cx+r*c, cy+r*s)
	} else {
		p.LineTo(cx+r*c, cy+r*s)
	}
	for i := range n {
		s1, c1 := math.Sincos(a0 + d*float64(i+1))
		p.CubeTo(cx+r*(c-k*s), cy+r*(s+k*c), cx+r*(c1+k*s1), cy+r*(s1-k*c1), cx+r*c1, cy+r*s1)
		s, c = s1, c1
	}
}

// Circle returns a whole circle.
func Circle(cx, cy, r float64) Path {
	var p Path
	p.Arc(cx, cy, r, 0, 2*math.Pi)
	p.Close()
	return p
}

// Box returns a rectangle.
func Box(r Rect) Path {
	var p Path
	p.MoveTo(r.X, r.Y)
	p.LineTo(r.X+r.W, r.Y)
	p.LineTo(r.X+r.W, r.Y+r.H)
	p.LineTo(r.X, r.Y+r.H)
	p.Close()
	return p
}

// RoundBox returns a rectangle with corners of radius c.
func RoundBox(r Rect, c float64) Path {
	c = min(c, r.W/2, r.H/2)
	if c <= 0 {
		return Box(r)
	}
	var p Path
	p.Arc(r.X+r.W-c, r.Y+c, c, -math.Pi/2, 0)
	p.Arc(r.X+r.W-c, r.Y+r.H-c, c, 0, math.Pi/2)
	p.Arc(r.X+c, r.Y+r.H-c, c, math.Pi/2, math.Pi)
	p.Arc(r.X+c, r.Y+c, c, math.Pi, 3*math.Pi/2)
	p.Close()
	return p
}

// Polyline returns straight lines through the points.
func Polyline(closed bool, pts ...Point) Path {
	var p Path
	for i, q := range pts {
		if i == 0 {
			p.MoveTo(q.X, q.Y)
		} else {
			p.LineTo(q.X, q.Y)
		}
	}
	if closed {
		p.Close()
	}
	return p
}
