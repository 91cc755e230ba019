package figure

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// forwardUp turns the plan so that forward points up the page.
const forwardUp = -math.Pi / 2

// dialPicture is the dial in its case, forward up, with an arrow that says so.
func dialPicture(l *draw.List, th *theme.Theme, needle, ring orient.Angle) {
	const half, above = 3.82, 4.62 // of the picture, in cm from the centre
	k := l.W / (2 * half)
	l.H = k * (half + above)
	c := draw.Point{X: l.W / 2, Y: k * above}
	var body, disc, pointer draw.List
	Case(&body, th)
	l.Append(&body, draw.Turned(c, k, forwardUp).After(draw.Affine{A: 1, D: 1, E: -DialCentre.X, F: -DialCentre.Y}))
	Dial(&disc, th)
	finer(&disc)
	l.Append(&disc, draw.Turned(c, k, forwardUp+ring.Radians()))
	l.Stroke(draw.Circle(c.X, c.Y, k*(DialRadius-.02)), draw.Stroke{Width: k * .035, Color: th.DialInk})
	NeedleShadow(&pointer, th)
	l.Append(&pointer, draw.Turned(draw.Point{X: c.X + .05*k, Y: c.Y + .05*k}, k, forwardUp+needle.Radians()))
	pointer = draw.List{}
	Needle(&pointer, th, false)
	l.Append(&pointer, draw.Turned(c, k, forwardUp+needle.Radians()))
	forwardArrow(l, th, draw.Point{X: c.X, Y: c.Y - k*3.93}, k)
}

// finer thins the finest graduations: on a whole dial they stand closer than
// under a magnifier.
func finer(disc *draw.List) {
	const fine, thin = .03, .64
	for i := range disc.Lines {
		if s := &disc.Lines[i].Style; s.Width < fine {
			s.Width *= thin
		}
	}
}

// forwardArrow is a small arrow whose foot stands at p, with its word.
func forwardArrow(l *draw.List, th *theme.Theme, p draw.Point, k float64) {
	const rise, half = .58, .20
	head := []draw.Point{
		{X: p.X - k*.05, Y: p.Y}, {X: p.X - k*.05, Y: p.Y - k*.3}, {X: p.X - k*half, Y: p.Y - k*.3}, {X: p.X, Y: p.Y - k*rise},
		{X: p.X + k*half, Y: p.Y - k*.3}, {X: p.X + k*.05, Y: p.Y - k*.3}, {X: p.X + k*.05, Y: p.Y},
	}
	l.Fill(shape(head), th.Ink)
	l.Text(draw.Text{S: "forward", At: draw.Point{X: p.X + k*.34, Y: p.Y - k*.14}, Size: k * .36, Color: th.Ink})
}

// levelPicture is the round level, forward up, the bubble off by right and
// forward in radii of its ring. The bubble stops at the wall.
func levelPicture(l *draw.List, th *theme.Theme, right, forward float64) {
	const half, above = 1.27, 1.56
	k := l.W / (2 * half)
	l.H = k * (half + above)
	c := draw.Point{X: l.W / 2, Y: k * above}
	var body, bubble, marks draw.List
	RoundLevel(&body, th)
	l.Append(&body, draw.Turned(c, k, forwardUp).After(draw.Affine{A: 1, D: 1, E: -RoundCentre.X, F: -RoundCentre.Y}))
	l.Stroke(draw.Circle(c.X, c.Y, k*RoundVial), draw.Stroke{Width: k * .02, Color: th.LevelInk})
	RoundBubbleShape(&bubble, th)
	if d := math.Hypot(right, forward) * RoundRing; d > RoundVial-RoundBubble {
		f := (RoundVial - RoundBubble) / d
		right, forward = right*f, forward*f
	}
	l.Append(&bubble, draw.Turned(draw.Point{X: c.X + k*RoundRing*right, Y: c.Y - k*RoundRing*forward}, k, 0))
	RoundMarks(&marks, th, draw.Point{})
	l.Append(&marks, draw.Turned(c, k, forwardUp))
	forwardArrow(l, th, draw.Point{X: c.X, Y: c.Y - k*1.26}, k*.45)
}

// arcPicture is the inclination arm on its two scales, the body on its side so
// that the arm is level and its bubble stands between the marks.
func arcPicture(l *draw.List, th *theme.Theme, arm orient.Angle) {
	turn := OnLeft.Turn() - arm // of the plan
	box := arcBox(turn)
	k := l.W / box.W
	l.H = k * box.H
	c := draw.Point{X: -k * box.X, Y: -k * box.Y}
	var plate, moving draw.List
	Sector(&plate, th, OnLeft)
	l.Append(&plate, draw.Turned(c, k, turn.Radians()).After(draw.Affine{A: 1, D: 1, E: -ArmPivot.X, F: -ArmPivot.Y}))
	l.Stroke(sectorOutline(draw.Point{}).Mapped(draw.Turned(c, k, turn.Radians())), draw.Stroke{Width: k * .03, Color: th.DialInk, Join: draw.RoundJoin})
	Arm(&moving, th)
	l.Append(&moving, draw.Turned(c, k, math.Pi))
	bubble, marks := draw.List{}, draw.List{}
	TubeBubbleShape(&bubble, th)
	l.Append(&bubble, draw.Turned(draw.Point{X: c.X - k*TubeAt, Y: c.Y}, k, math.Pi))
	TubeMarks(&marks, th)
	l.Append(&marks, draw.Turned(c, k, math.Pi))
}

// arcBox is the box round the plate of the scales and the level arm, about the
// pivot, the plan turned by a.
func arcBox(a orient.Angle) draw.Rect {
	const edge = .12
	var f draw.Flat
	f.Add(sectorOutline(draw.Point{}), draw.Turned(draw.Point{}, 1, a.Radians()), .01)
	f.Add(shape(ArmOutline()), draw.Turned(draw.Point{}, 1, math.Pi), .01)
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range f.Points {
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	return draw.Rect{X: x0 - edge, Y: y0 - edge, W: x1 - x0 + 2*edge, H: y1 - y0 + 2*edge}
}
