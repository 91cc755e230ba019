package theme

import (
	"math"

	"cuesta/scenes/draw"
)

// Luminance is the relative luminance of an opaque colour, 0 for black to 1
// for white (WCAG 2.2, "relative luminance").
func Luminance(c draw.Color) float64 {
	r, g, b := linear(c)
	return .2126*r + .7152*g + .0722*b
}

// Ratio is the ratio of the luminances of two opaque colours, 1 to 21,
// whichever is the lighter (WCAG 2.2, "contrast ratio").
func Ratio(a, b draw.Color) float64 {
	p, q := Luminance(a), Luminance(b)
	return (max(p, q) + .05) / (min(p, q) + .05)
}

// linear is the light that a colour's three numbers stand for, each 0 to 1.
func linear(c draw.Color) (r, g, b float64) {
	return toLight(c.R), toLight(c.G), toLight(c.B)
}

func toLight(v uint8) float64 {
	c := float64(v) / 255
	if c <= .04045 {
		return c / 12.92
	}
	return math.Pow((c+.055)/1.055, 2.4)
}

func fromLight(x float64) uint8 {
	x = min(1, max(0, x))
	if x <= .0031308 {
		return uint8(math.Round(255 * 12.92 * x))
	}
	return uint8(math.Round(255 * (1.055*math.Pow(x, 1/2.4) - .055)))
}
