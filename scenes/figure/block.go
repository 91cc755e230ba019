package figure

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// The block, in its own units: along the section, into the page, and down.
const (
	blockWide = 6.0
	blockDeep = 5.0
	blockHigh = 3.4
	blockLean = 38 * orient.Degree // of the lines that run into the page
	blockBack = 0.55               // their scale
)

// block draws beds on the three faces of a block that can be seen. It is drawn
// askew, so that the front face keeps its true angles.
type block struct {
	l            *draw.List
	th           *theme.Theme
	k            float64
	origin       draw.Point // of the upper left corner of the front
	along, into  orient.Vec
	normal       orient.Vec
	bed          float64 // thickness across the beds
	side         [3][4]orient.Vec
	lower, upper int
}

// blockPicture is a block diagram: beds crop out on top and run through the
// front, which is a section along f.Section from left to right, and through
// the right-hand side.
func blockPicture(l *draw.List, th *theme.Theme, f item.BlockFigure) {
	back := draw.Point{X: blockDeep * blockBack * blockLean.Cos(), Y: blockDeep * blockBack * blockLean.Sin()}
	const edge = .25
	k := l.W / (blockWide + back.X + 2*edge)
	const foot = .62
	l.H = k * (blockHigh + back.Y + 2*edge + foot)
	b := &block{
		l: l, th: th, k: k, origin: draw.Point{X: k * edge, Y: k * (edge + back.Y)},
		along: f.Section.Vec(), into: f.Section.Add(-orient.Right).Vec(), normal: f.Plane.Normal(), bed: .55,
	}
	b.faces()
	b.paint()
	b.north()
	b.ends(f.Section)
}

// at is a point of the block in the world: u along the section, v into the
// page, w down.
func (b *block) at(u, v, w float64) orient.Vec {
	return r3.Add(r3.Add(r3.Scale(u, b.along), r3.Scale(v, b.into)), orient.Vec{Z: -w})
}

// page is where a point of the world is drawn.
func (b *block) page(p orient.Vec) draw.Point {
	u, v := r3.Dot(p, b.along), r3.Dot(p, b.into)
	return draw.Point{
		X: b.origin.X + b.k*(u+v*blockBack*blockLean.Cos()),
		Y: b.origin.Y - b.k*(p.Z+v*blockBack*blockLean.Sin()),
	}
}

func (b *block) faces() {
	const w, d, h = blockWide, blockDeep, blockHigh
	b.side = [3][4]orient.Vec{
		{b.at(0, 0, 0), b.at(w, 0, 0), b.at(w, d, 0), b.at(0, d, 0)}, // top
		{b.at(0, 0, 0), b.at(w, 0, 0), b.at(w, 0, h), b.at(0, 0, h)}, // front
		{b.at(w, 0, 0), b.at(w, d, 0), b.at(w, d, h), b.at(w, 0, h)}, // right
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, f := range b.side {
		for _, p := range f {
			low, high = min(low, b.depth(p)), max(high, b.depth(p))
		}
	}
	b.lower, b.upper = int(math.Floor(low)), int(math.Ceil(high))
}

// depth is the place across the beds, in beds, upward; a bed joint runs through
// the middle of the top.
func (b *block) depth(p orient.Vec) float64 {
	return r3.Dot(r3.Sub(p, b.at(blockWide/2, blockDeep/2, 0)), b.normal) / b.bed
}

func (b *block) paint() {
	for i, f := range b.side {
		for n := b.lower; n < b.upper; n++ {
			b.fillBed(i, f[:], n)
		}
	}
	for _, f := range b.side {
		for n := b.lower; n <= b.upper; n++ {
			b.joint(f[:], n)
		}
	}
	for _, f := range b.side {
		b.l.Stroke(b.outline(f[:]), draw.Stroke{Width: .05 * b.k, Color: b.th.Ink, Join: draw.RoundJoin})
	}
}

func (b *block) outline(pts []orient.Vec) draw.Path {
	out := make([]draw.Point, len(pts))
	for i, p := range pts {
		out[i] = b.page(p)
	}
	return shape(out)
}

// fillBed paints what bed n covers of a face.
func (b *block) fillBed(face int, pts []orient.Vec, n int) {
	in := b.cut(b.cut(pts, float64(n), 1), float64(n+1), -1)
	if len(in) < 3 {
		return
	}
	c := []draw.Color{b.th.RockHi, b.th.RockMid, b.th.RockHi, b.th.RockLo}[(n%4+4)%4]
	if face == 2 && !b.th.Flat {
		c = mix(c, b.th.RockShadow, .12)
	}
	b.l.Fill(b.outline(in), c)
}

// cut keeps the part of a convex outline that lies above (way 1) or below (way
// −1) a place across the beds.
func (b *block) cut(pts []orient.Vec, at, way float64) []orient.Vec {
	var out []orient.Vec
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		dp, dq := way*(b.depth(p)-at), way*(b.depth(q)-at)
		if dp >= 0 {
			out = append(out, p)
		}
		if (dp > 0 && dq < 0) || (dp < 0 && dq > 0) {
			out = append(out, r3.Add(p, r3.Scale(dp/(dp-dq), r3.Sub(q, p))))
		}
	}
	return out
}

