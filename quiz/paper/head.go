package paper

import (
	"cuesta/quiz/form"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// head is the top of a form: title, code, whose it is, and how to write.
func (s setting) head(q sheetForm) block {
	w := s.column()
	code := node{role: pdf.Paragraph, list: line("Form "+q.form.Code, draw.Bold, sizeHead, draw.AlignLeft, ink)}
	cw := code.list.W + 18
	code.at = draw.Point{X: w - cw + 9, Y: 5.5}
	title, h := paragraph(pdf.Heading1, q.form.Blueprint.Title, draw.Bold, sizeTitle, w-cw-20, draw.Point{})
	place, ph := paragraph(pdf.Paragraph, circumstances(q.form), draw.Regular, sizeText, w, draw.Point{Y: max(h, 28) + 3})
	y := place.at.Y + ph + 20
	nodes := []node{title, boxed(draw.Rect{X: w - cw, W: cw, H: 25}, .9, nil), code, place}
	nodes = append(nodes, s.nameLine(q.form.Student, y)...)
	y += 14
	how, hh := paragraph(pdf.Paragraph, howToWrite(q.form.Blueprint, q.total()), draw.Regular, sizeText, w, draw.Point{Y: y + 6})
	return block{height: y + 6 + hh, nodes: append(nodes, how)}
}

// nameLine is where the student is named, or writes the name, and the date. y
// is the baseline.
func (s setting) nameLine(st form.Student, y float64) []node {
	w, split := s.column(), s.column()*.66
	name := line("Name ", draw.Regular, sizeText, draw.AlignLeft, ink)
	nodes := []node{
		{role: pdf.Paragraph, list: name, at: draw.Point{Y: y - sizeText*.95}},
		ruled(name.W+4, y+2.5, split-name.W-18, .6),
	}
	if !isVersion(st) {
		l := fitted(Owner(st), draw.Bold, sizeText, split-name.W-24, ink)
		nodes = append(nodes, node{role: pdf.Paragraph, list: l, at: draw.Point{X: name.W + 8, Y: y - l.Texts[0].At.Y}})
	}
	date := line("Date ", draw.Regular, sizeText, draw.AlignLeft, ink)
	return append(nodes,
		node{role: pdf.Paragraph, list: date, at: draw.Point{X: split, Y: y - sizeText*.95}},
		ruled(split+date.W+4, y+2.5, w-split-date.W-4, .6))
}

// bullet is one item of a list.
func bullet(l *draw.List, at draw.Point) node {
	return node{role: pdf.Bullet, at: at, kids: []node{{role: pdf.BulletBody, list: l}}}
}

// caution is the box of cautions of a paper form.
func (s setting) caution() block { return s.cautionBox(cautions) }

// cautionBox is a box of cautions.
func (s setting) cautionBox(cautions []string) block {
	const pad, indent = 10.0, 13.0
	w := s.column()
	y := pad - 2
	head, h := paragraph(pdf.Heading2, "Take care", draw.Bold, sizeHead, w-2*pad, draw.Point{X: pad, Y: y})
	y += h + 2
	list := node{role: pdf.Bullets}
	for _, c := range cautions {
		text, th := prose(c, draw.Regular, sizeText-.5, w-2*pad-indent, ink)
		l := &draw.List{W: w, H: th}
		l.Text(draw.Text{S: "• ", At: draw.Point{Y: text.Texts[0].At.Y}, Size: sizeText - .5, Color: ink})
		l.Append(text, draw.Affine{A: 1, D: 1, E: indent})
		list.kids = append(list.kids, bullet(l, draw.Point{X: pad, Y: y}))
		y += th + 2
	}
	y += pad - 4
	return block{height: y, nodes: []node{boxed(draw.Rect{W: w, H: y}, 1.1, nil), head, list}}
}
