package stage

import (
	"image"

	"cuesta/orient"
	"cuesta/scenes/draw"
)

// sheet is a plane with coordinates, on which shadows fall.
type sheet struct{ o, x, y orient.Vec }

func (s *sheet) at(p flat) orient.Vec { return add(s.o, add(mul(p.x, s.x), mul(p.y, s.y))) }

// flat is a point on a sheet, with the width over which a shadow fades there.
type flat struct{ x, y, soft float64 }

const mostShadow = 24

// blot is a set of points on a sheet, then their convex hull.
type blot struct {
	sheet sheet
	pts   [mostShadow]flat
	n     int
	close float64 // corners nearer than this are one
}

// cast adds the shadow of p on the sheet with the normal n, fading over soft
// per cm of height.
func (b *blot) cast(p, light, n orient.Vec, soft float64) {
	h := dot(sub(p, b.sheet.o), n)
	q := sub(sub(p, mul(h/dot(light, n), light)), b.sheet.o)
	b.pts[b.n] = flat{dot(q, b.sheet.x), dot(q, b.sheet.y), 0.12 + soft*max(0, h)}
	b.n++
}

// wrap keeps the convex hull, counter-clockwise (Andrew's monotone chain).
func (b *blot) wrap() {
	p := b.pts[:b.n]
	for i := 1; i < len(p); i++ {
		for j := i; j > 0 && (p[j].x < p[j-1].x || p[j].x == p[j-1].x && p[j].y < p[j-1].y); j-- {
			p[j], p[j-1] = p[j-1], p[j]
		}
	}
	var hull [2 * mostShadow]flat
	k := 0
	push := func(q flat, floor int) {
		for k-floor >= 2 && turn(hull[k-2], hull[k-1], q) <= 1e-9 {
			k--
		}
		hull[k] = q
		k++
	}
	for _, q := range p {
		push(q, 0)
	}
	floor := k - 1
	for i := len(p) - 2; i >= 0; i-- {
		push(p[i], floor)
	}
	b.n = copy(b.pts[:], hull[:max(0, k-1)])
	b.thin()
}

// thin drops corners so close to the one before that they would only make the
// edge of a shadow fold over itself.
func (b *blot) thin() {
	n := 0
	for i := range b.n {
		p := b.pts[i]
		if n > 0 && b.n > 4 && length2(p.x-b.pts[n-1].x, p.y-b.pts[n-1].y) < b.close {
			b.pts[n-1].soft = max(p.soft, b.pts[n-1].soft)
			continue
		}
		b.pts[n] = p
		n++
	}
	b.n = n
}

func turn(o, a, b flat) float64 { return (a.x-o.x)*(b.y-o.y) - (a.y-o.y)*(b.x-o.x) }

// rampW is the width of the texture of a fading edge: u goes from 0, nothing,
// to rampW, all.
const rampW = 64

func ramp() *draw.Texture {
	img := image.NewRGBA(image.Rect(0, 0, rampW, 2))
	for i := range rampW {
		v := uint8(255*ease(0, 1, (float64(i)-0.5)/(rampW-2)) + 0.5)
		for y := range 2 {
			k := img.PixOffset(i, y)
			img.Pix[k], img.Pix[k+1], img.Pix[k+2], img.Pix[k+3] = v, v, v, v
		}
	}
	return &draw.Texture{W: rampW, H: 2, Version: 1, Pixels: img}
}

// fill paints the hull with soft edges: each corner fades half inwards and half
// outwards over its own width. The brush must hold the texture of ramp.
func (b *blot) fill(br *brush, c tint) {
	if b.n < 3 {
		return
	}
	var in, out [mostShadow]corner
	depth := b.depth()
	for i := range b.n {
		p := b.pts[i]
		nx, ny := b.outward(i)
		w := p.soft / 2
		wi := min(w, 0.9*depth)
		in[i] = corner{at: b.sheet.at(flat{x: p.x - nx*wi, y: p.y - ny*wi}), u: rampW - 0.5, v: 1, c: c}
		out[i] = corner{at: b.sheet.at(flat{x: p.x + nx*w, y: p.y + ny*w}), u: 0.5, v: 1, c: c}
	}
	br.polygon(in[:b.n]...)
	for i := range b.n {
		j := (i + 1) % b.n
		br.polygon(in[i], in[j], out[j], out[i])
	}
}

// outward is the mitre at corner i: one unit out from both its sides, at most
// two long.
func (b *blot) outward(i int) (x, y float64) {
	p, q, r := b.pts[(i+b.n-1)%b.n], b.pts[i], b.pts[(i+1)%b.n]
	x0, y0 := normal(p, q)
	x1, y1 := normal(q, r)
	k := 1 / max(0.45, 1+x0*x1+y0*y1)
	return (x0 + x1) * k, (y0 + y1) * k
}

// normal points to the right of the way from p to q: out of a hull.
func normal(p, q flat) (x, y float64) {
	x, y = q.y-p.y, p.x-q.x
	k := length2(x, y)
	if k == 0 {
		return 0, 0
	}
	return x / k, y / k
}

// depth is about the radius of the largest circle inside: twice the area over
// the length of the outline.
func (b *blot) depth() float64 {
	area, around := 0.0, 0.0
	for i := range b.n {
		p, q := b.pts[i], b.pts[(i+1)%b.n]
		area += p.x*q.y - q.x*p.y
		around += length2(q.x-p.x, q.y-p.y)
	}
	if around == 0 {
		return 0
	}
	return max(0, area/around)
}
