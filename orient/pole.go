package orient

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// level is how near to the horizontal a unit vector counts as lying in it.
const level = 1e-12

// Pole is the line at right angles to the plane: trend opposite to the dip
// direction, plunge 90° − dip. The pole of a horizontal plane is vertical and
// has no trend.
func (p Plane) Pole() Line { return Line{Trend: p.DipDirection().Opposite(), Plunge: Right - p.Dip} }

// PlaneOfPole is the plane at right angles to the line.
func PlaneOfPole(pole Line) Plane {
	return Plane{Strike: pole.Trend.Add(Right), Dip: Right - pole.Plunge}
}

// LineOf is the axis along v, whichever way v points. A horizontal axis takes
// the end with azimuth in [0, π); the zero vector gives the zero Line.
func LineOf(v Vec) Line {
	u := Unit(v)
	if u.Z > level {
		u = r3.Scale(-1, u)
	}
	flat := length(Vec{X: u.X, Y: u.Y})
	l := Line{Trend: AzimuthOf(Atan2(u.X, u.Y)), Plunge: Atan2(-u.Z, flat)}
	switch {
	case flat <= level:
		l.Trend = 0
	case math.Abs(u.Z) <= level:
		l.Plunge = 0
		if l.Trend.Angle() >= Half {
			l.Trend = l.Trend.Opposite()
		}
	}
	return l
}

// PlaneFromNormal is the plane with the normal n, which may point up or down
// and have any length; false for the zero vector. A vertical plane takes the
// strike that has n on its right.
func PlaneFromNormal(n Vec) (Plane, bool) {
	u := Unit(n)
	if length(u) == 0 || math.IsNaN(length(u)) {
		return Plane{}, false
	}
	if u.Z < -level {
		u = r3.Scale(-1, u)
	}
	flat := length(Vec{X: u.X, Y: u.Y})
	if flat <= level {
		return Plane{}, true
	}
	dd := AzimuthOf(Atan2(u.X, u.Y))
	return Plane{Strike: dd.Add(-Right), Dip: min(Right, Atan2(flat, u.Z))}, true
}
