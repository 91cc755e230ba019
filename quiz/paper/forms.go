package paper

import (
	"errors"
	"fmt"

	"cuesta/quiz/form"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// ErrNothing says that a form has no item that makes sense on paper.
var ErrNothing = errors.New("no item of the form makes sense on paper")

// lang is the language of all that is printed.
const lang = "en-GB"

// sheetForm is a form with those of its items that are printed.
type sheetForm struct {
	form      form.Form
	questions []question
}

func sheetFormOf(f form.Form) (sheetForm, error) {
	q := sheetForm{form: f}
	items, err := f.All()
	if err != nil {
		return q, fmt.Errorf("form %s: %w", f.Code, err)
	}
	for i, it := range items {
		one := question{number: len(q.questions) + 1, item: it, points: f.Part(i).Points, notation: f.Part(i).Spec.Notation, declined: declinedAt(f.Blueprint)}
		if it.Kind().OnPaper() || one.atBench() {
			q.questions = append(q.questions, one)
		}
	}
	if len(q.questions) == 0 {
		return q, ErrNothing
	}
	return q, nil
}

func (q sheetForm) total() float64 {
	sum := 0.0
	for _, one := range q.questions {
		sum += one.points
	}
	return sum
}

func (q sheetForm) atBench() bool {
	for _, one := range q.questions {
		if one.atBench() {
			return true
		}
	}
	return false
}

// Forms prints the forms one after the other, each on pages of its own. A form
// with an odd number of pages is followed by an empty one where there are
// several, so that none shares a leaf with the next when both sides are
// printed.
func Forms(forms []form.Form, s Sheet) ([]byte, error) {
	size := settingOf(s)
	d := pdf.New(size.options(forms, "Paper forms"))
	for _, f := range forms {
		q, err := sheetFormOf(f)
		if err != nil {
			return nil, err
		}
		size.section(q).paint(d, size)
		if len(forms) > 1 && d.Pages()%2 == 1 {
			empty(d, size)
		}
	}
	return d.Bytes()
}

// section is a whole form.
func (s setting) section(q sheetForm) section {
	left := "Form " + q.form.Code
	if isVersion(q.form.Student) {
		left += ", " + q.form.Student.ID
	}
	name := "Form " + q.form.Code
	if who := owner(q.form.Student); who != "" {
		name += ", " + who
	}
	out := section{name: name, left: left, middle: q.form.Blueprint.Title, even: true, blocks: []block{s.head(q)}}
	if q.form.Blueprint.Cautions || q.atBench() {
		out.blocks = append(out.blocks, s.caution())
	}
	for _, one := range q.questions {
		out.blocks = append(out.blocks, s.block(one))
	}
	return out
}

// empty is the back of a leaf.
func empty(d *pdf.Document, s setting) {
	d.Page()
	l := &draw.List{}
	l.Text(draw.Text{S: "This page is empty.", At: draw.Point{X: s.sheet.W / 2, Y: s.sheet.H / 2}, Size: sizeText, Color: grey, Align: draw.AlignCentre})
	d.In(pdf.Paragraph, "", l, draw.Identity)
}

func (s setting) options(forms []form.Form, what string) pdf.Options {
	title := what
	if len(forms) > 0 && forms[0].Blueprint.Title != "" {
		title = forms[0].Blueprint.Title + ": " + what
	}
	return pdf.Options{Sheet: s.sheet, Title: title, Subject: "Strike and dip", Lang: lang}
}
