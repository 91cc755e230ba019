package sitting

import (
	"fmt"
	"math"
	"time"
)

// clock is the time of the entries. It never goes back: a machine whose clock
// is set back gains no time.
type clock struct {
	started, last string // RFC 3339, or ""
	start, latest time.Time
}

func startClock(at string) (clock, error) {
	c := clock{started: at, last: at}
	if at == "" {
		return c, nil
	}
	t, err := moment(at)
	c.start, c.latest = t, t
	return c, err
}

func moment(at string) (time.Time, error) {
	t, err := time.Parse(time.RFC3339, at)
	if err != nil {
		return t, fmt.Errorf("%w: %q", ErrMoment, at)
	}
	return t, nil
}

func (c clock) check(at string) error {
	if at == "" {
		return nil
	}
	_, err := moment(at)
	return err
}

// at is the clock at the time of an entry.
func (c clock) at(at string) clock {
	if t, err := moment(at); at != "" && err == nil && t.After(c.latest) {
		c.last, c.latest = at, t
	}
	return c
}

// Left is how much time is left at a time, and whether there is an end to it at
// all: the time limit of the blueprint, lengthened by the extra time of the
// student, or the day the quiz is due, whichever comes first. It is negative
// when the time is over.
func (s *Sitting) Left(at string) (time.Duration, bool) {
	end, ok := s.end()
	now := s.clock.at(at).latest
	if !ok || now.IsZero() {
		return 0, false
	}
	return end.Sub(now), true
}

// end is the moment from which no answer is taken.
func (s *Sitting) end() (time.Time, bool) {
	var end time.Time
	if minutes := s.form.Limit(); minutes > 0 && !s.clock.start.IsZero() {
		end = s.clock.start.Add(time.Duration(math.Round(minutes * float64(time.Minute))))
	}
	if due, err := time.Parse(time.RFC3339, s.form.Blueprint.Due); err == nil && (end.IsZero() || due.Before(end)) {
		end = due
	}
	return end, !end.IsZero()
}

// inTime says whether an answer may still be written.
func (s *Sitting) inTime(at string) error {
	if left, ok := s.Left(at); ok && left < 0 {
		return ErrTime
	}
	return nil
}
