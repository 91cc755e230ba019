package figure

import (
	"cuesta/orient"
	"cuesta/orient/net"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// Net is a lower-hemisphere net on a list: where it stands and how large.
// Make one with NewNet, then add to it.
type Net struct {
	List   *draw.List
	Theme  *theme.Theme
	Kind   net.Kind
	Centre draw.Point
	Radius float64 // of the primitive
}

// NewNet adds an empty net to a list, as large as its width, and sets the
// height: the primitive ticked every 10°, the four letters, and the net of
// great and small circles every 10° about the north-south line.
func NewNet(l *draw.List, th *theme.Theme, k net.Kind) Net {
	l.H = l.W
	n := Net{List: l, Theme: th, Kind: k, Centre: draw.Point{X: l.W / 2, Y: l.W / 2}, Radius: l.W * .43}
	n.grid()
	n.primitive()
	return n
}

// At is the place of a line.
func (n Net) At(l orient.Line) draw.Point { return n.page(net.Lower(n.Kind).Line(l)) }

func (n Net) page(q net.Point) draw.Point {
	return draw.Point{X: n.Centre.X + n.Radius*q.X, Y: n.Centre.Y - n.Radius*q.Y}
}

func (n Net) curve(pts []net.Point) draw.Path {
	out := make([]draw.Point, len(pts))
	for i, q := range pts {
		out[i] = n.page(q)
	}
	return draw.Polyline(false, out...)
}

func (n Net) grid() {
	lower := net.Lower(n.Kind)
	fine := draw.Stroke{Width: n.Radius * .0034, Color: mix(n.Theme.Panel, n.Theme.Ink, .26)}
	for d := 10; d <= 90; d += 10 {
		a := orient.Angle(d) * orient.Degree
		n.List.Stroke(n.curve(lower.GreatCircle(orient.PlaneOf(0, a), 48)), fine)
		if d < 90 {
			n.List.Stroke(n.curve(lower.GreatCircle(orient.PlaneOf(orient.Half, a), 48)), fine)
			n.List.Stroke(n.parallel(a), fine)
			n.List.Stroke(n.parallel(orient.Half-a), fine)
		}
	}
	n.List.Stroke(n.parallel(orient.Right), fine)
}

// parallel is the lower half of the circle at the angle a from north.
func (n Net) parallel(a orient.Angle) draw.Path {
	const steps = 48
	lower := net.Lower(n.Kind)
	pts := make([]net.Point, steps+1)
	for i := range pts {
		t := orient.Half * orient.Angle(i) / steps
		pts[i] = lower.Project(orient.Vec{X: a.Sin() * t.Cos(), Y: a.Cos(), Z: -a.Sin() * t.Sin()})
	}
	return n.curve(pts)
}

func (n Net) primitive() {
	c, r, th := n.Centre, n.Radius, n.Theme
	n.List.Stroke(draw.Circle(c.X, c.Y, r), draw.Stroke{Width: r * .011, Color: th.Ink})
	var ticks draw.Path
	for d := 0; d < 360; d += 10 {
		reach := 1.025
		if d%90 == 0 {
			reach = 1.05
		}
		ray(&ticks, c, r, r*reach, orient.Angle(d)*orient.Degree)
	}
	n.List.Stroke(ticks, draw.Stroke{Width: r * .009, Color: th.Ink})
	for i, s := range []string{"N", "E", "S", "W"} {
		a := orient.Angle(i-1) * orient.Right
		n.List.Text(label(s, at(c, r*1.105, a), r*.105, 0, draw.Bold, th.Ink))
	}
}

// GreatCircle adds the trace of a plane.
func (n Net) GreatCircle(p orient.Plane, s draw.Stroke) {
	n.List.Stroke(n.curve(net.Lower(n.Kind).GreatCircle(p, 72)), s)
}

// SmallCircle adds the circle of all directions at the angle half from a line.
func (n Net) SmallCircle(axis orient.Line, half orient.Angle, s draw.Stroke) {
	pts := net.Lower(n.Kind).SmallCircle(axis, half, 144)
	from := 0
	for i := 1; i < len(pts); i++ {
		if leap := (pts[i].X-pts[i-1].X)*(pts[i].X-pts[i-1].X) + (pts[i].Y-pts[i-1].Y)*(pts[i].Y-pts[i-1].Y); leap > .5 {
			n.List.Stroke(n.curve(pts[from:i]), s)
			from = i
		}
	}
	n.List.Stroke(n.curve(pts[from:]), s)
}

// Dot adds a filled dot of radius r for a line, with a thin rim in the colour
// of the ground, so that dots that overlap can be told apart.
func (n Net) Dot(l orient.Line, r float64, c draw.Color) {
	q := n.At(l)
	n.List.Fill(draw.Circle(q.X, q.Y, r), c)
	n.List.Stroke(draw.Circle(q.X, q.Y, r), draw.Stroke{Width: r * .2, Color: n.Theme.Panel})
}

// labelling sets words beside dots so that none covers a dot or another word.
type labelling struct {
	net   Net
	size  float64
	taken []draw.Rect
}

// keep marks the place of a dot of radius r as taken.
func (b *labelling) keep(l orient.Line, r float64) {
	q := b.net.At(l)
	b.taken = append(b.taken, draw.Rect{X: q.X - r, Y: q.Y - r, W: 2 * r, H: 2 * r})
}

// label sets a word beside a line's place: the first of eight places round it
// that is free, or the one to the right when none is.
func (b *labelling) label(l orient.Line, r float64, s string) {
	q := b.net.At(l)
	w, h := draw.Measure(draw.Bold, b.size, s, 0)+.2*b.size, 1.05*b.size
	var best draw.Rect
	for i, way := range [][2]float64{{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {1, 1}, {-1, -1}, {-1, 1}} {
		box := draw.Rect{X: q.X + way[0]*(1.5*r+w/2) - w/2, Y: q.Y + way[1]*(1.5*r+h/2) - h/2, W: w, H: h}
		if i == 0 || b.free(box) {
			best = box
		}
		if b.free(box) {
			break
		}
	}
	b.taken = append(b.taken, best)
	n := b.net
	n.List.Fill(draw.RoundBox(best, .2*b.size), n.Theme.Panel)
	n.List.Text(label(s, draw.Point{X: best.X + w/2, Y: best.Y + h/2}, b.size, 0, draw.Bold, n.Theme.Ink))
}

func (b *labelling) free(box draw.Rect) bool {
	if box.X < 0 || box.X+box.W > b.net.List.W {
		return false
	}
	for _, t := range b.taken {
		if box.X < t.X+t.W && t.X < box.X+box.W && box.Y < t.Y+t.H && t.Y < box.Y+box.H {
			return false
		}
	}
	return true
}

// netPicture is an equal-area net with poles as dots and their labels.
func netPicture(l *draw.List, th *theme.Theme, f item.NetFigure) {
	n := NewNet(l, th, net.EqualArea)
	r := n.Radius * .03
	b := labelling{net: n, size: n.Radius * .095}
	for _, p := range f.Poles {
		b.keep(p, r)
	}
	for i, p := range f.Poles {
		if i < len(f.Labels) && f.Labels[i] != "" {
			b.label(p, r, f.Labels[i])
		}
	}
	for _, p := range f.Poles {
		n.Dot(p, r, th.Ink)
	}
}
