package raster

import (
	"math"

	"cuesta/scenes/draw"
)

// stroke paints a line as the union of simple pieces, all wound the same way:
// a box for each segment, a wedge at each join, a cap at each end. Pieces that
// overlap count once, so no bend or width can tear it.
func (p *Painter) stroke(c canvas, l *draw.Line) {
	s, scale := &l.Style, c.m.Scale()
	if s.Width <= 0 || scale == 0 {
		return
	}
	p.dashed.Reset()
	p.flat.Reset()
	p.flat.Add(l.Path, draw.Identity, tolerance/scale)
	lines := &p.flat
	if d := newDash(s.Dash); d.total > 0 {
		d.cut(&p.dashed, &p.flat)
		lines = &p.dashed
	}
	p.pieces.Reset()
	k := stroker{to: &p.pieces, m: c.m, half: s.Width / 2, join: s.Join, cap: s.Cap, step: arcStep(s.Width / 2 * scale)}
	for _, r := range lines.Runs {
		k.run(lines.Points[r.From:r.To], r.Closed)
	}
	p.flat, p.pieces = p.pieces, p.flat
	p.pour(c, s.Color, draw.Gradient{})
}

// arcStep is the angle of a chord that strays from a circle of r pixels by no
// more than a quarter of the tolerance: a chord always cuts off, never adds.
func arcStep(r float64) float64 {
	const t = tolerance / 4
	return 2 * math.Acos(max(0, 1-t/max(r, t)))
}

type stroker struct {
	to   *draw.Flat
	m    draw.Affine
	half float64
	step float64
	join draw.Join
	cap  draw.Cap
}

func (k *stroker) run(pts []draw.Point, closed bool) {
	n := len(pts)
	if n == 1 {
		k.dot(pts[0])
		return
	}
	if n < 2 {
		return
	}
	segs := n - 1
	if closed && n > 2 {
		segs = n
	}
	last := k.bend(pts, 0, segs == n)
	first := last
	for i := range segs {
		b := (i + 1) % n
		next := first
		if b != 0 {
			next = k.bend(pts, b, segs == n)
		}
		k.box(pts[i], pts[b], last, next)
		last = next
	}
	if segs < n {
		k.end(pts[1], pts[0])
		k.end(pts[n-2], pts[n-1])
	}
}

// side is the offset from a to the left edge of a segment a b (right on a
// screen with y down), as long as half the width.
func (k *stroker) side(a, b draw.Point) draw.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	f := k.half / math.Hypot(dx, dy)
	return draw.Point{X: -dy * f, Y: dx * f}
}

// joint is how two segments meet: along one line across, or, where they turn
// sharply or end, each with its own end.
type joint struct {
	smooth bool
	side   draw.Point // of the shared line
}

// bend finds how the segments meet at point i, and fills a sharp corner. A
// curve is many smooth bends, whose pieces then do not overlap.
func (k *stroker) bend(pts []draw.Point, i int, closed bool) joint {
	n := len(pts)
	if !closed && (i == 0 || i == n-1) {
		return joint{}
	}
	a, b, c := pts[(i+n-1)%n], pts[i], pts[(i+1)%n]
	s, t := k.side(a, b), k.side(b, c)
	cos := (s.X*t.X + s.Y*t.Y) / (k.half * k.half)
	short := min(math.Hypot(b.X-a.X, b.Y-a.Y), math.Hypot(c.X-b.X, c.Y-b.Y))
	if cos < 0.95 || short < k.half/3 {
		k.corner(a, b, c)
		return joint{}
	}
	return joint{true, draw.Point{X: (s.X + t.X) / (1 + cos), Y: (s.Y + t.Y) / (1 + cos)}}
}

func (k *stroker) box(a, b draw.Point, from, to joint) {
	s := k.side(a, b)
	t := s
	if from.smooth {
		s = from.side
	}
	if to.smooth {
		t = to.side
	}
	k.piece(plus(a, s), plus(b, t), minus(b, t), minus(a, s))
}

