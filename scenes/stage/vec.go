package stage

import (
	"math"

	"cuesta/orient"
)

func add(p, q orient.Vec) orient.Vec { return orient.Vec{X: p.X + q.X, Y: p.Y + q.Y, Z: p.Z + q.Z} }
func sub(p, q orient.Vec) orient.Vec { return orient.Vec{X: p.X - q.X, Y: p.Y - q.Y, Z: p.Z - q.Z} }
func mul(k float64, p orient.Vec) orient.Vec {
	return orient.Vec{X: k * p.X, Y: k * p.Y, Z: k * p.Z}
}
func dot(p, q orient.Vec) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }
func cross(p, q orient.Vec) orient.Vec {
	return orient.Vec{X: p.Y*q.Z - p.Z*q.Y, Y: p.Z*q.X - p.X*q.Z, Z: p.X*q.Y - p.Y*q.X}
}

// mix goes from p to q as k goes from 0 to 1.
func mix(p, q orient.Vec, k float64) orient.Vec { return add(mul(1-k, p), mul(k, q)) }

func lerp(a, b, k float64) float64 { return a + (b-a)*k }

// ease rises smoothly from 0 at a to 1 at b.
func ease(a, b, x float64) float64 {
	t := max(0, min(1, (x-a)/(b-a)))
	return t * t * (3 - 2*t)
}

// direction is the unit vector of an azimuth and an elevation above the level.
func direction(az orient.Azimuth, el orient.Angle) orient.Vec {
	h := az.Vec()
	return orient.Vec{X: h.X * el.Cos(), Y: h.Y * el.Cos(), Z: el.Sin()}
}

func length2(x, y float64) float64 { return math.Sqrt(x*x + y*y) }
