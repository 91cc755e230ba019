// Package raster paints a picture into an image in memory, without a display.
// It is the only rasteriser of shapes and text: the window takes its textures
// from here.
package raster

import (
	"image"

	"cuesta/scenes/draw"
)

// Painter paints pictures. It keeps what it made of textures that are lists
// for as long as their versions stay the same. The zero value is ready; one
// Painter serves one goroutine.
type Painter struct {
	kept   map[*draw.Texture]kept
	area   area
	ink    ink
	path   draw.Path
	flat   draw.Flat
	dashed draw.Flat
	pieces draw.Flat
}

// kept is a texture painted before.
type kept struct {
	version uint64
	image   *image.RGBA
}

// canvas is where a list is being painted: the image, the part of it that may
// change, and the map from the list's coordinates to pixels.
type canvas struct {
	dst  *image.RGBA
	clip image.Rectangle
	m    draw.Affine
}

// New returns a Painter.
func New() *Painter { return &Painter{} }

// Paint paints a list over what is in dst; the list's origin is the upper left
// corner of dst's bounds.
func (p *Painter) Paint(dst *image.RGBA, l *draw.List) {
	o := dst.Rect.Min
	p.paint(canvas{dst, dst.Rect, draw.Affine{A: 1, D: 1, E: float64(o.X), F: float64(o.Y)}}, l)
}

// Image paints a list into a new image of its size.
func Image(l *draw.List) *image.RGBA {
	dst := image.NewRGBA(draw.Rect{W: l.W, H: l.H}.Pixels())
	New().Paint(dst, l)
	return dst
}

// Texture paints a texture into dst, which must be W×H with its origin at 0.
// What dst held before is lost. Pixels are copied; a list is painted on
// nothing.
func (p *Painter) Texture(dst *image.RGBA, t *draw.Texture) {
	clear(dst.Pix)
	if t.Pixels != nil {
		copyPixels(dst, t.Pixels)
		return
	}
	if t.List != nil {
		p.paint(canvas{dst, dst.Rect, t.Map()}, t.List)
	}
}

func copyPixels(dst, src *image.RGBA) {
	r := dst.Rect.Intersect(src.Rect.Sub(src.Rect.Min))
	for y := r.Min.Y; y < r.Max.Y; y++ {
		i, j := dst.PixOffset(r.Min.X, y), src.PixOffset(src.Rect.Min.X+r.Min.X, src.Rect.Min.Y+y)
		copy(dst.Pix[i:i+4*r.Dx()], src.Pix[j:j+4*r.Dx()])
	}
}

func (p *Painter) paint(c canvas, l *draw.List) {
	whole := c.clip
	for _, it := range l.Items {
		switch it.Op {
		case draw.OpFill:
			p.fill(c, &l.Fills[it.N])
		case draw.OpStroke:
			p.stroke(c, &l.Lines[it.N])
		case draw.OpText:
			p.text(c, &l.Texts[it.N])
		case draw.OpMesh:
			p.mesh(c, &l.Meshes[it.N])
		case draw.OpRegion:
			c.clip = whole.Intersect(mapRect(c.m, l.Regions[it.N].Rect).Pixels())
		}
	}
}

// mapRect returns the box round a mapped rectangle.
func mapRect(m draw.Affine, r draw.Rect) draw.Rect {
	a, b := m.At(draw.Point{X: r.X, Y: r.Y}), m.At(draw.Point{X: r.X + r.W, Y: r.Y + r.H})
	c, d := m.At(draw.Point{X: r.X + r.W, Y: r.Y}), m.At(draw.Point{X: r.X, Y: r.Y + r.H})
	x0, y0 := min(a.X, b.X, c.X, d.X), min(a.Y, b.Y, c.Y, d.Y)
	return draw.Rect{X: x0, Y: y0, W: max(a.X, b.X, c.X, d.X) - x0, H: max(a.Y, b.Y, c.Y, d.Y) - y0}
}

// texture returns the image of a texture, painted now if need be. A texture
// without content is nil, which stands for plain white.
func (p *Painter) texture(t *draw.Texture) *image.RGBA {
	if t == nil {
		return nil
	}
	if t.Pixels != nil {
		return t.Pixels
	}
	k, ok := p.kept[t]
	if ok && k.version == t.Version && k.image.Rect.Dx() == t.W && k.image.Rect.Dy() == t.H {
		return k.image
	}
	if !ok || k.image.Rect.Dx() != t.W || k.image.Rect.Dy() != t.H {
		k.image = image.NewRGBA(image.Rect(0, 0, t.W, t.H))
	}
	p.Texture(k.image, t)
	k.version = t.Version
	if p.kept == nil {
		p.kept = map[*draw.Texture]kept{}
	}
	p.kept[t] = k
	return k.image
}

// Forget drops all that is kept of textures.
func (p *Painter) Forget() { clear(p.kept) }
