package qti

import (
	"archive/zip"
	"errors"
	"fmt"
	"io"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/scenes/draw/svg"
	"cuesta/scenes/figure"
)

// ErrEmpty is the error for a quiz of which nothing can be packed.
var ErrEmpty = errors.New("none of its items can be answered in a learning system")

// packing is the manifest of 1EdTech content packages, QTI 3.0.
const packing = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"

// figureSize is the width of a figure, in px.
const figureSize = 420

// MostVariants is the most variants of an item.
const MostVariants = 200

// Package writes the quiz as a zip, with a number of variants of each item. It
// returns what was left out, in words.
func Package(to io.Writer, b form.Blueprint, variants int) (left []string, err error) {
	if variants < 1 || variants > MostVariants {
		return nil, fmt.Errorf("%d variants: from 1 to %d can be made", variants, MostVariants)
	}
	d, err := form.Deal(b, versions(variants), form.Options{Seed: b.Seed})
	if err != nil {
		return nil, err
	}
	p := pack{blueprint: b, zip: zip.NewWriter(to)}
	for i := range d.Forms[0].Items {
		if err := p.place(d.Forms, i); err != nil {
			return nil, err
		}
	}
	if len(p.sections) == 0 {
		return p.left, ErrEmpty
	}
	return p.left, p.finish()
}

func versions(n int) []form.Student {
	out := make([]form.Student, n)
	for i := range out {
		out[i] = form.Student{ID: fmt.Sprintf("v%03d", i+1), Name: fmt.Sprintf("Variant %d", i+1), ExtraTime: 1}
	}
	return out
}

// pack is a package being written.
type pack struct {
	blueprint form.Blueprint
	zip       *zip.Writer
	sections  []section
	left      []string
}

// section is one place of the quiz: its variants, and what it is worth.
type section struct {
	title  string
	points float64
	items  []question
}

// place packs the variants of one place.
func (p *pack) place(forms []form.Form, i int) error {
	part := forms[0].Part(i)
	sec := section{points: part.Points}
	for v := range forms {
		it, err := forms[v].Item(i)
		if err != nil {
			return err
		}
		sec.title = it.Kind().Title()
		q, ok := newQuestion(fmt.Sprintf("Q%02d-V%03d", i+1, v+1), it)
		if !ok {
			p.left = append(p.left, fmt.Sprintf("item %d, %s: %s", i+1, part.Kind, why(it)))
			return nil
		}
		sec.items = append(sec.items, q)
	}
	for k := range sec.items {
		if err := p.question(&sec.items[k]); err != nil {
			return err
		}
	}
	p.sections = append(p.sections, sec)
	return nil
}

func why(it item.Item) string {
	if _, ok := it.(item.AtBench); ok {
		return "a learning system has no bench"
	}
	if it.Ask().Kind == item.AskSymbol {
		return "its answer is a drawing"
	}
	return "its answer has no form a learning system reads"
}

func (p *pack) question(q *question) error {
	if f := q.item.Figure(); f != nil {
		name := "figures/" + q.id + ".svg"
		l := figure.Of(f, figureSize, figure.Plain())
		if err := p.file(name, svg.File(l, svg.Options{Title: "Figure of the question", Desc: q.item.Alt(), Prefix: q.id + "-"})); err != nil {
			return err
		}
		q.figure = "../" + name
	}
	return p.file("items/"+q.id+".xml", q.xml())
}

// finish writes test and manifest.
func (p *pack) finish() error {
	if err := p.file("test.xml", p.test()); err != nil {
		return err
	}
	if err := p.file("imsmanifest.xml", p.manifest()); err != nil {
		return err
	}
	return p.zip.Close()
}

// file adds a file; the time is fixed so that the bytes are.
func (p *pack) file(name string, data []byte) error {
	w, err := p.zip.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		return err
	}
	_, err = w.Write(data)
	return err
}

func (p *pack) test() []byte {
	s := document()
	s.open("qti-assessment-test", "xmlns", namespace, "identifier", "TEST", "title", p.blueprint.Title, "xml:lang", "en-GB")
	outcome(s, "SCORE", "0")
	s.open("qti-test-part", "identifier", "PART", "navigation-mode", "nonlinear", "submission-mode", "simultaneous")
	for i, sec := range p.sections {
		s.open("qti-assessment-section", "identifier", fmt.Sprintf("S%02d", i+1), "title", sec.title, "visible", "false")
		s.empty("qti-selection", "select", "1")
		for _, q := range sec.items {
			s.open("qti-assessment-item-ref", "identifier", q.id, "href", "items/"+q.id+".xml")
			s.empty("qti-weight", "identifier", "POINTS", "value", plain(sec.points))
			s.close(1)
		}
		s.close(1)
	}
	s.close(1)
	s.open("qti-outcome-processing")
	s.open("qti-set-outcome-value", "identifier", "SCORE")
	s.open("qti-sum")
	s.empty("qti-test-variables", "variable-identifier", "SCORE", "weight-identifier", "POINTS")
	s.close(4)
	return s.bytes()
}

func (p *pack) manifest() []byte {
	s := document()
	s.open("manifest", "xmlns", packing, "identifier", "MANIFEST")
	s.open("metadata")
	s.text("schema", "QTI Package")
	s.text("schemaversion", "3.0.0")
	s.close(1)
	s.empty("organizations")
	s.open("resources")
	s.open("resource", "identifier", "TEST", "type", "imsqti_test_xmlv3p0", "href", "test.xml")
	s.empty("file", "href", "test.xml")
	for _, sec := range p.sections {
		for _, q := range sec.items {
			s.empty("dependency", "identifierref", q.id)
		}
	}
	s.close(1)
	for _, sec := range p.sections {
		for _, q := range sec.items {
			s.open("resource", "identifier", q.id, "type", "imsqti_item_xmlv3p0", "href", "items/"+q.id+".xml")
			s.empty("file", "href", "items/"+q.id+".xml")
			if q.figure != "" {
				s.empty("file", "href", q.figure[len("../"):])
			}
			s.close(1)
		}
	}
	s.close(2)
	return s.bytes()
}
