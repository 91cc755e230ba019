package pdf

import (
	"math"
	"strconv"

	"cuesta/scenes/draw"
)

// Draw paints a list, mapped by m, on the page as content of the innermost
// open element; with none open it is ornament that readers pass over. It
// panics when there is no page.
func (d *Document) Draw(l *draw.List, m draw.Affine) {
	if len(d.pages) == 0 {
		panic("pdf: Draw without Page")
	}
	p := painter{Document: d, m: m}
	d.begin(boxOf(l, m))
	clipped := false
	for _, it := range l.Items {
		switch it.Op {
		case draw.OpFill:
			p.fill(&l.Fills[it.N])
		case draw.OpStroke:
			p.stroke(&l.Lines[it.N])
		case draw.OpText:
			p.text(&l.Texts[it.N])
		case draw.OpMesh:
			for _, f := range l.Meshes[it.N].Flattened() {
				p.fill(&f)
			}
		case draw.OpRegion:
			p.region(l.Regions[it.N].Rect, clipped)
			clipped = true
		}
	}
	if clipped {
		d.unclip()
	}
	d.put("EMC\n")
}

// unclip ends a clip. The opacity falls back to what it was before.
func (d *Document) unclip() {
	d.put("Q\n")
	d.faded = true
}

// boxOf is the box round a mapped list.
func boxOf(l *draw.List, m draw.Affine) draw.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, c := range []draw.Point{{}, {X: l.W}, {Y: l.H}, {X: l.W, Y: l.H}} {
		q := m.At(c)
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	return draw.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}

// painter writes the operators of one list.
type painter struct {
	*Document
	m draw.Affine
}

func (p painter) region(r draw.Rect, clipped bool) {
	if clipped {
		p.unclip()
	}
	p.put("q\n")
	b := draw.Box(r)
	p.outline(&b)
	p.put("W n\n")
}

func (p painter) fill(f *draw.Fill) {
	if len(f.Path.Kinds) == 0 {
		return
	}
	if f.Gradient.Kind != draw.NoGradient {
		p.shade(f)
		return
	}
	p.alpha(f.Color.A)
	p.color(f.Color, "rg")
	p.outline(&f.Path)
	p.put("f\n")
}

func (p painter) stroke(l *draw.Line) {
	s, k := &l.Style, p.m.Scale()
	if s.Width <= 0 || len(l.Path.Kinds) == 0 {
		return
	}
	p.alpha(s.Color.A)
	p.color(s.Color, "RG")
	p.float(s.Width * k)
	p.put(" w ")
	p.int(int(s.Cap))
	p.put(" J ")
	p.int(int(s.Join))
	p.put(" j ")
	p.int(draw.MitreLimit)
	p.put(" M [")
	for i, v := range s.Dash {
		if i > 0 {
			p.put(" ")
		}
		p.float(v * k)
	}
	p.put("] 0 d\n")
	p.outline(&l.Path)
	p.put("S\n")
}

// outline writes a path. Quadratic curves become cubic ones.
func (p painter) outline(path *draw.Path) {
	k := 0
	var pen, start draw.Point
	for _, kind := range path.Kinds {
		switch kind {
		case draw.Move:
			pen = p.m.At(path.Points[k])
			start = pen
			p.points("m", pen)
			k++
		case draw.LineTo:
			pen = p.m.At(path.Points[k])
			p.points("l", pen)
			k++
		case draw.Quad:
			b, c := p.m.At(path.Points[k]), p.m.At(path.Points[k+1])
			p.points("c", between(pen, b, 2.0/3), between(c, b, 2.0/3), c)
			pen = c
			k += 2
		case draw.Cube:
			b, c := p.m.At(path.Points[k]), p.m.At(path.Points[k+1])
			pen = p.m.At(path.Points[k+2])
			p.points("c", b, c, pen)
			k += 3
		case draw.Close:
			p.put("h\n")
			pen = start
		}
	}
}

func between(a, b draw.Point, t float64) draw.Point {
	return draw.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}
}

func (p painter) points(op string, pts ...draw.Point) {
	for _, q := range pts {
		p.float(q.X)
		p.put(" ")
		p.float(p.options.Sheet.H - q.Y)
		p.put(" ")
	}
	p.put(op + "\n")
}

// alpha sets the opacity where it is not whole; the state stays until the next
// fill or stroke sets it again.
func (p painter) alpha(a uint8) {
	if a == 255 && !p.faded {
		return
	}
	p.flush()
	p.f.SetAlpha(float64(a)/255, "Normal")
	p.faded = a != 255
}

// shade fills a path with a gradient: the path becomes a clip, the box round it
// is shaded. The library shades boxes; a square one keeps circles round.
func (p painter) shade(f *draw.Fill) {
	g := f.Gradient
	a, b := p.m.At(g.A), p.m.At(g.B)
	box := square(&f.Path, p.m)
	at := func(q draw.Point) (x, y float64) { return (q.X - box.X) / box.W, 1 - (q.Y-box.Y)/box.W }
	c, e := f.Color, g.To
	p.alpha(f.Color.A)
	p.put("q\n")
	p.outline(&f.Path)
	p.put("W n\n")
	p.flush()
	x1, y1 := at(a)
	if g.Kind == draw.Linear {
		x2, y2 := at(b)
		p.f.LinearGradient(box.X, box.Y, box.W, box.W, int(c.R), int(c.G), int(c.B), int(e.R), int(e.G), int(e.B), x1, y1, x2, y2)
	} else {
		r := math.Hypot(b.X-a.X, b.Y-a.Y) / box.W
		p.f.RadialGradient(box.X, box.Y, box.W, box.W, int(c.R), int(c.G), int(c.B), int(e.R), int(e.G), int(e.B), x1, y1, x1, y1, r)
	}
	p.unclip()
}

// square is a square that holds the mapped path.
func square(path *draw.Path, m draw.Affine) draw.Rect {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range path.Points {
		q = m.At(q)
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	s := max(x1-x0, y1-y0, 1e-3)
	return draw.Rect{X: x0, Y: y0, W: s, H: s}
}

func (d *Document) put(s string) { d.content = append(d.content, s...) }

func (d *Document) int(v int) { d.content = strconv.AppendInt(d.content, int64(v), 10) }

// float writes a number to the hundredth of a point; numbers that are none
// become 0.
func (d *Document) float(v float64) { d.digits(v, 100) }

func (d *Document) digits(v, per float64) {
	r := math.Round(v*per) / per
	if math.IsNaN(r) || math.IsInf(r, 0) || r == 0 {
		r = 0 // also for −0
	}
	d.content = strconv.AppendFloat(d.content, r, 'f', -1, 64)
}

func (d *Document) color(c draw.Color, op string) {
	for _, v := range [...]uint8{c.R, c.G, c.B} {
		d.digits(float64(v)/255, 1000)
		d.put(" ")
	}
	d.put(op + "\n")
}
