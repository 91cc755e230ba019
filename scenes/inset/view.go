package inset

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
)

// view places a part on the screen: the point focus of its frame stands at
// centre, k pixels a centimetre, the frame turned clockwise by turn.
type view struct {
	centre draw.Point
	focus  draw.Point
	k      float64
	turn   orient.Angle
}

// part is the view of a part that stands in the frame of v at origin, turned
// by a.
func (v view) part(origin draw.Point, a orient.Angle) view {
	d := draw.Point{X: v.focus.X - origin.X, Y: v.focus.Y - origin.Y}
	return view{v.centre, turned(d, -a), v.k, v.turn + a}
}

// from maps a point of the screen to the frame.
func (v view) from(p draw.Point) draw.Point {
	q := turned(draw.Point{X: (p.X - v.centre.X) / v.k, Y: (p.Y - v.centre.Y) / v.k}, -v.turn)
	return draw.Point{X: v.focus.X + q.X, Y: v.focus.Y + q.Y}
}

// moved is the view shifted on the screen by d, in cm.
func (v view) moved(d draw.Point) view {
	v.centre.X += v.k * d.X
	v.centre.Y += v.k * d.Y
	return v
}

func turned(p draw.Point, a orient.Angle) draw.Point {
	s, c := math.Sincos(a.Radians())
	return draw.Point{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y}
}
