package main

import (
	"bytes"
	"fmt"
	"image"
	"io"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
	"cuesta/scenes/lesson"
	"cuesta/scenes/theme"
)

// Measures of the presenter's notes, in points.
const (
	noteMargin  = 48.0
	noteFoot    = 26.0 // of the foot, above the lower edge
	notePicture = 190.0
	noteGap     = 14.0 // between a picture and its words
	noteBetween = 16.0 // between steps
	noteTitle   = 20.0
	noteHead    = 12.0
	noteBody    = 10.5
	noteSmall   = 8.5
)

// stepPicture is the screen as a step leaves it, and words for those who do not
// see it.
type stepPicture struct {
	image image.Image
	words string
}

// print writes the presenter's notes, whole or not at all.
func (t *teacher) print(l lesson.Lesson) error {
	if err := writable(t.notes, t.force); err != nil {
		return err
	}
	pictures, err := picturesOf(l)
	if err != nil {
		return wrongWords{err}
	}
	text, err := notesOf(l, pictures, t.sheet)
	if err != nil {
		return err
	}
	fill := func(w io.Writer) error { _, err := io.Copy(w, bytes.NewReader(text)); return err }
	if err := writeWhole(t.notes, t.force, fill); err != nil {
		return err
	}
	_, err = fmt.Fprintf(t.out, "Notes to %d steps in %s.\n", len(l.Steps), t.notes)
	return err
}

// notesOf sets the notes of a lesson as a PDF that a screen reader can follow.
func notesOf(l lesson.Lesson, pictures []stepPicture, sheet pdf.Size) ([]byte, error) {
	p := notePress{
		t: theme.Of(theme.Light), title: l.Title,
		d: pdf.New(pdf.Options{Sheet: sheet, Title: l.Title + ": presenter's notes", Subject: "A lesson on strike and dip", Lang: "en-GB"}),
	}
	p.page()
	p.opening(l)
	for i, s := range l.Steps {
		p.step(i, s, pictures[i])
	}
	return p.d.Bytes()
}

// notePress sets notes down the pages.
type notePress struct {
	d     *pdf.Document
	t     *theme.Theme
	title string
	y     float64 // of the next line, from the top
}

func (p *notePress) width() float64 { return p.d.Sheet().W - 2*noteMargin }

// page begins a page and writes its foot.
func (p *notePress) page() {
	p.d.Page()
	p.y = noteMargin
	var l draw.List
	put := func(s string, x float64, a draw.Align) {
		l.Text(draw.Text{S: s, At: draw.Point{X: x}, Size: noteSmall, Color: p.t.Ink2, Align: a})
	}
	put(p.title+": presenter's notes", 0, draw.AlignLeft)
	put(fmt.Sprintf("page %d", p.d.Pages()), p.width(), draw.AlignRight)
	p.d.Ornament(&l, draw.Affine{A: 1, D: 1, E: noteMargin, F: p.d.Sheet().H - noteFoot})
}

// room begins a page where less than h is left on this one.
func (p *notePress) room(h float64) {
	if p.y+h > p.d.Sheet().H-noteMargin && p.y > noteMargin {
		p.page()
	}
}

// opening is the head of the notes.
func (p *notePress) opening(l lesson.Lesson) {
	p.d.Bookmark(l.Title)
	length := fmt.Sprintf("%d steps", len(l.Steps))
	if l.Minutes > 0 {
		length += fmt.Sprintf(", about %d minutes", l.Minutes)
	}
	w := p.width()
	c := p.column(noteMargin, p.y)
	c.say(pdf.Heading1, l.Title, draw.Bold, noteTitle, w, 2)
	c.say(pdf.Paragraph, "Presenter's notes. "+describe.Capital(length)+".", draw.Regular, noteBody, w, 6)
	c.say(pdf.Paragraph, l.Summary, draw.Bold, noteBody, w, 6)
	c.say(pdf.Paragraph, oneLine(l.Notes), draw.Regular, noteBody, w, 6)
	c.say(pdf.Paragraph, noteKeys, draw.Regular, noteBody, w, 0)
	c.draw()
	p.y = c.y + noteBetween + 2
}

