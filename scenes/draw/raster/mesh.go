package raster

import (
	"image"
	"math"

	"cuesta/scenes/draw"
)

// sub is how finely corners are placed, steps to a pixel, as graphics cards
// do; from there on all is exact, so that triangles which share an edge
// neither overlap nor leave a gap.
const sub = 256

func (p *Painter) mesh(c canvas, m *draw.Mesh) {
	if c.clip.Empty() { // its texture need not be painted either
		return
	}
	tex := p.texture(m.Texture)
	s := shader{tex: tex, nearest: m.Nearest, taps: m.Taps()}
	if tex != nil && tex.Rect.Empty() {
		return
	}
	for i := 0; i+2 < len(m.Indices); i += 3 {
		a, b, d := m.Vertices[m.Indices[i]], m.Vertices[m.Indices[i+1]], m.Vertices[m.Indices[i+2]]
		triangle(c, &s, place(c.m, a), place(c.m, b), place(c.m, d))
	}
}

// corner is a vertex on the grid of sub-pixels. Its v are the texture place
// and the colour factors.
type corner struct {
	x, y int
	v    [6]float64
}

func place(m draw.Affine, v draw.Vertex) corner {
	q := m.At(draw.Point{X: float64(v.X), Y: float64(v.Y)})
	lim := func(f float64) int { return int(math.Floor(max(-1<<22, min(f, 1<<22))*sub + 0.5)) }
	return corner{lim(q.X), lim(q.Y), [6]float64{
		float64(v.U), float64(v.V), float64(v.R), float64(v.G), float64(v.B), float64(v.A)}}
}

// side is an edge as a function that is not negative inside: E + X·x + Y·y at
// the centre of pixel (x, y).
type side struct{ e, x, y int }

// between makes the side from a to b. A centre that lies on an edge belongs to
// the triangle of which it is the left or the upper edge.
func between(a, b corner) side {
	dx, dy := b.x-a.x, b.y-a.y
	s := side{x: -dy * sub, y: dx * sub}
	s.e = dx*(sub/2-a.y) - dy*(sub/2-a.x)
	if !(dy < 0 || dy == 0 && dx > 0) {
		s.e--
	}
	return s
}

func triangle(c canvas, s *shader, p, q, r corner) {
	area := (q.x-p.x)*(r.y-p.y) - (q.y-p.y)*(r.x-p.x)
	if area == 0 {
		return
	}
	if area < 0 {
		q, r, area = r, q, -area
	}
	y0 := max(floorDiv(min(p.y, q.y, r.y)-sub/2, sub), c.clip.Min.Y)
	y1 := min(floorDiv(max(p.y, q.y, r.y)-sub/2, sub)+1, c.clip.Max.Y)
	if y0 >= y1 {
		return
	}
	sides := [3]side{between(p, q), between(q, r), between(r, p)}
	s.set(p, q, r, float64(area))
	for y := y0; y < y1; y++ {
		x0, x1 := c.clip.Min.X, c.clip.Max.X
		for _, e := range sides {
			x0, x1 = e.narrow(x0, x1, y)
		}
		if x0 < x1 {
			i := c.dst.PixOffset(x0, y)
			s.run(c.dst.Pix[i:i+4*(x1-x0)], x0, y)
		}
	}
}

