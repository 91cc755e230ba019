package grade

import (
	"fmt"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
)

// Graded is a submission with its marks.
type Graded struct {
	Form       form.Form // as it was marked
	Started    string
	Finished   string
	Items      []Marked
	Points, Of float64
	Passed     bool
	Remarks    []Remark
}

// Share is the part of the points earned, in [0, 1]; 0 where there were none.
func (g Graded) Share() float64 {
	if g.Of == 0 {
		return 0
	}
	return g.Points / g.Of
}

// Submission marks a submission. With a changed blueprint the marks follow
// that one: its tolerances, points, costs of hints and pass mark; what was
// asked stays as it was dealt. A lab is marked with the blueprint that its file
// of stations makes, which alone knows how they lie. The errors wrap ErrDealt and ErrChanged.
func Submission(s form.Submission, changed *form.Blueprint) (Graded, error) {
	if changed != nil {
		b, err := remarked(s.Form, *changed)
		if err != nil {
			return Graded{}, err
		}
		s.Form.Blueprint = b
	}
	if len(s.Answers) != len(s.Form.Items) {
		return Graded{}, fmt.Errorf("%w: %d answers to %d items", ErrDealt, len(s.Answers), len(s.Form.Items))
	}
	g := Graded{Form: s.Form, Started: s.Started, Finished: s.Finished, Items: make([]Marked, len(s.Answers))}
	for i := range s.Answers {
		m, remarks, err := mark(s, i)
		if err != nil {
			return Graded{}, err
		}
		g.Items[i] = m
		g.Points, g.Of = g.Points+m.Points, g.Of+m.Of
		g.Remarks = append(g.Remarks, remarks...)
	}
	const rounding = 1e-9
	g.Passed = g.Points >= s.Form.Blueprint.PassShare*g.Of-rounding
	return g, nil
}

// inTime says what the times of the submission show. The clock is that of the
// machine that was used, so nothing but a remark comes of it.
func inTime(g Graded, extra float64) []Remark {
	start, begun := moment(g.Started)
	end, ended := moment(g.Finished)
	var rs []Remark
	b := g.Form.Blueprint
	if allowed := b.Minutes * max(1, extra); begun && ended && b.Minutes > 0 {
		if took := end.Sub(start).Minutes(); took > allowed+slack {
			rs = append(rs, Remark{Kind: OverTime, Detail: fmt.Sprintf("(%.0f of %.0f minutes)", took, allowed)})
		}
	}
	if due, ok := moment(b.Due); ok && ended && end.After(due) {
		rs = append(rs, Remark{Kind: PastDue, Detail: "(" + g.Finished + ", due " + b.Due + ")"})
	}
	return rs
}

// slack is what finishing may take, in minutes.
const slack = 1

func moment(s string) (time.Time, bool) {
	t, err := time.Parse(time.RFC3339, s)
	return t, err == nil
}

// remarked is the blueprint of a form with the marking of another.
func remarked(f form.Form, to form.Blueprint) (form.Blueprint, error) {
	b := f.Blueprint
	if len(b.Parts) != len(to.Parts) {
		return b, fmt.Errorf("%w: it has %d [[item]] parts; the form was dealt from %d", ErrChanged, len(to.Parts), len(b.Parts))
	}
	parts := make([]form.Part, len(b.Parts))
	for i, p := range b.Parts {
		q := to.Parts[i]
		if p.Kind != q.Kind || p.Count != q.Count {
			return b, fmt.Errorf("%w: its part %d asks for %d of %s; the form was dealt %d of %s",
				ErrChanged, i+1, q.Count, q.Kind, p.Count, p.Kind)
		}
		if was, is := p.Spec.Station.Name, q.Spec.Station.Name; was != is {
			return b, fmt.Errorf("%w: its station %d is %q; the submission has %q there", ErrChanged, i+1, is, was)
		}
		p.Points, p.HintCost, p.Spec.Tolerance = q.Points, q.HintCost, q.Spec.Tolerance
		p.Spec.Station = q.Spec.Station
		parts[i] = p
	}
	b.Tolerance, b.PassShare, b.Minutes, b.Due = to.Tolerance, to.PassShare, to.Minutes, to.Due
	b.Parts = parts
	return b, sameQuestions(f, b)
}

// sameQuestions says whether the items stay what they were.
func sameQuestions(f form.Form, b form.Blueprint) error {
	g := f
	g.Blueprint = b
	for i := range f.Items {
		before, err := f.Item(i)
		if err != nil {
			return fmt.Errorf("%w: %w", ErrDealt, err)
		}
		after, err := g.Item(i)
		if err != nil {
			return fmt.Errorf("%w: %w", ErrChanged, err)
		}
		if !alike(before, after) {
			return fmt.Errorf("%w: its tolerance makes another question of item %d; it cannot be marked with it", ErrChanged, i+1)
		}
	}
	return nil
}

func alike(a, b item.Item) bool {
	if _, ok := a.(item.AtStation); ok {
		return a.Near(b)
	}
	if x, ok := a.(item.AtBench); ok {
		y, ok := b.(item.AtBench)
		return ok && x.Setup() == y.Setup()
	}
	return a.Prompt() == b.Prompt() && a.Key() == b.Key() && a.Alt() == b.Alt()
}
