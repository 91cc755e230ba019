package figure

import (
	"math"

	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// Bake is a texture of what paint adds, over the part box of its frame at px
// pixels a centimetre. Two transparent pixels stand about the box, so that the
// texture has no hard border.
func Bake(box draw.Rect, px float64, paint func(*draw.List)) *draw.Texture {
	const pad = 2
	t := &draw.Texture{
		W: int(math.Ceil(box.W*px)) + 2*pad, H: int(math.Ceil(box.H*px)) + 2*pad, Version: 1,
		Under: draw.Affine{A: px, D: px, E: pad - box.X*px, F: pad - box.Y*px},
		List:  &draw.List{},
	}
	t.List.W, t.List.H = box.W, box.H
	paint(t.List)
	return t
}

// UV is the place of the point p of a part in its texture.
func UV(t *draw.Texture, p draw.Point) (u, v float64) {
	q := t.Map().At(p)
	return q.X, q.Y
}

func about(r float64) draw.Rect { return draw.Rect{X: -r, Y: -r, W: 2 * r, H: 2 * r} }

// FaceTexture bakes all that stays where it is, in the plan: plate, case,
// round level without its bubble, inclination arc.
func FaceTexture(th *theme.Theme, px float64, u Upright) *draw.Texture {
	return Bake(draw.Rect{W: Length, H: Width}, px, func(l *draw.List) { Face(l, th, u) })
}

// DialTexture bakes the graduated circle about its centre, 000 forward.
func DialTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(about(DialRadius), px, func(l *draw.List) { Dial(l, th) })
}

// NeedleTexture bakes the needle about its pivot, the north end along x.
func NeedleTexture(th *theme.Theme, px float64, muted bool) *draw.Texture {
	return Bake(needleBox, px, func(l *draw.List) { Needle(l, th, muted) })
}

var needleBox = draw.Rect{X: -SouthAt - SouthRadius, Y: -needleHalf, W: SouthAt + SouthRadius + NeedleTip, H: 2 * needleHalf}

// ArmTexture bakes the arm and its tube about the pivot, without bubble and
// marks.
func ArmTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(armBox, px, func(l *draw.List) { Arm(l, th) })
}

var armBox = draw.Rect{X: ArmTail - .02, Y: -ArmHalf - .02, W: ArmTip - ArmTail + .04, H: 2*ArmHalf + .04}

// TubeMarksTexture bakes the marks of the tube in the frame of the arm.
func TubeMarksTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(TubeBox, px, func(l *draw.List) { TubeMarks(l, th) })
}

// TubeBubbleTexture bakes the bubble of the tube about its centre.
func TubeBubbleTexture(th *theme.Theme, px float64) *draw.Texture {
	box := draw.Rect{X: -TubeBubble, Y: -tubeLumen, W: 2 * TubeBubble, H: 2 * tubeLumen}
	return Bake(box, px, func(l *draw.List) { TubeBubbleShape(l, th) })
}

// RoundBubbleTexture bakes the bubble of the round level about its centre.
func RoundBubbleTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(about(RoundBubble), px, func(l *draw.List) { RoundBubbleShape(l, th) })
}

// RoundMarksTexture bakes the marks of the round level about its centre.
func RoundMarksTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(about(1), px, func(l *draw.List) { RoundMarks(l, th, draw.Point{}) })
}