// noteKeys are the keys that a presenter needs.
const noteKeys = "Keys of the lecture: Right, Space or Page Down goes on, Left or Page Up goes back, R reveals the answer, B blanks the screen, " +
	"M magnifies a place, P points, F5 lets you play with the instrument, Escape returns to the step, Home begins again for the next class, " +
	"F1 lists the keys, F10 goes to the menu, F11 fills the screen."

// step is one step: its picture on the left, its words on the right.
func (p *notePress) step(i int, s lesson.Step, pic stepPicture) {
	x, w := noteMargin+notePicture+noteGap, p.width()-notePicture-noteGap
	measure := p.words(x, 0, w, i, s)
	high := max(measure.y, pictureHigh(pic))
	p.room(high)
	top := p.y
	p.d.Open(pdf.Section, "")
	p.d.Bookmark(fmt.Sprintf("%d. %s", i+1, lineOf(s)))
	c := p.words(x, top, w, i, s)
	c.draw()
	if pic.image != nil {
		box := draw.Rect{X: noteMargin, Y: top, W: notePicture, H: pictureHigh(pic)}
		p.d.Image(pic.words, pic.image, box)
		p.frame(box)
	}
	p.d.Shut()
	p.y = top + high + noteBetween
}

// lineOf is what stands on the screen at a step, if it brings a line.
func lineOf(s lesson.Step) string {
	switch {
	case s.Ask != "":
		return s.Ask
	case s.Say != "":
		return s.Say
	}
	return "(the line stays)"
}

func pictureHigh(p stepPicture) float64 {
	if p.image == nil {
		return 0
	}
	b := p.image.Bounds()
	return notePicture * float64(b.Dy()) / float64(b.Dx())
}

func (p *notePress) frame(r draw.Rect) {
	var l draw.List
	l.Stroke(draw.Box(r), draw.Stroke{Width: .6, Color: p.t.Ink2})
	p.d.Ornament(&l, draw.Identity)
}

// words are the words of a step.
func (p *notePress) words(x, y, w float64, i int, s lesson.Step) *noteColumn {
	c := p.column(x, y)
	c.say(pdf.Heading2, fmt.Sprintf("%d. %s", i+1, lineOf(s)), draw.Bold, noteHead, w, 3)
	if s.Ask != "" {
		c.say(pdf.Paragraph, "Answer: "+s.Answer, draw.Bold, noteBody, w, 3)
	}
	c.say(pdf.Paragraph, oneLine(s.Notes), draw.Regular, noteBody, w, 0)
	return c
}

// noteColumn is a run of paragraphs one below the other.
type noteColumn struct {
	p     *notePress
	x, y  float64
	parts []notePart
}

type notePart struct {
	role pdf.Role
	list *draw.List
	y    float64
}

func (p *notePress) column(x, y float64) *noteColumn { return &noteColumn{p: p, x: x, y: y} }

// say adds a paragraph; nothing for the empty text. Each line but the last ends
// in a space, so that words do not run together where the text is read aloud.
func (c *noteColumn) say(role pdf.Role, text string, f draw.Font, size, width, below float64) {
	if text == "" {
		return
	}
	rows := draw.Wrap(f, size, width, text)
	l := &draw.List{}
	for i, row := range rows {
		if i < len(rows)-1 {
			row += " "
		}
		l.Text(draw.Text{S: row, At: draw.Point{Y: (float64(i) + .76) * size * draw.LineHeight}, Size: size, Font: f, Color: c.p.t.Ink})
	}
	c.parts = append(c.parts, notePart{role, l, c.y})
	c.y += float64(len(rows))*size*draw.LineHeight + below
}

func (c *noteColumn) draw() {
	for _, part := range c.parts {
		c.p.d.In(part.role, "", part.list, draw.Affine{A: 1, D: 1, E: c.x, F: part.y})
	}
}
