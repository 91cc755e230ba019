package stage

import (
	"cuesta/orient"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// drawExplained paints the instrument and what explains the answer, in an
// order in which nothing covers what lies nearer: on the rock, the water, the
// instrument, and the angle in the air on the side where it stands.
func (st *Stage) drawExplained(sc *scene) {
	sc.plan()
	sc.arrowA = sc.sideForArrow()
	o := &sc.p.Reveal
	if o.Hand && sc.hasStrike() {
		st.drawHand(sc)
	}
	parted := sc.dips()
	if parted {
		st.drawOnRock(sc)
		st.drawInstrument(sc, below)
	}
	under := sc.ballUnderWater()
	if under {
		st.drawBall(sc)
	}
	if o.Water {
		st.drawWater(sc)
	}
	if !parted {
		st.drawOnRock(sc)
	}
	front := sc.airInFront()
	if !front {
		st.drawInAir(sc)
	}
	ballFirst := !sc.ballInFront()
	if !under && ballFirst {
		st.drawBall(sc)
	}
	if parted {
		st.drawInstrument(sc, above)
	} else {
		st.drawInstrument(sc, whole)
	}
	if !under && !ballFirst {
		st.drawBall(sc)
	}
	if front {
		st.drawInAir(sc)
	}
	st.drawLetters(sc)
	st.drawLabels(sc)
}

// sideForArrow is where along the strike the arrow lies: on the side of the
// instrument that is nearer to the usual eye, unless only the other one is
// free.
func (sc *scene) sideForArrow() float64 {
	best, other := -9.3, 9.3
	if sc.p.Pose.Seat == sim.OnSide {
		best, other = 7.6, -9.3
	}
	if sc.p.Bare {
		return -5
	}
	lo, hi := sc.toolReach()
	taken := func(a float64) bool { return a > lo-1 && a < hi+1 }
	if taken(best) && !taken(other) {
		return other
	}
	return best
}

// toolReach is the reach of the instrument along the strike.
func (sc *scene) toolReach() (lo, hi float64) {
	lo, hi = rock.HalfA, -rock.HalfA
	for i := range sc.tool.spots() {
		a, _, _ := sc.coords(sc.tool.spot(i))
		lo, hi = min(lo, a), max(hi, a)
	}
	return lo, hi
}

// airInFront says whether the angle that stands at arrowA is nearer to the eye
// than the instrument: a plane across the strike parts the two.
func (sc *scene) airInFront() bool {
	lo, hi := sc.toolReach()
	eye, _, _ := sc.coords(sc.lens.eye)
	switch {
	case sc.arrowA <= lo:
		return eye < (sc.arrowA+lo)/2
	case sc.arrowA >= hi:
		return eye > (sc.arrowA+hi)/2
	default:
		return true
	}
}

const (
	arrowEnd = 9.6 // b of the tip of the arrow
	headLong = 2.1
	headHalf = 0.85
)

// drawOnRock draws the strike line and the arrow down the dip.
func (st *Stage) drawOnRock(sc *scene) {
	if !sc.hasStrike() {
		return
	}
	ink, around := colour(sc.th.WaterInk, 1, 1), colour(sc.th.WaterCase, 1, 1)
	b := sc.open(st.lines)
	if sc.p.Reveal.Strike || sc.p.Reveal.Ends {
		p, q := sc.strikeLine()
		b.cased(p, q, sc.px(4), sc.px(1.5), ink, around)
	}
	if sc.p.Reveal.Arrow {
		b.line(sc.on(sc.arrowA, anchorB, 0), sc.on(sc.arrowA, arrowEnd-headLong, 0), sc.px(7.5), around)
	}
	b.pen.Done()
	if sc.p.Reveal.Arrow {
		st.drawHead(sc, around, sc.px(1.7)/sc.lens.scale)
		b = sc.open(st.lines)
		b.line(sc.on(sc.arrowA, anchorB, 0), sc.on(sc.arrowA, arrowEnd-headLong+0.2, 0), sc.px(4.5), ink)
		b.pen.Done()
		st.drawHead(sc, ink, 0)
	}
}

// drawHead paints the head of the arrow, grown by d cm.
func (st *Stage) drawHead(sc *scene, c tint, d float64) {
	b := sc.open(nil)
	tip := sc.on(sc.arrowA, arrowEnd+2.6*d, 0)
	l := sc.on(sc.arrowA-headHalf-1.5*d, arrowEnd-headLong-d, 0)
	r := sc.on(sc.arrowA+headHalf+1.5*d, arrowEnd-headLong-d, 0)
	mid := sc.on(sc.arrowA, arrowEnd-headLong/2, 0)
	ct, cl, cr := corner{at: tip, c: c}, corner{at: l, c: c}, corner{at: r, c: c}
	b.polygon(ct, cl, cr)
	b.fringe(ct, cl, mid)
	b.fringe(cl, cr, mid)
	b.fringe(cr, ct, mid)
	b.pen.Done()
}

// strikeLine are the ends of the strike line: it runs out into the air, longer
// on the far side, where its number stands.
func (sc *scene) strikeLine() (near, far orient.Vec) {
	if sc.p.Pose.Seat == sim.OnSide {
		return sc.on(rock.HalfA+3, anchorB, 0), sc.on(-rock.HalfA-4, anchorB, 0)
	}
	return sc.on(-rock.HalfA-2.2, anchorB, 0), sc.on(rock.HalfA+4, anchorB, 0)
}

// angleSize is the radius of the angle below the level: smaller beside an
// instrument on its side, which stands behind it.
func (sc *scene) angleSize() float64 {
	if sc.p.Pose.Seat == sim.OnSide {
		return 6.4
	}
	return 9.2
}

// swept is the point at the end of a radius that hangs d below the level,
// towards the dip, from where the arrow starts.
func (sc *scene) swept(d orient.Angle, r float64) orient.Vec {
	p := sc.on(sc.arrowA, anchorB, 0)
	return add(p, add(mul(r*d.Cos(), sc.H), orient.Vec{Z: -r * d.Sin()}))
}

// drawInAir draws the angle of dip: the level above the arrow and the arc
// between them. The student's own plane stands at the same place.
func (st *Stage) drawInAir(sc *scene) {
	if sc.p.Reveal.Arrow && sc.hasStrike() && sc.lens.ahead.Z > -0.98 { // from above it has no width
		st.drawAngle(sc)
	}
	if sc.p.Reveal.Yours {
		st.drawYours(sc)
	}
}

const arcSteps = 10

func (st *Stage) drawAngle(sc *scene) {
	dip := sc.p.Plane.Dip
	veil := colour(sc.th.WaterCase, 1, 0.5)
	if sc.p.Reveal.Hand {
		veil = colour(sc.th.WaterCase, 1, 0.15)
	}
	b := sc.open(nil)
	v := corner{at: sc.swept(0, 0), c: veil}
	at := func(i int) orient.Vec { return sc.swept(dip*orient.Angle(i)/arcSteps, sc.angleSize()) }
	for i := range arcSteps {
		b.polygon(v, corner{at: at(i), c: veil}, corner{at: at(i + 1), c: veil})
	}
	b.pen.Done()
	l := sc.open(st.lines)
	for k := range 2 {
		c, w := colour(sc.th.WaterCase, 1, 1), sc.px(5.5)
		if k == 1 {
			c, w = colour(sc.th.WaterInk, 1, 1), sc.px(2.5)
		}
		l.line(sc.swept(0, 0), sc.swept(0, sc.angleSize()+2), w, c)
		for i := range arcSteps {
			l.line(at(i), at(i+1), w, c)
		}
	}
	l.pen.Done()
}

// drawYours draws the strike and the dip line of the student's plane, thin and
// broken, from where the true arrow starts.
func (st *Stage) drawYours(sc *scene) {
	l := sc.open(st.lines)
	p, q, d := sc.yours()
	for k := range 2 {
		c, w := colour(sc.th.Panel, 1, 1), sc.px(4.5)
		if k == 1 {
			c, w = colour(sc.th.Ink, 1, 1), sc.px(2)
		}
		l.dashed(p, q, w, c)
		l.dashed(sc.swept(0, 0), d, w, c)
	}
	l.pen.Done()
}

// yours are the ends of the student's strike line and the end of the line down
// the dip.
func (sc *scene) yours() (p, q, down orient.Vec) {
	o := sc.swept(0, 0)
	y := sc.p.Reveal.YoursPlane
	return sub(o, mul(5, y.StrikeVec())), add(o, mul(9, y.StrikeVec())), add(o, mul(13, y.DownDip()))
}

// dashed draws a broken line.
func (b *brush) dashed(p, q orient.Vec, width float64, c tint) {
	const n = 11
	for i := range n {
		b.line(mix(p, q, float64(2*i)/(2*n-1)), mix(p, q, float64(2*i+1)/(2*n-1)), width, c)
	}
}
