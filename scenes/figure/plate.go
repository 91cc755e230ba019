package figure

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// Plate adds the body with its two bars, arrows and groove, and the ring of the
// case about the dial with the index that stands forward, in the plan.
func Plate(l *draw.List, th *theme.Theme) {
	Blank(l, th)
	Case(l, th)
}

// Blank adds the body with its two bars, arrows and groove, in the plan.
func Blank(l *draw.List, th *theme.Theme) {
	body := draw.Fill{Path: draw.Box(draw.Rect{W: Length, H: Width}), Color: th.Plate}
	if !th.Flat {
		body.Color = mix(th.Plate, th.PlateRim, .10)
		body.Gradient = draw.Gradient{Kind: draw.Linear, A: draw.Point{X: 2}, B: draw.Point{X: 9, Y: Width}, To: th.Plate}
	}
	l.FillWith(body)
	groove := draw.Rect{X: Rim, Y: Bar + Rim, W: Length - 2*Rim, H: Width - 2*Bar - 2*Rim}
	l.Stroke(draw.Box(groove), draw.Stroke{Width: .045, Color: th.PlateLine})
	for _, y := range []float64{0, Width - Bar} {
		l.Fill(draw.Box(draw.Rect{Y: y, W: Length, H: Bar}), th.Edge)
		l.Fill(shape(Arrow(y+Bar/2)), th.EdgeInk)
	}
	if th.Flat {
		const w = .06
		l.Stroke(draw.Box(draw.Rect{X: w / 2, Y: w / 2, W: Length - w, H: Width - w}), draw.Stroke{Width: w, Color: th.EdgeInk})
	}
}

// Arrow is the outline of the forward arrow about the line at y.
func Arrow(y float64) []draw.Point {
	neck := ArrowTo - arrowHead
	return []draw.Point{
		{X: ArrowFrom, Y: y - arrowShaft}, {X: neck, Y: y - arrowShaft}, {X: neck - .14, Y: y - ArrowHalf},
		{X: ArrowTo, Y: y}, {X: neck - .14, Y: y + ArrowHalf}, {X: neck, Y: y + arrowShaft}, {X: ArrowFrom, Y: y + arrowShaft},
	}
}

// Case adds the ring of the case and its index in the plan. The index is fixed
// to the body: it shows on the circle the declination that is set.
func Case(l *draw.List, th *theme.Theme) {
	c := DialCentre
	l.Fill(draw.Circle(c.X, c.Y, DialBezel), th.Bezel)
	if th.Flat {
		l.Stroke(draw.Circle(c.X, c.Y, DialBezel), draw.Stroke{Width: .05, Color: th.PlateRim})
	} else {
		l.Stroke(draw.Circle(c.X, c.Y, DialBezel-.015), draw.Stroke{Width: .03, Color: th.PlateLine})
	}
	index := shape(shifted(IndexMark(), c))
	l.Fill(index, th.Edge)
	l.Stroke(index, draw.Stroke{Width: .03, Color: th.Bezel, Join: draw.RoundJoin})
}

// IndexMark is the outline of the index on the case, about the centre of the
// dial, its tip towards it.
func IndexMark() []draw.Point {
	return []draw.Point{
		{X: indexTo}, {X: indexTo + .2, Y: indexHalf}, {X: indexFrom, Y: indexHalf},
		{X: indexFrom, Y: -indexHalf}, {X: indexTo + .2, Y: -indexHalf},
	}
}

// Face adds every part of the instrument that stays where it is, in the plan.
// The figures of the arc stand upright when the body is on its side on that
// edge.
func Face(l *draw.List, th *theme.Theme, seated Upright) {
	Plate(l, th)
	Sector(l, th, seated)
	RoundLevel(l, th)
	RoundMarks(l, th, RoundCentre)
}

// Upright says on which long edge the body stands when the figures of the arc
// are upright and the arm is level.
type Upright uint8

// The two ways up.
const (
	OnLeft  Upright = iota // the arm then points to the viewer's left
	OnRight                // to the viewer's right
)

// Turn is the rotation of the figures against the radius, and of the arm on the
// screen when it is level.
func (u Upright) Turn() orient.Angle {
	if u == OnRight {
		return 0
	}
	return orient.Half
}
