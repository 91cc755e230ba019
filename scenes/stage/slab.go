package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
)

// spot is a point in the slab's own frame.
type spot struct{ a, b, n float64 }

// post is a place on the rim: the point where the top ends, the one where the
// side ends, and the point on the top within the rim that it is joined to.
type post struct{ top, foot, inner spot }

const (
	inset    = 1.25 // width of the border of the top that follows the rim
	cellsA   = 6
	cellsB   = 5
	postStep = 1.0
)

// slabShape is the broken outline of one stone.
type slabShape struct{ sides [4][]post }

// shapeOf breaks the rim of a stone; a nil stone is a plain box.
func shapeOf(s *rock.Stone) slabShape {
	var shape slabShape
	for _, side := range rock.Sides {
		half := side.Half()
		n := int(2 * half / postStep)
		if s == nil {
			n = 8
		}
		posts := make([]post, n+1)
		for i := range posts {
			posts[i] = postAt(s, side, -half+2*half*float64(i)/float64(n))
		}
		shape.sides[side] = posts
	}
	return shape
}

func postAt(s *rock.Stone, side rock.Side, t float64) post {
	var p post
	half := side.Half()
	k := (half - inset) / half
	p.inner.a, p.inner.b = side.Place(t*k, inset)
	if s == nil {
		p.top.a, p.top.b = side.Place(t, 0)
		p.foot = p.top
		p.foot.n = -rock.Thick
		return p
	}
	c, f := s.Chip(side, t), s.Foot(side, t)
	if math.Abs(t) == half { // both sides of a corner must agree
		c, f = 0.32, 0.4
		t -= math.Copysign(0.12, t)
	}
	p.top.a, p.top.b = side.Place(t, 0.38*c)
	p.top.n = -0.5 * c
	p.foot.a, p.foot.b = side.Place(t, 0.3*f)
	p.foot.n = -rock.Thick + 0.5*f
	return p
}

// place is a spot in the world.
func (sc *scene) place(p spot) orient.Vec { return sc.on(p.a, p.b, p.n) }

// topCorner is a spot as a corner with its place in the texture of the top.
func (sc *scene) topCorner(p spot, px float64, c tint) corner {
	return corner{at: sc.place(p), u: (p.a + rock.HalfA) * px, v: (p.b + rock.HalfB) * px, c: c}
}

// sideNormal is the way a side faces.
func (sc *scene) sideNormal(s rock.Side) orient.Vec {
	switch s {
	case rock.Ahead:
		return sc.S
	case rock.Down:
		return sc.D
	case rock.Behind:
		return mul(-1, sc.S)
	default:
		return mul(-1, sc.D)
	}
}

// seesSide says whether a side of the slab faces the eye.
func (sc *scene) seesSide(s rock.Side) bool {
	a, b := s.Place(0, 0)
	return sc.lens.sees(sc.on(a, b, 0), sc.sideNormal(s))
}

// drawSlab paints the sides that are seen and then the top.
func (st *Stage) drawSlab(sc *scene) {
	b := sc.open(st.stone.texture)
	for _, side := range rock.Sides {
		if sc.seesSide(side) {
			st.drawSide(sc, &b, side)
		}
	}
	st.drawTop(sc, &b)
	b.pen.Done()
	if sc.th.Flat {
		st.outlineSlab(sc)
	}
}

// outlineSlab draws the edges of the slab that are seen, for flat themes.
func (st *Stage) outlineSlab(sc *scene) {
	s := prism{n: 4}
	for i := range 4 {
		a, b := corners4(i, rock.HalfA, rock.HalfB)
		s.p[i], s.q[i] = sc.on(a, b, -rock.Thick), sc.on(a, b, 0)
	}
	s.prepare(&sc.lens)
	b := sc.open(st.lines)
	s.outline(&b, sc.px(2.5), colour(sc.th.Line, 1, 1))
	b.pen.Done()
}

func (st *Stage) drawSide(sc *scene, b *brush, side rock.Side) {
	px := st.stone.px
	k := sc.shade(sc.sideNormal(side))
	v0 := float64(st.stone.sideAt[side])
	half := side.Half()
	mid := sc.on(0, 0, -rock.Thick/2)
	at := func(p spot, dark float64) corner {
		t := p.a
		if side == rock.Ahead || side == rock.Behind {
			t = p.b
		}
		if side == rock.Ahead || side == rock.Up {
			t = -t
		}
		u := max(0.5, min(2*half*px-0.5, (t+half)*px))
		v := max(0.5, min(rock.Thick*px-0.5, -p.n*px))
		return corner{at: sc.place(p), u: u, v: v0 + v, c: grey(k * dark)}
	}
	low := 0.78
	if sc.th.Flat {
		low = 1
	}
	var last [3]corner
	var tail [3]uint16
	for i, p := range st.stone.shape.sides[side] {
		m := spot{(p.top.a + p.foot.a) / 2, (p.top.b + p.foot.b) / 2, (p.top.n + p.foot.n) / 2}
		now := [3]corner{at(p.top, 1), at(m, 1), at(p.foot, low)}
		head := [3]uint16{b.vertex(now[0]), b.vertex(now[1]), b.vertex(now[2])}
		if i > 0 {
			b.pen.Quad(tail[0], head[0], head[1], tail[1])
			b.pen.Quad(tail[1], head[1], head[2], tail[2])
			b.fringe(last[2], now[2], mid)
		}
		last, tail = now, head
		if i == 0 && !sc.seesSide(leftOf(side)) || i == len(st.stone.shape.sides[side])-1 && !sc.seesSide(rightOf(side)) {
			b.fringe(now[0], now[1], mid)
			b.fringe(now[1], now[2], mid)
		}
	}
}

// leftOf and rightOf are the neighbours of a side as seen from outside.
func leftOf(s rock.Side) rock.Side { return (s + 1) % 4 }

func rightOf(s rock.Side) rock.Side { return (s + 3) % 4 }

func (st *Stage) drawTop(sc *scene, b *brush) {
	px := st.stone.px
	c := grey(sc.shade(sc.N))
	mid := sc.on(0, 0, 0)
	const over = 0.04
	var row [cellsA + 1]uint16
	for j := range cellsB + 1 {
		var next [cellsA + 1]uint16
		for i := range cellsA + 1 {
			a := lerp(-rock.HalfA+inset-over, rock.HalfA-inset+over, float64(i)/cellsA)
			d := lerp(-rock.HalfB+inset-over, rock.HalfB-inset+over, float64(j)/cellsB)
			next[i] = b.vertex(sc.topCorner(spot{a, d, 0}, px, c))
			if i > 0 && j > 0 {
				b.pen.Quad(row[i-1], row[i], next[i], next[i-1])
			}
		}
		row = next
	}
	for _, side := range rock.Sides {
		hidden := !sc.seesSide(side)
		var last corner
		var rim, in uint16
		for i, p := range st.stone.shape.sides[side] {
			now := sc.topCorner(p.top, px, c)
			r, n := b.vertex(now), b.vertex(sc.topCorner(p.inner, px, c))
			if i > 0 {
				b.pen.Quad(rim, r, n, in)
				if hidden {
					b.fringe(last, now, mid)
				}
			}
			last, rim, in = now, r, n
		}
	}
}
