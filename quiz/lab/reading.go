package lab

import (
	"errors"
	"fmt"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
)

// Reading is what came of a reading that was taken: it is safe on the disk.
type Reading struct {
	Student    form.Student
	Station    int    // from 0
	Text       string // as it was written
	Understood string
	Number     int          // of this reading at the station, from 1
	Left       int          // how many more may follow
	Away       orient.Angle // from the nearest other reading there that can be read; 0 without one
	Repeats    *Repeats
	Counts     string     // the plane that is marked: the last, or the mean
	Mark       *item.Mark // of that plane; nil where verdicts are withheld
}

// Note takes a reading of the student at the station, in any notation. Errors
// wrap ErrNobody, ErrNowhere, ErrRefused or ErrReadings, or are those of the
// disk; nothing is kept then. An error of Options.Keep comes beside a reading
// that is safe in the journal.
func (r *Room) Note(text string) (Reading, error) {
	text = strings.TrimSpace(text)
	switch {
	case r.student.ID == "":
		return Reading{}, ErrNobody
	case r.at < 0:
		return Reading{}, ErrNowhere
	}
	it := r.items[r.at]
	m := it.Mark(text, item.Evidence{})
	if err := form.CheckText(text); err != nil || m.Refused {
		return Reading{}, refused(m, err)
	}
	if err := r.do(sitting.Entry{Do: sitting.Answer, Item: r.at, Text: text}); err != nil {
		if errors.Is(err, sitting.ErrAttempts) {
			return Reading{}, fmt.Errorf("%w: %d times", ErrReadings, r.journal.Part(r.at).Attempts)
		}
		return Reading{}, err
	}
	out := r.reading(text)
	out.Understood = strings.TrimSuffix(m.Understood, ".")
	return out, r.keep()
}

// refused is why a text is no reading.
func refused(m item.Mark, err error) error {
	if err != nil {
		return fmt.Errorf("%w: %w", ErrRefused, err)
	}
	said := strings.TrimPrefix(m.Said, "This could not be read")
	return fmt.Errorf("%w: %s", ErrRefused, strings.TrimLeft(said, ".: "))
}

// reading sums up what stands after a reading.
func (r *Room) reading(text string) Reading {
	texts := r.Readings(r.at)
	out := Reading{Student: r.student, Station: r.at, Text: text, Number: len(texts), Left: r.Left(r.at)}
	var m item.Mark
	out.Counts, m = r.items[r.at].MarkAll(texts)
	all := planes(texts, r.lab.Notation)
	if rep, ok := RepeatsOf(all); ok {
		out.Repeats = &rep
	}
	out.Away = away(all)
	if !r.options.Withhold {
		out.Mark = &m
	}
	return out
}

// Readings are what the student has read at station i so far.
func (r *Room) Readings(i int) []string {
	if r.journal == nil {
		return nil
	}
	return r.journal.Answer(i).Texts
}

// Left is how often the student may still read station i.
func (r *Room) Left(i int) int {
	if r.journal == nil {
		return r.lab.Parts[i].Attempts
	}
	return r.journal.Attempts(i)
}

// Standing is what the student's readings at station i come to, and whether
// there are any; Text is the last.
func (r *Room) Standing(i int) (Reading, bool) {
	texts := r.Readings(i)
	if len(texts) == 0 {
		return Reading{}, false
	}
	at := r.at
	r.at = i
	out := r.reading(texts[len(texts)-1])
	r.at = at
	return out, true
}

// Undo takes the last reading of the student back, at whatever station, and
// goes to that station. The error wraps ErrNobody or ErrNothing, or is of the
// disk.
func (r *Room) Undo() (station int, text string, err error) {
	if r.student.ID == "" {
		return 0, "", ErrNobody
	}
	if r.journal == nil {
		return 0, "", ErrNothing
	}
	last, ok := r.journal.Last()
	if !ok {
		return 0, "", ErrNothing
	}
	if err := r.do(sitting.Entry{Do: sitting.Undo}); err != nil {
		return 0, "", err
	}
	r.at = last.Item
	return last.Item, last.Text, r.keep()
}

// Progress is a student and how many of the stations have a reading.
type Progress struct {
	Student form.Student
	Read    int
}

// Class is how far everyone is who has a reading.
func (r *Room) Class() ([]Progress, error) {
	var out []Progress
	err := r.each(func(j *sitting.Journal) error {
		if n := j.Len() - len(j.Open()); n > 0 {
			out = append(out, Progress{j.Form().Student, n})
		}
		return nil
	})
	return out, err
}

// Entry says how a text would be understood at a station of the lab.
func (r *Room) Entry(text string) (orient.Entry, error) { return orient.Parse(text, r.lab.Notation) }
