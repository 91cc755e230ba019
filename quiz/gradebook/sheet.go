package gradebook

import (
	"math"

	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// Sizes of type in the figures.
const (
	labelSize = 15
	tickSize  = 14
)

// sheet is a figure in the making, in the colours of the light theme.
type sheet struct {
	*draw.List
	t *theme.Theme
}

func newSheet(w, h float64) sheet {
	l := &draw.List{}
	l.Reset(w, h)
	return sheet{l, theme.Of(theme.Light)}
}

// words writes a text with the middle of its capitals at y.
func (s sheet) words(x, y float64, text string, size float64, f draw.Font, c draw.Color, a draw.Align) {
	s.Text(draw.Text{
		S: text, At: draw.Point{X: x, Y: y + draw.CapHeight(f, size)/2}, Size: size, Font: f, Color: c, Align: a,
	})
}

func (s sheet) label(x, y float64, text string, a draw.Align) {
	s.words(x, y, text, labelSize, draw.Regular, s.t.Ink, a)
}

func (s sheet) tick(x, y float64, text string, a draw.Align) {
	s.words(x, y, text, tickSize, draw.Regular, s.t.Ink2, a)
}

func (s sheet) head(x, y float64, text string, a draw.Align) {
	s.words(x, y, text, labelSize, draw.Bold, s.t.Ink, a)
}

// upright writes a text that reads upwards, centred at (x, y).
func (s sheet) upright(x, y float64, text string) {
	s.Text(draw.Text{
		S: text, At: draw.Point{X: x + draw.CapHeight(draw.Regular, labelSize)/2, Y: y}, Size: labelSize,
		Font: draw.Regular, Color: s.t.Ink, Align: draw.AlignCentre, Rotate: -math.Pi / 2,
	})
}

func (s sheet) line(x0, y0, x1, y1, width float64, c draw.Color, dash ...float64) {
	s.Stroke(draw.Polyline(false, draw.Point{X: x0, Y: y0}, draw.Point{X: x1, Y: y1}),
		draw.Stroke{Width: width, Color: c, Dash: dash})
}

func (s sheet) box(x, y, w, h float64, c draw.Color) {
	if w > 0 && h > 0 {
		s.Fill(draw.Box(draw.Rect{X: x, Y: y, W: w, H: h}), c)
	}
}

func (s sheet) frame(x, y, w, h float64, c draw.Color) {
	s.Stroke(draw.Box(draw.Rect{X: x, Y: y, W: w, H: h}), draw.Stroke{Width: 1, Color: c})
}

// right and wrong mark a reading: a dot and an open lozenge, so that the shape
// tells them apart.
func (s sheet) right(x, y float64) {
	s.Fill(draw.Circle(x, y, 3.2), s.t.WaterInk)
	s.Stroke(draw.Circle(x, y, 3.2), draw.Stroke{Width: 0.75, Color: s.t.Field})
}

func (s sheet) wrong(x, y float64) {
	const r = 5
	p := draw.Polyline(true, draw.Point{X: x, Y: y - r}, draw.Point{X: x + r, Y: y}, draw.Point{X: x, Y: y + r}, draw.Point{X: x - r, Y: y})
	s.Fill(p, s.t.Field)
	s.Stroke(p, draw.Stroke{Width: 1.5, Color: s.t.North})
}

func (s sheet) mark(right bool, x, y float64) {
	if right {
		s.right(x, y)
	} else {
		s.wrong(x, y)
	}
}

// legend explains the two marks from x on.
func (s sheet) legend(x, y float64) {
	s.right(x, y)
	s.tick(x+10, y, "answer marked right", draw.AlignLeft)
	x += 20 + roomy*draw.Measure(draw.Regular, tickSize, "answer marked right", 0) + 20
	s.wrong(x, y)
	s.tick(x+12, y, "not right", draw.AlignLeft)
}

// roomy is how much wider a text may come out where the reader lacks the
// reading face.
const roomy = 1.2

// fit shortens a text to a width.
func fit(text string, size, width float64) string {
	width /= roomy
	if draw.Measure(draw.Regular, size, text, 0) <= width {
		return text
	}
	r := []rune(text)
	for len(r) > 1 && draw.Measure(draw.Regular, size, string(r)+"…", 0) > width {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// faded is a colour with an opacity.
func faded(c draw.Color, a float64) draw.Color {
	c.A = uint8(math.Round(255 * a))
	return c
}
