package lab

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"cuesta/quiz/form"
)

// ErrJoin says that submissions do not belong together.
var ErrJoin = errors.New("these submissions do not belong together")

// Join is one submission of what a student left at several screens, each with a
// folder of its own: the readings of a station follow each other in the order
// in which the submissions were finished. Readings that one holds from their
// beginning and another goes on with are there once. No more of them count than
// a station may have. At least one submission must be given, and all of them be
// of one form.
func Join(parts []form.Submission) (form.Submission, error) {
	parts = slices.Clone(parts)
	slices.SortStableFunc(parts, func(a, b form.Submission) int { return moment(a.Finished).Compare(moment(b.Finished)) })
	out := parts[0]
	out.Answers = slices.Clone(out.Answers)
	for _, p := range parts[1:] {
		if p.Form.Code != out.Form.Code || len(p.Answers) != len(out.Answers) {
			return out, fmt.Errorf("%w: %s is of form %s and of form %s", ErrJoin, out.Form.Student.ID, out.Form.Code, p.Form.Code)
		}
		for i := range p.Answers {
			texts := joined(out.Answers[i].Texts, p.Answers[i].Texts)
			out.Answers[i].Texts = texts[:min(len(texts), out.Form.Part(i).Attempts)]
		}
		if moment(p.Started).Before(moment(out.Started)) {
			out.Started = p.Started
		}
		out.Finished = p.Finished
	}
	return out, nil
}

// joined are the texts of both, or the longer where it begins with the other.
func joined(a, b []string) []string {
	n := min(len(a), len(b))
	switch {
	case !slices.Equal(a[:n], b[:n]):
		return append(slices.Clone(a), b...)
	case len(a) > len(b):
		return a
	}
	return b
}

func moment(at string) time.Time {
	t, _ := time.Parse(time.RFC3339, at) // without a time it comes first
	return t
}
