package figure

import (
	"strconv"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// The hinge plate, in cm from the axis of the hinge. Its scale is like that of
// the dial.
const (
	HingeRadius = DialRadius
	HingeBase   = DialBase
	HingeFoot   = 0.30 // of the plate below the line of 0 and 180
	HingeTip    = HingeBase
	hingeNeck   = 1.55 // of the index, where its taper begins
	hingeHalf   = 0.20
)

// HingeAngle is the place of the mark of an opening on the hinge plate, about
// the axis: x lies forward on the lid and y towards the rock, as seen from the
// right-hand side.
func HingeAngle(open orient.Angle) orient.Angle { return -open }

// HingeTicks are the 181 graduations of the hinge plate in ascending order.
func HingeTicks() []Tick {
	return graduations(181, HingeBase, [3]float64{tick1, tick5, tick10}, HingeAngle)
}

// HingeFigures are the numbers on the hinge plate, every 10°.
func HingeFigures(th *theme.Theme) []draw.Text {
	var out []draw.Text
	for d := 0; d <= 180; d += 10 {
		a := HingeAngle(orient.Angle(d) * orient.Degree)
		out = append(out, label(strconv.Itoa(d), at(draw.Point{}, figureRadius, a), figureSize, a+orient.Right, draw.Bold, th.DialInk))
	}
	return out
}

// HingePlate adds the half circle that stands on the lid, about the axis.
func HingePlate(l *draw.List, th *theme.Theme) {
	outline := hingeOutline()
	l.Fill(outline, th.Dial)
	l.Stroke(outline, draw.Stroke{Width: .05, Color: th.Bezel, Join: draw.RoundJoin})
	ticks(l, HingeTicks(), th.DialInk)
	var base draw.Path
	base.Arc(0, 0, HingeBase, -orient.Half.Radians(), 0)
	l.Stroke(base, draw.Stroke{Width: .03, Color: th.DialInk})
	for _, t := range HingeFigures(th) {
		l.Text(t)
	}
}

// hingeOutline is the half circle with its foot.
func hingeOutline() draw.Path {
	const r = HingeRadius - .025
	var p draw.Path
	p.Arc(0, 0, r, -orient.Half.Radians(), 0)
	p.LineTo(r, HingeFoot-.025)
	p.LineTo(-r, HingeFoot-.025)
	p.Close()
	return p
}

// HingeIndexOutline is the outline of the index that turns with the body,
// about the axis, its tip along x.
func HingeIndexOutline() []draw.Point {
	out := []draw.Point{{X: hingeNeck, Y: -.13}, {X: HingeTip}, {X: hingeNeck, Y: .13}, {X: 0, Y: hingeHalf}}
	const steps = 8
	for i := 1; i <= steps; i++ {
		out = append(out, at(draw.Point{}, hingeHalf, orient.Right+orient.Half*orient.Angle(i)/steps))
	}
	return out
}

// HingeIndex adds the index about the axis, its tip along x.
func HingeIndex(l *draw.List, th *theme.Theme) {
	l.Fill(shape(HingeIndexOutline()), th.DialInk)
	l.Fill(draw.Circle(0, 0, .07), th.Dial)
}

// The boxes of the hinge plate and of its index, about the axis.
var (
	HingeBox      = draw.Rect{X: -HingeRadius, Y: -HingeRadius, W: 2 * HingeRadius, H: HingeRadius + HingeFoot}
	HingeIndexBox = draw.Rect{X: -hingeHalf, Y: -hingeHalf, W: hingeHalf + HingeTip, H: 2 * hingeHalf}
)

// HingeTexture bakes the hinge plate about the axis.
func HingeTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(HingeBox, px, func(l *draw.List) { HingePlate(l, th) })
}

// HingeIndexTexture bakes the index about the axis.
func HingeIndexTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(HingeIndexBox, px, func(l *draw.List) { HingeIndex(l, th) })
}
