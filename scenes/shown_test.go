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

func TestTheTrueNumbersAreToldInWords(t *testing.T) {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := NewBench(BenchOptions{Seed: 7, Plane: &p})
	if err != nil {
		t.Fatal(err)
	}
	d := drive{1280, 720, b}
	d.wait()
	d.act(idSecondary) // show the answer
	told := func() string { return b.Description().Find(idShowNumbers).Value }
	if want := "The true plane is 035/30."; told() != want {
		t.Errorf("the numbers shown are told as %q, want %q", told(), want)
	}
	d.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Rune: '5'}}})
	if got := b.Description(); told() != "" || got.Focus != idShowNumbers {
		t.Errorf("after the key of the numbers they are told as %q with the focus on %d, want nothing, and the focus on their switch", told(), got.Focus)
	}
}
