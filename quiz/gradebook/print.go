package gradebook

import (
	"fmt"
	"io"

	"cuesta/quiz/grade"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
	"cuesta/scenes/theme"
)

// Measures of the printed report, in points.
const (
	margin     = 50.0
	bodySize   = 10.0
	smallSize  = 9.0
	cellGap    = 10.0
	tableGap   = 12.0
	belowTitle = 6.0
)

// PrintReport writes the report on a class as PDF, tagged for screen readers,
// with vector figures. The same report gives the same bytes.
func PrintReport(to io.Writer, r grade.Report, sheet pdf.Size) error {
	page := pageOf(r, "")
	p := press{t: theme.Of(theme.Light), d: pdf.New(pdf.Options{
		Sheet: sheet, Title: "Class report: " + page.Quiz, Subject: "Marks, item statistics and errors of a class", Lang: "en-GB",
	})}
	p.page()
	p.opening(page)
	p.lists(page.Lists, page.Nothing)
	for _, f := range page.Figures {
		p.figure(f)
	}
	p.students(page)
	p.y += tableGap
	if p.cut {
		p.say(pdf.Note, "Where "+draw.Cut+" stands, this print has no letters for what was written. The report as a page and the table of grades have it whole.", smallSize, draw.Regular, p.t.Ink2)
	}
	p.say(pdf.Note, page.Closing, smallSize, draw.Regular, p.t.Ink2)
	text, err := p.d.Bytes()
	if err != nil {
		return err
	}
	_, err = to.Write(text)
	return err
}

// press sets the report down the pages.
type press struct {
	d *pdf.Document
	t *theme.Theme
	y float64 // of the next line, from the top

	cut bool // something has signs that the print has no letters for
}

func (p *press) width() float64 { return p.d.Sheet().W - 2*margin }

func (p *press) bottom() float64 { return p.d.Sheet().H - margin - 16 }

// page begins a page and writes its number.
func (p *press) page() {
	p.d.Page()
	l := &draw.List{}
	l.Reset(p.width(), 14)
	l.Text(draw.Text{
		S: fmt.Sprintf("page %d", p.d.Pages()), At: draw.Point{X: p.width(), Y: 10}, Size: smallSize, Color: p.t.Ink2, Align: draw.AlignRight,
	})
	p.d.Ornament(l, draw.Affine{A: 1, D: 1, E: margin, F: p.bottom() + 8})
	p.y = margin
}

// room begins a page where less than h is left.
func (p *press) room(h float64) bool {
	if p.y+h <= p.bottom() || p.y == margin {
		return false
	}
	p.page()
	return true
}

// put draws a list at the left margin and moves on below it.
func (p *press) put(role pdf.Role, alt string, l *draw.List, scale float64) {
	p.d.In(role, alt, l, draw.Affine{A: scale, D: scale, E: margin, F: p.y})
	p.y += l.H * scale
}

// say writes a paragraph.
func (p *press) say(role pdf.Role, text string, size float64, f draw.Font, c draw.Color) {
	if text == "" {
		return
	}
	l := p.lines(text, p.width(), size, f, c, draw.AlignLeft)
	p.room(l.H)
	p.put(role, "", l, 1)
	p.y += belowTitle
}

// lines is a text, wrapped.
func (p *press) lines(text string, width, size float64, f draw.Font, c draw.Color, a draw.Align) *draw.List {
	l := &draw.List{}
	if len(draw.Unprinted(text)) > 0 {
		text, p.cut = draw.Printed(text), true
	}
	rows := draw.Wrap(f, size, width, text)
	l.Reset(width, float64(len(rows))*size*draw.LineHeight)
	x := 0.0
	if a == draw.AlignRight {
		x = width
	}
	for i, row := range rows {
		l.Text(draw.Text{S: row, At: draw.Point{X: x, Y: (float64(i) + 0.78) * size * draw.LineHeight}, Size: size, Font: f, Color: c, Align: a})
	}
	return l
}

// heading keeps room for what follows it.
func (p *press) heading(role pdf.Role, text string, size, below float64) {
	p.y += tableGap
	p.room(size*draw.LineHeight + below)
	p.say(role, text, size, draw.Bold, p.t.Ink)
}

func (p *press) opening(page page) {
	p.say(pdf.Paragraph, "Class report", bodySize, draw.Regular, p.t.Ink2)
	p.say(pdf.Heading1, page.Quiz, 20, draw.Bold, p.t.Ink)
	p.say(pdf.Paragraph, page.Place, bodySize, draw.Regular, p.t.Ink2)
	p.heading(pdf.Heading2, "The class", 14, 80)
	var head, row []cell
	for _, s := range page.Summary {
		head, row = append(head, words(s.Name)), append(row, words(s.Value))
	}
	p.table(head, [][]cell{row})
	p.say(pdf.Paragraph, page.Reliability, smallSize, draw.Regular, p.t.Ink2)
}

func (p *press) lists(ls []list, nothing string) {
	p.heading(pdf.Heading2, "To look at", 14, 60)
	if len(ls) == 0 {
		p.say(pdf.Paragraph, nothing, bodySize, draw.Regular, p.t.Ink)
	}
	for _, l := range ls {
		p.heading(pdf.Heading3, l.Title, 11, 60)
		p.say(pdf.Paragraph, l.Note, smallSize, draw.Regular, p.t.Ink2)
		if l.Names != "" {
			p.say(pdf.Paragraph, l.Names+".", bodySize, draw.Regular, p.t.Ink)
			continue
		}
		p.table(texts(l.Head), rowsOf(l.Rows))
		p.say(pdf.Paragraph, l.More, bodySize, draw.Regular, p.t.Ink)
	}
}

func texts(ss []string) []cell {
	var cs []cell
	for _, s := range ss {
		cs = append(cs, words(s))
	}
	return cs
}

func rowsOf(rows [][]string) [][]cell {
	var out [][]cell
	for _, r := range rows {
		out = append(out, texts(r))
	}
	return out
}

func (p *press) figure(f shown) {
	scale := p.width() / f.List.W
	p.heading(pdf.Heading2, f.Title, 14, f.List.H*scale+4*smallSize*draw.LineHeight)
	p.put(pdf.Figure, f.Alt, f.List, scale)
	p.y += belowTitle
	p.say(pdf.Paragraph, f.Caption, smallSize, draw.Regular, p.t.Ink2)
	if f.Table != nil {
		p.room(80)
		p.say(pdf.Paragraph, f.Table.Title, smallSize, draw.Bold, p.t.Ink)
		p.table(f.Table.Head, f.Table.Rows)
	}
}

func (p *press) students(page page) {
	if page.Omitted == "" && len(page.Students) == 0 {
		return
	}
	p.heading(pdf.Heading2, "Students", 14, 60)
	p.say(pdf.Paragraph, page.Omitted, bodySize, draw.Regular, p.t.Ink)
	if len(page.Students) == 0 {
		return
	}
	head := []cell{words("Id"), words("Name"), number("Points"), number("Percent"), words("Passed"), words("Remarks")}
	var rows [][]cell
	for _, s := range page.Students {
		rows = append(rows, []cell{words(s.ID), words(s.Name), number(s.Points), number(s.Percent), words(s.Passed), words(s.Remarks)})
	}
	p.table(head, rows)
}
