package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
)

// tint is a premultiplied colour.
type tint struct{ r, g, b, a float32 }

// colour returns a colour under a light of strength k, faded by alpha.
func colour(c draw.Color, k, alpha float64) tint {
	f := func(v uint8) float32 { return float32(min(1, k*float64(v)/255) * alpha) }
	return tint{f(c.R), f(c.G), f(c.B), float32(alpha)}
}

// grey multiplies a texture by k.
func grey(k float64) tint { return tint{float32(k), float32(k), float32(k), 1} }

// corner is a vertex in the world.
type corner struct {
	at   orient.Vec
	u, v float64
	c    tint
}

func (p corner) to(q corner, k float64) corner {
	f := float32(k)
	return corner{
		at: mix(p.at, q.at, k), u: lerp(p.u, q.u, k), v: lerp(p.v, q.v, k),
		c: tint{p.c.r + f*(q.c.r-p.c.r), p.c.g + f*(q.c.g-p.c.g), p.c.b + f*(q.c.b-p.c.b), p.c.a + f*(q.c.a-p.c.a)},
	}
}

// half is the half space of the points p with n·p ≥ d.
type half struct {
	n orient.Vec
	d float64
}

const (
	mostCuts    = 5
	mostCorners = 16
)

// brush paints convex polygons of the world with one texture, cut off at up to
// mostCuts planes.
type brush struct {
	pen  draw.Pen
	lens *lens
	cut  [mostCuts]half
	cuts int
}

func (b *brush) clip(n orient.Vec, d float64) {
	b.cut[b.cuts] = half{n, d}
	b.cuts++
}

func (b *brush) vertex(c corner) uint16 {
	x, y := b.lens.project(c.at)
	return b.put(x, y, c.u, c.v, c.c)
}

func (b *brush) put(x, y, u, v float64, c tint) uint16 {
	return b.pen.Vertex(draw.Vertex{X: float32(x), Y: float32(y), U: float32(u), V: float32(v), R: c.r, G: c.g, B: c.b, A: c.a})
}

// polygon paints a convex polygon of at most mostCorners − mostCuts corners.
func (b *brush) polygon(cs ...corner) {
	var from, to [mostCorners]corner
	n := copy(from[:], cs)
	for i := range b.cuts {
		n = b.cut[i].keep(from[:n], to[:0])
		from = to
	}
	if n < 3 {
		return
	}
	first := b.vertex(from[0])
	last := b.vertex(from[1])
	for i := 2; i < n; i++ {
		next := b.vertex(from[i])
		b.pen.Triangle(first, last, next)
		last = next
	}
}

// keep cuts a convex polygon (Sutherland and Hodgman) and returns how many
// corners are left.
func (h *half) keep(from, to []corner) int {
	for i, p := range from {
		q := from[(i+1)%len(from)]
		dp, dq := dot(h.n, p.at)-h.d, dot(h.n, q.at)-h.d
		if dp >= 0 {
			to = append(to, p)
		}
		// From the kept end, so that neighbours cut a common edge at one point.
		switch {
		case dp >= 0 && dq < 0:
			to = append(to, p.to(q, dp/(dp-dq)))
		case dp < 0 && dq >= 0:
			to = append(to, q.to(p, dq/(dq-dp)))
		}
	}
	return len(to)
}

// fringe softens the outer edge from p to q: a strip one pixel wide that fades
// out on the side away from inside.
func (b *brush) fringe(p, q corner, inside orient.Vec) {
	x0, y0 := b.lens.project(p.at)
	x1, y1 := b.lens.project(q.at)
	xi, yi := b.lens.project(inside)
	nx, ny := y0-y1, x1-x0
	k := length2(nx, ny)
	if k < 1e-6 || b.cuts > 0 {
		return
	}
	if nx*(xi-x0)+ny*(yi-y0) > 0 {
		k = -k
	}
	nx, ny = nx/k, ny/k
	b.pen.Quad(b.put(x0, y0, p.u, p.v, p.c), b.put(x1, y1, q.u, q.v, q.c),
		b.put(x1+nx, y1+ny, q.u, q.v, tint{}), b.put(x0+nx, y0+ny, p.u, p.v, tint{}))
}
