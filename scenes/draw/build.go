package draw

import "math"

// Reset empties the list for the next frame and keeps its memory. What earlier
// meshes pointed to is overwritten.
func (l *List) Reset(w, h float64) {
	l.W, l.H = w, h
	l.Items, l.Fills, l.Lines, l.Texts = l.Items[:0], l.Fills[:0], l.Lines[:0], l.Texts[:0]
	l.Meshes, l.Regions = l.Meshes[:0], l.Regions[:0]
	l.vertices, l.indices = l.vertices[:0], l.indices[:0]
}

// Fill adds a filled path.
func (l *List) Fill(p Path, c Color) { l.FillWith(Fill{Path: p, Color: c}) }

// FillWith adds a filled path with all its style.
func (l *List) FillWith(f Fill) {
	l.Items = append(l.Items, Item{OpFill, len(l.Fills)})
	l.Fills = append(l.Fills, f)
}

// Stroke adds a stroked path.
func (l *List) Stroke(p Path, s Stroke) {
	l.Items = append(l.Items, Item{OpStroke, len(l.Lines)})
	l.Lines = append(l.Lines, Line{p, s})
}

// Text adds a line of text.
func (l *List) Text(t Text) {
	l.Items = append(l.Items, Item{OpText, len(l.Texts)})
	l.Texts = append(l.Texts, t)
}

// Region starts a region.
func (l *List) Region(r Rect) {
	l.Items = append(l.Items, Item{OpRegion, len(l.Regions)})
	l.Regions = append(l.Regions, Region{r})
}

// Mesh adds a mesh that has already been made; its slices are kept, not copied.
func (l *List) Mesh(m Mesh) {
	l.Items = append(l.Items, Item{OpMesh, len(l.Meshes)})
	l.Meshes = append(l.Meshes, m)
}

// Open starts a mesh in the list's own memory and returns a pen for it; Done
// on the pen adds it.
func (l *List) Open(t *Texture) Pen {
	return Pen{list: l, texture: t, v0: len(l.vertices), i0: len(l.indices)}
}

// Pen writes the triangles of one mesh. Only one pen of a list may be open.
type Pen struct {
	list    *List
	texture *Texture
	nearest bool
	v0, i0  int
}

// Nearest turns filtering off.
func (p *Pen) Nearest() { p.nearest = true }

// Vertex adds a corner and returns its index. A mesh has room for 65,536.
func (p *Pen) Vertex(v Vertex) uint16 {
	n := len(p.list.vertices) - p.v0
	if n > math.MaxUint16 {
		panic("draw: a mesh has too many corners")
	}
	p.list.vertices = append(p.list.vertices, v)
	return uint16(n)
}

// Triangle adds a triangle.
func (p *Pen) Triangle(a, b, c uint16) {
	p.list.indices = append(p.list.indices, a, b, c)
}

// Quad adds two triangles a b c and a c d.
func (p *Pen) Quad(a, b, c, d uint16) { p.Triangle(a, b, c); p.Triangle(a, c, d) }

// Done adds the mesh to the list. An empty mesh is left out.
func (p *Pen) Done() {
	l := p.list
	if len(l.indices) == p.i0 {
		l.vertices = l.vertices[:p.v0]
		return
	}
	l.Mesh(Mesh{
		Texture:  p.texture,
		Vertices: l.vertices[p.v0:len(l.vertices):len(l.vertices)],
		Indices:  l.indices[p.i0:len(l.indices):len(l.indices)],
		Nearest:  p.nearest,
	})
}

// Sprite adds a texture with its corner at (x, y), scaled by k, faded by alpha.
func (l *List) Sprite(t *Texture, x, y, k, alpha float64) {
	p := l.Open(t)
	if k == 1 && x == float64(int(x)) && y == float64(int(y)) {
		p.Nearest()
	}
	a := float32(alpha)
	w, h := float32(t.W), float32(t.H)
	x0, y0, x1, y1 := float32(x), float32(y), float32(x+k*float64(t.W)), float32(y+k*float64(t.H))
	p.Quad(
		p.Vertex(Vertex{x0, y0, 0, 0, a, a, a, a}),
		p.Vertex(Vertex{x1, y0, w, 0, a, a, a, a}),
		p.Vertex(Vertex{x1, y1, w, h, a, a, a, a}),
		p.Vertex(Vertex{x0, y1, 0, h, a, a, a, a}))
	p.Done()
}
