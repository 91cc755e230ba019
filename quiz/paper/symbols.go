package paper

import (
	"fmt"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
	"cuesta/scenes/figure"
)

// symbols draws, for the key, the map symbols that a form asks for, a few in a
// row, so that a drawing can be held beside them.
func (s setting) symbols(q sheetForm) []block {
	const wide, gap = 92.0, 14.0
	var out []block
	x := s.column()
	for _, one := range q.questions {
		e, err := orient.Parse(one.item.Key(), one.notation)
		if one.item.Ask().Kind != item.AskSymbol || err != nil {
			continue
		}
		if x+wide > s.column() {
			out, x = append(out, block{}), 0
		}
		b := &out[len(out)-1]
		head := line(fmt.Sprintf("%s, %d", q.form.Code, one.number), draw.Regular, sizeText-1, draw.AlignLeft, ink)
		pic := figure.Of(item.MapFigure{Plane: e.Plane}, wide, figure.Plain())
		b.nodes = append(b.nodes,
			node{role: pdf.Paragraph, list: head, at: draw.Point{X: x}},
			node{role: pdf.Figure, alt: "The map symbol of " + orient.Format(e.Plane, one.notation), list: pic, at: draw.Point{X: x, Y: head.H + 2}})
		b.height = head.H + 2 + pic.H
		x += wide + gap
	}
	return out
}
