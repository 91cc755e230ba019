package draw

// Flattened is the mesh as plain triangles, for painters of vector files: each
// takes the mean colour of its corners and of the texture. It is nothing where
// the texture is itself a list, for that has no mean colour without painting
// it, and for triangles that cannot be seen.
func (m *Mesh) Flattened() []Fill {
	tint, ok := m.Texture.mean()
	if !ok {
		return nil
	}
	var out []Fill
	for i := 0; i+2 < len(m.Indices); i += 3 {
		a, b, c := &m.Vertices[m.Indices[i]], &m.Vertices[m.Indices[i+1]], &m.Vertices[m.Indices[i+2]]
		k := [4]float64{}
		for j, v := range [...]float32{a.R + b.R + c.R, a.G + b.G + c.G, a.B + b.B + c.B, a.A + b.A + c.A} {
			k[j] = float64(v) / 3 * tint[j]
		}
		if k[3] < 1.0/512 {
			continue
		}
		path := Polyline(true, corner(a), corner(b), corner(c))
		out = append(out, Fill{Path: path, Color: straight(k)})
	}
	return out
}

func corner(v *Vertex) Point { return Point{float64(v.X), float64(v.Y)} }

// mean is the mean premultiplied colour of a texture, in [0, 1].
func (t *Texture) mean() ([4]float64, bool) {
	if t == nil {
		return [4]float64{1, 1, 1, 1}, true
	}
	if t.Pixels == nil {
		return [4]float64{1, 1, 1, 1}, t.List == nil
	}
	var sum [4]float64
	b := t.Pixels.Rect
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := t.Pixels.RGBAAt(x, y)
			sum[0], sum[1], sum[2], sum[3] = sum[0]+float64(c.R), sum[1]+float64(c.G), sum[2]+float64(c.B), sum[3]+float64(c.A)
		}
	}
	n := 255 * float64(b.Dx()*b.Dy())
	if n == 0 {
		return sum, false
	}
	for i := range sum {
		sum[i] /= n
	}
	return sum, true
}

// straight is a premultiplied colour with its alpha taken out.
func straight(k [4]float64) Color {
	f := func(v float64) uint8 { return uint8(max(0, min(255*v+0.5, 255))) }
	return Color{R: f(k[0] / k[3]), G: f(k[1] / k[3]), B: f(k[2] / k[3]), A: f(k[3])}
}
