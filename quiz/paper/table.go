package paper

import (
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// column of a table; width is its share of the whole.
type column struct {
	head  string
	width float64
	align draw.Align
}

// cellPad is the space beside the words of a cell; narrow cells have less.
const cellPad = 5.0

// gridTable is a table with lines about every cell; sided says that the first
// column heads the rows. The rows are as high as given, or as their words need.
func gridTable(cols []column, rows [][]string, w, high float64, sided bool) answer {
	table := node{role: pdf.Table}
	ground, lines := &draw.List{}, &draw.List{}
	y := 0.0
	put := func(cells []string, font draw.Font, least float64, role, first pdf.Role) {
		row, h := tableRow(cols, cells, w, font, least, role, first)
		row.at.Y = y
		if role == pdf.HeadCell {
			ground.Fill(draw.Box(draw.Rect{Y: y, W: w, H: h}), pale)
		}
		table.kids = append(table.kids, row)
		if y > 0 {
			rule(lines, 0, y, w, .5)
		}
		y += h
	}
	put(heads(cols), draw.Bold, 0, pdf.HeadCell, pdf.HeadCell)
	first := pdf.Cell
	if sided {
		first = pdf.SideCell
	}
	for _, r := range rows {
		put(r, draw.Regular, high, pdf.Cell, first)
	}
	frame(lines, cols, w, y)
	return answer{[]node{{role: ornament, list: ground}, {role: ornament, list: lines}, table}, y}
}

// gridTables cuts a long table into several, none higher than room, each with
// the head.
func gridTables(cols []column, rows [][]string, w, high float64, room float64) []answer {
	_, head := tableRow(cols, heads(cols), w, draw.Bold, 0, pdf.HeadCell, pdf.HeadCell)
	var out []answer
	from, y := 0, head
	for i, r := range rows {
		_, h := tableRow(cols, r, w, draw.Regular, high, pdf.Cell, pdf.SideCell)
		if i > from && y+h > room {
			out = append(out, gridTable(cols, rows[from:i], w, high, true))
			from, y = i, head
		}
		y += h
	}
	return append(out, gridTable(cols, rows[from:], w, high, true))
}

func heads(cols []column) []string {
	out := make([]string, len(cols))
	for i, c := range cols {
		out[i] = c.head
	}
	return out
}

// frame adds the lines between columns and the frame.
func frame(l *draw.List, cols []column, w, h float64) {
	x := 0.0
	for _, c := range cols[:len(cols)-1] {
		x += c.width * w
		l.Stroke(draw.Polyline(false, draw.Point{X: x}, draw.Point{X: x, Y: h}), draw.Stroke{Width: .5, Color: ink})
	}
	l.Stroke(draw.Box(draw.Rect{W: w, H: h}), draw.Stroke{Width: .9, Color: ink})
}

// tableRow is a row with its height: the highest cell with its padding, or
// least.
func tableRow(cols []column, cells []string, w float64, f draw.Font, least float64, role, first pdf.Role) (node, float64) {
	const size = sizeText - 1
	row := node{role: pdf.Row}
	x, h := 0.0, least
	for i, c := range cols {
		width := c.width * w
		pad := min(cellPad, width*.06)
		text, th := prose(cells[i], f, size, width-2*pad, ink)
		aligned(text, c.align, width-2*pad)
		r := role
		if i == 0 {
			r = first
		}
		row.kids = append(row.kids, node{role: r, list: text, at: draw.Point{X: x + pad}})
		h, x = max(h, th+8), x+width
	}
	for i := range row.kids {
		row.kids[i].at.Y = (h - row.kids[i].list.H) / 2
	}
	return row, h
}

// aligned moves lines within a width.
func aligned(l *draw.List, a draw.Align, w float64) {
	for i := range l.Texts {
		l.Texts[i].Align = a
		switch a {
		case draw.AlignLeft:
		case draw.AlignCentre:
			l.Texts[i].At.X = w / 2
		case draw.AlignRight:
			l.Texts[i].At.X = w
		}
	}
}

// readTable is a table of readings that belongs to a question: as a table, not
// as a picture of one.
func readTable(t item.TableFigure, w float64) node {
	n := len(t.Head)
	for _, r := range t.Rows {
		n = max(n, len(r))
	}
	cols := make([]column, n)
	for i := range cols {
		cols[i] = column{width: 1 / float64(n), align: draw.AlignCentre}
		if i < len(t.Head) {
			cols[i].head = t.Head[i]
		}
	}
	rows := make([][]string, len(t.Rows))
	for i, r := range t.Rows {
		rows[i] = append(append([]string(nil), r...), make([]string, n-len(r))...)
	}
	a := gridTable(cols, rows, w, 0, false)
	return node{role: pdf.Section, kids: a.nodes, list: &draw.List{W: w, H: a.height}}
}
