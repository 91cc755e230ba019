package figure

import (
	"math"
	"strconv"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// The map symbol, in units of the length of its strike line.
const (
	symbolTick   = 0.24 // down the dip
	symbolWeight = 0.035
	symbolNumber = 0.21 // size of the number
	symbolHook   = 0.11 // radius of the hook of an overturned bed
	symbolRound  = 0.26 // radius of the ring of a horizontal bed
)

// Symbol adds the map symbol of a bedding plane about c, its strike line length
// units long, north up: after FGDC-STD-013-2006, section 6 (from memory): 6.1
// horizontal, a cross in a ring; 6.2 inclined, the line along the strike, a
// tick down the dip at its middle and the dip beside it; 6.3 vertical, the tick
// on both sides; 6.4 overturned, the tick begins as a hook. The line is true
// to the strike, the number upright.
func Symbol(l *draw.List, th *theme.Theme, c draw.Point, length float64, p orient.Plane) {
	s := symbol{l: l, th: th, c: c, length: length, plane: p}
	switch dip := math.Round(p.Dip.Degrees()); {
	case dip <= 0:
		s.horizontal()
	case dip >= 90:
		s.vertical()
	case p.Overturned:
		s.overturned()
	default:
		s.inclined()
	}
}

type symbol struct {
	l      *draw.List
	th     *theme.Theme
	c      draw.Point
	length float64
	plane  orient.Plane
}

// at is the point along the strike and down the dip, in units of the length.
func (s symbol) at(along, down float64) draw.Point {
	a := s.plane.Strike.Angle()
	return draw.Point{
		X: s.c.X + s.length*(along*a.Sin()+down*a.Cos()),
		Y: s.c.Y + s.length*(down*a.Sin()-along*a.Cos()),
	}
}

func (s symbol) ink() draw.Stroke {
	return draw.Stroke{Width: symbolWeight * s.length, Color: s.th.Ink, Join: draw.RoundJoin}
}

func (s symbol) line(a, b draw.Point) { s.l.Stroke(draw.Polyline(false, a, b), s.ink()) }

func (s symbol) strike() { s.line(s.at(-.5, 0), s.at(.5, 0)) }

func (s symbol) horizontal() {
	r := symbolRound * s.length
	s.l.Stroke(draw.Circle(s.c.X, s.c.Y, r), s.ink())
	s.line(draw.Point{X: s.c.X - r, Y: s.c.Y}, draw.Point{X: s.c.X + r, Y: s.c.Y})
	s.line(draw.Point{X: s.c.X, Y: s.c.Y - r}, draw.Point{X: s.c.X, Y: s.c.Y + r})
}

func (s symbol) vertical() {
	s.strike()
	s.line(s.at(0, -symbolTick/2), s.at(0, symbolTick/2))
}

func (s symbol) inclined() {
	s.strike()
	s.line(s.c, s.at(0, symbolTick))
	s.number()
}

// overturned draws a hook that leaves the strike line up the dip and comes back
// through its middle as the tick.
func (s symbol) overturned() {
	s.strike()
	const steps = 16
	pts := make([]draw.Point, 0, steps+2)
	for i := range steps + 1 {
		a := math.Pi * float64(i) / steps
		pts = append(pts, s.at(-symbolHook*(1+math.Cos(a)), -symbolHook*math.Sin(a)))
	}
	s.l.Stroke(draw.Polyline(false, append(pts, s.at(0, symbolTick))...), s.ink())
	s.number()
}

// number sets the dip beyond the tick, clear of it whatever way the tick
// points.
func (s symbol) number() {
	text := strconv.Itoa(int(math.Round(s.plane.Dip.Degrees())))
	size := symbolNumber * s.length
	w := draw.Measure(draw.Bold, size, text, 0)
	a := s.plane.Strike.Angle()
	out := (math.Abs(a.Cos())*w + math.Abs(a.Sin())*2*halfDigit*size) / 2
	c := s.at(0, symbolTick+.06+out/s.length)
	s.l.Text(label(text, c, size, 0, draw.Bold, s.th.Ink))
}
