package draw

import "math"

// A feathered shape fades over a strip of its own, so that meshes have smooth
// edges on painters that do no smoothing. The strip lies half inside and half
// outside of the true edge; a feather of 1 pixel looks like an anti-aliased
// edge, a wide one like a soft shadow.

// tinted is a vertex without texture in a premultiplied colour, faded by k.
func tinted(x, y float64, c Color, k float64) Vertex {
	a := k * float64(c.A) / 255
	f := func(v uint8) float32 { return float32(a * float64(v) / 255) }
	return Vertex{X: float32(x), Y: float32(y), R: f(c.R), G: f(c.G), B: f(c.B), A: float32(a)}
}

// Tint is a vertex for a mesh without texture: a place, a colour, and a factor
// k in [0, 1] by which the colour fades.
func Tint(p Point, c Color, k float64) Vertex { return tinted(p.X, p.Y, c, k) }

func (p *Pen) tint(q Point, c Color, k float64) uint16 { return p.Vertex(tinted(q.X, q.Y, c, k)) }

// FeatherPolygon adds a simple polygon, convex or not, in either direction,
// without texture. Fewer than three corners or no area add nothing.
func (p *Pen) FeatherPolygon(pts []Point, feather float64, c Color) {
	p.featherPolygon(pts, feather, func(q Point, k float64) Vertex { return Tint(q, c, k) })
}

// TexturedPolygon is FeatherPolygon with a texture: at maps a place to its
// vertex, whose colour is faded at the edge.
func (p *Pen) TexturedPolygon(pts []Point, feather float64, at func(Point) Vertex) {
	p.featherPolygon(pts, feather, func(q Point, k float64) Vertex { return at(q).Faded(k) })
}

// Faded multiplies all four factors by k.
func (v Vertex) Faded(k float64) Vertex {
	f := float32(k)
	v.R, v.G, v.B, v.A = v.R*f, v.G*f, v.B*f, v.A*f
	return v
}

// minTurn keeps the corner of a strip from running away at a sharp point: no
// corner moves farther than 1/minTurn half feathers.
const minTurn = 0.3

// shift is the way from a corner to the edge that lies one unit outside of
// both its edges; s is the sign of the polygon's area.
func shift(a, b, c Point, s float64) Point {
	u, v := normal(a, b), normal(b, c)
	x, y := s*(u.X+v.X), s*(u.Y+v.Y)
	n := x*x + y*y
	if n < 1e-12 {
		return Point{s * u.X, s * u.Y}
	}
	// (u+v)/(1+u·v) has length 1/cos(half the turn).
	k := 2 / max(n, 4*minTurn*minTurn)
	return Point{x * k, y * k}
}

// normal is the unit vector that points to the left of a→b with y down: the
// outside of a polygon of positive area.
func normal(a, b Point) Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := math.Hypot(dx, dy)
	if n == 0 {
		return Point{}
	}
	return Point{dy / n, -dx / n}
}

// Area is the signed area of a polygon, positive when it runs clockwise on a
// screen with y down.
func Area(pts []Point) float64 {
	sum := 0.0
	for i, b := range pts {
		a := pts[(i+len(pts)-1)%len(pts)]
		sum += a.X*b.Y - a.Y*b.X
	}
	return sum / 2
}

// level is a line along an edge: how far out of it, in half feathers, and how
// strong the colour is there.
type level struct{ out, k float64 }

// Narrow edges fade evenly; wide ones as smoothly as a blurred edge does.
var (
	hard = []level{{-1, 1}, {1, 0}}
	soft = []level{{-1, 1}, {-0.4, 0.784}, {0.4, 0.216}, {1, 0}} // k = 3t²−2t³
)

// wide is the feather from which on an edge fades smoothly.
const wide = 4

func (p *Pen) featherPolygon(pts []Point, feather float64, at func(Point, float64) Vertex) {
	area := Area(pts)
	if len(pts) < 3 || area == 0 {
		return
	}
	n, s, levels := len(pts), math.Copysign(1, area), hard
	if feather >= wide {
		levels = soft
	}
	first, m := uint16(0), uint16(len(levels))
	for i, b := range pts {
		d := shift(pts[(i+n-1)%n], b, pts[(i+1)%n], s)
		for j, e := range levels {
			h := feather / 2 * e.out
			v := p.Vertex(at(Point{b.X + h*d.X, b.Y + h*d.Y}, e.k))
			if i == 0 && j == 0 {
				first = v
			}
		}
	}
	p.interior(pts, first, m, s)
	for i := range n {
		a, b := first+m*uint16(i), first+m*uint16((i+1)%n)
		for j := range m - 1 {
			p.Quad(a+j, b+j, b+j+1, a+j+1)
		}
	}
}

// interior cuts a simple polygon into triangles, ear by ear. Corner i is
// vertex first+m·i.
func (p *Pen) interior(pts []Point, first, m uint16, s float64) {
	v := func(i int) uint16 { return first + m*uint16(i) }
	n := len(pts)
	if convex(pts, s) {
		for i := 1; i+1 < n; i++ {
			p.Triangle(v(0), v(i), v(i+1))
		}
		return
	}
	left := p.list.ring[:0]
	for i := range n {
		left = append(left, i)
	}
	for len(left) > 3 {
		i, k := ear(pts, left, s), len(left)
		p.Triangle(v(left[(i+k-1)%k]), v(left[i]), v(left[(i+1)%k]))
		left = append(left[:i], left[i+1:]...)
	}
	p.Triangle(v(left[0]), v(left[1]), v(left[2]))
	p.list.ring = left
}

func convex(pts []Point, s float64) bool {
	n := len(pts)
	for i := range n {
		if s*cross(pts[i], pts[(i+1)%n], pts[(i+2)%n]) < 0 {
			return false
		}
	}
	return true
}

// cross is twice the signed area of a triangle.
func cross(a, b, c Point) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}

// ear finds a corner whose triangle holds no other corner. A polygon that
// crosses itself may have none; then any corner will do.
func ear(pts []Point, left []int, s float64) int {
	m := len(left)
	for i := range m {
		a, b, c := pts[left[(i+m-1)%m]], pts[left[i]], pts[left[(i+1)%m]]
		if s*cross(a, b, c) >= 0 && !holds(pts, left, a, b, c, s) {
			return i
		}
	}
	return 0
}

func holds(pts []Point, left []int, a, b, c Point, s float64) bool {
	for _, j := range left {
		q := pts[j]
		if q == a || q == b || q == c {
			continue
		}
		if s*cross(a, b, q) >= 0 && s*cross(b, c, q) >= 0 && s*cross(c, a, q) >= 0 {
			return true
		}
	}
	return false
}
