package sitting

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
)

// Sitting is a form being answered. Make one with New; it is not safe for use
// by several goroutines at once.
type Sitting struct {
	form     form.Form
	items    []item.Item
	answers  []form.Answer
	position int
	back     []Entry // that Undo takes back, the last one last
	clock    clock
	finished bool
}

// New begins a sitting at a time, RFC 3339, or "" where no clock is known. The
// error is that of the form, or wraps ErrMoment.
func New(f form.Form, at string) (*Sitting, error) {
	items, err := f.All()
	if err != nil {
		return nil, err
	}
	s := &Sitting{form: f, items: items, answers: make([]form.Answer, len(items))}
	s.clock, err = startClock(at)
	return s, err
}

// Form is the form.
func (s *Sitting) Form() form.Form { return s.form }

// Len is the number of items.
func (s *Sitting) Len() int { return len(s.items) }

// Item is item i, from 0.
func (s *Sitting) Item(i int) item.Item { return s.items[i] }

// Part is the part of the blueprint that item i belongs to.
func (s *Sitting) Part(i int) form.Part { return s.form.Part(i) }

// Position is the item the student is at, from 0.
func (s *Sitting) Position() int { return s.position }

// Answer is what was done with item i so far.
func (s *Sitting) Answer(i int) form.Answer {
	a := s.answers[i]
	a.Texts = append([]string(nil), a.Texts...)
	return a
}

// Written is the answer to item i that stands, and whether there is one.
func (s *Sitting) Written(i int) (text string, ok bool) {
	if n := len(s.answers[i].Texts); n > 0 {
		return s.answers[i].Texts[n-1], true
	}
	return "", false
}

// Open are the items without an answer.
func (s *Sitting) Open() []int {
	var open []int
	for i, a := range s.answers {
		if len(a.Texts) == 0 {
			open = append(open, i)
		}
	}
	return open
}

// Attempts is how often item i may still be answered.
func (s *Sitting) Attempts(i int) int { return s.Part(i).Attempts - len(s.answers[i].Texts) }

// Hints are the hints to item i that were taken.
func (s *Sitting) Hints(i int) []string { return s.items[i].Hints()[:s.answers[i].Hints] }

// HintsLeft is how many hints to item i are left.
func (s *Sitting) HintsLeft(i int) int { return len(s.items[i].Hints()) - s.answers[i].Hints }

// Finished says whether the form has been handed in.
func (s *Sitting) Finished() bool { return s.finished }

// Understood says how a text would be understood as the answer to item i. The
// error wraps ErrUnread and says why it would not. Neither tells whether it is
// right.
func (s *Sitting) Understood(i int, text string) (string, error) {
	if err := form.CheckText(text); err != nil {
		return "", fmt.Errorf("%w: %w", ErrUnread, err)
	}
	m := s.items[i].Mark(text, item.Evidence{})
	if m.Refused {
		return "", fmt.Errorf("%w: %s", ErrUnread, m.Understood)
	}
	return m.Understood, nil
}

// Do takes an entry. The error wraps one of the sentinels of this package and
// leaves the sitting as it was.
func (s *Sitting) Do(e Entry) error {
	if err := s.Check(e); err != nil {
		return err
	}
	s.apply(e)
	return nil
}

// Check says why an entry would not be taken.
func (s *Sitting) Check(e Entry) error {
	if s.finished {
		return ErrFinished
	}
	if err := s.clock.check(e.At); err != nil {
		return err
	}
	if err := s.checkItem(e); err != nil {
		return err
	}
	switch e.Do {
	case Go, Finish:
		return nil
	case Answer, Flag, Undo, Hint, Bench:
		if err := s.inTime(e.At); err != nil {
			return err
		}
		return s.checkDeed(e)
	}
	return fmt.Errorf("%w: %d", ErrDeed, e.Do)
}

