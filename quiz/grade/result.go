package grade

import "cuesta/quiz/mistake"

// Result is what a class keeps of a submission: enough for the gradebook and
// the statistics, and little, so that a large class fits.
type Result struct {
	ID, Name, Class string
	Code            string // of the form
	Source          string
	Started         string
	Finished        string
	Quiz            uint64 // the same for the same questions under the same rules
	Points, Of      float64
	Passed          bool
	Items           []ItemResult
	Remarks         []Remark
}

// Answered is the number of items with an answer.
func (r Result) Answered() int {
	n := 0
	for _, it := range r.Items {
		if it.Answered {
			n++
		}
	}
	return n
}

// ItemResult is one item of a result.
type ItemResult struct {
	Part     int
	Points   float64
	Share    float64 // before hints were taken off
	Right    bool
	Answered bool
	Mistakes []Named
	Plane    *PlaneResult
}

// Named is a mistake that was named: alone, or beside others that explain the
// answer as well.
type Named struct {
	Kind  mistake.Kind
	Alone bool
}

// resultOf keeps what is needed.
func resultOf(o Outcome) Result {
	g := o.Graded
	r := Result{
		ID: g.Form.Student.ID, Name: g.Form.Student.Name, Class: g.Form.Student.Class, Code: g.Form.Code,
		Source: o.Source, Started: g.Started, Finished: g.Finished, Quiz: quizOf(g.Form.Blueprint),
		Points: g.Points, Of: g.Of, Passed: g.Passed, Remarks: g.Remarks,
		Items: make([]ItemResult, len(g.Items)),
	}
	for i, m := range g.Items {
		it := ItemResult{
			Part: m.Part, Points: m.Points, Share: m.Mark.Share, Right: m.Mark.Right, Answered: m.Answered, Plane: m.Plane,
		}
		for _, f := range m.Mark.Mistakes {
			it.Mistakes = append(it.Mistakes, Named{f.Kind, len(f.With) == 0})
		}
		r.Items[i] = it
	}
	return r
}
