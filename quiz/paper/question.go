package paper

import (
	"cmp"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
	"cuesta/scenes/figure"
)

// question is one item as it is printed.
type question struct {
	number   int
	item     item.Item
	points   float64
	notation orient.Notation
	declined string // whose declination stands above, where that is not zero
}

func (q question) atBench() bool { _, ok := q.item.(item.AtBench); return ok }

// gutter is where the numbers of the questions stand.
const gutter = 26.0

// block sets a question: its head, the words, the figure, and room to answer
// beside the figure where it fits, else below.
func (s setting) block(q question) block {
	w := s.column() - gutter
	head := question.heading(q, s.column())
	y := sizeHead*leading + 2
	section := node{role: pdf.Section, kids: head}
	prompt, h := paragraph(pdf.Paragraph, q.prompt(), draw.Regular, sizeText, w, draw.Point{X: gutter, Y: y})
	section.kids = append(section.kids, prompt)
	y += h + 9
	var body answer
	if q.atBench() {
		body = benchTable(w)
	} else {
		body = q.body(w)
	}
	for _, n := range body.nodes {
		n.at.X += gutter
		n.at.Y += y
		section.kids = append(section.kids, n)
	}
	return block{height: y + body.height, nodes: []node{section}}
}

// heading is the number, the kind in words and the points.
func (q question) heading(w float64) []node {
	h := line(number(float64(q.number))+"  ", draw.Bold, sizeHead, draw.AlignLeft, ink)
	h.Text(draw.Text{S: q.item.Kind().Title(), At: draw.Point{X: gutter, Y: sizeHead * .95}, Size: sizeHead, Font: draw.Bold, Color: ink})
	p := line(form.Points(q.points), draw.Regular, sizeSmall+.5, draw.AlignLeft, grey)
	return []node{
		ruled(0, -5, w, .5),
		{role: pdf.Heading2, list: h},
		{role: pdf.Paragraph, list: p, at: draw.Point{X: w - p.W, Y: 2}},
	}
}

// prompt is the question in words. At a real slab the words of the simulated
// bench would mislead.
func (q question) prompt() string {
	if !q.atBench() {
		return q.item.Prompt()
	}
	text := "Measure the slab at your station three times, seating the instrument anew each time. Write down what you read; " +
		"then write the plane that you settle on as " + notationWords[q.notation] + "."
	if q.declined != "" {
		text += " Mind the declination where the slab stands; above is that of " + q.declined + "."
	}
	return text
}

// answer is a part of a question with its height.
type answer struct {
	nodes  []node
	height float64
}

// figureWidth is how wide a figure is printed, in points. One degree of the
// dial is nearly 0.6 mm then, of the arc 0.9 mm; the two fit on one page.
func figureWidth(f item.Figure) float64 {
	switch f := f.(type) {
	case item.DialFigure:
		return 256
	case item.ArcFigure:
		return 216
	case item.LevelFigure:
		return 118
	case item.MapFigure:
		if f.Blank {
			return 200
		}
		return 165
	case item.BlockFigure:
		return 260
	case item.NetFigure:
		return 250
	case item.TableFigure:
		return min(300, 105*float64(max(len(f.Head), 1)))
	}
	return 0
}

// besides is the least room for answers beside a figure.
const besides = 150.0

func (q question) body(w float64) answer {
	f := q.item.Figure()
	if f == nil {
		return q.answers(w)
	}
	pic := figure.Of(f, min(w, figureWidth(f)), figure.Plain())
	shown := node{role: pdf.Figure, alt: cmp.Or(q.item.Alt(), "A figure."), list: pic}
	if t, ok := f.(item.TableFigure); ok {
		shown = readTable(t, pic.W)
		pic.H = shown.list.H
		shown.list = nil
	}
	const gap = 24
	if room := w - pic.W - gap; room >= besides {
		a := q.answers(room)
		drop := max(0, (pic.H-a.height)/2)
		for i := range a.nodes {
			a.nodes[i].at.X += pic.W + gap
			a.nodes[i].at.Y += drop
		}
		return answer{append([]node{shown}, a.nodes...), max(pic.H, a.height)}
	}
	a := q.answers(w)
	for i := range a.nodes {
		a.nodes[i].at.Y += pic.H + 8
	}
	return answer{append([]node{shown}, a.nodes...), pic.H + 8 + a.height}
}
