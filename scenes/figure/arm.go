package figure

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// ArmOutline is the outline of the solid part of the arm about its pivot, the
// index along x.
func ArmOutline() []draw.Point {
	out := []draw.Point{
		{X: ArmBody, Y: -ArmHalf}, {X: ArmNeck, Y: -neckHalf}, {X: ArmNeck, Y: neckHalf}, {X: ArmBody, Y: ArmHalf},
	}
	const steps = 12
	for i := range steps + 1 {
		a := orient.Right + orient.Half*orient.Angle(i)/steps
		out = append(out, at(draw.Point{X: ArmTail + ArmHalf}, ArmHalf, a))
	}
	return out
}

// ClearEnd is the outline of the clear end of the arm, through which the
// percent figures are seen.
func ClearEnd() []draw.Point {
	return []draw.Point{
		{X: ArmNeck, Y: -neckHalf}, {X: PercentBase - percentLong, Y: -.16}, {X: ArmTip, Y: -.02},
		{X: ArmTip, Y: .02}, {X: PercentBase - percentLong, Y: .16}, {X: ArmNeck, Y: neckHalf},
	}
}

// Pointer is the outline of the pointer on the clear end: it crosses the
// percent ticks and its tip touches the degree ticks.
func Pointer() []draw.Point {
	x := PercentBase - percentLong
	return []draw.Point{{X: x, Y: -.055}, {X: PercentBase, Y: -.05}, {X: ArmTip}, {X: PercentBase, Y: .05}, {X: x, Y: .055}}
}

// TubeBox is the glass of the tube level, about the pivot.
var TubeBox = draw.Rect{X: TubeAt - TubeHalf, Y: -TubeRadius, W: 2 * TubeHalf, H: 2 * TubeRadius}

// Arm adds the arm with its tube about the pivot, without bubble and marks.
func Arm(l *draw.List, th *theme.Theme) {
	clear := shape(ClearEnd())
	if !th.Flat {
		l.Fill(clear, faded(th.Arm, .18))
	}
	l.Stroke(clear, draw.Stroke{Width: .018, Color: faded(th.ArmLine, .55), Join: draw.RoundJoin})
	l.Fill(shape(Pointer()), th.ArmLine)
	body := shape(ArmOutline())
	l.Fill(body, th.Arm)
	l.Stroke(body, draw.Stroke{Width: .04, Color: th.ArmLine})
	tube := draw.Fill{Path: draw.RoundBox(TubeBox, TubeRadius), Color: th.Fluid}
	if !th.Flat {
		tube.Color = th.FluidHi
		tube.Gradient = draw.Gradient{Kind: draw.Linear, A: draw.Point{Y: -TubeRadius}, B: draw.Point{Y: TubeRadius}, To: th.Fluid}
	}
	l.FillWith(tube)
	l.Stroke(draw.RoundBox(TubeBox, TubeRadius), draw.Stroke{Width: .03, Color: th.ArmLine})
	l.Fill(draw.Circle(0, 0, .26), th.DialInk)
	l.Fill(draw.Box(draw.Rect{X: -.17, Y: -.03, W: .34, H: .06}), th.Arm)
}

// ArmShadow adds what the arm throws on the face, without its offset. A flat
// theme throws none.
func ArmShadow(l *draw.List, th *theme.Theme) {
	if !th.Flat {
		l.Fill(shape(ArmOutline()), faded(th.RockShadow, .16))
	}
}

// TubeMarks adds the marks of the tube, which lie on the glass above the
// bubble, about the pivot.
func TubeMarks(l *draw.List, th *theme.Theme) {
	var main, outer draw.Path
	for _, s := range []float64{-1, 1} {
		main.MoveTo(TubeAt+s*TubeMark, -TubeRadius)
		main.LineTo(TubeAt+s*TubeMark, TubeRadius)
		outer.MoveTo(TubeAt+s*.90, -.15)
		outer.LineTo(TubeAt+s*.90, .15)
	}
	l.Stroke(main, draw.Stroke{Width: .06, Color: th.LevelInk})
	l.Stroke(outer, draw.Stroke{Width: .03, Color: th.LevelInk})
}

// TubeBubbleShape adds the bubble of the tube level about its centre.
func TubeBubbleShape(l *draw.List, th *theme.Theme) {
	box := draw.Rect{X: -TubeBubble, Y: -tubeLumen, W: 2 * TubeBubble, H: 2 * tubeLumen}
	l.Fill(draw.RoundBox(box, tubeLumen), th.Bubble)
	in := draw.Rect{X: box.X + .022, Y: box.Y + .022, W: box.W - .044, H: box.H - .044}
	l.Stroke(draw.RoundBox(in, tubeLumen-.022), draw.Stroke{Width: .045, Color: th.BubbleLine})
}
