package gradebook_test

import (
	"bytes"
	"fmt"
	"testing"

	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
)

// hostile is a name that would do harm where it is not escaped.
const hostile = `=cmd|'/c calc'!A1 <script>alert("x")</script> & "Co", Ltd`

// class is a class of n, most of them careful, with one hostile name.
func class(t testing.TB, n int) (grade.Report, []grade.Graded) {
	t.Helper()
	tolerance := quiz.DefaultTolerance
	b := form.Blueprint{
		Title: "Ostby Fell <first> day", Place: "Ostby Fell", Tolerance: tolerance, PassShare: 0.6, Seed: 3,
		Parts: []form.Part{
			{Kind: "measure-slab", Count: 2, Points: 4, Attempts: 3, Spec: item.Spec{Tolerance: tolerance}},
			{Kind: "read-dial", Count: 2, Points: 1, Attempts: 2, HintCost: 0.25, Spec: item.Spec{Tolerance: tolerance}},
			{Kind: "convert-notation", Count: 1, Points: 1, Attempts: 1, Spec: item.Spec{Tolerance: tolerance}},
		},
	}
	var roster []form.Student
	for i := range n {
		roster = append(roster, form.Student{ID: fmt.Sprintf("tf%02d", i+1), Name: fmt.Sprintf("Student %d", i+1), ExtraTime: 1})
	}
	roster[1].Name = hostile
	d, err := form.Deal(b, roster, form.Options{Seed: b.Seed})
	if err != nil {
		t.Fatal(err)
	}
	c := grade.NewClass(roster)
	var all []grade.Graded
	for i, f := range d.Forms[:n-1] {
		l := learner.Learner{}
		if i%3 == 1 {
			l = learner.Learner{Manner: learner.Mistaken, Mistake: mistake.OtherEnd}
		}
		w, err := l.Sit(f, uint64(i))
		if err != nil {
			t.Fatal(err)
		}
		g, err := grade.Submission(w.Submission, nil)
		if err != nil {
			t.Fatal(err)
		}
		c.Add(grade.Outcome{Source: f.Student.ID + form.SubmissionEnding, Graded: g})
		all = append(all, g)
	}
	c.Add(grade.Outcome{Source: "x<y.submission.json", Err: fmt.Errorf("it is\ncut off")})
	c.Add(grade.Outcome{Source: "again.submission.json", Graded: all[0]})
	return c.Report(), all
}

// page is what write writes.
func page(t testing.TB, write func(*bytes.Buffer) error) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
