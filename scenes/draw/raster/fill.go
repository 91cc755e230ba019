package raster

import (
	"image"
	"math"

	"cuesta/scenes/draw"
)

// tolerance is how far a straight line may stray from a curve, in pixels.
const tolerance = 0.04

func (p *Painter) fill(c canvas, f *draw.Fill) {
	p.flat.Reset()
	p.flat.Add(f.Path, c.m, tolerance)
	p.pour(c, f.Color, f.Gradient)
}

func (p *Painter) text(c canvas, t *draw.Text) {
	p.path.Kinds, p.path.Points = p.path.Kinds[:0], p.path.Points[:0]
	t.AppendOutline(&p.path)
	p.flat.Reset()
	p.flat.Add(p.path, c.m, tolerance)
	p.pour(c, t.Color, draw.Gradient{})
}

// pour fills the flat outlines, which are in pixels, inside the clip.
func (p *Painter) pour(c canvas, col draw.Color, g draw.Gradient) {
	box := bounds(p.flat.Points).Intersect(c.clip)
	if box.Empty() {
		return
	}
	p.area.reset(box.Dx(), box.Dy())
	e := edges{area: &p.area, dx: float64(box.Min.X), dy: float64(box.Min.Y), w: float64(box.Dx()), h: float64(box.Dy())}
	for _, run := range p.flat.Runs {
		e.outline(p.flat.Points[run.From:run.To])
	}
	p.ink.set(c, box.Min, col, g)
	if g.Kind == draw.NoGradient {
		p.area.rows(p.ink.plain)
	} else {
		p.area.rows(p.ink.blend)
	}
}

// bounds is the smallest rectangle of whole pixels round some points.
func bounds(pts []draw.Point) image.Rectangle {
	if len(pts) == 0 {
		return image.Rectangle{}
	}
	const far = 1 << 30
	x0, y0, x1, y1 := float64(far), float64(far), float64(-far), float64(-far)
	for _, q := range pts {
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	if !(x1 >= x0 && y1 >= y0) { // a number that is none
		return image.Rectangle{}
	}
	lim := func(v float64) int { return int(max(-far, min(v, far))) }
	return image.Rect(lim(math.Floor(x0)), lim(math.Floor(y0)), lim(math.Ceil(x1)), lim(math.Ceil(y1)))
}

// edges passes outlines to the area, cut to its box: what is above or below is
// dropped, what is left or right is moved to the side, which changes no
// winding inside. So coordinates far off cost nothing.
type edges struct {
	area         *area
	dx, dy, w, h float64
}

func (e *edges) outline(pts []draw.Point) {
	if len(pts) < 3 {
		return
	}
	a := e.local(pts[len(pts)-1])
	for _, q := range pts {
		b := e.local(q)
		e.line(a, b)
		a = b
	}
}

func (e *edges) local(p draw.Point) draw.Point { return draw.Point{X: p.X - e.dx, Y: p.Y - e.dy} }

func (e *edges) line(a, b draw.Point) {
	if a.Y == b.Y || max(a.Y, b.Y) <= 0 || min(a.Y, b.Y) >= e.h {
		return
	}
	a, b = trim(a, b, 0, e.h), trim(b, a, 0, e.h)
	last := a
	for _, x := range e.sides(a.X < b.X) {
		if (a.X-x)*(b.X-x) < 0 {
			m := draw.Point{X: x, Y: a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)}
			e.add(last, m)
			last = m
		}
	}
	e.add(last, b)
}

// sides are the upright edges of the box in the order a line meets them.
func (e *edges) sides(rightward bool) [2]float64 {
	if rightward {
		return [2]float64{0, e.w}
	}
	return [2]float64{e.w, 0}
}

func (e *edges) add(a, b draw.Point) {
	e.area.line(max(0, min(a.X, e.w)), max(0, min(a.Y, e.h)), max(0, min(b.X, e.w)), max(0, min(b.Y, e.h)))
}

// trim moves a along the line to b until it is within [lo, hi] of y.
func trim(a, b draw.Point, lo, hi float64) draw.Point {
	y := max(lo, min(a.Y, hi))
	if y == a.Y {
		return a
	}
	return draw.Point{X: a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y), Y: y}
}
