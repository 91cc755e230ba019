package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// kit is the baked parts of the instrument for one theme at one resolution.
// Face and needle come in two kinds, which are baked when first asked for.
type kit struct {
	theme                   *theme.Theme
	px                      float64
	faces                   [2]*draw.Texture // by figure.Upright
	needles                 [2]*draw.Texture // plain and muted
	dial, needleShadow      *draw.Texture
	roundBubble, roundMarks *draw.Texture
	arm, armShadow          *draw.Texture
	tubeBubble, tubeMarks   *draw.Texture

	// Of the lid and of the sensor, baked when first asked for.
	hinge, hingeIndex *draw.Texture
	sensor, display   *draw.Texture
	states            [2]*draw.Texture // not calibrated and calibrated
	digits            [10]*draw.Texture
}

// prepareKit picks the parts for the whole bench or, once the eye draws near,
// for the close view, and bakes them anew when theme or size have changed.
// Orbiting changes neither.
func (st *Stage) prepareKit(sc *scene) {
	k := min(sc.p.Rect.W/47, sc.p.Rect.H/41)
	st.kit = &st.kits[0]
	if sc.p.Camera.Close > 0 {
		st.kit, k = &st.kits[1], 2.7*k
	}
	if z := sc.p.Zoom.K; z > 1 {
		st.kit, k = &st.kits[1], max(k, z*k)
	}
	if px := partPx(k); st.kit.theme != sc.th || st.kit.px != px {
		*st.kit = bakeKit(sc.th, px)
	}
}

func bakeKit(th *theme.Theme, px float64) kit {
	return kit{
		theme:        th,
		px:           px,
		dial:         figure.DialTexture(th, px),
		needleShadow: figure.Bake(needleBox, px, func(l *draw.List) { figure.NeedleShadow(l, th) }),
		roundBubble:  figure.RoundBubbleTexture(th, px),
		roundMarks:   figure.RoundMarksTexture(th, px),
		arm:          figure.ArmTexture(th, px),
		armShadow:    figure.Bake(armBox, px, func(l *draw.List) { figure.ArmShadow(l, th) }),
		tubeBubble:   figure.TubeBubbleTexture(th, px),
		tubeMarks:    figure.TubeMarksTexture(th, px),
	}
}

// face is the face with the figures of the arc upright on the seated edge, or
// that of the sensor.
func (st *Stage) face(sc *scene) *draw.Texture {
	if sc.p.Pose.Seat == sim.OnBack {
		return st.kit.sensorFace()
	}
	u := figure.OnLeft
	if sc.p.Pose.Seated == sim.RightSide {
		u = figure.OnRight
	}
	t := &st.kit.faces[u]
	if *t == nil {
		*t = figure.FaceTexture(sc.th, st.kit.px, u)
	}
	return *t
}

func (st *Stage) needle(sc *scene) *draw.Texture {
	i := 0
	if sc.p.MuteNeedle {
		i = 1
	}
	t := &st.kit.needles[i]
	if *t == nil {
		*t = figure.NeedleTexture(sc.th, st.kit.px, sc.p.MuteNeedle)
	}
	return *t
}

// partPx is the resolution of the parts at a scale, in few steps.
func partPx(k float64) float64 {
	for _, px := range [...]float64{8, 12, 17, 24, 34, 48, 66} {
		if px >= 0.95*k {
			return px
		}
	}
	return 90
}

var (
	needleBox     = draw.Rect{X: -2.4, Y: -0.4, W: 5.2, H: 0.8}
	needleReach   = needleBox
	tubeBubbleBox = draw.Rect{X: -figure.TubeBubble, Y: -0.19, W: 2 * figure.TubeBubble, H: 0.38}
	armBox        = draw.Rect{X: figure.ArmTail, Y: -figure.ArmHalf, W: figure.ArmTip - figure.ArmTail, H: 2 * figure.ArmHalf}
)

// mount is where a part sits on the face: its origin in the plan, the turn of
// its x axis from forward to the right, and its box in its own frame.
type mount struct {
	at  draw.Point
	by  orient.Angle
	box draw.Rect
}

// part paints a part on the face with one quad of its texture.
func (st *Stage) part(sc *scene, t *draw.Texture, m mount, k float64) {
	b := sc.openCut(t)
	s, c := m.by.Sin(), m.by.Cos()
	at := func(x, y float64) corner {
		u, v := figure.UV(t, draw.Point{X: x, Y: y})
		return corner{at: sc.tool.face(m.at.X+c*x-s*y, m.at.Y+s*x+c*y), u: u, v: v, c: grey(k)}
	}
	// One pixel beyond the box, where the texture is clear: a soft border.
	d := 1 / st.kit.px
	x0, y0, x1, y1 := m.box.X-d, m.box.Y-d, m.box.X+m.box.W+d, m.box.Y+m.box.H+d
	b.polygon(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1))
	b.pen.Done()
}

func about(r float64) draw.Rect { return draw.Rect{X: -r, Y: -r, W: 2 * r, H: 2 * r} }

// baked returns a part, and bakes it when it is first asked for.
func baked(t **draw.Texture, bake func() *draw.Texture) *draw.Texture {
	if *t == nil {
		*t = bake()
	}
	return *t
}

func (k *kit) hingePlate() *draw.Texture {
	return baked(&k.hinge, func() *draw.Texture { return figure.HingeTexture(k.theme, k.px) })
}

func (k *kit) hingePointer() *draw.Texture {
	return baked(&k.hingeIndex, func() *draw.Texture { return figure.HingeIndexTexture(k.theme, k.px) })
}

func (k *kit) sensorFace() *draw.Texture {
	return baked(&k.sensor, func() *draw.Texture { return figure.SensorFaceTexture(k.theme, k.px) })
}

func (k *kit) displayPart() *draw.Texture {
	return baked(&k.display, func() *draw.Texture { return figure.DisplayTexture(k.theme, k.px) })
}

func (k *kit) state(calibrated bool) *draw.Texture {
	i := 0
	if calibrated {
		i = 1
	}
	return baked(&k.states[i], func() *draw.Texture { return figure.DisplayStateTexture(k.theme, k.px, calibrated) })
}

func (k *kit) digit(d uint8) *draw.Texture {
	return baked(&k.digits[d], func() *draw.Texture { return figure.DigitTexture(k.theme, k.px, d) })
}
