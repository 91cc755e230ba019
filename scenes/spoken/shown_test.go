package spoken_test

import (
	"strings"
	"testing"
)

// The same rule holds in the window: session.Session keeps it.
func TestNothingIsGradedAfterReveal(t *testing.T) {
	s := sit(t, given(35, 30))
	s.typed("reveal")
	if r := s.try("note 035/30"); r.OK || r.Verdict != nil || !strings.Contains(r.Said, "Not graded") {
		t.Errorf("got %+v, want it not graded", r)
	}
	s.typed("new 5")
	s.typed("note 035/30")
	if r := s.typed("note 036/31"); !strings.Contains(r.Said, "for practice") {
		t.Errorf("a second answer: %q, want to be told that it does not count", r.Said)
	}
}
