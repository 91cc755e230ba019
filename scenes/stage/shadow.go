package stage

import "cuesta/orient"

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

// soft is how a shadow fades from its outer edge inwards: the share of the way
// and the share of the darkness there, a smooth step in straight pieces. Plain
// colours cost a software renderer a fraction of what a texture does.
var soft = [...][2]float64{{0, 0}, {0.28, 0.19}, {0.72, 0.81}, {1, 1}}

// fill paints the hull with soft edges: each corner fades half inwards and half
// outwards over its own width. A hollow one lacks what lies within the fading.
func (b *blot) fill(br *brush, c tint, hollow bool) {
	if b.n < 3 {
		return
	}
	var last [mostShadow]corner
	depth := b.depth()
	for k, s := range soft {
		now := last
		for i := range b.n {
			now[i] = corner{at: b.sheet.at(b.faded(i, s[0], depth)), c: c.fade(s[1])}
		}
		for i := range b.n {
			if j := (i + 1) % b.n; k > 0 {
				br.polygon(now[i], now[j], last[j], last[i])
			}
		}
		last = now
	}
	if !hollow {
		br.polygon(last[:b.n]...)
	}
}

// faded is corner i moved a share k of the way through its fading.
func (b *blot) faded(i int, k, depth float64) flat {
	p := b.pts[i]
	nx, ny := b.outward(i)
	w := p.soft / 2
	d := lerp(w, -min(w, 0.9*depth), k)
	return flat{x: p.x + nx*d, y: p.y + ny*d}
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
