package stage

import (
	"image"

	"cuesta/orient"
	"cuesta/scenes/draw"
)

// Lines are quads with a texture of the line's own cross-section, so that two
// triangles make a smooth edge: row i holds a line (i+1)/2 px wide with half a
// pixel to fade on either side.
const (
	profileW    = 64
	profileRows = 40
)

func profiles() *draw.Texture {
	img := image.NewRGBA(image.Rect(0, 0, profileW, profileRows))
	for row := range profileRows {
		w := float64(row+1)/2 + 1
		for i := range profileW {
			x := (float64(i) + 0.5) / profileW * w
			v := uint8(255*max(0, min(1, min(x, w-x), w-1)) + 0.5)
			k := img.PixOffset(i, row)
			img.Pix[k], img.Pix[k+1], img.Pix[k+2], img.Pix[k+3] = v, v, v, v
		}
	}
	return &draw.Texture{W: profileW, H: profileRows, Version: 1, Pixels: img}
}

// flatLine draws a line between two places of the picture. The brush must hold
// the texture of profiles.
func (b *brush) flatLine(x0, y0, x1, y1, width float64, c tint) {
	row := max(0, min(profileRows-1, int(2*width+0.5)-1))
	nx, ny := y0-y1, x1-x0
	k := length2(nx, ny)
	if k < 1e-6 {
		return
	}
	half := (float64(row+1)/2 + 1) / 2
	nx, ny = nx/k*half, ny/k*half
	v := float64(row) + 0.5
	b.pen.Quad(b.put(x0+nx, y0+ny, 0, v, c), b.put(x1+nx, y1+ny, 0, v, c),
		b.put(x1-nx, y1-ny, profileW, v, c), b.put(x0-nx, y0-ny, profileW, v, c))
}

// line draws a line between two places of the world, width in px.
func (b *brush) line(p, q orient.Vec, width float64, c tint) {
	x0, y0 := b.lens.project(p)
	x1, y1 := b.lens.project(q)
	b.flatLine(x0, y0, x1, y1, width, c)
}

// cased draws a line with its casing.
func (b *brush) cased(p, q orient.Vec, width, casing float64, c, around tint) {
	b.line(p, q, width+2*casing, around)
	b.line(p, q, width, c)
}
