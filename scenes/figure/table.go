package figure

import (
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// tablePicture is a table with a head in bold between two rules and a third at
// its foot, as tables are set in print. Its type shrinks until every column
// fits the width.
func tablePicture(l *draw.List, th *theme.Theme, f item.TableFigure) {
	cols := columns(f)
	if cols == 0 {
		return
	}
	size := min(l.W/float64(8*cols), l.W/18)
	for size > l.W/200 && tableWidth(f, cols, size) > l.W {
		size *= .95
	}
	widths := columnWidths(f, cols, size)
	spare := (l.W - sum(widths)) / float64(cols)
	step := 1.75 * size
	l.H = step*float64(len(f.Rows)+1) + .3*size
	top := .15 * size
	rule := func(y, w float64) {
		l.Stroke(draw.Polyline(false, draw.Point{X: 0, Y: y}, draw.Point{X: l.W, Y: y}), draw.Stroke{Width: w * size, Color: th.Ink})
	}
	rule(top, .09)
	rule(top+step, .05)
	rule(top+step*float64(len(f.Rows)+1), .09)
	row := func(cells []string, n int, font draw.Font) {
		x := 0.0
		for i, w := range widths {
			if i < len(cells) {
				c := draw.Point{X: x + (w+spare)/2, Y: top + step*(float64(n)+.5)}
				l.Text(label(cells[i], c, size, 0, font, th.Ink))
			}
			x += w + spare
		}
	}
	row(f.Head, 0, draw.Bold)
	for i, r := range f.Rows {
		row(r, i+1, draw.Regular)
	}
}

// columns is the largest number of cells in a row.
func columns(f item.TableFigure) int {
	n := len(f.Head)
	for _, r := range f.Rows {
		n = max(n, len(r))
	}
	return n
}

func columnWidths(f item.TableFigure, cols int, size float64) []float64 {
	w := make([]float64, cols)
	for i, s := range f.Head {
		w[i] = draw.Measure(draw.Bold, size, s, 0) + size
	}
	for _, r := range f.Rows {
		for i, s := range r {
			w[i] = max(w[i], draw.Measure(draw.Regular, size, s, 0)+size)
		}
	}
	return w
}

func tableWidth(f item.TableFigure, cols int, size float64) float64 {
	return sum(columnWidths(f, cols, size))
}

func sum(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s
}
