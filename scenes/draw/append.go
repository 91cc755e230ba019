package draw

import "math"

// Append adds all of another list, mapped by m, which must not mirror: text
// could not follow. Lengths grow by the scale of m, so a map that stretches
// keeps the shape of paths only. Meshes and regions are mapped by their
// corners; a region that is turned becomes the box round it.
func (l *List) Append(src *List, m Affine) {
	k, turn := m.Scale(), math.Atan2(m.B, m.A)
	for _, it := range src.Items {
		switch it.Op {
		case OpFill:
			l.FillWith(src.Fills[it.N].mapped(m))
		case OpStroke:
			n := src.Lines[it.N]
			l.Stroke(n.Path.Mapped(m), n.Style.scaled(k))
		case OpText:
			t := src.Texts[it.N]
			t.At, t.Size, t.Rotate = m.At(t.At), t.Size*k, t.Rotate+turn
			l.Text(t)
		case OpMesh:
			l.Mesh(src.Meshes[it.N].mapped(m))
		case OpRegion:
			l.Region(boxRound(m, src.Regions[it.N].Rect))
		}
	}
}

// Turned is the map that turns by a, clockwise as seen with y down, scales by
// k and then moves the origin to p.
func Turned(p Point, k, a float64) Affine {
	s, c := math.Sincos(a)
	return Affine{A: k * c, B: k * s, C: -k * s, D: k * c, E: p.X, F: p.Y}
}

// Mapped is the path under a map.
func (p Path) Mapped(m Affine) Path {
	out := Path{Kinds: p.Kinds, Points: make([]Point, len(p.Points))}
	for i, q := range p.Points {
		out.Points[i] = m.At(q)
	}
	return out
}

func (f Fill) mapped(m Affine) Fill {
	f.Path = f.Path.Mapped(m)
	f.Gradient.A, f.Gradient.B = m.At(f.Gradient.A), m.At(f.Gradient.B)
	return f
}

func (s Stroke) scaled(k float64) Stroke {
	s.Width *= k
	if len(s.Dash) > 0 {
		d := make([]float64, len(s.Dash))
		for i, v := range s.Dash {
			d[i] = v * k
		}
		s.Dash = d
	}
	return s
}

func (s Mesh) mapped(m Affine) Mesh {
	out := s
	out.Vertices = append([]Vertex(nil), s.Vertices...)
	for i := range out.Vertices {
		v := &out.Vertices[i]
		q := m.At(Point{float64(v.X), float64(v.Y)})
		v.X, v.Y = float32(q.X), float32(q.Y)
	}
	return out
}

// boxRound is the box round a mapped rectangle.
func boxRound(m Affine, r Rect) Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, c := range [...]Point{{r.X, r.Y}, {r.X + r.W, r.Y}, {r.X, r.Y + r.H}, {r.X + r.W, r.Y + r.H}} {
		q := m.At(c)
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	return Rect{x0, y0, x1 - x0, y1 - y0}
}
