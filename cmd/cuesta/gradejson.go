package main

import (
	"encoding/json"

	"cuesta/quiz/grade"
)

// studentLine is a line of grade --json.
type studentLine struct {
	ID       string     `json:"id"`
	Name     string     `json:"name"`
	Form     string     `json:"form"`
	Points   float64    `json:"points"`
	Of       float64    `json:"of"`
	Passed   bool       `json:"passed"`
	Finished string     `json:"finished,omitempty"`
	Answered int        `json:"answered"`
	Items    []itemLine `json:"items"`
	Remarks  []string   `json:"remarks"`
}

type itemLine struct {
	Points   float64  `json:"points"`
	Answered bool     `json:"answered"`
	Right    bool     `json:"right"`
	Mistakes []string `json:"mistakes"`
}

// classLine is the last line. Figures that are undefined are null.
type classLine struct {
	Class    int             `json:"class"`
	Mean     *float64        `json:"mean"`
	KR20     *float64        `json:"kr20"`
	Alpha    *float64        `json:"alpha"`
	Items    []itemClassLine `json:"items"`
	Missing  []string        `json:"missing"`
	Doubles  []string        `json:"doubles"`
	Refused  []refusedLine   `json:"refused"`
	Mistakes map[string]int  `json:"mistakes"`
}

type itemClassLine struct {
	Kind     string   `json:"kind"`
	P        *float64 `json:"p"`
	Biserial *float64 `json:"point_biserial"`
}

type refusedLine struct {
	File   string `json:"file"`
	Reason string `json:"reason"`
}

func (g *grader) writeJSON(rep grade.Report) error {
	out := json.NewEncoder(g.env.out)
	for _, r := range rep.Results {
		if err := out.Encode(studentLineOf(r, rep.Done(r))); err != nil {
			return err
		}
	}
	return out.Encode(classLineOf(rep))
}

func studentLineOf(r grade.Result, done string) studentLine {
	l := studentLine{
		ID: r.ID, Name: r.Name, Form: r.Code, Points: rounded(r.Points, 6), Of: rounded(r.Of, 6), Passed: r.Passed,
		Finished: done, Answered: r.Answered(), Items: []itemLine{}, Remarks: []string{},
	}
	for _, it := range r.Items {
		one := itemLine{rounded(it.Points, 6), it.Answered, it.Right, []string{}}
		for _, m := range it.Mistakes {
			one.Mistakes = append(one.Mistakes, m.Kind.String())
		}
		l.Items = append(l.Items, one)
	}
	for _, m := range r.Remarks {
		l.Remarks = append(l.Remarks, m.String())
	}
	return l
}

func classLineOf(rep grade.Report) classLine {
	a := rep.Analysis
	l := classLine{
		Class: a.Students, Mean: orNull(a.Mean), KR20: orNull(a.KR20), Alpha: orNull(a.Alpha), Items: []itemClassLine{},
		Missing: []string{}, Doubles: []string{}, Refused: []refusedLine{}, Mistakes: map[string]int{},
	}
	for _, it := range a.Items {
		l.Items = append(l.Items, itemClassLine{it.Kind, orNull(it.Difficulty), orNull(it.Biserial)})
	}
	for _, s := range rep.Missing {
		l.Missing = append(l.Missing, s.ID)
	}
	for _, d := range rep.Doubles {
		l.Doubles = append(l.Doubles, d.Left)
	}
	for _, r := range rep.Refused {
		l.Refused = append(l.Refused, refusedLine{r.Source, r.Reason})
	}
	for _, m := range a.Mistakes {
		l.Mistakes[m.Kind.String()] = m.Alone + m.Shared
	}
	return l
}

func orNull(s grade.Stat) *float64 {
	if !s.Defined() {
		return nil
	}
	x := rounded(s.Value, 6)
	return &x
}
