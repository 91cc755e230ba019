package raster

import (
	"image"
	"math"

	"cuesta/scenes/draw"
)

// ink puts colour into pixels where an area says so.
type ink struct {
	dst    *image.RGBA
	at     image.Point // of the area in the image
	col    [4]uint32   // premultiplied, 16 bits
	ramp   [256][4]uint32
	kind   draw.GradientKind
	ax, ay float64 // linear: t = ax·x + ay·y + off; radial: of the centre
	off    float64
	inv    draw.Affine // radial: pixels to units of the radius about the centre
	plain  func(y, x0, x1 int, cover uint32)
	blend  func(y, x0, x1 int, cover uint32)
}

func (k *ink) set(c canvas, at image.Point, col draw.Color, g draw.Gradient) {
	if k.plain == nil {
		k.plain, k.blend = k.plainSpan, k.blendSpan
	}
	k.dst, k.at, k.col, k.kind = c.dst, at, premultiplied(col), g.Kind
	if g.Kind == draw.NoGradient {
		return
	}
	end := premultiplied(g.To)
	for i := range k.ramp {
		for j := range 4 {
			k.ramp[i][j] = (k.col[j]*uint32(255-i) + end[j]*uint32(i) + 127) / 255
		}
	}
	if g.Kind == draw.Linear {
		k.linear(c.m, g)
	} else {
		k.radial(c.m, g)
	}
}

// linear finds t as a function of the pixel: t = (q−A)·(B−A)/|B−A|² with q the
// pixel's centre taken back to the list.
func (k *ink) linear(m draw.Affine, g draw.Gradient) {
	dx, dy := g.B.X-g.A.X, g.B.Y-g.A.Y
	n := dx*dx + dy*dy
	inv, ok := inverse(m)
	if n == 0 || !ok {
		k.ax, k.ay, k.off = 0, 0, 1
		return
	}
	k.ax, k.ay = (inv.A*dx+inv.B*dy)/n, (inv.C*dx+inv.D*dy)/n
	k.off = ((inv.E-g.A.X)*dx + (inv.F-g.A.Y)*dy) / n
}

func (k *ink) radial(m draw.Affine, g draw.Gradient) {
	r := math.Hypot(g.B.X-g.A.X, g.B.Y-g.A.Y)
	inv, ok := inverse(m)
	if r == 0 || !ok {
		k.inv = draw.Affine{E: 1}
		return
	}
	k.inv = draw.Affine{A: 1 / r, D: 1 / r, E: -g.A.X / r, F: -g.A.Y / r}.After(inv)
}

func inverse(m draw.Affine) (draw.Affine, bool) {
	d := m.A*m.D - m.B*m.C
	if d == 0 {
		return draw.Affine{}, false
	}
	return draw.Affine{
		A: m.D / d, B: -m.B / d, C: -m.C / d, D: m.A / d,
		E: (m.C*m.F - m.D*m.E) / d, F: (m.B*m.E - m.A*m.F) / d,
	}, true
}

func premultiplied(c draw.Color) [4]uint32 {
	a := uint32(c.A) * 257
	f := func(v uint8) uint32 { return (uint32(v)*257*a + 32767) / 65535 }
	return [4]uint32{f(c.R), f(c.G), f(c.B), a}
}

// pixels returns the bytes of a run of pixels of the area.
func (k *ink) pixels(y, x0, x1 int) []uint8 {
	i := k.dst.PixOffset(k.at.X+x0, k.at.Y+y)
	return k.dst.Pix[i : i+4*(x1-x0)]
}

func (k *ink) plainSpan(y, x0, x1 int, cover uint32) {
	pix := k.pixels(y, x0, x1)
	r, g, b, a := k.col[0]*cover/65535, k.col[1]*cover/65535, k.col[2]*cover/65535, k.col[3]*cover/65535
	if a == 65535 {
		flood(pix, uint8(r>>8), uint8(g>>8), uint8(b>>8))
		return
	}
	for i := 0; i < len(pix); i += 4 {
		over(pix[i:i+4:i+4], r, g, b, a)
	}
}

// flood fills a run with an opaque colour.
func flood(pix []uint8, r, g, b uint8) {
	pix[0], pix[1], pix[2], pix[3] = r, g, b, 255
	for n := 4; n < len(pix); n *= 2 {
		copy(pix[n:], pix[:n])
	}
}

// over lays a premultiplied 16 bit colour over a pixel.
func over(q []uint8, r, g, b, a uint32) {
	under := 65535 - a
	q[0] = uint8((r*255 + uint32(q[0])*under + 32767) / 65535)
	q[1] = uint8((g*255 + uint32(q[1])*under + 32767) / 65535)
	q[2] = uint8((b*255 + uint32(q[2])*under + 32767) / 65535)
	q[3] = uint8((a*255 + uint32(q[3])*under + 32767) / 65535)
}

// blendSpan colours a run by the gradient. A step of less than one level is
// spread over neighbouring pixels by an ordered pattern, or wide soft
// gradients would show bands.
func (k *ink) blendSpan(y, x0, x1 int, cover uint32) {
	pix := k.pixels(y, x0, x1)
	py := k.at.Y + y
	for x := x0; x < x1; x++ {
		px := k.at.X + x
		c := &k.ramp[k.step(float64(px)+0.5, float64(py)+0.5)]
		d := uint32(spread[py&3][px&3])
		q := pix[4*(x-x0) : 4*(x-x0)+4 : 4*(x-x0)+4]
		dither(q, c, cover, d)
	}
}

// step is the place on the ramp of a place in the picture.
func (k *ink) step(x, y float64) int {
	t := k.ax*x + k.ay*y + k.off
	if k.kind == draw.Radial {
		u, v := k.inv.A*x+k.inv.C*y+k.inv.E, k.inv.B*x+k.inv.D*y+k.inv.F
		t = math.Sqrt(u*u + v*v)
	}
	return int(max(0, min(t, 1))*255 + 0.5)
}

// spread is an ordered pattern of 4×4 thresholds in [0, 65535).
var spread = [4][4]uint16{
	{2048, 34816, 10240, 43008}, {51200, 18432, 59392, 26624},
	{14336, 47104, 6144, 38912}, {63488, 30720, 55296, 22528},
}

func dither(q []uint8, c *[4]uint32, cover, d uint32) {
	a := c[3] * (cover + 1) >> 16
	under := 65535 - a
	for j := range 4 {
		v := c[j] * (cover + 1) >> 16
		q[j] = uint8(min((v*255+uint32(q[j])*under+d)/65535, 255))
	}
}
