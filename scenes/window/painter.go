package window

import (
	"image"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
)

// Painter paints pictures on the screen. It remembers the last picture and
// touches only what has changed since. Meshes and sprites are fast; shapes and
// text that do not stand in a texture are painted anew in every frame.
type Painter struct {
	raster   raster.Painter
	store    store
	memory   memory
	screen   *ebiten.Image
	vertices []ebiten.Vertex
	options  ebiten.DrawTrianglesOptions
	mixer    mixer
	loose    loose
	parts    parts
}

// NewPainter returns a painter that has nothing in store.
func NewPainter() *Painter { return &Painter{} }

// Paint brings the screen from the last picture to this one. The screen must
// still hold what the last call left on it, or be a new image.
func (p *Painter) Paint(screen *ebiten.Image, l *draw.List) {
	if screen != p.screen {
		p.screen, p.parts = screen, parts{}
		p.memory.forget()
	}
	p.store.tick()
	p.memory.begin()
	whole := screen.Bounds()
	rect, from := whole, 0
	for i, it := range l.Items {
		if it.Op == draw.OpRegion {
			p.part(l, rect, from, i)
			rect, from = l.Regions[it.N].Rect.Pixels().Intersect(whole), i+1
		}
	}
	p.part(l, rect, from, len(l.Items))
	p.memory.end()
}

// Repaint makes the next Paint cover the whole screen.
func (p *Painter) Repaint() { p.memory.forget() }

// part paints the items from…to of a list, which make up one region.
func (p *Painter) part(l *draw.List, rect image.Rectangle, from, to int) {
	if from == to {
		return
	}
	clip := p.memory.damage(l, rect, from, to)
	if clip.Empty() {
		return
	}
	dst := p.parts.of(p.screen, clip)
	for i := from; i < to; i++ {
		switch it := l.Items[i]; it.Op {
		case draw.OpMesh:
			if bounds(&l.Meshes[it.N]).Overlaps(clip) {
				p.mesh(dst, &l.Meshes[it.N])
			}
		default:
			i = p.shapes(dst, l, clip, i, to)
		}
	}
}

// parts are the parts of the screen painted on lately: making one costs
// memory, and the same ones come back from frame to frame.
type parts struct {
	kept [16]*ebiten.Image
	next int
}

// of returns a part of the screen; what lies outside of it stays untouched.
func (p *parts) of(screen *ebiten.Image, clip image.Rectangle) *ebiten.Image {
	if clip == screen.Bounds() {
		return screen
	}
	for _, k := range p.kept {
		if k != nil && k.Bounds() == clip {
			return k
		}
	}
	k := screen.SubImage(clip).(*ebiten.Image)
	p.kept[p.next] = k
	p.next = (p.next + 1) % len(p.kept)
	return k
}

func (p *Painter) mesh(dst *ebiten.Image, m *draw.Mesh) {
	src := p.store.image(&p.raster, m.Texture)
	if src == nil || len(m.Indices) == 0 {
		return
	}
	p.vertices = p.vertices[:0]
	for i := range m.Vertices {
		v := &m.Vertices[i]
		p.vertices = append(p.vertices, ebiten.Vertex{
			DstX: v.X, DstY: v.Y, SrcX: v.U + border, SrcY: v.V + border,
			ColorR: v.R, ColorG: v.G, ColorB: v.B, ColorA: v.A,
		})
	}
	if m.Texture == nil {
		for i := range p.vertices {
			p.vertices[i].SrcX, p.vertices[i].SrcY = whiteSize/2, whiteSize/2
		}
	}
	if n := m.Taps(); n > 1 {
		p.mixer.draw(dst, p.vertices, m.Indices, src, n)
		return
	}
	p.options.ColorScaleMode = ebiten.ColorScaleModePremultipliedAlpha
	p.options.DisableMipmaps = true
	p.options.Filter = p.filter(m)
	p.options.Blend = p.blend(m)
	dst.DrawTriangles(p.vertices, m.Indices, src, &p.options)
}

// blend is how a mesh is laid over what is there. A large one that hides it
// takes its place, which costs less than mixing; small ones are not worth a
// call of their own.
func (p *Painter) blend(m *draw.Mesh) ebiten.Blend {
	if r := bounds(m); r.Dx()*r.Dy() < smallMesh || !p.store.covers(m.Texture) {
		return ebiten.BlendSourceOver
	}
	for i := range m.Vertices {
		if m.Vertices[i].A < 1 {
			return ebiten.BlendSourceOver
		}
	}
	return ebiten.BlendCopy
}

// smallMesh is the size of box, in pixels, up to which a call to the display
// costs more than what it would save.
const smallMesh = 1 << 16

// filter is how a mesh is sampled. Filtering changes nothing in plain colour
// and takes longer; but meshes that follow each other with the same filter
// make one call to the display, and a call costs as much as filtering a few
// thousand pixels.
func (p *Painter) filter(m *draw.Mesh) ebiten.Filter {
	switch {
	case m.Texture != nil && m.Nearest:
		return ebiten.FilterNearest
	case m.Texture != nil:
		return ebiten.FilterLinear
	}
	if r := bounds(m); r.Dx()*r.Dy() > smallMesh {
		return ebiten.FilterNearest
	}
	return p.options.Filter
}

// loose holds the shapes of a list that stand in no texture.
type loose struct {
	list    draw.List
	picture *image.RGBA
	texture draw.Texture
	mesh    draw.List
}

// shapes paints a run of items that are not meshes, by way of a picture in
// memory, and returns the index of the last of them.
func (p *Painter) shapes(dst *ebiten.Image, l *draw.List, clip image.Rectangle, i, to int) int {
	last := i
	for last+1 < to && l.Items[last+1].Op != draw.OpMesh {
		last++
	}
	s := &p.loose
	s.list = *l
	s.list.Items = l.Items[i : last+1]
	w, h := clip.Dx(), clip.Dy()
	if s.picture == nil || s.picture.Rect.Dx() != w || s.picture.Rect.Dy() != h {
		s.picture = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	x, y := float64(clip.Min.X), float64(clip.Min.Y)
	p.raster.Texture(s.picture, &draw.Texture{W: w, H: h, List: &s.list, Under: draw.Affine{A: 1, D: 1, E: -x, F: -y}})
	s.texture = draw.Texture{W: w, H: h, Version: s.texture.Version + 1, Pixels: s.picture}
	s.mesh.Reset(0, 0)
	s.mesh.Sprite(&s.texture, x, y, 1, 1)
	p.mesh(dst, &s.mesh.Meshes[0])
	return last
}
