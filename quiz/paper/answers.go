package paper

import (
	"strings"

	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// answers is the room to answer in a width.
func (q question) answers(w float64) answer {
	ask := q.item.Ask()
	switch ask.Kind {
	case item.AskChoice:
		return choices(ask.Choices, w)
	case item.AskSymbol:
		p, h := paragraph(pdf.Paragraph, "Draw the symbol on the map, through the marked point.", draw.Regular, sizeText, w, draw.Point{})
		return answer{[]node{p}, h}
	case item.AskNumber, item.AskPlane, item.AskLine:
	}
	rise := 0.0
	if q.item.Figure() == nil {
		rise = 30 // for the working
	}
	a := writeLine(capital(ask.Label), ask.Unit, w)
	for i := range a.nodes {
		a.nodes[i].at.Y += rise
	}
	a.height += rise
	return a
}

func capital(s string) string {
	if s == "" {
		return "Answer"
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// writeLine is a line to write on, with its label before it and the unit
// behind. A label that leaves no room stands above.
func writeLine(label, unit string, w float64) answer {
	const most, least, rise = 190.0, 90.0, 24.0
	l := line(label+": ", draw.Regular, sizeText, draw.AlignLeft, ink)
	u := line(unit, draw.Regular, sizeText, draw.AlignLeft, ink)
	x, y := l.W+4, rise-sizeText*.95
	var nodes []node
	height := rise + 4
	if w-x-u.W < least {
		text, h := prose(label+": ", draw.Regular, sizeText, w, ink)
		nodes = append(nodes, node{role: pdf.Paragraph, list: text})
		x, y, height = 0, y+h, height+h
	} else {
		nodes = append(nodes, node{role: pdf.Paragraph, list: l, at: draw.Point{Y: y}})
	}
	run := min(most, w-x-u.W-4)
	nodes = append(nodes, ruled(x, y+sizeText*.95+2.5, run, .6))
	if unit != "" {
		nodes = append(nodes, node{role: pdf.Paragraph, list: u, at: draw.Point{X: x + run + 4, Y: y}})
	}
	return answer{nodes, height}
}

// choices are boxes to tick.
func choices(words []string, w float64) answer {
	const box, indent, letter = 9.5, 18.0, 15.0
	list := node{role: pdf.Bullets}
	var boxes []node
	y := 2.0
	for i, c := range words {
		text, h := prose(c, draw.Regular, sizeText, w-indent-letter, ink)
		l := line(choiceLetter(i)+" ", draw.Bold, sizeText, draw.AlignLeft, ink)
		l.Append(text, draw.Affine{A: 1, D: 1, E: letter})
		list.kids = append(list.kids, bullet(l, draw.Point{X: indent, Y: y}))
		b := boxed(draw.Rect{W: box, H: box}, .8, nil)
		b.at = draw.Point{Y: y + 1.2}
		boxes = append(boxes, b)
		y += h + 5
	}
	return answer{append(boxes, list), y}
}

// choiceLetter is the letter of choice i, from 0.
func choiceLetter(i int) string { return string(rune('A' + i)) }

// benchTable is what is filled in at a slab.
func benchTable(w float64) answer {
	cols := []column{
		{head: "Reading", width: .16}, {head: "Azimuth, north end of the needle (°)", width: .32},
		{head: "Dip (°)", width: .18}, {head: "Dips towards (letters)", width: .34},
	}
	rows := [][]string{{"1", "", "", ""}, {"2", "", "", ""}, {"3", "", "", ""}, {"settled on", "", "", ""}}
	t := gridTable(cols, rows, w, 24, true)
	station := writeLine("Station", "", 150)
	plane := writeLine("Plane", "", w-170)
	a := answer{height: station.height}
	a.nodes = append(a.nodes, station.nodes...)
	for _, n := range t.nodes {
		n.at.Y += a.height + 6
		a.nodes = append(a.nodes, n)
	}
	a.height += 6 + t.height
	for _, n := range plane.nodes {
		n.at.Y += a.height + 4
		a.nodes = append(a.nodes, n)
	}
	a.height += 4 + plane.height
	return a
}
