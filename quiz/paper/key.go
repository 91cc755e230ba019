package paper

import (
	"fmt"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// Key prints the right answers of every form, for the instructor alone.
func Key(forms []form.Form, s Sheet) ([]byte, error) {
	size := settingOf(s)
	d := pdf.New(size.options(forms, "Answer key"))
	out := section{left: "Answer key", middle: "Keep apart from the forms"}
	out.blocks = append(out.blocks, size.title(forms, "Answer key",
		"The questions are numbered as on the sheets. "+sharesOf(forms)+"An answer within its tolerance earns full points, in whatever notation it is written. "+
			"The plane of a real slab is not known here: measure each station before the class and write it down."))
	for _, f := range forms {
		q, err := sheetFormOf(f)
		if err != nil {
			return nil, err
		}
		out.blocks = append(out.blocks, size.keyOf(q)...)
	}
	out.paint(d, size)
	return d.Bytes()
}

// title is the top of a sheet for the instructor.
func (s setting) title(forms []form.Form, what, text string) block {
	name := what
	if len(forms) > 0 {
		name = forms[0].Blueprint.Title + ": " + what
	}
	h1, h := paragraph(pdf.Heading1, name, draw.Bold, sizeTitle, s.column(), draw.Point{})
	p, ph := paragraph(pdf.Paragraph, text, draw.Regular, sizeText, s.column(), draw.Point{Y: h + 4})
	return block{height: h + 4 + ph, nodes: []node{h1, p}}
}

// keyOf is the key to one form: one block, or several where it is longer than a
// page.
func (s setting) keyOf(q sheetForm) []block {
	head, h := paragraph(pdf.Heading2, "Form "+q.form.Code+", "+Owner(q.form.Student), draw.Bold, sizeHead, s.column(), draw.Point{})
	cols := []column{
		{head: "No.", width: .07, align: draw.AlignRight}, {head: "Question", width: .29}, {head: "Right answer", width: .30},
		{head: "Tolerance", width: .22}, {head: "Points", width: .12, align: draw.AlignRight},
	}
	var rows [][]string
	for _, one := range q.questions {
		rows = append(rows, []string{fmt.Sprint(one.number), one.item.Kind().Title(), one.right(), one.within(), number(one.points)})
	}
	var out []block
	for i, t := range gridTables(cols, rows, s.column(), 0, s.room()-h-3) {
		b := block{height: t.height, nodes: t.nodes}
		if i == 0 {
			for j := range b.nodes {
				b.nodes[j].at.Y += h + 3
			}
			b = block{height: h + 3 + t.height, nodes: append([]node{head}, t.nodes...)}
		}
		out = append(out, b)
	}
	return append(out, s.symbols(q)...)
}

func (q question) right() string {
	ask := q.item.Ask()
	switch {
	case q.atBench():
		return "station: ________________"
	case ask.Kind == item.AskChoice && ask.Right >= 0 && ask.Right < len(ask.Choices):
		return choiceLetter(ask.Right) + ": " + ask.Choices[ask.Right]
	}
	return q.item.Key()
}

// within is how far an answer may be off for full points.
func (q question) within() string {
	if q.atBench() {
		return "by the dip measured"
	}
	if w := item.Within(q.item); w != "" {
		return w
	}
	return "—"
}

// sharesOf says what the mark of a plane is made of.
func sharesOf(forms []form.Form) string {
	if len(forms) == 0 {
		return ""
	}
	return forms[0].Blueprint.Tolerance.Shares() + " "
}
