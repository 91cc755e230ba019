package figure

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// RoundLevel adds the round level without its bubble and its marked ring, in
// the plan.
func RoundLevel(l *draw.List, th *theme.Theme) {
	c := RoundCentre
	l.Fill(draw.Circle(c.X, c.Y, RoundBezel), th.Bezel)
	if th.Flat {
		l.Stroke(draw.Circle(c.X, c.Y, RoundBezel), draw.Stroke{Width: .05, Color: th.PlateRim})
	} else {
		l.Stroke(draw.Circle(c.X, c.Y, RoundBezel-.015), draw.Stroke{Width: .03, Color: th.PlateLine})
	}
	vial := draw.Fill{Path: draw.Circle(c.X, c.Y, RoundVial), Color: th.Fluid}
	if !th.Flat {
		lit := draw.Point{X: c.X + .30, Y: c.Y - .30}
		vial.Color = th.FluidHi
		vial.Gradient = draw.Gradient{Kind: draw.Radial, A: lit, B: draw.Point{X: lit.X + 1.25, Y: lit.Y}, To: th.Fluid}
	}
	l.FillWith(vial)
}

// RoundMarks adds the marked ring and the four outer marks, which lie on the
// glass above the bubble, about c.
func RoundMarks(l *draw.List, th *theme.Theme, c draw.Point) {
	l.Stroke(draw.Circle(c.X, c.Y, RoundRing), draw.Stroke{Width: .06, Color: th.LevelInk})
	var p draw.Path
	for i := range 4 {
		ray(&p, c, .74, .98, orient.Angle(i)*orient.Right)
	}
	l.Stroke(p, draw.Stroke{Width: .036, Color: th.LevelInk})
}

// RoundBubbleShape adds the bubble of the round level about its centre.
func RoundBubbleShape(l *draw.List, th *theme.Theme) {
	b := draw.Fill{Path: draw.Circle(0, 0, RoundBubble), Color: th.Bubble}
	if !th.Flat {
		b.Gradient = draw.Gradient{Kind: draw.Radial, A: draw.Point{X: .06, Y: -.06}, B: draw.Point{X: .06 + RoundBubble, Y: -.06}, To: mix(th.Bubble, th.Fluid, .45)}
	}
	l.FillWith(b)
	l.Stroke(draw.Circle(0, 0, RoundBubble-.025), draw.Stroke{Width: .05, Color: th.BubbleLine})
}
