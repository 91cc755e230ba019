package paper

import (
	"fmt"

	"cuesta/orient"
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
		"The questions are numbered as on the sheets. An answer within its tolerance earns full points, in whatever notation it is written. "+
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
	ask := q.item.Ask()
	switch {
	case q.atBench():
		return "by the dip measured"
	case ask.Kind == item.AskChoice:
		return "—"
	case ask.Kind == item.AskNumber && ask.Tolerance == 0:
		return "exact"
	case ask.Kind == item.AskNumber:
		return "± " + number(ask.Tolerance) + ask.Unit
	}
	return q.planeTolerance()
}

// planeTolerance finds by trial how many degrees a plane may be off and still
// earns full points: that is what the marking does, whatever it depends on.
func (q question) planeTolerance() string {
	e, err := orient.Parse(q.item.Key(), q.notation)
	if err != nil {
		return "—"
	}
	p := e.Plane
	right := func(p orient.Plane) bool {
		return q.item.Mark(orient.Format(p, q.notation), item.Evidence{}).Right
	}
	dip := most(func(n int) bool {
		d := p.Dip + orient.Angle(n)*orient.Degree
		if d > orient.Right {
			d = p.Dip - orient.Angle(n)*orient.Degree
		}
		return right(orient.Plane{Strike: p.Strike, Dip: d, Overturned: p.Overturned})
	})
	if !e.HasStrike {
		return fmt.Sprintf("dip ± %d°", dip)
	}
	strike := most(func(n int) bool {
		return right(orient.Plane{Strike: p.Strike.Add(orient.Angle(n) * orient.Degree), Dip: p.Dip, Overturned: p.Overturned})
	})
	if strike == 0 && dip == 0 {
		return "exact"
	}
	return fmt.Sprintf("strike ± %d°, dip ± %d°", strike, dip)
}

// most is the greatest whole number of degrees that is still right.
func most(right func(int) bool) int {
	n := 0
	for n < 90 && right(n+1) {
		n++
	}
	return n
}