// joint draws the trace of the joint between two beds on a face.
func (b *block) joint(pts []orient.Vec, n int) {
	var ends []orient.Vec
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		dp, dq := b.depth(p)-float64(n), b.depth(q)-float64(n)
		if (dp >= 0) != (dq >= 0) {
			ends = append(ends, r3.Add(p, r3.Scale(dp/(dp-dq), r3.Sub(q, p))))
		}
	}
	if len(ends) == 2 {
		b.l.Stroke(draw.Polyline(false, b.page(ends[0]), b.page(ends[1])), draw.Stroke{Width: .028 * b.k, Color: b.th.Ink})
	}
}

// north draws an arrow to the north on the top, as it looks from there.
func (b *block) north() {
	c := b.at(blockWide*.5, blockDeep*.5, 0)
	north, east := orient.Vec{Y: 1}, orient.Vec{X: 1}
	at := func(e, n float64) draw.Point {
		return b.page(r3.Add(c, r3.Add(r3.Scale(e, east), r3.Scale(n, north))))
	}
	disc := make([]draw.Point, 48)
	for i := range disc {
		a := orient.Full * orient.Angle(i) / 48
		disc[i] = at(1.9*a.Sin(), 1.9*a.Cos())
	}
	b.l.Fill(shape(disc), b.th.Panel)
	b.l.Stroke(shape(disc), draw.Stroke{Width: .03 * b.k, Color: b.th.Ink})
	arrow := []draw.Point{at(0, .85), at(.36, -.25), at(.1, -.25), at(.1, -1.3), at(-.1, -1.3), at(-.1, -.25), at(-.36, -.25)}
	b.l.Fill(shape(arrow), b.th.Ink)
	b.l.Text(label("N", at(0, 1.3), .36*b.k, 0, draw.Bold, b.th.Ink))
}

// ends writes which way the front runs.
func (b *block) ends(section orient.Azimuth) {
	size := .36 * b.k
	y := b.page(b.at(0, 0, blockHigh)).Y + b.k*.48
	name := func(a orient.Azimuth) string { return fmt.Sprintf("%03.0f°", math.Mod(math.Round(a.Degrees()), 360)) }
	b.l.Text(draw.Text{S: name(section.Opposite()), At: draw.Point{X: b.origin.X, Y: y}, Size: size, Font: draw.Bold, Color: b.th.Ink})
	b.l.Text(draw.Text{S: name(section), At: draw.Point{X: b.page(b.at(blockWide, 0, 0)).X, Y: y}, Size: size, Font: draw.Bold, Color: b.th.Ink, Align: draw.AlignRight})
}
