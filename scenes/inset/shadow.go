package inset

import (
	"image"
	"math"

	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// The soft shadow under a magnifier, in units of length.
const (
	shadowBlur  = 5.0 // standard deviation
	shadowDown  = 3.0
	shadowAlpha = 0.28
)

// shadow adds the shadow of a magnifier of radius r. A flat theme has none.
func (s *Set) shadow(l *draw.List, th *theme.Theme, c draw.Point, r float64) {
	if th.Flat {
		return
	}
	k := key{what: shadowPiece, theme: th.Name, px: r, kind: uint8(min(s.unit()*8, 255))}
	t := s.find(k)
	if t == nil {
		t = s.keep(k, shadowTexture(th.Shadow, r, shadowBlur*s.unit()))
	}
	half := float64(t.W) // at half the scale of the screen
	l.Sprite(t, c.X-half, c.Y-half+shadowDown*s.unit(), 2, 1)
}

func (s *Set) unit() float64 { return max(s.Unit, 1) }

// shadowTexture is a blurred disc at half the scale of the screen.
func shadowTexture(c draw.Color, r, sigma float64) *draw.Texture {
	n := int(math.Ceil((r + 3*sigma) / 2))
	img := image.NewRGBA(image.Rect(0, 0, 2*n, 2*n))
	for y := range 2 * n {
		for x := range 2 * n {
			d := 2 * math.Hypot(float64(x-n)+.5, float64(y-n)+.5)
			a := shadowAlpha / 2 * math.Erfc((d-r)/(sigma*math.Sqrt2))
			i := img.PixOffset(x, y)
			for j, v := range [...]uint8{c.R, c.G, c.B, 255} {
				img.Pix[i+j] = uint8(math.Round(a * float64(v)))
			}
		}
	}
	return &draw.Texture{W: 2 * n, H: 2 * n, Version: 1, Pixels: img}
}
