package scenes

import (
	"errors"
	"fmt"
	"time"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
)

// Desk is a form of the quiz and its journal, as the scene drives them.
type Desk struct {
	j      *sitting.Journal
	now    func() string // RFC 3339, or ""
	handIn func(form.Submission) (Handed, error)
}

// Handed is a submission that has been written.
type Handed struct {
	File  string // its name, without the folder
	Where string // behind "lies", such as "among your downloads"
}

// NewDesk puts a journal on the desk. now tells the time, handIn writes the
// submission, whole or not at all.
func NewDesk(j *sitting.Journal, now func() string, handIn func(form.Submission) (Handed, error)) *Desk {
	return &Desk{j, now, handIn}
}

// Title is that of the quiz.
func (d *Desk) Title() string { return d.j.Form().Blueprint.Title }

// Count is the number of questions.
func (d *Desk) Count() int { return d.j.Len() }

// Item is question i, from 0.
func (d *Desk) Item(i int) item.Item { return d.j.Item(i) }

// Given is the answer to question i that counts.
func (d *Desk) Given(i int) string {
	text, _ := d.j.Written(i)
	return text
}

// Left is how often question i may still be answered.
func (d *Desk) Left(i int) int { return d.j.Attempts(i) }

// Points is what question i is worth.
func (d *Desk) Points(i int) float64 { return d.j.Part(i).Points }

// Flagged says whether the student wants to come back to question i.
func (d *Desk) Flagged(i int) bool { return d.j.Answer(i).Flagged }

// Notation is that of the course.
func (d *Desk) Notation() orient.Notation { return d.j.Form().Blueprint.Notation }

// Done says whether the form has been handed in.
func (d *Desk) Done() bool { return d.j.Finished() }

// Hints are those taken for question i, whether there are more, and what share
// of the points the next one costs.
func (d *Desk) Hints(i int) (taken []string, more bool, cost float64) {
	return d.j.Hints(i), d.j.HintsLeft(i) > 0, d.j.Part(i).HintCost
}

// Answer keeps an answer, and the recording of the bench before it.
func (d *Desk) Answer(i int, text, recording string) error {
	if recording != "" {
		if err := d.do(d.j.BenchEntry(i, recording, d.now())); err != nil {
			return err
		}
	}
	return d.do(sitting.Entry{Do: sitting.Answer, Item: i, Text: text, At: d.now()})
}

// Hint takes the next hint of question i.
func (d *Desk) Hint(i int) error {
	return d.do(sitting.Entry{Do: sitting.Hint, Item: i, At: d.now()})
}

// At is the question that is, or was, on the screen.
func (d *Desk) At() int { return d.j.Position() }

// Go notes that question i is on the screen.
func (d *Desk) Go(i int) error {
	if d.j.Finished() || d.j.Position() == i {
		return nil
	}
	return d.do(sitting.Entry{Do: sitting.Go, Item: i, At: d.now()})
}

// Begun says whether anything has been done with the form before.
func (d *Desk) Begun() bool { return d.j.Resumed() }

// Flag marks question i, or takes the mark off.
func (d *Desk) Flag(i int) error {
	return d.do(sitting.Entry{Do: sitting.Flag, Item: i, At: d.now()})
}

// Undo takes back the last answer or flag.
func (d *Desk) Undo() error { return d.do(sitting.Entry{Do: sitting.Undo, At: d.now()}) }

func (d *Desk) do(e sitting.Entry) error { return d.j.Do(e) }

// Finish hands the form in. The submission is written before the form closes,
// so that a full disk loses nothing.
func (d *Desk) Finish() (Handed, error) {
	e := sitting.Entry{Do: sitting.Finish, At: d.now()}
	if err := d.j.Check(e); err != nil && !errors.Is(err, sitting.ErrFinished) {
		return Handed{}, err
	}
	if !d.j.Finished() {
		if err := d.j.Do(e); err != nil {
			return Handed{}, err
		}
	}
	return d.handIn(d.j.Submission())
}

// Remaining is the time left, in whole minutes, where there is a limit.
func (d *Desk) Remaining() (words string, over bool) {
	left, limited := d.j.Left(d.now())
	switch {
	case !limited || d.j.Finished():
		return "", false
	case left <= 0:
		return "The time is over; hand the form in.", true
	case left < time.Minute:
		return "Less than a minute left.", false
	}
	return fmt.Sprintf("%d minutes left.", int(left.Minutes())), false
}
