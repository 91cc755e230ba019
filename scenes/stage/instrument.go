package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/sim"
)

// side of the water on which the instrument is being painted.
type wet uint8

const (
	whole wet = iota
	below
	above
)

// openCut opens a brush that keeps to one side of the water.
func (sc *scene) openCut(t *draw.Texture) brush {
	b := sc.open(t)
	switch sc.part {
	case below:
		b.clip(orient.Vec{Z: -1}, -sc.water.level)
	case above:
		b.clip(orient.Up, sc.water.level)
	case whole:
	}
	return b
}

// drawInstrument paints the plate and what moves on it.
func (st *Stage) drawInstrument(sc *scene, part wet) {
	if sc.p.Bare {
		return
	}
	sc.part = part
	if sc.tool.hinged {
		st.drawLid(sc)
	}
	body := sc.tool.body()
	body.prepare(&sc.lens)
	st.drawBody(sc, &body)
	if body.seen[5] {
		st.drawFace(sc, body.norm[5])
	}
	st.drawRim(sc, &body)
	if sc.tool.hinged {
		st.drawLidFront(sc)
	}
	sc.part = whole
}

// drawBody paints sides, ends and back. Either long side and its part of the
// ends are the light bars that stand on the rock.
func (st *Stage) drawBody(sc *scene, s *prism) {
	b := sc.openCut(nil)
	side := func(f int) tint { return colour(sc.th.PlateSide, sc.shade(s.norm[f]), 1) }
	s.face(&b, 4, colour(sc.th.PlateUnder, sc.shade(s.norm[4]), 1))
	if s.seen[4] {
		sc.backArrow(&b, colour(sc.th.Edge, sc.barLight(s.norm[4]), 1))
	}
	for _, f := range [2]int{0, 2} {
		s.face(&b, f, colour(sc.th.Edge, sc.barLight(s.norm[f]), 1))
	}
	for i, x := range [2]float64{plateLong, 0} {
		f := 1 + 2*i
		if !s.seen[f] {
			continue
		}
		s.face(&b, f, side(f))
		bar := colour(sc.th.Edge, sc.barLight(s.norm[f]), 1)
		for _, y := range [2]float64{0, plateWide - barWide} {
			b.polygon(sc.spotOn(x, y, 0, bar), sc.spotOn(x, y+barWide, 0, bar),
				sc.spotOn(x, y+barWide, plateThick, bar), sc.spotOn(x, y, plateThick, bar))
		}
	}
	sc.fringeBody(&b, s)
	b.pen.Done()
}

// backArrow marks the forward end on the back of the plate.
func (sc *scene) backArrow(b *brush, c tint) {
	const y, from, neck, tip, shaft, head = plateWide / 2, 3.2, 11.2, 13.2, 0.11, 0.75
	b.polygon(sc.spotOn(from, y-shaft, 0, c), sc.spotOn(neck, y-shaft, 0, c), sc.spotOn(neck, y+shaft, 0, c), sc.spotOn(from, y+shaft, 0, c))
	b.polygon(sc.spotOn(neck, y-head, 0, c), sc.spotOn(tip, y, 0, c), sc.spotOn(neck, y+head, 0, c))
}

// fringeBody softens the outer edges, each in the colour of its own stretch:
// the ends carry the bars in their corners.
func (sc *scene) fringeBody(b *brush, s *prism) {
	for i := range 3 * s.n {
		e := s.edge(i)
		f, ok := s.outer(e)
		if !ok {
			continue
		}
		bar := colour(sc.th.Edge, sc.faceLight(s.norm[f]), 1)
		dark := colour(sc.th.PlateSide, sc.shade(s.norm[f]), 1)
		if f == 4 {
			bar = colour(sc.th.PlateUnder, sc.shade(s.norm[f]), 1)
			dark = bar
		}
		if e.f == 0 || e.f == 2 || e.g == 0 || e.g == 2 {
			b.fringe(corner{at: e.a, c: bar}, corner{at: e.b, c: bar}, s.mid)
			continue
		}
		const k = barWide / plateWide
		p, q := mix(e.a, e.b, k), mix(e.a, e.b, 1-k)
		b.fringe(corner{at: e.a, c: bar}, corner{at: p, c: bar}, s.mid)
		b.fringe(corner{at: p, c: dark}, corner{at: q, c: dark}, s.mid)
		b.fringe(corner{at: q, c: bar}, corner{at: e.b, c: bar}, s.mid)
	}
}

func (sc *scene) spotOn(x, y, z float64, c tint) corner {
	return corner{at: sc.tool.at(x, y, z), c: c}
}

// faceLight is kinder than shade: what must be read never lies in the dark.
func (sc *scene) faceLight(n orient.Vec) float64 {
	if sc.th.Flat {
		return 1
	}
	return min(1, 0.47+0.62*max(0.66, dot(n, sc.light)))
}

// barLight is the light on the bars seen from the side: in flat themes a tone
// below their tops.
func (sc *scene) barLight(n orient.Vec) float64 {
	if sc.th.Flat {
		return 0.8
	}
	return sc.faceLight(n)
}

