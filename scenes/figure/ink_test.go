package figure

import (
	"math"

	"cuesta/scenes/draw"
)

// box is an upright rectangle.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) mid() draw.Point { return draw.Point{X: (b.x0 + b.x1) / 2, Y: (b.y0 + b.y1) / 2} }

// inkOf is the box of the outlines of a text in the text's own frame: x along
// the line from its place, y down from the baseline.
func inkOf(t draw.Text) box {
	t.At, t.Rotate = draw.Point{}, 0
	var p draw.Path
	t.AppendOutline(&p)
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, q := range p.Points {
		b = box{min(b.x0, q.X), min(b.y0, q.Y), max(b.x1, q.X), max(b.y1, q.Y)}
	}
	return b
}

// patch is a rectangle that may be turned, as its four corners.
type patch [4]draw.Point

// patchOf is where the ink of a text lies.
func patchOf(t draw.Text) patch {
	b := inkOf(t)
	s, k := math.Sincos(t.Rotate)
	place := func(x, y float64) draw.Point {
		return draw.Point{X: t.At.X + k*x - s*y, Y: t.At.Y + s*x + k*y}
	}
	return patch{place(b.x0, b.y0), place(b.x1, b.y0), place(b.x1, b.y1), place(b.x0, b.y1)}
}

// strip is a tick as a rectangle of a width.
func strip(a, b draw.Point, width float64) patch {
	n := math.Hypot(b.X-a.X, b.Y-a.Y)
	dx, dy := -(b.Y-a.Y)/n*width/2, (b.X-a.X)/n*width/2
	return patch{{X: a.X + dx, Y: a.Y + dy}, {X: b.X + dx, Y: b.Y + dy}, {X: b.X - dx, Y: b.Y - dy}, {X: a.X - dx, Y: a.Y - dy}}
}

// gap is how far two rectangles are apart along the best of their four sides;
// it is negative when they overlap.
func (p patch) gap(q patch) float64 {
	best := math.Inf(-1)
	for _, sides := range [...]patch{p, q} {
		for i := range 2 {
			a, b := sides[i], sides[i+1]
			n := math.Hypot(b.X-a.X, b.Y-a.Y)
			x, y := (b.X-a.X)/n, (b.Y-a.Y)/n
			p0, p1 := p.along(x, y)
			q0, q1 := q.along(x, y)
			best = max(best, q0-p1, p0-q1)
		}
	}
	return best
}

func (p patch) along(x, y float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range p {
		d := c.X*x + c.Y*y
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// radii are the least and the greatest distance of a rectangle from the origin.
func (p patch) radii() (least, most float64) {
	least = math.Inf(1)
	for i, a := range p {
		b := p[(i+1)%4]
		most = max(most, math.Hypot(a.X, a.Y))
		dx, dy := b.X-a.X, b.Y-a.Y
		t := max(0, min(1, -(a.X*dx+a.Y*dy)/(dx*dx+dy*dy)))
		least = min(least, math.Hypot(a.X+t*dx, a.Y+t*dy))
	}
	return least, most
}
