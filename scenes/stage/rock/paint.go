package rock

import (
	"image"
	"math"
)

// Palette holds the colours of the stone, each channel in [0, 1].
type Palette struct {
	Lo, Mid, Hi, Top, Cool, Stain Tone
	Flat                          bool // plain fills: laminae on the sides, nothing on top
}

// Tone is a colour that light multiplies.
type Tone struct{ R, G, B float64 }

func (t Tone) blend(u Tone, k float64) Tone {
	return Tone{t.R + (u.R-t.R)*k, t.G + (u.G-t.G)*k, t.B + (u.B-t.B)*k}
}

// Light is a direction towards the light in the frame of a face: X and Y in
// the face as it is painted (right and down), Z out of it.
type Light struct{ X, Y, Z float64 }

// relief returns how much brighter than level ground a spot is whose surface
// rises by gx and gy towards +X and +Y, softened so that no spot goes black.
func (l Light) relief(gx, gy float64) float64 {
	k := (l.Z - gx*l.X - gy*l.Y) / (l.Z * math.Sqrt(1+gx*gx+gy*gy))
	return max(0.6, min(1.3, 1+0.75*(k-1)))
}

func put(img *image.RGBA, x, y int, t Tone, k float64) {
	i := img.PixOffset(x, y)
	img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3] = level(t.R*k), level(t.G*k), level(t.B*k), 255
}

func level(v float64) uint8 { return uint8(255*max(0, min(1, v)) + 0.5) }