func (s *Sitting) checkItem(e Entry) error {
	switch e.Do {
	case Go, Answer, Flag, Hint, Bench:
		if e.Item < 0 || e.Item >= len(s.items) {
			return fmt.Errorf("%w: %d of %d", ErrItem, e.Item+1, len(s.items))
		}
	case Undo, Finish:
	}
	return nil
}

func (s *Sitting) checkDeed(e Entry) error {
	switch e.Do {
	case Answer:
		if s.Attempts(e.Item) <= 0 {
			return ErrAttempts
		}
		_, err := s.Understood(e.Item, e.Text)
		return err
	case Undo:
		if len(s.back) == 0 {
			return ErrNothing
		}
	case Hint:
		if s.HintsLeft(e.Item) <= 0 {
			return ErrHints
		}
	case Bench:
		_, err := s.recording(e)
		return err
	case Go, Flag, Finish:
	}
	return nil
}

// apply carries out an entry that has been checked.
func (s *Sitting) apply(e Entry) {
	s.clock = s.clock.at(e.At)
	switch e.Do {
	case Go:
		s.position = e.Item
	case Answer:
		a := &s.answers[e.Item]
		a.Texts = append(a.Texts, e.Text)
		s.position, s.back = e.Item, append(s.back, e)
	case Flag:
		s.answers[e.Item].Flagged = !s.answers[e.Item].Flagged
		s.back = append(s.back, e)
	case Undo:
		s.undo()
	case Hint:
		s.answers[e.Item].Hints++
	case Bench:
		s.answers[e.Item].Recording, _ = s.recording(e)
	case Finish:
		s.finished = true
	}
}

// undo takes the last answer or flag back. An attempt that is taken back may be
// used again: nothing is told about right or wrong before the end, so this
// gives no help.
func (s *Sitting) undo() {
	e := s.back[len(s.back)-1]
	s.back = s.back[:len(s.back)-1]
	s.position = e.Item
	a := &s.answers[e.Item]
	if e.Do == Flag {
		a.Flagged = !a.Flagged
		return
	}
	a.Texts = a.Texts[:len(a.Texts)-1]
}

// Last is the entry that Undo would take back.
func (s *Sitting) Last() (Entry, bool) {
	if len(s.back) == 0 {
		return Entry{}, false
	}
	return s.back[len(s.back)-1], true
}

// recording is the recording of an item after a Bench entry.
func (s *Sitting) recording(e Entry) (string, error) {
	old := s.answers[e.Item].Recording
	kept := 0
	for range e.Keep {
		n := strings.IndexByte(old[kept:], '\n')
		if n < 0 {
			return "", fmt.Errorf("%w: it has fewer than %d lines", ErrBench, e.Keep)
		}
		kept += n + 1
	}
	if _, ok := s.items[e.Item].(item.AtBench); !ok || e.Keep < 0 || kept+len(e.Text) > form.LongestRecording {
		return "", fmt.Errorf("%w: item %d", ErrBench, e.Item+1)
	}
	return old[:kept] + e.Text, nil
}

// BenchEntry is the entry that makes a recording that of item i: only the lines
// that are new are in it.
func (s *Sitting) BenchEntry(i int, recording, at string) Entry {
	old := s.answers[i].Recording
	e := Entry{Do: Bench, Item: i, At: at}
	kept := 0
	for {
		n := strings.IndexByte(recording[kept:], '\n') + 1
		if n == 0 || !strings.HasPrefix(old[min(kept, len(old)):], recording[kept:kept+n]) {
			break
		}
		kept += n
		e.Keep++
	}
	e.Text = recording[kept:]
	return e
}

// Submission is what is handed in, or what would be if it were now.
func (s *Sitting) Submission() form.Submission {
	out := form.Submission{Form: s.form, Started: s.clock.started, Finished: s.clock.last}
	for i := range s.answers {
		out.Answers = append(out.Answers, s.Answer(i))
	}
	return out
}
