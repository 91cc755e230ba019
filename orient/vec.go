package orient

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Vec is a vector in the world frame: X east, Y north, Z up.
type Vec = r3.Vec

// Up is the unit vector z.
var Up = Vec{Z: 1}

// Unit returns v/|v|; the zero vector stays zero. It takes the square root of
// the sum of squares, not a hypotenuse, so that every target rounds alike.
func Unit(v Vec) Vec {
	n := length(v)
	if n == 0 {
		return v
	}
	return r3.Scale(1/n, v)
}

func length(v Vec) float64 {
	return math.Sqrt(float64(v.X*v.X) + float64(v.Y*v.Y) + float64(v.Z*v.Z))
}
