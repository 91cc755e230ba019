package orient

import "gonum.org/v1/gonum/spatial/r3"

// parallel is the sine below which two directions are taken as one: 2·10⁻⁷°.
const parallel = 1e-9

// Intersection is the line that two planes have in common; false if they are
// parallel.
func Intersection(p, q Plane) (Line, bool) {
	v := r3.Cross(p.Normal(), q.Normal())
	if length(v) < parallel {
		return Line{}, false
	}
	return LineOf(v), true
}

// PlaneThrough is the plane that holds both lines; false if they are parallel.
// Two apparent dips, written as lines, give the true plane.
func PlaneThrough(a, b Line) (Plane, bool) {
	n := r3.Cross(a.Vec(), b.Vec())
	if length(n) < parallel {
		return Plane{}, false
	}
	return PlaneFromNormal(n)
}

// AngleTo is the angle between two axes, in [0, π/2].
func (l Line) AngleTo(m Line) Angle { return acute(l.Vec(), m.Vec()) }

// AngleTo is the angle between the poles of p and q, in [0, π/2].
func (p Plane) AngleTo(q Plane) Angle { return acute(p.Normal(), q.Normal()) }

// acute is exact for small angles too, where the cosine alone is not.
func acute(a, b Vec) Angle {
	x := Atan2(length(r3.Cross(a, b)), r3.Dot(a, b))
	return min(x, Half-x)
}
