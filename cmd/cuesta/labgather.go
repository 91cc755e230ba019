package main

import (
	"bytes"
	"io"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/lab"
)

// gathered puts together what each student of a lab left at several machines.
// What cannot be read, or does not belong together, is left as it is for the
// marking to tell of.
func gathered(sources []grade.Source) []grade.Source {
	of := map[string][]form.Submission{}
	names := map[string][]string{}
	ids := make([]string, len(sources))
	for i, s := range sources {
		sub, err := readSource(s)
		if err != nil {
			continue
		}
		ids[i] = strings.ToLower(sub.Form.Student.ID)
		of[ids[i]] = append(of[ids[i]], sub)
		names[ids[i]] = append(names[ids[i]], s.Name)
	}
	var out []grade.Source
	done := map[string]bool{}
	for i, s := range sources {
		id := ids[i]
		if done[id] && id != "" {
			continue
		}
		joined, err := joinedSource(of[id], names[id])
		if len(of[id]) < 2 || err != nil {
			out = append(out, s)
			continue
		}
		done[id] = true
		out = append(out, joined)
	}
	return out
}

func readSource(s grade.Source) (form.Submission, error) {
	r, err := s.Open()
	if err != nil {
		return form.Submission{}, err
	}
	defer r.Close()
	return form.DecodeSubmission(r)
}

// joinedSource is one source of several submissions of a student.
func joinedSource(parts []form.Submission, names []string) (grade.Source, error) {
	if len(parts) == 0 {
		return grade.Source{}, lab.ErrJoin
	}
	sub, err := lab.Join(parts)
	if err != nil {
		return grade.Source{}, err
	}
	var text bytes.Buffer
	if err := sub.Encode(&text); err != nil {
		return grade.Source{}, err
	}
	open := func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(text.Bytes())), nil }
	return grade.Source{Name: strings.Join(names, ", "), Open: open}, nil
}
