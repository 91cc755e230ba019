package draw

import "math"

// Mark is a number that stands for what a list shows: lists that differ have
// different marks, but for a chance of one in 2⁶⁴. A painter that keeps what
// it made of a list can tell by it that a new version looks like the old one.
func (l *List) Mark() uint64 {
	m := mark(14695981039346656037)
	m.float(l.W)
	m.float(l.H)
	for _, it := range l.Items {
		m.word(uint64(it.Op))
		switch it.Op {
		case OpFill:
			m.fill(&l.Fills[it.N])
		case OpStroke:
			m.path(l.Lines[it.N].Path)
			m.style(l.Lines[it.N].Style)
		case OpText:
			m.text(&l.Texts[it.N])
		case OpMesh:
			m.mesh(&l.Meshes[it.N])
		case OpRegion:
			m.rect(l.Regions[it.N].Rect)
		}
	}
	return uint64(m)
}

// mark mixes words in turn, as FNV-1a does bytes, and folds the high bits back
// so that every bit of a float counts.
type mark uint64

func (m *mark) word(v uint64) {
	x := (uint64(*m) ^ v) * 1099511628211
	*m = mark(x ^ x>>29)
}

func (m *mark) float(v float64) { m.word(math.Float64bits(v)) }

func (m *mark) point(p Point) { m.float(p.X); m.float(p.Y) }

func (m *mark) rect(r Rect) { m.point(Point{r.X, r.Y}); m.point(Point{r.W, r.H}) }

func (m *mark) color(c Color) {
	m.word(uint64(c.R)<<24 | uint64(c.G)<<16 | uint64(c.B)<<8 | uint64(c.A))
}

func (m *mark) path(p Path) {
	m.word(uint64(len(p.Kinds)))
	for _, k := range p.Kinds {
		m.word(uint64(k))
	}
	for _, q := range p.Points {
		m.point(q)
	}
}

func (m *mark) fill(f *Fill) {
	m.path(f.Path)
	m.color(f.Color)
	m.word(uint64(f.Gradient.Kind))
	if f.Gradient.Kind != NoGradient {
		m.point(f.Gradient.A)
		m.point(f.Gradient.B)
		m.color(f.Gradient.To)
	}
}

func (m *mark) style(s Stroke) {
	m.float(s.Width)
	m.color(s.Color)
	m.word(uint64(s.Cap)<<8 | uint64(s.Join))
	m.word(uint64(len(s.Dash)))
	for _, v := range s.Dash {
		m.float(v)
	}
}

func (m *mark) text(t *Text) {
	m.word(uint64(len(t.S)))
	for _, r := range t.S {
		m.word(uint64(r))
	}
	m.point(t.At)
	m.float(t.Size)
	m.float(t.Rotate)
	m.float(t.Track)
	m.color(t.Color)
	m.word(uint64(t.Font)<<8 | uint64(t.Align))
}

func (m *mark) mesh(s *Mesh) {
	m.texture(s.Texture)
	if s.Nearest {
		m.word(1)
	}
	m.word(uint64(len(s.Vertices)))
	for i := range s.Vertices {
		v := &s.Vertices[i]
		for _, f := range [...]float32{v.X, v.Y, v.U, v.V, v.R, v.G, v.B, v.A} {
			m.word(uint64(math.Float32bits(f)))
		}
	}
	for _, i := range s.Indices {
		m.word(uint64(i))
	}
}

func (m *mark) texture(t *Texture) {
	if t == nil {
		m.word(0)
		return
	}
	m.word(t.Version)
	m.word(uint64(t.W)<<32 | uint64(t.H))
	if t.List != nil {
		m.word(t.List.Mark())
	} else if t.Pixels != nil {
		m.pixels(t.Pixels.Pix)
	}
}

func (m *mark) pixels(pix []uint8) {
	for len(pix) >= 4 {
		m.word(uint64(pix[0]) | uint64(pix[1])<<8 | uint64(pix[2])<<16 | uint64(pix[3])<<24)
		pix = pix[4:]
	}
}
