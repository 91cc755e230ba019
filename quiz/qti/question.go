package qti

import (
	"strings"

	"cuesta/quiz/item"
)

// namespace of items and tests, QTI 3.0.
const namespace = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"

// question is one item file.
type question struct {
	id      string
	item    item.Item
	figure  string // its file beside the item, or ""
	parts   []part
	choices []choice
}

func newQuestion(id string, it item.Item) (question, bool) {
	parts, choices, ok := partsOf(it)
	return question{id: id, item: it, parts: parts, choices: choices}, ok
}

func (q question) xml() []byte {
	s := document()
	s.open("qti-assessment-item", "xmlns", namespace, "identifier", q.id, "title", q.item.Kind().Title(),
		"adaptive", "false", "time-dependent", "false", "xml:lang", "en-GB")
	for _, p := range q.parts {
		s.open("qti-response-declaration", "identifier", p.ID, "cardinality", "single", "base-type", p.Base)
		s.open("qti-correct-response")
		s.text("qti-value", p.Right)
		s.close(2)
	}
	outcome(s, "SCORE", "0")
	outcome(s, "MAXSCORE", "1")
	q.body(s)
	q.processing(s)
	s.close(1)
	return s.bytes()
}

func outcome(s *sheet, id, value string) {
	s.open("qti-outcome-declaration", "identifier", id, "cardinality", "single", "base-type", "float")
	s.open("qti-default-value")
	s.text("qti-value", value)
	s.close(2)
}

func (q question) body(s *sheet) {
	s.open("qti-item-body")
	if q.figure != "" {
		s.open("p")
		s.empty("img", "src", q.figure, "alt", q.item.Alt())
		s.close(1)
	}
	if q.choices != nil {
		s.open("qti-choice-interaction", "response-identifier", "RESPONSE", "max-choices", "1", "shuffle", "false")
		s.text("qti-prompt", q.item.Prompt())
		for _, c := range q.choices {
			s.text("qti-simple-choice", c.Text, "identifier", c.ID)
		}
		s.close(2)
		return
	}
	s.text("p", q.asked())
	for _, p := range q.parts {
		s.open("p")
		s.text("span", label(p))
		s.empty("qti-text-entry-interaction", "response-identifier", p.ID, "expected-length", length(p))
		s.close(1)
	}
	s.close(1)
}

// asked is the question, as it is put where the answer has a box for each number.
func (q question) asked() string {
	if b, ok := q.item.(interface{ InBoxes() string }); ok && q.parts[0].Base == "float" {
		return b.InBoxes()
	}
	return q.item.Prompt()
}

// label names a box, its unit with it, since a screen reader reads it before.
func label(p part) string {
	name := p.Label
	if name == "" {
		name = "Answer"
	}
	name = strings.ToUpper(name[:1]) + name[1:]
	switch p.Unit {
	case "":
		return name + ": "
	case "°":
		return name + ", in degrees: "
	case "%":
		return name + ", in per cent: "
	}
	return name + ", in " + p.Unit + ": "
}

func length(p part) string {
	if p.Base == "string" {
		return "16"
	}
	return "6"
}

// processing gives each part its share of the mark.
func (q question) processing(s *sheet) {
	s.open("qti-response-processing")
	for _, p := range q.parts {
		s.open("qti-response-condition")
		s.open("qti-response-if")
		s.open("qti-and")
		s.open("qti-not")
		s.open("qti-is-null")
		s.empty("qti-variable", "identifier", p.ID)
		s.close(2)
		p.test(s)
		s.close(1)
		s.open("qti-set-outcome-value", "identifier", "SCORE")
		s.open("qti-sum")
		s.empty("qti-variable", "identifier", "SCORE")
		s.text("qti-base-value", plain(p.Share), "base-type", "float")
		s.close(4)
	}
	s.close(1)
}

// test is the expression that is true for a right answer.
func (p part) test(s *sheet) {
	switch p.Base {
	case "float":
		s.open("qti-or")
		for _, w := range p.Number {
			s.open("qti-equal", "tolerance-mode", "absolute", "tolerance", plain(w.Off))
			s.empty("qti-variable", "identifier", p.ID)
			s.text("qti-base-value", plain(w.Value), "base-type", "float")
			s.close(1)
		}
		s.close(1)
	case "string":
		s.open("qti-or")
		for _, t := range p.Texts {
			s.open("qti-string-match", "case-sensitive", "false")
			s.empty("qti-variable", "identifier", p.ID)
			s.text("qti-base-value", t, "base-type", "string")
			s.close(1)
		}
		s.close(1)
	default:
		s.open("qti-match")
		s.empty("qti-variable", "identifier", p.ID)
		s.empty("qti-correct", "identifier", p.ID)
		s.close(1)
	}
}
