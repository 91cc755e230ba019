package orient_test

import (
	"pgregory.net/rapid"

	"cuesta/orient"
)

// inclined draws a plane that is neither horizontal nor vertical.
func inclined(t *rapid.T) orient.Plane {
	s := rapid.Float64Range(0, 359.999).Draw(t, "strike")
	d := rapid.Float64Range(0.1, 89.9).Draw(t, "dip")
	return orient.PlaneOf(deg(s), deg(d))
}

// wholeDegrees draws a plane as a compass would show it, horizontal and
// vertical ones included.
func wholeDegrees(t *rapid.T) orient.Plane {
	s := rapid.IntRange(0, 359).Draw(t, "strike")
	d := rapid.IntRange(0, 90).Draw(t, "dip")
	return orient.PlaneOf(deg(float64(s)), deg(float64(d)))
}

func anyLine(t *rapid.T) orient.Line {
	return lineOf(rapid.Float64Range(0, 359.999).Draw(t, "trend"), rapid.Float64Range(0, 90).Draw(t, "plunge"))
}
