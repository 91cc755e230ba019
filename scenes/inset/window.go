package inset

import (
	"math"

	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
)

// sides is the number of corners of a large round window. A small one has half
// of them. Up to a radius of 500 px they leave the circle by less than a fifth
// of a pixel, under the rim.
const sides = 120

var circle = func() (c [sides]draw.Point) {
	for i := range c {
		s, k := math.Sincos(2 * math.Pi * float64(i) / sides)
		c[i] = draw.Point{X: k, Y: s}
	}
	return
}()

// window is the round opening of a magnifier.
type window struct {
	centre draw.Point
	r      float64 // of the opening, under the middle of the rim
	rim    float64 // width of the rim
}

func windowOf(th *theme.Theme, c draw.Point, r, unit float64) window {
	w := max(r/48, 2*unit)
	if th.Flat {
		w = max(w, 3*unit)
	}
	return window{c, r - w/2, w}
}

// step is how many corners of the circle make one side of the window.
func (w window) step() int {
	if w.r < 140 {
		return 2
	}
	return 1
}

// corner is a corner of a clipped window: its place on the screen and in the
// texture.
type corner struct{ x, y, u, v float64 }

// corners is room for a window cut by the four sides of a texture.
type corners struct {
	c [sides + 8]corner
	n int
}

func (k *corners) add(c corner) { k.c[k.n] = c; k.n++ }

// show adds the part of a texture that is seen through the window.
func (w window) show(l *draw.List, t *draw.Texture, v view) {
	var a, b corners
	for i := 0; i < sides; i += w.step() {
		p := draw.Point{X: w.centre.X + w.r*circle[i].X, Y: w.centre.Y + w.r*circle[i].Y}
		tu, tv := figure.UV(t, v.from(p))
		a.add(corner{p.X, p.Y, tu, tv})
	}
	cut(&b, &a, func(c corner) float64 { return c.u })
	cut(&a, &b, func(c corner) float64 { return float64(t.W) - c.u })
	cut(&b, &a, func(c corner) float64 { return c.v })
	cut(&a, &b, func(c corner) float64 { return float64(t.H) - c.v })
	if a.n < 3 {
		return
	}
	p := l.Open(t)
	for _, c := range a.c[:a.n] {
		p.Vertex(draw.Vertex{X: float32(c.x), Y: float32(c.y), U: float32(c.u), V: float32(c.v), R: 1, G: 1, B: 1, A: 1})
	}
	for i := 1; i+1 < a.n; i++ {
		p.Triangle(0, uint16(i), uint16(i+1))
	}
	p.Done()
}

// cut keeps the part of a convex outline on which inside is not negative.
func cut(out, in *corners, inside func(corner) float64) {
	out.n = 0
	for i := range in.n {
		p, q := in.c[i], in.c[(i+1)%in.n]
		dp, dq := inside(p), inside(q)
		if dp >= 0 {
			out.add(p)
		}
		if dp*dq < 0 {
			t := dp / (dp - dq)
			out.add(corner{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y), p.u + t*(q.u-p.u), p.v + t*(q.v-p.v)})
		}
	}
}

// fill paints the whole opening.
func (w window) fill(l *draw.List, c draw.Color) {
	p := l.Open(nil)
	p.Disc(w.centre, w.r, 1, c)
	p.Done()
}

// edge draws the rim over the border of the opening.
func (w window) edge(l *draw.List, c draw.Color) {
	p := l.Open(nil)
	p.Ring(w.centre, w.r, w.rim, 1, c)
	p.Done()
}
