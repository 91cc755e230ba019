package paper

import (
	"fmt"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// Sheet is the kind of paper.
type Sheet uint8

// The sheets.
const (
	A4     Sheet = iota // 210 × 297 mm
	Letter              // 8.5 × 11 in
)

// setting is how pages are set.
type setting struct{ sheet pdf.Size }

func settingOf(s Sheet) setting { return setting{[...]pdf.Size{A4: pdf.A4, Letter: pdf.Letter}[s]} }

// room is the height of the text.
func (s setting) room() float64 { return s.sheet.H - marginTop - marginFoot }

// column is the width of the text.
func (s setting) column() float64 { return s.sheet.W - 2*marginX }

// Sizes of type, in points.
const (
	sizeTitle = 19.0
	sizeHead  = 11.5
	sizeText  = 10.5
	sizeSmall = 8.5
	leading   = 1.38 // distance of baselines, in em
)

var (
	ink  = draw.Color{A: 255}
	grey = draw.Color{R: 0x55, G: 0x55, B: 0x55, A: 255}
	pale = draw.Color{R: 0xF1, G: 0xF1, B: 0xF1, A: 255}
)

// prose sets text in lines of a width and returns the list and its height. Each
// line but the last ends in a space, so that words do not run together where
// the text is read aloud or copied.
func prose(text string, f draw.Font, size, width float64, c draw.Color) (*draw.List, float64) {
	l := &draw.List{W: width}
	lines := draw.Wrap(f, size, width, draw.Printed(text))
	for i, s := range lines {
		if i < len(lines)-1 {
			s += " "
		}
		l.Text(draw.Text{S: s, At: draw.Point{Y: size * (.95 + leading*float64(i))}, Size: size, Font: f, Color: c})
	}
	l.H = size * leading * float64(len(lines))
	return l, l.H
}

// line sets one line of text whose capitals begin at the top.
func line(text string, f draw.Font, size float64, a draw.Align, c draw.Color) *draw.List {
	text = draw.Printed(text)
	l := &draw.List{W: draw.Measure(f, size, text, 0), H: size * leading}
	l.Text(draw.Text{S: text, At: draw.Point{Y: size * .95}, Size: size, Font: f, Color: c, Align: a})
	return l
}

// fitted is line, in smaller type where it would be wider than the room, and cut
// short where even the smallest is too wide.
func fitted(text string, f draw.Font, size, room float64, c draw.Color) *draw.List {
	const smallest, step = 7.0, 0.5
	for size > smallest && draw.Measure(f, size, text, 0) > room {
		size = max(smallest, size-step)
	}
	if signs := []rune(text); draw.Measure(f, size, text, 0) > room {
		for len(signs) > 0 && draw.Measure(f, size, string(signs)+"…", 0) > room {
			signs = signs[:len(signs)-1]
		}
		text = string(signs) + "…"
	}
	return line(text, f, size, draw.AlignLeft, c)
}

// rule adds a level line.
func rule(l *draw.List, x, y, w, weight float64) {
	l.Stroke(draw.Polyline(false, draw.Point{X: x, Y: y}, draw.Point{X: x + w, Y: y}), draw.Stroke{Width: weight, Color: ink})
}

// ruled is a level line as a piece of a page.
func ruled(x, y, w, weight float64) node {
	l := &draw.List{}
	rule(l, 0, 0, w, weight)
	return node{role: ornament, at: draw.Point{X: x, Y: y}, list: l}
}

// boxed is a rectangle as a piece of a page, filled when fill is set.
func boxed(r draw.Rect, weight float64, fill *draw.Color) node {
	l := &draw.List{}
	if fill != nil {
		l.Fill(draw.Box(r), *fill)
	}
	if weight > 0 {
		l.Stroke(draw.Box(r), draw.Stroke{Width: weight, Color: ink})
	}
	return node{role: ornament, list: l}
}

// paragraph is prose as a piece of a page, with its height.
func paragraph(role pdf.Role, text string, f draw.Font, size, width float64, at draw.Point) (node, float64) {
	l, h := prose(text, f, size, width, ink)
	return node{role: role, list: l, at: at}, h
}

func pageOf(page, of int) string { return fmt.Sprintf("page %d of %d", page, of) }
