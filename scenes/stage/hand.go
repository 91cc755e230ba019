package stage

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// The hand is drawn in a frame of its own, in cm: x to the right, y down
// (towards the wrist), the back of a right hand with the fingers up, so that
// the thumb points left.
var handBox = draw.Rect{X: -8.6, Y: -10.2, W: 13.4, H: 17.4}

// finger is a straight digit from its root to its tip.
type finger struct{ x0, y0, x1, y1, wide float64 }

var fingers = [...]finger{
	{-2.55, 0.6, -3.05, -7.3, 1.75}, // first
	{-0.75, 0.3, -0.85, -8.6, 1.80},
	{1.05, 0.5, 1.25, -7.9, 1.72},
	{2.75, 1.2, 3.30, -5.8, 1.50}, // little
}

// handTexture bakes the hand.
func handTexture(th *theme.Theme, px float64) *draw.Texture {
	return figure.Bake(handBox, px, func(l *draw.List) { drawHandShape(l, th) })
}

func drawHandShape(l *draw.List, th *theme.Theme) {
	skin, line := handColours(th)
	const rim = 0.34
	layer := func(c draw.Color, grow float64) {
		pen := func(p draw.Path, w float64) {
			l.Stroke(p, draw.Stroke{Width: w + grow, Color: c, Cap: draw.RoundCap, Join: draw.RoundJoin})
		}
		l.Fill(palm(), c)
		if grow > 0 {
			l.Stroke(palm(), draw.Stroke{Width: grow, Color: c, Join: draw.RoundJoin})
		}
		pen(thumb(), 1.95)
		for _, f := range fingers {
			pen(draw.Polyline(false, draw.Point{X: f.x0, Y: f.y0}, draw.Point{X: f.x1, Y: f.y1}), f.wide)
		}
	}
	layer(opaque(line), rim)
	layer(opaque(skin), 0)
	for _, f := range fingers {
		creases(l, f, line)
	}
	nail(l, -7.1, 1.5, 0.95, 0.62, line)
	cuff(l, line)
}

// handColours are paper and ink: a light hand wherever the theme allows one.
func handColours(th *theme.Theme) (skin, line draw.Color) {
	if th.Dark && !th.Flat {
		return th.Edge, th.WaterCase
	}
	return th.WaterCase, th.WaterInk
}

func opaque(c draw.Color) draw.Color { c.A = 255; return c }

// palm is the back of the hand down to the wrist.
func palm() draw.Path {
	var p draw.Path
	p.MoveTo(-3.45, 0.6)
	p.CubeTo(-3.5, 2.2, -3.2, 3.4, -2.3, 4.7)
	p.LineTo(-2.05, 6.6)
	p.LineTo(2.0, 6.6)
	p.CubeTo(2.1, 5.2, 3.2, 4.2, 3.45, 1.2)
	p.LineTo(1.9, -0.4)
	p.LineTo(-1.7, -0.5)
	p.Close()
	return p
}

// thumb runs along the strike: straight out from the palm.
func thumb() draw.Path {
	var p draw.Path
	p.MoveTo(-1.9, 3.6)
	p.CubeTo(-3.2, 3.3, -4.3, 1.75, -7.0, 1.5)
	return p
}

// creases marks the joints and the nail of a finger.
func creases(l *draw.List, f finger, c draw.Color) {
	c.A = 120
	dx, dy := f.x1-f.x0, f.y1-f.y0
	for _, k := range [...]float64{0.40, 0.70} {
		x, y := f.x0+k*dx, f.y0+k*dy
		var p draw.Path
		p.MoveTo(x-0.36*f.wide/1.7, y)
		p.QuadTo(x, y-0.16, x+0.36*f.wide/1.7, y)
		l.Stroke(p, draw.Stroke{Width: 0.11, Color: c, Cap: draw.RoundCap})
	}
	nail(l, f.x1, f.y1+0.02, 0.62*f.wide/1.7, 0.95, c)
}

func nail(l *draw.List, x, y, w, h float64, c draw.Color) {
	c.A = 120
	l.Stroke(draw.RoundBox(draw.Rect{X: x - w/2, Y: y - h/2, W: w, H: h}, 0.3), draw.Stroke{Width: 0.11, Color: c})
}

// cuff closes the wrist.
func cuff(l *draw.List, c draw.Color) {
	l.Fill(draw.RoundBox(draw.Rect{X: -2.55, Y: 5.7, W: 5.1, H: 1.35}, 0.3), opaque(c))
}

// Where the hand lies: the root of the fingers, and its size.
const (
	handB    = 1.0
	handSize = 0.74
)

// drawHand lays the hand on the rock with the fingers straight down the dip:
// the thumb of a right hand then points along the strike.
func (st *Stage) drawHand(sc *scene) {
	key := handKey{sc.th.Name, st.kit.px}
	if st.hand.texture == nil || st.hand.key != key {
		st.hand.key, st.hand.texture = key, handTexture(sc.th, key.px*handSize)
	}
	a0 := sc.handA()
	b := sc.open(st.hand.texture)
	at := func(x, y float64) corner {
		u, v := figure.UV(st.hand.texture, draw.Point{X: x, Y: y})
		return corner{at: sc.on(a0-handSize*x, handB-handSize*y, 0), u: u, v: v, c: grey(1)}
	}
	const n = 3
	for i := range n {
		for j := range n {
			x0, x1 := handBox.X+handBox.W*float64(i)/n, handBox.X+handBox.W*float64(i+1)/n
			y0, y1 := handBox.Y+handBox.H*float64(j)/n, handBox.Y+handBox.H*float64(j+1)/n
			b.polygon(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1))
		}
	}
	b.pen.Done()
}

// handA is where the middle of the hand lies along the strike: beside the
// instrument, on the side of the arrow.
func (sc *scene) handA() float64 {
	if sc.p.Pose.Seat == sim.OnSide {
		return sc.arrowA - 1
	}
	return sc.arrowA + 0.2
}

type handKey struct {
	theme theme.Name
	px    float64
}

type hand struct {
	key     handKey
	texture *draw.Texture
}
