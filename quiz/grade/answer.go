package grade

import (
	"errors"
	"fmt"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
)

// Marked is one item of a submission, marked.
type Marked struct {
	Part     int    // of the blueprint, from 0
	Kind     string // its name
	Title    string // its name in words
	Item     item.Item
	Of       float64 // points to be had
	Points   float64 // earned, hints taken off
	Answered bool
	Answer   string  // the text that counts
	Given    int     // how many texts there were
	Hints    int     // taken
	Cost     float64 // points the hints took off
	Mark     item.Mark
	Plane    *PlaneResult // for planes at the bench or at a station that could be read
}

// PlaneResult is a measured plane beside the true one.
type PlaneResult struct {
	Truth, Answer orient.Plane
	LineError     orient.Angle // of the strike lines, (−π/2, π/2]
	StrikeAsked   bool
	DipError      orient.Angle
	Right         bool
}

// ErrDealt says that an item does not follow from its form.
var ErrDealt = errors.New("the form cannot be dealt again")

// ErrUnkeyed says that a submission is of a lab, and how its stations lie is
// not known: it stands in the instructor's file of stations alone.
var ErrUnkeyed = errors.New("how the stations of this lab lie stands in no submission: mark it with the file of stations that holds the true values")

// ErrChanged says that a changed blueprint asks other questions.
var ErrChanged = errors.New("the changed blueprint does not fit")

// mark marks item i of a submission.
func mark(s form.Submission, i int) (Marked, []Remark, error) {
	part := s.Form.Part(i)
	it, err := s.Form.Item(i)
	if err != nil {
		return Marked{}, nil, fmt.Errorf("%w: %w", ErrDealt, err)
	}
	m := Marked{
		Part: s.Form.Items[i].Part, Kind: part.Kind, Title: it.Kind().Title(), Item: it, Of: part.Points,
		Given: len(s.Answers[i].Texts), Hints: s.Answers[i].Hints,
	}
	atBench, isBench := it.(item.AtBench)
	atStation, isStation := it.(item.AtStation)
	if isStation && !atStation.Station().Known {
		return m, nil, ErrUnkeyed
	}
	if m.Given == 0 {
		return m, nil, nil
	}
	var b bench
	if isBench {
		b = rerun(s.Answers[i].Recording, atBench.Setup())
	}
	m.Answered = true
	m.Answer, m.Mark = counts(s.Answers[i].Texts, it, b.evidence)
	if isStation {
		m.beside(atStation.Station().Plane, part.Spec.Notation)
	}
	m.earn(part)
	if isBench {
		m.measured(&b, atBench, s.Form.Blueprint.Notation)
	}
	for j := range b.remarks {
		b.remarks[j].Item = i + 1
	}
	return m, b.remarks, nil
}

// counts is the answer that counts, with its mark: the last one that can be
// read, or the last.
// Of the readings at a station it is the one that counts there.
func counts(texts []string, it item.Item, e item.Evidence) (string, item.Mark) {
	if st, ok := it.(item.AtStation); ok {
		return st.MarkAll(texts)
	}
	last := texts[len(texts)-1]
	m := it.Mark(last, e)
	for i := len(texts) - 2; i >= 0 && m.Refused; i-- {
		if earlier := it.Mark(texts[i], e); !earlier.Refused {
			return texts[i], earlier
		}
	}
	return last, m
}

// earn turns the share into points. Hints cost their share of the item's
// points, and never more than was earned.
func (m *Marked) earn(p form.Part) {
	full := m.Of * max(0, min(1, m.Mark.Share))
	m.Cost = min(full, m.Of*p.HintCost*float64(m.Hints))
	m.Points = full - m.Cost
}

// measured lays the answer beside the truth, and beside the readings.
func (m *Marked) measured(b *bench, it item.AtBench, n orient.Notation) {
	if answer, ok := m.beside(it.Setup().Plane, n); ok {
		b.follows(m.Mark, answer)
	}
}

// beside lays the answer beside the truth; false where there is none that could
// be read.
func (m *Marked) beside(truth orient.Plane, n orient.Notation) (answer orient.Entry, ok bool) {
	v := m.Mark.Verdict
	if v == nil || m.Mark.Refused {
		return answer, false
	}
	answer, err := orient.Parse(m.Answer, n)
	if err != nil || answer.DipMissing {
		return answer, err == nil
	}
	m.Plane = &PlaneResult{
		Truth: truth, Answer: answer.Plane, LineError: v.LineError,
		StrikeAsked: v.StrikeAsked && answer.HasStrike, DipError: v.DipError, Right: v.Right,
	}
	return answer, true
}
