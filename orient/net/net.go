// Package net draws lines and planes on the lower hemisphere: the equal-area
// net, on which densities can be compared, and the equal-angle net, on which
// angles are true. Formulas after J. P. Snyder 1987, Map Projections: A Working
// Manual, USGS Professional Paper 1395, chapters 21 and 24.
package net

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"cuesta/orient"
)

// Kind is the projection.
type Kind uint8

// The projections.
const (
	EqualArea  Kind = iota // Lambert azimuthal
	EqualAngle             // stereographic
)

// Point is a place on a net whose primitive, the circle of horizontal lines,
// has the radius 1: X to the east, Y to the north.
type Point struct{ X, Y float64 }

// Net is a projection of directions. Down is the direction in its middle, East
// and North those at which X and Y grow; all are unit vectors at right angles
// to one another. Make the usual one with Lower.
type Net struct {
	Kind              Kind
	Down, East, North orient.Vec
}

// Lower is the net of the lower hemisphere, seen from above, north up.
func Lower(k Kind) Net {
	return Net{Kind: k, Down: orient.Vec{Z: -1}, East: orient.Vec{X: 1}, North: orient.Vec{Y: 1}}
}

// Project is the place of the direction v, a unit vector:
//
//	equal area   ρ = √(1/(1+cos c))·sin c
//	equal angle  ρ = 1/(1+cos c)·sin c
//
// with c its angle from Down. Directions outside the hemisphere fall outside
// the primitive; the one opposite to Down has no place and gives infinities
// or no number.
func (n Net) Project(v orient.Vec) Point {
	k := 1 / (1 + r3.Dot(v, n.Down))
	if n.Kind == EqualArea {
		k = math.Sqrt(k)
	}
	return Point{k * r3.Dot(v, n.East), k * r3.Dot(v, n.North)}
}

// Line is the place of a line, inside the primitive or on it.
func (n Net) Line(l orient.Line) Point { return n.Project(l.Vec()) }

// Pole is the place of the pole of a plane. The pole of a horizontal plane
// stands in the middle.
func (n Net) Pole(p orient.Plane) Point { return n.Line(p.Pole()) }

// GreatCircle is the trace of a plane in steps+1 points, from the strike end
// over the line of dip to the other end. It panics unless steps is positive.
func (n Net) GreatCircle(p orient.Plane, steps int) []Point {
	if steps < 1 {
		panic("net: GreatCircle needs a step at least")
	}
	out := make([]Point, steps+1)
	s, d := p.StrikeVec(), p.DownDip()
	for i := range out {
		a := orient.Half * orient.Angle(i) / orient.Angle(steps)
		out[i] = n.Project(r3.Add(r3.Scale(a.Cos(), s), r3.Scale(a.Sin(), d)))
	}
	return out
}

// SmallCircle is the circle of all directions at the angle half from the line,
// in steps+1 points, the last equal to the first. Parts above the horizon are
// given by their opposites, so a circle may leap across the net.
func (n Net) SmallCircle(axis orient.Line, half orient.Angle, steps int) []Point {
	if steps < 1 {
		panic("net: SmallCircle needs a step at least")
	}
	out := make([]Point, steps+1)
	a := axis.Vec()
	side := axis.Trend.Add(orient.Right).Vec()
	up := r3.Cross(side, a)
	for i := range out {
		t := orient.Full * orient.Angle(i) / orient.Angle(steps)
		rim := r3.Add(r3.Scale(t.Cos(), side), r3.Scale(t.Sin(), up))
		v := r3.Add(r3.Scale(half.Cos(), a), r3.Scale(half.Sin(), rim))
		if r3.Dot(v, n.Down) < 0 {
			v = r3.Scale(-1, v)
		}
		out[i] = n.Project(v)
	}
	return out
}

// Direction is the direction that stands at q, the inverse of Project; false
// where no direction does.
func (n Net) Direction(q Point) (orient.Vec, bool) {
	rr := q.X*q.X + q.Y*q.Y
	var cos, k float64 // k = sin c / ρ
	switch n.Kind {
	case EqualArea:
		if rr > 2 {
			return orient.Vec{}, false
		}
		cos, k = 1-rr, math.Sqrt(2-rr)
	case EqualAngle:
		cos, k = (1-rr)/(1+rr), 2/(1+rr)
	}
	flat := r3.Add(r3.Scale(k*q.X, n.East), r3.Scale(k*q.Y, n.North))
	return r3.Add(r3.Scale(cos, n.Down), flat), true
}

// LineAt is the line that stands at q; false outside the primitive.
func (n Net) LineAt(q Point) (orient.Line, bool) {
	if !(q.X*q.X+q.Y*q.Y <= 1) {
		return orient.Line{}, false
	}
	v, ok := n.Direction(q)
	return orient.LineOf(v), ok
}