// corner fills the outer side of a bend at b.
func (k *stroker) corner(a, b, c draw.Point) {
	s, t := k.side(a, b), k.side(b, c)
	turn := s.X*t.Y - s.Y*t.X
	if turn > 0 {
		s, t = minus(draw.Point{}, s), minus(draw.Point{}, t)
	}
	switch {
	case k.join == draw.RoundJoin:
		k.fan(b, s, t)
	case k.join == draw.MiterJoin && k.mitre(b, s, t):
	default:
		k.piece(b, plus(b, s), plus(b, t))
	}
}

// mitre prolongs the outer edges until they meet, unless the tip would be
// farther off than the limit.
func (k *stroker) mitre(b, s, t draw.Point) bool {
	half := k.half * k.half
	cos := 1 + (s.X*t.X+s.Y*t.Y)/half // 2cos²(turn/2)
	if cos < 2/(draw.MitreLimit*draw.MitreLimit) {
		return false
	}
	tip := draw.Point{X: b.X + (s.X+t.X)/cos, Y: b.Y + (s.Y+t.Y)/cos}
	k.piece(b, plus(b, s), tip, plus(b, t))
	return true
}

// fan is a sector about b from the offset s to the offset t, the short way.
func (k *stroker) fan(b, s, t draw.Point) {
	angle := math.Atan2(s.X*t.Y-s.Y*t.X, s.X*t.X+s.Y*t.Y)
	if angle == 0 {
		return
	}
	n := int(math.Ceil(math.Abs(angle) / k.step))
	k.begin()
	k.add(b)
	for i := range n + 1 {
		k.add(plus(b, turned(s, angle*float64(i)/float64(n))))
	}
	k.finish()
}

func turned(p draw.Point, a float64) draw.Point {
	s, c := math.Sincos(a)
	return draw.Point{X: p.X*c - p.Y*s, Y: p.X*s + p.Y*c}
}

// end puts a cap at b, the end of the segment a b.
func (k *stroker) end(a, b draw.Point) {
	s := k.side(a, b)
	out := draw.Point{X: s.Y, Y: -s.X}
	switch k.cap {
	case draw.ButtCap:
	case draw.RoundCap:
		k.fan(b, s, out)
		k.fan(b, out, minus(draw.Point{}, s))
	case draw.SquareCap:
		k.piece(plus(b, s), plus(plus(b, s), out), plus(minus(b, s), out), minus(b, s))
	}
}

// dot is a line without length: its two caps.
func (k *stroker) dot(a draw.Point) {
	right := draw.Point{X: a.X + 1, Y: a.Y}
	k.end(right, a)
	k.end(draw.Point{X: a.X - 1, Y: a.Y}, a)
}

func (k *stroker) piece(pts ...draw.Point) {
	k.begin()
	for _, q := range pts {
		k.add(q)
	}
	k.finish()
}

func (k *stroker) begin() {
	k.to.Runs = append(k.to.Runs, draw.Run{From: len(k.to.Points), Closed: true})
}

func (k *stroker) add(p draw.Point) { k.to.Points = append(k.to.Points, k.m.At(p)) }

// finish ends a piece and turns it round if it runs the wrong way.
func (k *stroker) finish() {
	r := &k.to.Runs[len(k.to.Runs)-1]
	r.To = len(k.to.Points)
	pts := k.to.Points[r.From:r.To]
	area, a := 0.0, pts[len(pts)-1]
	for _, b := range pts {
		area += a.X*b.Y - a.Y*b.X
		a = b
	}
	if area < 0 {
		for i, j := 0, len(pts)-1; i < j; i, j = i+1, j-1 {
			pts[i], pts[j] = pts[j], pts[i]
		}
	}
}

func plus(a, b draw.Point) draw.Point  { return draw.Point{X: a.X + b.X, Y: a.Y + b.Y} }
func minus(a, b draw.Point) draw.Point { return draw.Point{X: a.X - b.X, Y: a.Y - b.Y} }
