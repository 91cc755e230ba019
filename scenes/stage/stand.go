package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage/rock"
)

// The stand: a base plate, a wedge that carries the slab from below and, on
// steep beds, a buttress behind it and a shoe in front of its foot.
const (
	baseA = 10.6 // half length of the base along the strike
	baseH = 10.4 // and across it
	cheek = 8.6  // half length of wedge and shoe
)

// under is a point of the underside of the slab, b down the dip, as level
// distance towards the dip and height.
func (sc *scene) under(b float64) (h, z float64) {
	p := sc.on(0, b, -rock.Thick)
	return dot(p, sc.H), p.Z
}

func (sc *scene) base() prism {
	s := prism{n: 4}
	for i := range 4 {
		a, h := corners4(i, baseA, baseH)
		s.p[i], s.q[i] = sc.at(a, h, 0), sc.at(a, h, baseTop)
	}
	return s
}

// wedge stands under the slab. Its back is upright on gentle beds; on steep
// ones its foot runs out behind as a buttress.
func (sc *scene) wedge() prism {
	steep := ease(0.55, 1.5, sc.p.Plane.Dip.Radians())
	h0, z0 := sc.under(lerp(-0.86, -0.45, steep) * rock.HalfB)
	h1, z1 := sc.under(0.72 * rock.HalfB)
	foot := max(-baseH+0.9, h0-7.5*steep)
	s := prism{n: 4}
	pts := [4][2]float64{{h0, z0}, {h1, z1}, {h1, baseTop}, {foot, baseTop}}
	for i, q := range pts {
		s.p[i], s.q[i] = sc.at(-cheek, q[0], q[1]), sc.at(cheek, q[0], q[1])
	}
	if !sc.th.Flat {
		s.pk = [mostSides]float64{0.62, 0.66, 0.86, 1}
		s.qk = s.pk
	}
	return s
}

// shoe keeps the foot of a steep slab from sliding: it fills the corner under
// the lower side. There is none on gentle beds.
func (sc *scene) shoe() (prism, bool) {
	steep := ease(0.7, 1.2, sc.p.Plane.Dip.Radians())
	if steep == 0 {
		return prism{}, false
	}
	low := sc.on(0, rock.HalfB, -0.97*rock.Thick)
	high := sc.on(0, rock.HalfB, lerp(-0.9, -0.4, steep)*rock.Thick)
	s := prism{n: 4}
	for i, q := range [4]orient.Vec{low, high, high, low} {
		z := q.Z
		if i > 1 {
			z = baseTop
		}
		h := dot(q, sc.H)
		s.p[i], s.q[i] = sc.at(-cheek, h, z), sc.at(cheek, h, z)
	}
	if !sc.th.Flat {
		s.pk = [mostSides]float64{0.6, 0.7, 0.95, 0.7}
		s.qk = s.pk
	}
	return s, true
}

// drawStand paints base, wedge and, where the slab does not hide behind it,
// the shoe.
func (st *Stage) drawStand(sc *scene) {
	base, wedge := sc.base(), sc.wedge()
	st.drawSolid(sc, &base)
	st.drawBaseShadow(sc)
	st.drawSolid(sc, &wedge)
	if !sc.seesSide(rock.Down) {
		st.drawShoe(sc)
	}
}

func (st *Stage) drawShoe(sc *scene) {
	if shoe, ok := sc.shoe(); ok {
		st.drawSolid(sc, &shoe)
	}
}

// drawSolid paints a prism in the colour of the stand.
func (st *Stage) drawSolid(sc *scene, s *prism) {
	s.prepare(&sc.lens)
	b := sc.open(nil)
	for f := range s.n + 2 {
		s.face(&b, f, colour(sc.th.Stand, sc.shade(s.norm[f]), 1))
	}
	for i := range 3 * s.n {
		e := s.edge(i)
		if f, ok := s.outer(e); ok {
			c := colour(sc.th.Stand, sc.shade(s.norm[f]), 1)
			b.fringe(corner{at: e.a, c: c.dim(e.ka)}, corner{at: e.b, c: c.dim(e.kb)}, s.mid)
		}
	}
	b.pen.Done()
	l := sc.open(st.lines)
	if sc.th.Flat {
		s.outline(&l, sc.px(2), colour(sc.th.Line, 1, 1))
	} else {
		sc.seams(&l, s, sc.th.Stand)
	}
	l.pen.Done()
}

// seams smooths the edges between two faces that are seen, in a colour between
// theirs.
func (sc *scene) seams(b *brush, s *prism, c draw.Color) {
	for i := range 3 * s.n {
		e := s.edge(i)
		if s.seen[e.f] && s.seen[e.g] {
			k := (sc.shade(s.norm[e.f]) + sc.shade(s.norm[e.g])) / 2 * (e.ka + e.kb) / 2
			b.line(e.a, e.b, 1, colour(c, min(1, 1.04*k), 1))
		}
	}
}

// drawBaseShadow darkens the base plate under the slab.
func (st *Stage) drawBaseShadow(sc *scene) {
	if sc.th.Flat {
		return
	}
	plate := sheet{o: orient.Vec{Z: baseTop}, x: sc.S, y: sc.H}
	b := sc.open(nil)
	b.clip(sc.S, -baseA)
	b.clip(mul(-1, sc.S), -baseA)
	b.clip(sc.H, -baseH)
	b.clip(mul(-1, sc.H), -baseH)
	slab := blot{sheet: plate}
	sc.eachSlabCorner(func(p orient.Vec) { slab.cast(p, sc.light, orient.Up, 0.22) })
	slab.wrap()
	slab.fill(&b, colour(sc.th.Shadow, 1, 0.8*sc.th.ShadowAlpha), false)
	near := blot{sheet: plate}
	for i := range 4 {
		a, d := corners4(i, rock.HalfA, 4)
		near.cast(sc.on(a, rock.HalfB-4+d, -rock.Thick), orient.Up, orient.Up, 0)
	}
	near.widen(3)
	near.wrap()
	near.fill(&b, colour(sc.th.Shadow, 1, 0.7*sc.th.ShadowAlpha), false)
	b.pen.Done()
}
