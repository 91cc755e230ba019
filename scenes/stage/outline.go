package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
)

// hull is the outline of a convex solid in the picture.
type hull struct{ blot }

// add takes in a point of the solid; close when all are in.
func (h *hull) add(l *lens, p orient.Vec) {
	x, y := l.project(p)
	h.pts[h.n] = flat{x: x, y: y}
	h.n++
}

// meets says whether the outline and a box have a point in common: no side of
// either parts them.
func (h *hull) meets(b box) bool {
	if h.n < 3 {
		return false
	}
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range h.pts[:h.n] {
		x0, y0, x1, y1 = min(x0, p.x), min(y0, p.y), max(x1, p.x), max(y1, p.y)
	}
	if x1 < b.x || x0 > b.x+b.w || y1 < b.y || y0 > b.y+b.h {
		return false
	}
	for i := range h.n {
		p, q := h.pts[i], h.pts[(i+1)%h.n]
		nx, ny := normal(p, q)
		// The corner of the box that reaches farthest in.
		cx, cy := b.x, b.y
		if nx < 0 {
			cx += b.w
		}
		if ny < 0 {
			cy += b.h
		}
		if (cx-p.x)*nx+(cy-p.y)*ny > 0 {
			return false
		}
	}
	return true
}

// top is the least y of the outline between two verticals.
func (h *hull) top(x0, x1 float64) float64 {
	best := math.Inf(1)
	for i := range h.n {
		p, q := h.pts[i], h.pts[(i+1)%h.n]
		if p.x > q.x {
			p, q = q, p
		}
		if q.x < x0 || p.x > x1 {
			continue
		}
		for _, x := range [2]float64{max(x0, p.x), min(x1, q.x)} {
			k := 0.0
			if q.x > p.x {
				k = (x - p.x) / (q.x - p.x)
			}
			best = min(best, lerp(p.y, q.y, k))
		}
	}
	return best
}

// outlines finds what the slab, the stand and the instrument cover.
func (sc *scene) outlines() {
	sc.slabHull, sc.standHull, sc.toolHull = hull{}, hull{}, hull{}
	for i := range sc.tool.spots() {
		sc.toolHull.add(&sc.lens, sc.tool.spot(i))
	}
	for i := range 8 {
		a, b := corners4(i&3, rock.HalfA, rock.HalfB)
		sc.slabHull.add(&sc.lens, sc.on(a, b, -rock.Thick*float64(i>>2)))
	}
	w := sc.wedge()
	for i := range w.n {
		sc.standHull.add(&sc.lens, w.p[i])
		sc.standHull.add(&sc.lens, w.q[i])
	}
	if sc.p.Bare {
		sc.toolHull = hull{}
	}
	sc.toolHull.wrap()
	sc.slabHull.wrap()
	sc.standHull.wrap()
}
