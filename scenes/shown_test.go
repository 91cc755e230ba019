package scenes

import (
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/scenes/input"
)

// What the window shows takes part in the rule of session.Session: the first
// answer counts, and none after the plane was shown.
func TestTheWindowGradesNothingThatWasShown(t *testing.T) {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	k := newHands(t, BenchOptions{Seed: 7, Plane: &p})
	k.act(idSecondary)
	if k.b.phase != shown || !k.b.ses.Spoilt() {
		t.Fatalf("phase %v, spoilt %v; want the answer shown, and the plane spoilt", k.b.phase, k.b.ses.Spoilt())
	}
	k.typing("035/30")
	k.key(input.Enter, 0)
	if k.b.tally != (quiz.Tally{}) {
		t.Errorf("counted %+v after the answer was shown", k.b.tally)
	}
}

func TestMeasuringAgainIsPractice(t *testing.T) {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	k := newHands(t, BenchOptions{Seed: 7, Plane: &p})
	k.typing("215/30")
	k.key(input.Enter, 0)
	first := k.b.tally
	k.act(idShowNumbers)
	k.act(idSecondary)
	k.typing("035/30")
	k.key(input.Enter, 0)
	if !k.b.verdict.Right || k.b.tally != first {
		t.Errorf("right %v, tally %+v; want the second answer judged and not counted beside %+v", k.b.verdict.Right, k.b.tally, first)
	}
}
