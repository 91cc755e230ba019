package figure

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// NorthEnd is the outline of the north end, a broad barbed head on a shaft,
// about the pivot.
func NorthEnd() []draw.Point {
	return []draw.Point{
		{X: 0, Y: -shaftHalf - .02}, {X: needleNotch, Y: -shaftHalf}, {X: needleBarb, Y: -needleHalf}, {X: NeedleTip},
		{X: needleBarb, Y: needleHalf}, {X: needleNotch, Y: shaftHalf}, {X: 0, Y: shaftHalf + .02},
	}
}

// SouthEnd is the outline of the rod of the south end, about the pivot. It
// carries an open ring of radius SouthRadius at (−SouthAt, 0).
func SouthEnd() []draw.Point {
	x := -SouthAt + (SouthRadius+southBore)/2
	return []draw.Point{{X: 0, Y: -shaftHalf - .02}, {X: x, Y: -.05}, {X: x, Y: .05}, {X: 0, Y: shaftHalf + .02}}
}

// NeedleColors are the colours of the two ends. A muted needle, one that is not
// being read, is all ink and keeps its shape.
func NeedleColors(th *theme.Theme, muted bool) (north, south draw.Color) {
	if muted {
		return th.DialInk, th.DialInk2
	}
	return th.North, th.South
}

// Needle adds the needle about its pivot, the north end along x.
func Needle(l *draw.List, th *theme.Theme, muted bool) {
	north, south := NeedleColors(th, muted)
	l.Fill(shape(SouthEnd()), south)
	l.Stroke(draw.Circle(-SouthAt, 0, (SouthRadius+southBore)/2), draw.Stroke{Width: SouthRadius - southBore, Color: south})
	l.Fill(shape(NorthEnd()), north)
	l.Fill(draw.Circle(0, 0, NeedleHub), th.DialInk)
	l.Fill(draw.Circle(0, 0, .07), th.Dial)
}

// NeedleShadow adds what the needle throws on the floor of the dial, without
// its offset. A flat theme throws none.
func NeedleShadow(l *draw.List, th *theme.Theme) {
	if th.Flat {
		return
	}
	c := faded(th.RockShadow, .15)
	p := shape(NorthEnd())
	add := func(q draw.Path) { p.Kinds, p.Points = append(p.Kinds, q.Kinds...), append(p.Points, q.Points...) }
	add(shape(SouthEnd()))
	l.Fill(p, c)
	l.Stroke(draw.Circle(-SouthAt, 0, (SouthRadius+southBore)/2), draw.Stroke{Width: SouthRadius - southBore, Color: c})
}
