package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// The lid, in cm. The axis of the hinge runs along the back edge of its top.
const (
	lidThick   = figure.HingeFoot // so that the foot of the hinge plate stands on the rock
	hingeThick = 0.14             // of the hinge plate, at the right-hand side of the lid
	lidSpots   = 8 + 5
	rimSteps   = 24 // of the outline of the hinge plate
)

// lid is the lid flush on the rock: where the axis of the hinge leaves it on
// the left, and its directions.
type lid struct {
	axis           orient.Vec
	fwd, right, up orient.Vec
	open           orient.Angle // of the hinge
}

// at is the point x forward of the axis, y to the right and z above the top.
func (d *lid) at(x, y, z float64) orient.Vec {
	return add(d.axis, add(mul(x, d.fwd), add(mul(y, d.right), mul(z, d.up))))
}

// on is a point of the hinge plate, in its own frame: y towards the rock.
func (d *lid) on(x, y float64) orient.Vec { return d.at(x, plateWide+hingeThick, -y) }

// spot is a corner of the lid, or of an outline about the hinge plate.
func (d *lid) spot(i int) orient.Vec {
	if i >= 8 {
		p := figure.HingeAngle(orient.Half * orient.Angle(i-8) / 4)
		const r = 1.05 * figure.HingeRadius
		return d.on(r*p.Cos(), r*p.Sin())
	}
	return d.at(float64(i&1)*plateLong, float64(i>>1&1)*plateWide, -lidThick*float64(i>>2))
}

// openLid lays the lid flush on the rock and hinges the plate to its back end.
// Folded right back the plate would cut the rock: the hinge gives way.
func (t *tool) openLid(sc *scene) {
	d := &t.lid
	d.up, d.right = sc.N, t.right
	d.fwd = orient.Unit(cross(sc.N, t.right))
	d.open = orient.Atan2(dot(t.fwd, sc.N), dot(t.fwd, d.fwd)).Abs()
	back, left := mul(-plateLong/2, d.fwd), mul(-plateWide/2, d.right)
	d.axis = add(sc.on(t.offA, t.offB, lidThick), add(back, left))
	t.hinged, t.corner = true, d.axis
	lowest := 0.0
	for i := range 8 {
		_, _, n := sc.coords(t.spot(i))
		lowest = min(lowest, n)
	}
	t.corner = sub(t.corner, mul(lowest, sc.N))
	t.edge = [2]orient.Vec{d.at(0, plateWide/2, -lidThick), d.at(plateLong, plateWide/2, -lidThick)}
	t.low = mix(t.edge[0], t.edge[1], 0.5).Z
}

// plate is the lid as a prism: p its underside, q its top.
func (d *lid) plate() prism {
	s := prism{n: 4}
	for i, c := range [4][2]float64{{0, 0}, {plateLong, 0}, {plateLong, plateWide}, {0, plateWide}} {
		s.p[i], s.q[i] = d.at(c[0], c[1], -lidThick), d.at(c[0], c[1], 0)
	}
	return s
}

// barrel is what the two plates turn about.
func (d *lid) barrel() prism {
	s := prism{n: 5}
	for i := range s.n {
		a := orient.Full * orient.Angle(i) / orient.Angle(s.n)
		x, z := 0.26*a.Cos()-.12, 0.26*a.Sin()
		s.p[i], s.q[i] = d.at(x, 0.9, z), d.at(x, plateWide-0.9, z)
	}
	return s
}

// drawLid paints the lid and what of the hinge lies behind the plate.
func (st *Stage) drawLid(sc *scene) {
	d := &sc.tool.lid
	plate := d.plate()
	plate.prepare(&sc.lens)
	st.drawSlat(sc, &plate)
	if plate.seen[5] {
		st.drawLidTop(sc)
	}
	if !sc.hingeInFront() {
		st.drawHinge(sc)
	}
	if !sc.barrelInFront() {
		st.drawBarrel(sc)
	}
}

// drawLidFront paints what of the hinge lies before the plate.
func (st *Stage) drawLidFront(sc *scene) {
	if sc.barrelInFront() {
		st.drawBarrel(sc)
	}
	if sc.hingeInFront() {
		st.drawHinge(sc)
	}
}

// hingeInFront says whether the eye is on the side of the hinge plate.
func (sc *scene) hingeInFront() bool {
	d := &sc.tool.lid
	return sc.lens.sees(d.on(0, 0), d.right)
}

// barrelInFront says whether the eye is behind the hinge while the plate is not.
func (sc *scene) barrelInFront() bool {
	d := &sc.tool.lid
	return d.open < orient.Right && !sc.lens.sees(d.axis, d.fwd)
}

// drawSlat paints a plain part of the instrument.
func (st *Stage) drawSlat(sc *scene, s *prism) {
	b := sc.openCut(nil)
	at := func(f int) tint { return colour(sc.th.PlateSide, sc.shade(s.norm[f]), 1) }
	for f := range s.n + 2 {
		s.face(&b, f, at(f))
	}
	for i := range 3 * s.n {
		e := s.edge(i)
		if f, ok := s.outer(e); ok {
			b.fringe(corner{at: e.a, c: at(f)}, corner{at: e.b, c: at(f)}, s.mid)
		}
	}
	b.pen.Done()
	if sc.part == below {
		return
	}
	l := sc.open(st.lines)
	if sc.th.Flat {
		s.outline(&l, sc.px(2), colour(sc.th.Line, 1, 1))
	} else {
		sc.rims(&l, s)
	}
	l.pen.Done()
}

