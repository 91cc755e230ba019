package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// partsKey is what the baked parts of the instrument depend on.
type partsKey struct {
	theme   theme.Name
	px      float64
	upright figure.Upright
	muted   bool
}

// parts are the baked parts of the instrument.
type parts struct {
	key                     partsKey
	face, dial, needle      *draw.Texture
	needleShadow            *draw.Texture
	roundBubble, roundMarks *draw.Texture
	arm, armShadow          *draw.Texture
	tubeBubble, tubeMarks   *draw.Texture
}

// prepareParts bakes the parts anew when theme, size, seated edge or the
// muting of the needle have changed.
func (st *Stage) prepareParts(sc *scene) {
	key := partsKey{theme: sc.th.Name, px: partPx(sc.lens.scale), muted: sc.p.MuteNeedle}
	if sc.p.Pose.Seated == sim.RightSide {
		key.upright = figure.OnRight
	}
	if st.parts.face != nil && st.parts.key == key {
		return
	}
	th, px := sc.th, key.px
	st.parts = parts{
		key:          key,
		face:         figure.FaceTexture(th, px, key.upright),
		dial:         figure.DialTexture(th, px),
		needle:       figure.NeedleTexture(th, px, key.muted),
		needleShadow: figure.Bake(needleBox, px, func(l *draw.List) { figure.NeedleShadow(l, th) }),
		roundBubble:  figure.RoundBubbleTexture(th, px),
		roundMarks:   figure.RoundMarksTexture(th, px),
		arm:          figure.ArmTexture(th, px),
		armShadow:    figure.Bake(armBox, px, func(l *draw.List) { figure.ArmShadow(l, th) }),
		tubeBubble:   figure.TubeBubbleTexture(th, px),
		tubeMarks:    figure.TubeMarksTexture(th, px),
	}
}

// partPx is the resolution of the parts at a scale: in few steps, so that
// zooming does not bake them over and over.
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
	d := 1 / st.parts.key.px
	x0, y0, x1, y1 := m.box.X-d, m.box.Y-d, m.box.X+m.box.W+d, m.box.Y+m.box.H+d
	b.polygon(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1))
	b.pen.Done()
}

func about(r float64) draw.Rect { return draw.Rect{X: -r, Y: -r, W: 2 * r, H: 2 * r} }