// narrow cuts a run of pixels of row y to those inside a side.
func (s side) narrow(x0, x1, y int) (int, int) {
	e := s.e + s.y*y
	switch {
	case s.x > 0: // e + x·X ≥ 0 from x = ⌈−e/X⌉ on
		x0 = max(x0, -floorDiv(e, s.x))
	case s.x < 0:
		x1 = min(x1, floorDiv(e, -s.x)+1)
	case e < 0:
		x1 = x0
	}
	return x0, x1
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// shader colours the pixels of a triangle.
type shader struct {
	tex     *image.RGBA
	nearest bool
	taps    int        // along each side of a pixel
	x, y    [6]float64 // change of each value to the right and down
	at      [6]float64 // its value at the centre of pixel (0, 0)
}

func (s *shader) set(p, q, r corner, area float64) {
	qx, qy, rx, ry := float64(q.x-p.x), float64(q.y-p.y), float64(r.x-p.x), float64(r.y-p.y)
	for i := range 6 {
		dq, dr := q.v[i]-p.v[i], r.v[i]-p.v[i]
		s.x[i] = (dq*ry - dr*qy) / area * sub
		s.y[i] = (dr*qx - dq*rx) / area * sub
		s.at[i] = p.v[i] + s.x[i]*(0.5-float64(p.x)/sub) + s.y[i]*(0.5-float64(p.y)/sub)
	}
}

// Values along a run are fixed-point numbers with this many bits of fraction.
const bits = 20

// run colours a run of pixels that starts at (x, y).
func (s *shader) run(pix []uint8, x, y int) {
	var v, d [6]int
	for i := range 6 {
		k := 1 << bits
		if i > 1 {
			k = 65535 << (bits - 16)
		}
		f := s.at[i] + s.x[i]*float64(x) + s.y[i]*float64(y)
		v[i], d[i] = int(f*float64(k)), int(s.x[i]*float64(k))
	}
	switch {
	case s.tex == nil:
		s.flat(pix, v, d)
	case s.nearest:
		s.copied(pix, v, d)
	case s.taps > 1:
		s.mixed(pix, v, d)
	default:
		s.filtered(pix, v, d)
	}
}

// factor makes a colour factor of 16 bits.
func factor(v int) uint32 {
	return uint32(max(0, min(v>>(bits-16), 65535)))
}

func (s *shader) flat(pix []uint8, v, d [6]int) {
	if d[2]|d[3]|d[4]|d[5] == 0 && factor(v[5]) == 65535 {
		flood(pix, uint8(factor(v[2])/257), uint8(factor(v[3])/257), uint8(factor(v[4])/257))
		return
	}
	for i := 0; i < len(pix); i += 4 {
		over(pix[i:i+4:i+4], factor(v[2]), factor(v[3]), factor(v[4]), factor(v[5]))
		v[2] += d[2]
		v[3] += d[3]
		v[4] += d[4]
		v[5] += d[5]
	}
}

func (s *shader) copied(pix []uint8, v, d [6]int) {
	t, w, h := s.tex, s.tex.Rect.Dx()-1, s.tex.Rect.Dy()-1
	whole := s.plain(v, d)
	if whole && d[0] == 1<<bits && d[1] == 0 && s.row(pix, v[0]>>bits, v[1]>>bits) {
		return
	}
	for i := 0; i < len(pix); i += 4 {
		j := max(0, min(v[1]>>bits, h))*t.Stride + 4*max(0, min(v[0]>>bits, w))
		c := t.Pix[j : j+4 : j+4]
		q := pix[i : i+4 : i+4]
		if whole && c[3] == 255 {
			copy(q, c)
		} else {
			over(q, tint(c[0], v[2]), tint(c[1], v[3]), tint(c[2], v[4]), tint(c[3], v[5]))
		}
		for k := range v {
			v[k] += d[k]
		}
	}
}

// row lays a run of the texture's pixels, from (x, y) on, over a run of the
// picture, one to one; it does nothing where the run leaves the texture.
func (s *shader) row(pix []uint8, x, y int) bool {
	t := s.tex
	if x < 0 || y < 0 || y >= t.Rect.Dy() || x+len(pix)/4 > t.Rect.Dx() {
		return false
	}
	src := t.Pix[y*t.Stride+4*x:][:len(pix)]
	for i := 0; i < len(pix); i += 4 {
		c, q := src[i:i+4:i+4], pix[i:i+4:i+4]
		switch c[3] {
		case 0:
			if c[0]|c[1]|c[2] != 0 {
				over(q, uint32(c[0])*257, uint32(c[1])*257, uint32(c[2])*257, 0)
			}
		case 255:
			copy(q, c)
		default:
			over(q, uint32(c[0])*257, uint32(c[1])*257, uint32(c[2])*257, uint32(c[3])*257)
		}
	}
	return true
}

// tint multiplies a byte by a colour factor, into 16 bits.
func tint(c uint8, v int) uint32 { return (uint32(c)*257*(factor(v)>>1) + 16383) / 32767 }

// plain says that the texture's colours are kept as they are all along a run.
func (s *shader) plain(v, d [6]int) bool {
	return d[2]|d[3]|d[4]|d[5] == 0 && min(factor(v[2]), factor(v[3]), factor(v[4]), factor(v[5])) == 65535
}

func (s *shader) filtered(pix []uint8, v, d [6]int) {
	whole := s.plain(v, d)
	for i := 0; i < len(pix); i += 4 {
		m := s.between(v[0], v[1])
		put(pix[i:i+4:i+4], m, &v, whole)
		for k := range v {
			v[k] += d[k]
		}
	}
}

// between mixes the four pixels of the texture round a place, into 16 bits.
func (s *shader) between(u, v int) (m [4]uint32) {
	t, w, h := s.tex, s.tex.Rect.Dx()-1, s.tex.Rect.Dy()-1
	u, v = u-1<<(bits-1), v-1<<(bits-1)
	x, y := u>>bits, v>>bits
	fx, fy := uint32(u>>(bits-8))&255, uint32(v>>(bits-8))&255
	x0, x1 := max(0, min(x, w))*4, max(0, min(x+1, w))*4
	y0, y1 := max(0, min(y, h))*t.Stride, max(0, min(y+1, h))*t.Stride
	a, b := t.Pix[y0+x0:y0+x0+4:y0+x0+4], t.Pix[y0+x1:y0+x1+4:y0+x1+4]
	c, e := t.Pix[y1+x0:y1+x0+4:y1+x0+4], t.Pix[y1+x1:y1+x1+4:y1+x1+4]
	k0, k1, k2, k3 := (256-fx)*(256-fy), fx*(256-fy), (256-fx)*fy, fx*fy
	for n := range 4 {
		z := uint32(a[n])*k0 + uint32(b[n])*k1 + uint32(c[n])*k2 + uint32(e[n])*k3 // 8+16 bits
		m[n] = z >> 8 * 257 >> 8
	}
	return m
}

// put lays a colour of the texture over a pixel, by the colour factors in v.
func put(q []uint8, m [4]uint32, v *[6]int, whole bool) {
	if m[3] == 65535 && whole {
		q[0], q[1], q[2], q[3] = uint8(m[0]>>8), uint8(m[1]>>8), uint8(m[2]>>8), 255
		return
	}
	if !whole {
		for n := range m {
			m[n] = (m[n]*(factor(v[2+n])>>1) + 16383) / 32767
		}
	}
	over(q, m[0], m[1], m[2], m[3])
}

// mixed takes several places of the texture for each pixel, spread evenly over
// the pixel.
func (s *shader) mixed(pix []uint8, v, d [6]int) {
	whole, n := s.plain(v, d), s.taps
	dx, dy := spreadOver(s.x[0], s.x[1]), spreadOver(s.y[0], s.y[1])
	for i := 0; i < len(pix); i += 4 {
		var sum [4]uint32
		for j := range n * n {
			kx, ky := 2*(j%n)+1-n, 2*(j/n)+1-n // of 2n
			m := s.between(v[0]+(dx[0]*kx+dy[0]*ky)/(2*n), v[1]+(dx[1]*kx+dy[1]*ky)/(2*n))
			for k := range m {
				sum[k] += m[k]
			}
		}
		for k := range sum {
			sum[k] /= uint32(n * n)
		}
		put(pix[i:i+4:i+4], sum, &v, whole)
		for k := range v {
			v[k] += d[k]
		}
	}
}

// spreadOver is the way through the texture along one side of a pixel, in
// fixed point.
func spreadOver(u, v float64) [2]int {
	k := min(1, draw.FarthestTap/math.Hypot(u, v)) * (1 << bits)
	return [2]int{int(u * k), int(v * k)}
}
