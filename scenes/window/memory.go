package window

import (
	"image"
	"math"
	"slices"

	"cuesta/scenes/draw"
)

// memory is the last picture, region by region, to find what has changed.
type memory struct {
	last, next []region
	n          int // regions of this picture so far
}

// region is what one region held.
type region struct {
	rect   image.Rectangle
	meshes []mesh
	others bool // it held shapes, which are never taken to be the same
}

// mesh is a copy of a mesh and the version its texture had.
type mesh struct {
	texture  *draw.Texture
	version  uint64
	nearest  bool
	box      image.Rectangle
	vertices []draw.Vertex
	indices  []uint16
}

func (m *memory) forget() { m.last = m.last[:0] }

func (m *memory) begin() { m.n = 0 }

// end makes this picture the last one; the copies of the one before lend their
// memory to the next.
func (m *memory) end() {
	m.next = m.next[:m.n]
	m.last, m.next = m.next, m.last[:cap(m.last)]
}

// damage returns the part of a region that has to be painted, and remembers
// what the region holds now.
func (m *memory) damage(l *draw.List, rect image.Rectangle, from, to int) image.Rectangle {
	if m.n == len(m.next) {
		m.next = append(m.next, region{})
	}
	now := &m.next[m.n]
	now.take(l, rect, from, to)
	m.n++
	if m.n > len(m.last) {
		return rect
	}
	return now.against(&m.last[m.n-1])
}

// take copies the items of a region.
func (r *region) take(l *draw.List, rect image.Rectangle, from, to int) {
	r.rect, r.others = rect, false
	n := 0
	for _, it := range l.Items[from:to] {
		if it.Op != draw.OpMesh {
			r.others = true
			continue
		}
		if n == cap(r.meshes) {
			r.meshes = append(r.meshes[:n], mesh{})
		}
		r.meshes = r.meshes[:n+1]
		r.meshes[n].take(&l.Meshes[it.N])
		n++
	}
	r.meshes = r.meshes[:n]
}

func (k *mesh) take(m *draw.Mesh) {
	k.texture, k.version, k.nearest = m.Texture, 0, m.Nearest
	if m.Texture != nil {
		k.version = m.Texture.Version
	}
	k.box = bounds(m)
	k.vertices = append(k.vertices[:0], m.Vertices...)
	k.indices = append(k.indices[:0], m.Indices...)
}

// against returns the box round all that differs from what was there before.
// Outside of it the same triangles lie in the same order.
func (r *region) against(old *region) image.Rectangle {
	if r.rect != old.rect || r.others || old.others {
		return r.rect
	}
	var box image.Rectangle
	for i := range max(len(r.meshes), len(old.meshes)) {
		switch {
		case i >= len(r.meshes):
			box = box.Union(old.meshes[i].box)
		case i >= len(old.meshes):
			box = box.Union(r.meshes[i].box)
		default:
			box = box.Union(r.meshes[i].against(&old.meshes[i]))
		}
	}
	box = box.Intersect(r.rect)
	if 2*box.Dx()*box.Dy() > r.rect.Dx()*r.rect.Dy() {
		return r.rect // the same part each time is cheaper than a slightly smaller one
	}
	return box
}

func (k *mesh) against(old *mesh) image.Rectangle {
	if k.texture != old.texture || k.version != old.version || k.nearest != old.nearest ||
		len(k.vertices) != len(old.vertices) || !slices.Equal(k.indices, old.indices) {
		return k.box.Union(old.box)
	}
	var box image.Rectangle
	for i := 0; i+2 < len(k.indices); i += 3 {
		a, b, c := k.indices[i], k.indices[i+1], k.indices[i+2]
		if k.vertices[a] != old.vertices[a] || k.vertices[b] != old.vertices[b] || k.vertices[c] != old.vertices[c] {
			box = box.Union(around(k.vertices[a], k.vertices[b], k.vertices[c]))
			box = box.Union(around(old.vertices[a], old.vertices[b], old.vertices[c]))
		}
	}
	return box
}

func bounds(m *draw.Mesh) image.Rectangle { return around(m.Vertices...) }

// around is the rectangle of pixels that triangles with these corners may
// touch.
func around(vs ...draw.Vertex) image.Rectangle {
	const far = 1 << 20
	x0, y0, x1, y1 := float32(far), float32(far), float32(-far), float32(-far)
	for i := range vs {
		x0, y0 = min(x0, vs[i].X), min(y0, vs[i].Y)
		x1, y1 = max(x1, vs[i].X), max(y1, vs[i].Y)
	}
	if x0 > x1 {
		return image.Rectangle{}
	}
	lim := func(v float32) float64 { return float64(max(-far, min(v, far))) }
	return image.Rect(int(math.Floor(lim(x0))), int(math.Floor(lim(y0))), int(math.Ceil(lim(x1))), int(math.Ceil(lim(y1))))
}
