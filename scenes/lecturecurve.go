package scenes

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
	"cuesta/sim"
	"cuesta/sim/instrument"
)

// tiltShown is how far the edge plunges, as far as the bubble tells: its offset
// along the edge over the radius of the vial.
func tiltShown(l sim.RoundLevel) orient.Angle {
	r := instrument.StandardRound()
	return orient.Angle(math.Abs(l.Forward) * r.Ring / r.Radius)
}

// mostError is the top of the diagram.
const mostError = 30 * orient.Degree

// curvePicture is the diagram of strike error against dip: its axes and its
// caption baked, its curve drawn anew in every picture.
type curvePicture struct {
	key     curveKey
	axes    draw.Texture
	caption draw.Texture
	lists   [2]draw.List
	pts     []draw.Point
}

// curveKey is what the baked parts depend on.
type curveKey struct {
	rect    draw.Rect
	th      *theme.Theme
	size, u float64
	words   string
	steep   bool // the axis of dips goes on to 90°
}

// mostDip is the end of the axis of dips: most of the curve's bend lies below
// 10°, so that steep beds get room only where one is shown.
func (k curveKey) mostDip() orient.Angle {
	if k.steep {
		return orient.Right
	}
	return gentleDips
}

const gentleDips = 45 * orient.Degree

// plot is where the axes stand in the diagram.
func (k curveKey) plot() draw.Rect {
	left, foot := 2.4*k.size, 1.5*k.size
	words := 2.6 * k.size
	top := 1.75 * k.size
	r := k.rect
	return draw.Rect{X: r.X + left, Y: r.Y + top, W: r.W - left - 1.2*k.size, H: r.H - top - foot - words}
}

// at is the place of a point of the diagram.
func (k curveKey) at(dip, off orient.Angle) draw.Point {
	p := k.plot()
	return draw.Point{X: p.X + p.W*float64(dip/k.mostDip()), Y: p.Y + p.H*(1-float64(off/mostError))}
}

// curveWords says in figures what the diagram shows at this slab.
func curveWords(tilt, dip orient.Angle) string {
	off := orient.StrikeError(tilt, dip)
	if off >= orient.Right {
		return fmt.Sprintf("Edge %.1f° off level:\nany strike may be read", tilt.Degrees())
	}
	return fmt.Sprintf("Edge %.1f° off level:\nstrike off by %.0f°", tilt.Degrees(), off.Degrees())
}

// draw adds the diagram for a tilt of the edge, with the slab's point on it.
func (c *curvePicture) draw(l *draw.List, k curveKey, tilt, dip orient.Angle) {
	if k != c.key {
		c.bake(k)
	}
	p := k.plot()
	if p.W < 10 || p.H < 10 {
		return
	}
	l.Sprite(&c.axes, k.rect.X, k.rect.Y, 1, 1)
	l.Sprite(&c.caption, k.rect.X, k.rect.Y+float64(c.axes.H), 1, 1)
	c.follow(k, tilt)
	pen := l.Open(nil)
	pen.FeatherLine(c.pts, 4.5*k.u, 1, k.th.WaterInk, false)
	off := orient.StrikeError(tilt, dip)
	at := k.at(dip, min(off, mostError))
	pen.Disc(at, 11*k.u, 1, k.th.Panel)
	pen.Disc(at, 8*k.u, 1, k.th.Ink)
	if off > mostError { // it lies above the diagram
		y := at.Y - 13*k.u
		pen.FeatherPolygon([]draw.Point{{X: at.X, Y: y - 12*k.u}, {X: at.X + 9*k.u, Y: y}, {X: at.X - 9*k.u, Y: y}}, 1, k.th.Ink)
	}
	pen.Done()
}

// follow are the points of the curve, from where it comes into the diagram.
func (c *curvePicture) follow(k curveKey, tilt orient.Angle) {
	c.pts = c.pts[:0]
	if tilt < orient.Degree/100 {
		c.pts = append(c.pts, k.at(0, 0), k.at(k.mostDip(), 0))
		return
	}
	// tan d = tan β / sin ε: the dip at which the curve leaves by the top.
	from := orient.Atan2(tilt.Tan(), mostError.Sin())
	const n = 48
	for i := range n + 1 {
		t := float64(i) / n
		d := from + orient.Angle(t*t)*(k.mostDip()-from)
		c.pts = append(c.pts, k.at(d, min(mostError, orient.StrikeError(tilt, d))))
	}
}

func (c *curvePicture) bake(k curveKey) {
	words := int(math.Ceil(2.6 * k.size))
	if a, b := k, c.key; a.words == b.words || c.axes.List == nil || a.rect != b.rect || a.th != b.th || a.size != b.size {
		c.bakeAxes(k, int(k.rect.H)-words)
	}
	c.key = k
	list := &c.lists[1]
	list.Reset(k.rect.W, float64(words))
	for i, s := range splitLines(k.words) {
		list.Text(draw.Text{S: s, At: draw.Point{X: k.rect.W / 2, Y: (float64(i) + .85) * 1.22 * k.size}, Size: k.size, Font: draw.Bold, Color: k.th.Ink, Align: draw.AlignCentre})
	}
	c.caption = draw.Texture{W: int(k.rect.W), H: words, List: list, Version: c.caption.Version + 1}
}

func (c *curvePicture) bakeAxes(k curveKey, h int) {
	l := &c.lists[0]
	l.Reset(k.rect.W, float64(h))
	base := k
	base.rect.X, base.rect.Y = 0, 0
	p := base.plot()
	rule := max(1, math.Round(k.u))
	line := func(a, b draw.Point, w float64, ink draw.Color) {
		l.Stroke(draw.Polyline(false, a, b), draw.Stroke{Width: w, Color: ink})
	}
	word := func(s string, x, y float64, a draw.Align) {
		l.Text(draw.Text{S: s, At: draw.Point{X: x, Y: y}, Size: k.size, Color: k.th.Ink, Align: a})
	}
	for off := orient.Angle(0); off <= mostError; off += 10 * orient.Degree {
		a, b := base.at(0, off), base.at(base.mostDip(), off)
		line(a, b, rule, k.th.FieldLine)
		word(fmt.Sprintf("%.0f°", off.Degrees()), a.X-.35*k.size, a.Y+.35*k.size, draw.AlignRight)
	}
	last := k.mostDip()
	for dip := orient.Angle(0); dip < last+orient.Degree; dip += last / 3 {
		a := base.at(dip, 0)
		line(draw.Point{X: a.X, Y: a.Y + 6*k.u}, a, rule, k.th.Ink)
		s := fmt.Sprintf("%.0f°", dip.Degrees())
		if dip > last-orient.Degree {
			s = "dip " + s
			word(s, p.X+p.W+1.1*k.size, a.Y+1.35*k.size, draw.AlignRight)
			continue
		}
		if dip > last/2 && p.W < 8.5*k.size { // no room beside the last
			continue
		}
		word(s, a.X, a.Y+1.35*k.size, draw.AlignCentre)
	}
	line(base.at(0, 0), base.at(last, 0), 2*rule, k.th.Ink)
	line(base.at(0, 0), base.at(0, mostError), 2*rule, k.th.Ink)
	word("Strike off by", 0, .95*k.size, draw.AlignLeft)
	c.axes = draw.Texture{W: int(k.rect.W), H: h, List: l, Version: c.axes.Version + 1}
}
