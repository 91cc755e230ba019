package scenes

import (
	"math/rand/v2"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// listened is a bench and all that has been said of it.
type listened struct {
	b      *Bench
	herald describe.Herald
	said   []string
}

func listenTo(t *testing.T, p orient.Plane) *listened {
	t.Helper()
	b, err := NewBench(BenchOptions{Plane: &p, Seed: 5})
	if err != nil {
		t.Fatal(err)
	}
	l := &listened{b: b}
	l.frame()
	return l
}

// frame passes a tenth of a second with some presses.
func (l *listened) frame(presses ...input.Press) {
	l.b.Update(input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 12, Presses: presses})
	l.herald.Pass(12)
	l.said = append(l.said, l.herald.Hear(l.b.Description())...)
}

func (l *listened) heard(words string) bool {
	for _, s := range l.said {
		if strings.Contains(s, words) {
			return true
		}
	}
	return false
}

// Whatever a student does before the answer is given, it is not said; once it
// is on the screen, it is.
func TestTheAnswerIsNotSaidBeforeItIsShown(t *testing.T) {
	p := orient.PlaneOf(217.3*orient.Degree, 43.4*orient.Degree)
	l := listenTo(t, p)
	keys := []input.Press{
		{Key: input.Left}, {Key: input.Right}, {Key: input.Up}, {Key: input.Down}, {Key: input.Tab}, {Key: input.Space},
		{Rune: 't'}, {Rune: 'f'}, {Rune: 'd'}, {Rune: 's'}, {Rune: '1'}, {Key: input.Backspace}, {Key: input.Escape},
		{Key: input.F1}, {Key: input.F2}, {Key: input.Escape},
	}
	r := rand.New(rand.NewPCG(4, 4))
	for range 1500 {
		if k := keys[r.IntN(len(keys))]; k.Key != input.Space || l.b.focus != idSecondary { // which shows the answer
			l.frame(k)
		}
	}
	truths := []string{"true plane", "217/43", "217.3", "43.4", "S37W", "307/43"}
	for _, w := range truths {
		if l.heard(w) {
			t.Errorf("%q was said before the answer was shown", w)
		}
	}
	if len(l.said) < 300 {
		t.Errorf("%d sentences in 1500 presses: the bench is hardly described", len(l.said))
	}
	l.frame(input.Press{Key: input.Escape})
	l.frame(input.Press{Key: input.Escape})
	l.b.act(idSecondary)
	l.frame()
	if !l.heard("The true plane is " + orient.Format(l.b.ses.Truth(), l.b.set.Notation)) {
		t.Error("the answer was shown and not said")
	}
}

// What is pressed is answered: each of the common acts has its sentence, and a
// bench that stands still says nothing.
func TestEachActIsAnswered(t *testing.T) {
	l := listenTo(t, orient.PlaneOf(35*orient.Degree, 30*orient.Degree))
	tests := []struct {
		name  string
		press input.Press
		want  string
	}{
		{"a roll", input.Press{Key: input.Up, Mods: input.Shift}, "ubble"},
		{"scale and level", input.Press{Rune: 'd'}, "north end"},
		{"on its side", input.Press{Rune: 't'}, "stands on its side"},
		{"the arm", input.Press{Key: input.Up, Mods: input.Shift}, "arm stands"},
		{"end for end", input.Press{Rune: 'f'}, "ubble"},
		{"a digit", input.Press{Rune: '0'}, "Notebook"},
		{"settings", input.Press{Key: input.F2}, "Settings"},
		{"back", input.Press{Key: input.Escape}, "Instrument"},
	}
	for _, tt := range tests {
		l.said = nil
		l.frame(tt.press)
		for range 30 {
			l.frame()
		}
		if !l.heard(tt.want) {
			t.Errorf("%s: %q, want %q in it", tt.name, l.said, tt.want)
		}
	}
	for range 100 {
		l.frame()
	}
	l.said = nil
	for range 100 {
		l.frame()
	}
	if len(l.said) > 0 {
		t.Errorf("a bench at rest said %q", l.said)
	}
}
