package figure

import (
	"math"
	"strconv"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// PercentAngle is the place of the mark of p percent on the inclination arc,
// from forward towards the right: atan(p/100).
func PercentAngle(p float64) orient.Angle { return orient.Atan2(p, 100) }

// DegreeTicks are the 91 graduations of the degree scale in ascending order,
// about the pivot.
func DegreeTicks() []Tick {
	return graduations(91, DegreeBase, [3]float64{degreeTick1, degreeTick5, degreeTick10},
		func(a orient.Angle) orient.Angle { return a })
}

// percentFigures are the numbers on the percent scale.
var percentFigures = []int{0, 20, 40, 60, 80, 100, 150, 200, 300, 500}

// PercentMarks are the grades that are marked on the percent scale.
func PercentMarks() []int {
	var m []int
	for p := 0; p < 100; p += 5 {
		m = append(m, p)
	}
	for p := 100; p < 200; p += 10 {
		m = append(m, p)
	}
	return append(m, 200, 250, 300, 400, 500, 1000)
}

// PercentTicks are the graduations of the percent scale, one for each of
// PercentMarks, inward from its base.
func PercentTicks() []Tick {
	var t []Tick
	for _, p := range PercentMarks() {
		n := percentTick
		if figured(p) {
			n = percentLong
		}
		t = append(t, Tick{PercentAngle(float64(p)), PercentBase, PercentBase - n, false})
	}
	return t
}

func figured(p int) bool {
	for _, f := range percentFigures {
		if f == p {
			return true
		}
	}
	return false
}

// ArcFigures are the numbers of both scales and the signs %, about the pivot.
func ArcFigures(th *theme.Theme, u Upright) []draw.Text {
	var out []draw.Text
	put := func(s string, r float64, a orient.Angle, size float64, f draw.Font, c draw.Color) {
		out = append(out, label(s, at(draw.Point{}, r, a), size, a+u.Turn(), f, c))
	}
	for d := 0; d <= 90; d += 10 {
		put(strconv.Itoa(d), degreeFigures, orient.Angle(d)*orient.Degree, degreeSize, draw.Bold, th.DialInk)
	}
	for _, p := range percentFigures {
		put(strconv.Itoa(p), percentFigure, PercentAngle(float64(p)), percentSize, draw.Regular, th.DialInk2)
	}
	for _, d := range []float64{5.7, 50.6, 84.5} {
		put("%", percentFigure, orient.Angle(d)*orient.Degree, percentSize*1.15, draw.Bold, th.DialInk2)
	}
	return out
}

// Sector adds the plate of the inclination arc with its two scales, in the plan.
func Sector(l *draw.List, th *theme.Theme, u Upright) {
	c := ArmPivot
	l.Fill(sectorOutline(c), th.Dial)
	degrees, percent := DegreeTicks(), PercentTicks()
	ticksAt(l, c, degrees, th.DialInk)
	ticksAt(l, c, percent, th.DialInk)
	var base draw.Path
	base.Arc(c.X, c.Y, DegreeBase, 0, math.Pi/2)
	l.Stroke(base, draw.Stroke{Width: .03, Color: th.DialInk})
	var inner draw.Path
	inner.Arc(c.X, c.Y, PercentBase, 0, math.Pi/2)
	l.Stroke(inner, draw.Stroke{Width: .024, Color: th.DialInk})
	for _, t := range ArcFigures(th, u) {
		t.At = draw.Point{X: t.At.X + c.X, Y: t.At.Y + c.Y}
		l.Text(t)
	}
}

// sectorOutline is the plate that carries the scales. Its straight ends run
// beside the lines of 0 and 90, at the same distance along all their length.
func sectorOutline(c draw.Point) draw.Path {
	var p draw.Path
	o, i := math.Asin(arcMargin/ArcOuter), math.Asin(arcMargin/ArcInner)
	p.Arc(c.X, c.Y, ArcOuter, -o, math.Pi/2+o)
	p.Arc(c.X, c.Y, ArcInner, math.Pi/2+i, -i)
	p.Close()
	return p
}
