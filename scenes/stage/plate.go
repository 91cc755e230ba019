package stage

import (
	"cuesta/orient"
	"cuesta/scenes/figure"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// The plate of the instrument, in cm.
const (
	plateLong  = figure.Length
	plateWide  = figure.Width
	plateThick = figure.Thickness
	barWide    = figure.Bar
)

// drawToolShadow lays the shadow of the instrument on the top of the slab,
// darkest along the seated edge.
func (st *Stage) drawToolShadow(sc *scene) {
	if sc.th.Flat {
		return
	}
	b := sc.open(nil)
	sc.clipToTop(&b, 0.22)
	t := &sc.tool
	top := sheet{o: sc.top, x: sc.S, y: sc.D}
	if k := dot(sc.light, sc.N); k > 0.05 {
		s := blot{sheet: top, close: 0.4}
		for i := range 8 {
			s.cast(t.spot(i), sc.light, sc.N, 0.13)
		}
		s.wrap()
		s.fill(&b, colour(sc.th.RockShadow, 1, 0.46*ease(0.05, 0.3, k)), false)
	}
	st.drawContact(sc, &b, top)
	b.pen.Done()
}

// clipToTop keeps a brush on the top of the slab, d within its rim.
func (sc *scene) clipToTop(b *brush, d float64) {
	c, e := dot(sc.S, sc.top), dot(sc.D, sc.top)
	b.clip(sc.S, c-rock.HalfA+d)
	b.clip(mul(-1, sc.S), -c-rock.HalfA+d)
	b.clip(sc.D, e-rock.HalfB+d)
	b.clip(mul(-1, sc.D), -e-rock.HalfB+d)
}

// drawContact darkens the rock along the edge that touches it and, fading,
// under the plate that leans over it.
func (st *Stage) drawContact(sc *scene, b *brush, top sheet) {
	t := &sc.tool
	y := 1.0 // the way from the seated edge under the plate
	if t.seated == sim.RightSide {
		y = -1
	}
	in := mul(y, t.right)
	in = sub(in, mul(dot(in, sc.N), sc.N))
	lean := length2(dot(in, sc.S), dot(in, sc.D)) // 1 when flat, 0 when upright
	if lean > 0.05 {
		in = mul(1/lean, in)
		reach := lerp(1.2, 5, lean)
		dark := colour(sc.th.RockShadow, 1, 0.42)
		for _, k := range [3][2]float64{{0, 0.1}, {0.1, 0.9}, {0.9, 1}} { // fading at both ends
			p, q := mix(t.edge[0], t.edge[1], k[0]), mix(t.edge[0], t.edge[1], k[1])
			cp, cq := dark.fade(min(1, 10*k[0], 10-10*k[0])), dark.fade(min(1, 10*k[1], 10-10*k[1]))
			b.polygon(corner{at: p, c: cp}, corner{at: q, c: cq},
				corner{at: add(q, mul(reach, in))}, corner{at: add(p, mul(reach, in))})
		}
	}
	line := blot{sheet: top}
	wide := mul(0.16, orient.Unit(cross(t.fwd, sc.N)))
	for i := range 4 {
		p := t.edge[i&1]
		w := wide
		if i > 1 {
			w = mul(-1, wide)
		}
		line.cast(add(p, w), sc.N, sc.N, 0)
	}
	line.widen(0.42)
	line.wrap()
	line.fill(b, colour(sc.th.RockShadow, 1, 0.62), false)
}

// body is the plate as a prism: p the back, q the face.
func (t *tool) body() prism {
	s := prism{n: 4}
	for i, c := range [4][2]float64{{0, 0}, {plateLong, 0}, {plateLong, plateWide}, {0, plateWide}} {
		s.p[i], s.q[i] = t.at(c[0], c[1], 0), t.at(c[0], c[1], plateThick)
	}
	return s
}