// drawFace paints the face in cells, since textures are mapped without regard
// to depth, and the moving parts on it.
func (st *Stage) drawFace(sc *scene, n orient.Vec) {
	k := sc.faceLight(n)
	t := st.face(sc)
	b := sc.openCut(t)
	const nx, ny = 5, 3
	for i := range nx {
		for j := range ny {
			x0, x1 := plateLong*float64(i)/nx, plateLong*float64(i+1)/nx
			y0, y1 := plateWide*float64(j)/ny, plateWide*float64(j+1)/ny
			b.polygon(st.faceCorner(sc, t, x0, y0, k), st.faceCorner(sc, t, x1, y0, k),
				st.faceCorner(sc, t, x1, y1, k), st.faceCorner(sc, t, x0, y1, k))
		}
	}
	b.pen.Done()
	st.drawMoving(sc, k)
}

func (st *Stage) faceCorner(sc *scene, t *draw.Texture, x, y, k float64) corner {
	d := 0.5 / st.kit.px // half a pixel within, where the texture is whole
	u, v := figure.UV(t, draw.Point{X: max(d, min(plateLong-d, x)), Y: max(d, min(plateWide-d, y))})
	return corner{at: sc.tool.face(x, y), u: u, v: v, c: grey(k)}
}

// drawMoving paints circle, needle, bubbles and arm as they stand.
func (st *Stage) drawMoving(sc *scene, k float64) {
	if sc.p.Pose.Seat == sim.OnBack {
		st.drawShown(sc, k)
		return
	}
	o, p := &sc.p.Observation, st.kit
	st.part(sc, p.dial, mount{figure.DialCentre, o.Dial.Ring, about(figure.DialRadius)}, k)
	if !sc.th.Flat {
		st.part(sc, p.needleShadow, mount{shifted(figure.DialCentre, 0.05), o.Dial.Needle, needleBox}, k)
	}
	st.part(sc, st.needle(sc), mount{figure.DialCentre, o.Dial.Needle, needleReach}, k)
	bubble := draw.Point{
		X: figure.RoundCentre.X + figure.RoundRing*o.Round.Forward,
		Y: figure.RoundCentre.Y + figure.RoundRing*o.Round.Right,
	}
	st.part(sc, p.roundBubble, mount{bubble, 0, about(figure.RoundBubble)}, k)
	st.part(sc, p.roundMarks, mount{figure.RoundCentre, 0, about(1)}, k)
	if !sc.th.Flat {
		st.part(sc, p.armShadow, mount{shifted(figure.ArmPivot, 0.07), o.Arc.Arm, armBox}, k)
	}
	st.part(sc, p.arm, mount{figure.ArmPivot, o.Arc.Arm, armBox}, k)
	st.part(sc, p.tubeBubble, mount{onArm(o.Arc.Arm, figure.TubeAt+figure.TubeMark*o.Tube.Off), o.Arc.Arm, tubeBubbleBox}, k)
	st.part(sc, p.tubeMarks, mount{figure.ArmPivot, o.Arc.Arm, figure.TubeBox}, k)
}

// onArm is the point of the plan x along the arm.
func onArm(a orient.Angle, x float64) draw.Point {
	return draw.Point{X: figure.ArmPivot.X + x*a.Cos(), Y: figure.ArmPivot.Y + x*a.Sin()}
}

func shifted(p draw.Point, d float64) draw.Point { return draw.Point{X: p.X + d, Y: p.Y + d} }

// drawRim draws the lit rim of the face, or in flat themes every edge.
func (st *Stage) drawRim(sc *scene, s *prism) {
	if sc.part == below {
		return
	}
	b := sc.open(st.lines)
	if sc.th.Flat {
		s.outline(&b, sc.px(2.5), colour(sc.th.Line, 1, 1))
		b.pen.Done()
		return
	}
	for i, x := range [2]float64{plateLong, 0} {
		if f := 1 + 2*i; s.seen[f] {
			c := colour(sc.th.Edge, 0.8*sc.faceLight(s.norm[f]), 1)
			for _, y := range [2]float64{barWide, plateWide - barWide} {
				b.line(sc.tool.at(x, y, 0), sc.tool.at(x, y, plateThick), 1, c)
			}
		}
	}
	for i := range 3 * s.n {
		e := s.edge(i)
		switch {
		case e.g == 5 && s.seen[5] && (e.f == 1 || e.f == 3):
			b.line(mix(e.a, e.b, barWide/plateWide), mix(e.a, e.b, 1-barWide/plateWide), sc.px(1.25), colour(sc.th.PlateRim, 1, 1))
		case s.seen[e.f] && s.seen[e.g]:
			k := (sc.faceLight(s.norm[e.f]) + sc.faceLight(s.norm[e.g])) / 2
			c := colour(sc.th.Edge, min(1, 1.06*k), 1)
			if e.f != 0 && e.f != 2 && e.g != 0 && e.g != 2 {
				c = colour(sc.th.PlateRim, 0.6, 1)
			}
			b.line(e.a, e.b, 1, c)
		}
	}
	b.pen.Done()
}
