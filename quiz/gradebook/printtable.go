package gradebook

import (
	"cmp"
	"slices"
	"strings"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// table sets a table, its head again on each page it goes on to.
func (p *press) table(head []cell, rows [][]cell) {
	if len(head) == 0 {
		return
	}
	widths := p.columns(head, rows)
	p.d.Open(pdf.Table, "")
	p.row(head, widths, true)
	for _, r := range rows {
		if p.room(p.rowHeight(r, widths, draw.Regular)) {
			p.row(head, widths, true)
		}
		p.row(r, widths, false)
	}
	p.d.Shut()
	p.y += tableGap
}

// columns shares out the width. Every column gets what its longest word needs;
// the rest goes first to those that are soon content, so that names and numbers
// stay on one line and long texts take what is left.
func (p *press) columns(head []cell, rows [][]cell) []float64 {
	out, want := make([]float64, len(head)), make([]float64, len(head))
	look := func(f draw.Font, r []cell) {
		for i, c := range r {
			want[i] = max(want[i], draw.Measure(f, smallSize, strings.Join(strings.Fields(c.Text), " "), 0))
			out[i] = max(out[i], min(120, widestWord(f, c.Text)))
		}
	}
	look(draw.Bold, head)
	for _, r := range rows {
		look(draw.Regular, r)
	}
	left := p.width() - cellGap*float64(len(head)-1)
	var hungry []int
	for i := range out {
		left -= out[i]
		if want[i] > out[i] {
			hungry = append(hungry, i)
		}
	}
	slices.SortStableFunc(hungry, func(i, j int) int { return cmp.Compare(want[i]-out[i], want[j]-out[j]) })
	for n, i := range hungry {
		more := min(want[i]-out[i], max(0, left)/float64(len(hungry)-n))
		out[i] += more
		left -= more
	}
	return out
}

func widestWord(f draw.Font, text string) float64 {
	w, start := 0.0, 0
	for i, r := range text + " " {
		if r == ' ' {
			w, start = max(w, draw.Measure(f, smallSize, text[start:min(i, len(text))], 0)), i+1
		}
	}
	return w
}

// padding stands above and below the words of a row.
const padding = 2.5

func (p *press) rowHeight(r []cell, widths []float64, f draw.Font) float64 {
	h := 0.0
	for i, c := range r {
		h = max(h, p.cell(c, widths[i], f).H)
	}
	return h + 2*padding
}

func (p *press) cell(c cell, width float64, f draw.Font) *draw.List {
	a := draw.AlignLeft
	if c.Number {
		a = draw.AlignRight
	}
	// A hair more room, so that what was measured to fit does fit.
	return p.lines(c.Text, width+0.01, smallSize, f, p.t.Ink, a)
}

func (p *press) row(r []cell, widths []float64, head bool) {
	role, f, rule := pdf.Cell, draw.Regular, p.t.Line
	if head {
		role, f, rule = pdf.HeadCell, draw.Bold, p.t.FieldLine
	}
	h := p.rowHeight(r, widths, f)
	p.d.Open(pdf.Row, "")
	x := 0.0
	for i, c := range r {
		l := p.cell(c, widths[i], f)
		to := widths[i]
		if i < len(r)-1 {
			to += cellGap
		}
		bottom := h - padding
		l.Stroke(draw.Polyline(false, draw.Point{Y: bottom}, draw.Point{X: to, Y: bottom}), draw.Stroke{Width: 0.5, Color: rule})
		p.d.In(role, "", l, draw.Affine{A: 1, D: 1, E: margin + x, F: p.y + padding})
		x += widths[i] + cellGap
	}
	p.d.Shut()
	p.y += h
}