// rims lights the edges between two faces that are seen.
func (sc *scene) rims(b *brush, s *prism) {
	for i := range 3 * s.n {
		if e := s.edge(i); s.seen[e.f] && s.seen[e.g] {
			b.line(e.a, e.b, 1, colour(sc.th.PlateRim, 0.8, 1))
		}
	}
}

func (st *Stage) drawBarrel(sc *scene) {
	s := sc.tool.lid.barrel()
	s.prepare(&sc.lens)
	st.drawSlat(sc, &s)
}

// drawLidTop paints the groove of the lid, an arrow that points forward, and
// the shadow of the plate that stands open over it.
func (st *Stage) drawLidTop(sc *scene) {
	d := &sc.tool.lid
	b := sc.openCut(nil)
	c := colour(sc.th.Edge, sc.barLight(d.up), 1)
	const y, from, neck, tip, shaft, head = plateWide / 2, 9.2, 12.6, 14.8, 0.16, 1.1
	on := func(x, y float64) corner { return corner{at: d.at(x, y, 0), c: c} }
	b.polygon(on(from, y-shaft), on(neck, y-shaft), on(neck, y+shaft), on(from, y+shaft))
	b.polygon(on(neck, y-head), on(tip, y), on(neck, y+head))
	b.pen.Done()
	if !sc.th.Flat && sc.part != below {
		st.drawLidShadow(sc)
	}
}

func (st *Stage) drawLidShadow(sc *scene) {
	d := &sc.tool.lid
	k := dot(sc.light, d.up)
	if k < 0.05 {
		return
	}
	b := sc.open(nil)
	b.clip(d.fwd, dot(d.fwd, d.axis))
	b.clip(mul(-1, d.fwd), -dot(d.fwd, d.axis)-plateLong)
	b.clip(d.right, dot(d.right, d.axis))
	b.clip(mul(-1, d.right), -dot(d.right, d.axis)-plateWide)
	s := blot{sheet: sheet{o: d.axis, x: d.fwd, y: d.right}, close: 0.4}
	for i := range 8 {
		s.cast(sc.tool.spot(i), sc.light, d.up, 0.13)
	}
	s.wrap()
	s.fill(&b, colour(sc.th.RockShadow, 1, 0.5*ease(0.05, 0.3, k)), false)
	b.pen.Done()
}

// drawHinge paints the half circle on the right-hand side of the lid: from
// there its scale and its index, from the other side its back.
func (st *Stage) drawHinge(sc *scene) {
	d := &sc.tool.lid
	k := sc.faceLight(d.right)
	b := sc.openCut(nil)
	back := colour(sc.th.Dial, 0.82*k, 1)
	dark := colour(sc.th.PlateSide, sc.shade(d.right), 1)
	const n = rimSteps
	rim := func(i int, out float64) orient.Vec {
		a := figure.HingeAngle(orient.Half * orient.Angle(i) / n)
		return d.at(figure.HingeRadius*a.Cos(), plateWide+out, -figure.HingeRadius*a.Sin())
	}
	if !sc.hingeInFront() {
		mid := corner{at: d.at(0, plateWide, 0), c: back}
		for i := range n {
			p, q := corner{at: rim(i, 0), c: back}, corner{at: rim(i+1, 0), c: back}
			b.polygon(mid, p, q)
			b.fringe(p, q, mid.at)
		}
	}
	for i := range n { // the thickness of its rim
		p, q := rim(i, 0), rim(i+1, 0)
		b.polygon(corner{at: p, c: dark}, corner{at: q, c: dark}, corner{at: rim(i+1, hingeThick), c: dark}, corner{at: rim(i, hingeThick), c: dark})
	}
	b.pen.Done()
	if !sc.hingeInFront() {
		st.outlineHinge(sc, rim)
		return
	}
	st.hingePart(sc, st.kit.hingePlate(), 0, figure.HingeBox, k)
	st.hingePart(sc, st.kit.hingePointer(), figure.HingeAngle(d.open), figure.HingeIndexBox, k)
}

// outlineHinge draws the outline of the back of the hinge plate.
func (st *Stage) outlineHinge(sc *scene, rim func(i int, out float64) orient.Vec) {
	if sc.part == below {
		return
	}
	width, c := 1.0, colour(sc.th.PlateSide, 1, 1)
	if sc.th.Flat {
		width, c = sc.px(2), colour(sc.th.Line, 1, 1)
	}
	l := sc.open(st.lines)
	for i := range rimSteps {
		l.line(rim(i, 0), rim(i+1, 0), width, c)
	}
	l.line(rim(rimSteps, 0), rim(0, 0), width, c)
	l.pen.Done()
}

// hingePart paints a texture on the hinge plate, turned by a.
func (st *Stage) hingePart(sc *scene, t *draw.Texture, a orient.Angle, box draw.Rect, k float64) {
	b := sc.openCut(t)
	d, sin, cos := &sc.tool.lid, a.Sin(), a.Cos()
	at := func(x, y float64) corner {
		u, v := figure.UV(t, draw.Point{X: x, Y: y})
		return corner{at: d.on(cos*x-sin*y, sin*x+cos*y), u: u, v: v, c: grey(k)}
	}
	e := 1 / st.kit.px
	x0, y0, x1, y1 := box.X-e, box.Y-e, box.X+box.W+e, box.Y+box.H+e
	b.polygon(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1))
	b.pen.Done()
}

// lidReach is how far above the rock a plate on its lid may stand: room for it
// is kept, so that the picture does not jump while the hinge opens.
func (sc *scene) lidReach() float64 {
	if sc.p.Pose.Seat != sim.OnLid {
		return 0
	}
	return min(plateLong, rock.HalfB+4)
}
