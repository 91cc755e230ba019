package session

import (
	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// Refused is an answer that cannot be: it was not judged and not kept.
type Refused struct {
	Reason error            // what orient.Parse said
	Hint   *mistake.Finding // what probably happened, or nil
}

// Error says what is wrong with the answer, and the probable mistake.
func (r *Refused) Error() string {
	if r.Hint == nil {
		return r.Reason.Error()
	}
	return r.Reason.Error() + ". " + r.Hint.Said
}

// Unwrap returns the reason.
func (r *Refused) Unwrap() error { return r.Reason }

// Note writes down an answer in any notation and judges it by the readings
// taken so far. An answer that cannot be read is a *Refused error and leaves
// everything as it was; so does one to a plane that was shown before it was
// first answered, with ErrShown.
func (s *Session) Note(text string) (quiz.Verdict, error) {
	if s.Spoilt() {
		return quiz.Verdict{}, ErrShown
	}
	entry, err := orient.Parse(text, s.options.Notation)
	if err != nil {
		return quiz.Verdict{}, s.refused(text, err)
	}
	if err := s.bench.Do(sim.Command{Kind: sim.Note, Text: text}); err != nil {
		return quiz.Verdict{}, err
	}
	s.answered = true
	return quiz.Judge(s.caseOf(entry)), nil
}

func (s *Session) caseOf(e orient.Entry) quiz.Case {
	return quiz.Case{
		Entry: e, Truth: s.Truth(), Declination: s.Declination(),
		Notation: s.options.Notation, Tolerance: s.options.Tolerance,
		Readings: mistake.ReadingsOf(s.World()),
	}
}

func (s *Session) refused(text string, reason error) error {
	r := &Refused{Reason: reason}
	e := s.caseOf(orient.Entry{Notation: s.options.Notation}).Evidence()
	if f, ok := mistake.OfRefused(text, reason, e); ok {
		r.Hint = &f
	}
	return r
}
