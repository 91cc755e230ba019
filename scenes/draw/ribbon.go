package draw

import "math"

// FeatherLine adds a line through points, open or closed, with pointed joins
// and flat ends. A line thinner than its feather fades as a whole instead of
// growing. Points that stand twice are passed over.
func (p *Pen) FeatherLine(pts []Point, width, feather float64, c Color, closed bool) {
	n := len(pts)
	if n < 2 || width <= 0 {
		return
	}
	r := ribbon{pen: p, c: c, soft: feather / 2}
	r.core, r.rim, r.k = profile(width, feather)
	for i, b := range pts {
		if i > 0 && b == pts[i-1] || closed && i == n-1 && b == pts[0] {
			continue
		}
		d := lineShift(pts, i, closed)
		if !closed && r.count == 0 {
			r.end(b, d, -1)
		}
		r.section(b, d, r.k)
	}
	if closed && r.count > 2 {
		p.band(r.last, r.first, r.core > 0)
	}
	if !closed {
		r.end(pts[n-1], lineShift(pts, n-1, closed), 1)
	}
}

// profile is the cross section of a soft line: half the width of its full
// part, half that of all of it, and its strength. The strength summed across
// is the width.
func profile(width, feather float64) (core, rim, k float64) {
	if feather > width {
		return 0, feather, width / feather
	}
	return (width - feather) / 2, (width + feather) / 2, 1
}

// ribbon is a line as it is being laid.
type ribbon struct {
	pen          *Pen
	c            Color
	soft         float64 // half the feather
	core, rim, k float64
	first, last  uint16 // vertices at which the sections begin
	count        int
}

// section adds four vertices across the line at b and joins them to the last.
func (r *ribbon) section(b, d Point, k float64) {
	v := r.pen.tint(Point{b.X + r.rim*d.X, b.Y + r.rim*d.Y}, r.c, 0)
	r.pen.tint(Point{b.X + r.core*d.X, b.Y + r.core*d.Y}, r.c, k)
	r.pen.tint(Point{b.X - r.core*d.X, b.Y - r.core*d.Y}, r.c, k)
	r.pen.tint(Point{b.X - r.rim*d.X, b.Y - r.rim*d.Y}, r.c, 0)
	if r.count == 0 {
		r.first = v
	} else {
		r.pen.band(r.last, v, r.core > 0)
	}
	r.last, r.count = v, r.count+1
}

// end fades the line out beyond its first point (way −1) or its last (way 1);
// d points to the left of the line.
func (r *ribbon) end(b, d Point, way float64) {
	f := way * r.soft
	r.section(Point{b.X - f*d.Y, b.Y + f*d.X}, d, 0)
}

// band joins two cross sections of a line.
func (p *Pen) band(a, b uint16, core bool) {
	p.Quad(a, b, b+1, a+1)
	if core {
		p.Quad(a+1, b+1, b+2, a+2)
	}
	p.Quad(a+2, b+2, b+3, a+3)
}

// lineShift is the offset at point i of a line that is one unit to its left.
func lineShift(pts []Point, i int, closed bool) Point {
	n, b := len(pts), pts[i]
	a, c := b, b
	for j := i - 1; a == b && (closed && j > i-n || j >= 0); j-- {
		a = pts[(j+n)%n]
	}
	for j := i + 1; c == b && (closed && j < i+n || j < n); j++ {
		c = pts[j%n]
	}
	switch {
	case a == b && c == b:
		return Point{}
	case a == b:
		return normal(b, c)
	case c == b:
		return normal(a, b)
	}
	return shift(a, b, c, 1)
}

// Disc adds a filled circle.
func (p *Pen) Disc(centre Point, r, feather float64, c Color) {
	if r <= 0 {
		return
	}
	n := roundness(r + feather/2)
	in, out, k := r-feather/2, r+feather/2, 1.0
	if in < 0 { // smaller than its feather: as much colour, spread wider
		in, out, k = 0, feather, r*r/(feather*feather)*3
	}
	k = min(k, 1)
	mid := p.tint(centre, c, k)
	for i := range n {
		s, t := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		a := p.tint(Point{centre.X + in*t, centre.Y + in*s}, c, k)
		p.tint(Point{centre.X + out*t, centre.Y + out*s}, c, 0)
		b := mid + 1 + uint16(2*((i+1)%n))
		p.Triangle(mid, a, b)
		p.Quad(a, a+1, b+1, b)
	}
}

// Ring adds a circle line of a width, r its middle.
func (p *Pen) Ring(centre Point, r, width, feather float64, c Color) {
	if r <= 0 || width <= 0 {
		return
	}
	n := roundness(r + width/2)
	core, rim, k := profile(width, feather)
	radii := [4]float64{r + rim, r + core, max(0, r-core), max(0, r-rim)}
	fade := [4]float64{0, k, k, 0}
	first := uint16(0)
	for i := range n {
		s, t := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		for j := range 4 {
			v := p.tint(Point{centre.X + radii[j]*t, centre.Y + radii[j]*s}, c, fade[j])
			if i == 0 && j == 0 {
				first = v
			}
		}
		if i > 0 {
			p.band(first+uint16(4*(i-1)), first+uint16(4*i), core > 0)
		}
	}
	p.band(first+uint16(4*(n-1)), first, core > 0)
}

// roundness is the number of sides that stray from a circle by 0.1 at most.
func roundness(r float64) int {
	return int(max(12, min(math.Ceil(math.Pi/math.Acos(1-0.1/max(r, 0.2))), 180)))
}
