package figure

import (
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// mapPicture is a small map, north up, in a frame ticked like a map's neat
// line.
func mapPicture(l *draw.List, th *theme.Theme, f item.MapFigure) {
	l.H = l.W
	k := l.W / 10
	mapFrame(l, th, k)
	c := draw.Point{X: 4.6 * k, Y: 5.3 * k}
	switch {
	case f.Blank:
		station(l, th, c, k)
	case f.LineOnly:
		letteredLine(l, th, c, 5.4*k, f)
	default:
		Symbol(l, th, c, 5.4*k, f.Plane)
	}
	NorthArrow(l, th, draw.Point{X: 9.05 * k, Y: 1.75 * k}, 1.9*k)
}

func mapFrame(l *draw.List, th *theme.Theme, k float64) {
	const edge = .12
	box := draw.Rect{X: edge * k, Y: edge * k, W: l.W - 2*edge*k, H: l.H - 2*edge*k}
	l.Stroke(draw.Box(box), draw.Stroke{Width: .055 * k, Color: th.Ink})
	var ticks draw.Path
	const n, reach = 6, .22
	for i := 1; i < n; i++ {
		t := float64(i) / n
		x, y := box.X+t*box.W, box.Y+t*box.H
		for _, s := range [][4]float64{
			{x, box.Y, x, box.Y + reach*k}, {x, box.Y + box.H, x, box.Y + box.H - reach*k},
			{box.X, y, box.X + reach*k, y}, {box.X + box.W, y, box.X + box.W - reach*k, y},
		} {
			ticks.MoveTo(s[0], s[1])
			ticks.LineTo(s[2], s[3])
		}
	}
	l.Stroke(ticks, draw.Stroke{Width: .03 * k, Color: th.Ink})
}

// station is the point of a reading that has still to be drawn.
func station(l *draw.List, th *theme.Theme, c draw.Point, k float64) {
	l.Fill(draw.Circle(c.X, c.Y, .09*k), th.Ink)
	l.Stroke(draw.Circle(c.X, c.Y, .24*k), draw.Stroke{Width: .035 * k, Color: th.Ink})
}

// letteredLine is a strike line with its tick and a letter at each end.
func letteredLine(l *draw.List, th *theme.Theme, c draw.Point, length float64, f item.MapFigure) {
	s := symbol{l: l, th: th, c: c, length: length, plane: f.Plane}
	s.strike()
	s.line(c, s.at(0, symbolTick))
	size := symbolNumber * length * 1.1
	l.Text(label(f.Ends[0], s.at(.62, 0), size, 0, draw.Bold, th.Ink))
	l.Text(label(f.Ends[1], s.at(-.62, 0), size, 0, draw.Bold, th.Ink))
}

// NorthArrow adds an arrow to the north of a height about c, its right half
// filled, with an N above.
func NorthArrow(l *draw.List, th *theme.Theme, c draw.Point, height float64) {
	h, w := height*.66, height*.19
	top, foot := c.Y-height*.5+height*.34, c.Y+height*.5
	tip, notch := draw.Point{X: c.X, Y: top}, draw.Point{X: c.X, Y: foot - h*.24}
	left, right := draw.Point{X: c.X - w, Y: foot}, draw.Point{X: c.X + w, Y: foot}
	l.Fill(draw.Polyline(true, tip, right, notch), th.Ink)
	l.Stroke(draw.Polyline(true, tip, right, notch, left), draw.Stroke{Width: height * .02, Color: th.Ink, Join: draw.RoundJoin})
	l.Text(label("N", draw.Point{X: c.X, Y: c.Y - height*.5 + height*.14}, height*.34, 0, draw.Bold, th.Ink))
}
