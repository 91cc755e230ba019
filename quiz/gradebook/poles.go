package gradebook

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"cuesta/orient"
	"cuesta/orient/net"
	"cuesta/quiz/grade"
	"cuesta/scenes/draw"
)

// about is the equal-area net with the pole of a plane in its middle: to the
// right the strike was read too far clockwise, upwards the dip too steep.
func about(truth orient.Plane) net.Net {
	return net.Net{
		Kind: net.EqualArea, Down: r3.Scale(-1, truth.Normal()),
		East: truth.StrikeVec(), North: r3.Scale(-1, truth.DownDip()),
	}
}

// poleAbout is the place of a measured pole on the net of its truth. A pole is
// an axis: the end that lies in the hemisphere about the truth is taken.
func poleAbout(q grade.PlaneResult) net.Point {
	n := about(q.Truth)
	v := r3.Scale(-1, q.Answer.Normal())
	if r3.Dot(v, n.Down) < 0 {
		v = r3.Scale(-1, v)
	}
	return n.Project(v)
}

// radiusOf is the radius of the circle at the angle c about the middle of an
// equal-area net: √2·sin(c/2).
func radiusOf(c orient.Angle) float64 { return math.Sqrt2 * (c / 2).Sin() }

// closeUp is the radius of the enlarged middle.
const closeUp = 15 * orient.Degree

// polesFigure shows everyone's poles about the true one, whole and enlarged.
func polesFigure(a grade.Analysis) Figure {
	ps, n := thinned(a.Planes)
	const r, top = 178, 78
	s := newSheet(figureWidth, top+2*r+64)
	whole := disc{s, s.W/4 + 2, top + r, r, r}
	inner := disc{s, 3*s.W/4 - 2, top + r, r, r / radiusOf(closeUp)}
	s.legend(whole.x-r, 14)
	whole.rings("whole hemisphere", 30*orient.Degree, 60*orient.Degree, orient.Right)
	inner.rings("middle, enlarged", 5*orient.Degree, 10*orient.Degree, closeUp)
	s.Stroke(draw.Circle(whole.x, whole.y, r*radiusOf(closeUp)), draw.Stroke{Width: 1, Color: s.t.WaterInk, Dash: []float64{4, 3}})
	for _, q := range ps {
		at := poleAbout(q)
		whole.pole(q.Right, at)
		if math.Hypot(at.X, at.Y) <= radiusOf(closeUp) {
			inner.pole(q.Right, at)
		}
	}
	return Figure{
		Name: "poles", Title: "Everyone's poles about the true one", List: s.List, Alt: polesAlt(a.Planes),
		Caption: "Poles of all measured planes on an equal-area net, each turned so that the true pole stands in the middle: upwards the dip was read too steep, to the right the strike too far clockwise. The circles are angles from the truth." + thinnedWords(n),
	}
}

// disc is a net on the figure: its middle, its radius, and the scale.
type disc struct {
	sheet
	x, y, r float64
	scale   float64 // of a net whose primitive has the radius 1
}

func (d disc) rings(title string, angles ...orient.Angle) {
	d.Fill(draw.Circle(d.x, d.y, d.r), d.t.Field)
	d.line(d.x-d.r, d.y, d.x+d.r, d.y, 1, d.t.Line)
	d.line(d.x, d.y-d.r, d.x, d.y+d.r, 1, d.t.Line)
	for i, a := range angles {
		c, w := d.t.Line, 1.0
		if i == len(angles)-1 {
			c, w = d.t.Ink2, 1.5
		}
		d.Stroke(draw.Circle(d.x, d.y, d.scale*radiusOf(a)), draw.Stroke{Width: w, Color: c})
	}
	for _, a := range angles {
		k := d.scale * radiusOf(a) * math.Sqrt2 / 2
		text := fmt.Sprintf("%.0f°", a.Degrees())
		w := draw.Measure(draw.Regular, tickSize, text, 0)
		d.box(d.x+k-w/2-2, d.y+k-9, w+4, 18, d.t.Field)
		d.tick(d.x+k, d.y+k, text, draw.AlignCentre)
	}
	d.head(d.x, d.y-d.r-32, title, draw.AlignCentre)
	d.tick(d.x, d.y-d.r-12, "steeper", draw.AlignCentre)
	d.tick(d.x, d.y+d.r+14, "gentler", draw.AlignCentre)
	d.tick(d.x+d.r, d.y+d.r+14, "strike clockwise →", draw.AlignRight)
	d.tick(d.x-d.r, d.y+d.r+14, "← anticlockwise", draw.AlignLeft)
}

func (d disc) pole(right bool, at net.Point) {
	d.mark(right, d.x+d.scale*at.X, d.y-d.scale*at.Y)
}

func polesAlt(ps []grade.PlaneResult) string {
	near := 0
	var off []float64
	for _, q := range ps {
		a := q.Truth.AngleTo(q.Answer)
		off = append(off, a.Degrees())
		if a <= closeUp {
			near++
		}
	}
	return fmt.Sprintf("Two equal-area nets with %d poles about the true one, whole and enlarged. %d lie within 15 degrees of it; the median distance is %s°.",
		len(ps), near, decimal(median(off)))
}

// median is the middle value; the mean of the two middle ones of an even
// number. It sorts x.
func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	slices.Sort(x)
	return (x[(len(x)-1)/2] + x[len(x)/2]) / 2
}
