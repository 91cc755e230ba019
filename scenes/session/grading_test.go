package session_test

import (
	"errors"
	"testing"

	"cuesta/scenes/session"
)

func TestNothingIsGradedAfterThePlaneWasShown(t *testing.T) {
	s := start(t, session.Options{Plane: plane(35, 30), Seed: 4})
	before := s.World().Hash()
	if !s.Counts() {
		t.Error("a fresh plane does not count")
	}
	s.Reveal()
	if v, err := s.Note("035/30"); !errors.Is(err, session.ErrShown) || v.Right || s.Counts() || s.Answered() {
		t.Errorf("got %+v, %v; want ErrShown", v, err)
	}
	if s.World().Hash() != before {
		t.Error("the answer left a trace")
	}
	if err := s.Next(5); err != nil || !s.Counts() {
		t.Errorf("the next plane does not count (%v)", err)
	}
}

// After a graded answer the plane may be looked at and measured again, for
// practice.
func TestTheFirstAnswerCountsAndOthersArePractice(t *testing.T) {
	s := start(t, session.Options{Plane: plane(35, 30), Seed: 4})
	for i, text := range []string{"215/30", "035/30"} {
		if got, want := s.Counts(), i == 0; got != want {
			t.Errorf("answer %d counts: got %v, want %v", i+1, got, want)
		}
		if v, err := s.Note(text); err != nil || v.Right != (i == 1) {
			t.Errorf("%s: got %+v, %v", text, v, err)
		}
		s.Reveal()
	}
}
