package scenes

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/theme"
)

// scanMark draws the mark of scanning: a thick frame in ink between two thin
// ones in the colour of the panel, so that it is seen on every ground. Round a
// single control it has corners too, so that the two differ by shape.
type scanMark struct {
	set   Settings
	frame input.Frame
}

func (k scanMark) draw(l *draw.List, p spot) {
	th := theme.Of(k.set.Theme)
	u := layOut(frameOf{W: k.frame.W, H: k.frame.H, Scale: k.frame.Scale, Text: 1, BarLines: 1, StripRows: 1, ButtonRows: 1}).Unit
	r := k.within(draw.Rect(p.box), 9*u)
	l.Over(func(pen *draw.Pen) {
		band(pen, grow(r, 9*u), 9*u, th.Panel)
		band(pen, grow(r, 7*u), 5*u, th.Ink)
		if p.sub == nil {
			corners(pen, grow(r, 7*u), 14*u, th.Ink)
		}
	})
}

// within keeps room for the frame at the edges of the picture.
func (k scanMark) within(r draw.Rect, d float64) draw.Rect {
	x, y := max(r.X, d), max(r.Y, d)
	return draw.Rect{X: x, Y: y, W: min(r.X+r.W, k.frame.W-d) - x, H: min(r.Y+r.H, k.frame.H-d) - y}
}

// band is a frame of a width that lies inside r.
func band(p *draw.Pen, r draw.Rect, w float64, c draw.Color) {
	for _, q := range [...]draw.Rect{
		{X: r.X, Y: r.Y, W: r.W, H: w}, {X: r.X, Y: r.Y + r.H - w, W: r.W, H: w},
		{X: r.X, Y: r.Y, W: w, H: r.H}, {X: r.X + r.W - w, Y: r.Y, W: w, H: r.H},
	} {
		p.Quad(corner(p, q.X, q.Y, c), corner(p, q.X+q.W, q.Y, c), corner(p, q.X+q.W, q.Y+q.H, c), corner(p, q.X, q.Y+q.H, c))
	}
}

// corners are filled in at an angle.
func corners(p *draw.Pen, r draw.Rect, d float64, c draw.Color) {
	x1, y1 := r.X+r.W, r.Y+r.H
	for _, q := range [...][3]draw.Point{
		{{X: r.X, Y: r.Y}, {X: r.X + d, Y: r.Y}, {X: r.X, Y: r.Y + d}},
		{{X: x1, Y: r.Y}, {X: x1 - d, Y: r.Y}, {X: x1, Y: r.Y + d}},
		{{X: r.X, Y: y1}, {X: r.X + d, Y: y1}, {X: r.X, Y: y1 - d}},
		{{X: x1, Y: y1}, {X: x1 - d, Y: y1}, {X: x1, Y: y1 - d}},
	} {
		p.Triangle(corner(p, q[0].X, q[0].Y, c), corner(p, q[1].X, q[1].Y, c), corner(p, q[2].X, q[2].Y, c))
	}
}
