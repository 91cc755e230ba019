package scenes

import (
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/scenes/lesson"
	"cuesta/scenes/session"
)

// aloud is a scene with the screen off: all that is known of it is what is said.
type aloud struct {
	Scene
	herald describe.Herald
	said   []string
}

// hears lets a scene be worked with the screen off, and returns what is said of
// it at first.
func hears(s Scene) *aloud {
	a := &aloud{Scene: s}
	a.wait(1)
	return a
}

// frame passes a tenth of a second.
func (a *aloud) frame(f input.Frame) {
	f.W, f.H, f.Scale, f.Ticks = 1280, 720, 1, 12
	a.Update(f)
	a.herald.Pass(12)
	a.said = append(a.said, a.herald.Hear(a.Description())...)
}

func (a *aloud) wait(frames int) {
	for range frames {
		a.frame(input.Frame{})
	}
}

// press presses keys one after the other and returns what is said until all has
// come to rest, 12 s later.
func (a *aloud) press(ps ...input.Press) []string {
	a.said = nil
	for _, p := range ps {
		a.frame(input.Frame{Presses: []input.Press{p}})
	}
	a.wait(120)
	return a.said
}

func (a *aloud) key(k input.Key) []string { return a.press(input.Press{Key: k}) }

func (a *aloud) typed(s string) []string {
	var ps []input.Press
	for _, r := range s {
		ps = append(ps, input.Press{Rune: r})
	}
	return a.press(ps...)
}

func hasWords(said []string, words string) bool {
	return slices.ContainsFunc(said, func(s string) bool { return strings.Contains(s, words) })
}

func benchAloud(t *testing.T) (*Bench, *aloud) {
	t.Helper()
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := NewBench(BenchOptions{Plane: &p, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	return b, hears(b)
}

// A sentence is not said twice while one thing is done.
func TestANewPlaneIsDescribedOnce(t *testing.T) {
	b, a := benchAloud(t)
	a.typed("035/30")
	a.key(input.Enter)
	if b.phase != judged {
		t.Fatal("the reading was not recorded")
	}
	said := a.key(input.Enter)
	if !hasWords(said, "station 2") || !hasWords(said, "long edge") {
		t.Fatalf("the new plane is not described: %q", said)
	}
	for i, s := range said {
		if slices.Contains(said[:i], s) {
			t.Errorf("%q is said twice: %q", s, said)
		}
	}
}

func lectureAloud(t *testing.T, s Settings) (*Lecture, *aloud) {
	t.Helper()
	l, err := lesson.Parse("test", []byte(talk))
	if err != nil {
		t.Fatal(err)
	}
	x, err := NewLecture(l, LectureOptions{Settings: s})
	if err != nil {
		t.Fatal(err)
	}
	return x, hears(x)
}

func TestEachStepSaysItsNumber(t *testing.T) {
	x, a := lectureAloud(t, Settings{})
	if want := "Step 1 of 6: What is level here?"; !slices.Contains(a.said, want) {
		t.Errorf("at first %q, want %q", a.said, want)
	}
	a.key(input.PageDown) // the answer
	said := a.key(input.PageDown)
	if want := "Step 2 of 6: Water."; x.play.At() != 1 || !slices.Contains(said, want) {
		t.Errorf("step %d: %q, want %q", x.play.At()+1, said, want)
	}
	if said = a.key(input.PageUp); !hasWords(said, "Step 1 of 6: ") {
		t.Errorf("back: %q", said)
	}
}

// What hides an answer is said with the key that shows it, as it is mapped.
func TestAHiddenAnswerIsSaidWithItsKey(t *testing.T) {
	other, _, err := keymap.Map{}.With(keymap.Reveal, keymap.Stroke{Rune: ','})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		set  Settings
		want string
		key  input.Press
	}{
		{Settings{}, "An answer is hidden: R shows it.", input.Press{Rune: 'r'}},
		{Settings{Keys: other}, "An answer is hidden: comma shows it.", input.Press{Rune: ','}},
		{Settings{Quiet: true}, "An answer is hidden: Page Down shows it.", input.Press{Key: input.PageDown}},
	} {
		x, a := lectureAloud(t, tt.set)
		if !slices.Contains(a.said, tt.want) {
			t.Errorf("%q, want %q", a.said, tt.want)
		}
		if said := a.press(tt.key); x.play.At() != 0 || !hasWords(said, "The shoreline.") {
			t.Errorf("%v says %q, want the answer", tt.key, said)
		}
	}
}

// In live play the keys are answered as at the bench, sentence for sentence.
func TestLivePlayAnswersAsTheBenchDoes(t *testing.T) {
	x, a := lectureAloud(t, Settings{})
	for x.play.At() < 2 || x.play.Busy() {
		a.key(input.PageDown)
	}
	said := a.key(input.F5)
	if !x.play.IsLive() || !hasWords(said, "Live play, step 3 of 6") || !hasWords(said, "Escape brings the step back") || !hasWords(said, "Instrument on the slab") {
		t.Fatalf("live play begins with %q", said)
	}
	ses, err := session.Resume(x.play.Session().Recording(), x.play.Session().Options())
	if err != nil {
		t.Fatal(err)
	}
	b, err := NewBench(BenchOptions{Session: ses})
	if err != nil {
		t.Fatal(err)
	}
	bench := hears(b)
	bench.wait(120)
	for _, p := range []input.Press{
		{Key: input.Left}, {Key: input.Right, Mods: input.Shift}, {Key: input.Up, Mods: input.Shift}, {Key: input.Down, Mods: input.Ctrl},
		{Rune: 'd'}, {Rune: 'd'}, {Rune: 's'}, {Rune: 's'}, {Key: input.Space}, {Rune: 'f'}, {Rune: 'l'}, {Rune: 'l'},
		{Rune: 't'}, {Key: input.Up, Mods: input.Shift}, {Rune: ']'}, {Rune: 'd'}, {Rune: 't'},
	} {
		got, want := a.press(p), bench.press(p)
		if !slices.Equal(atInstrument(got), atInstrument(want)) {
			t.Errorf("%+v: in live play\n%q, at the bench\n%q", p, got, want)
		}
		if (p.Rune == 'd' || p.Rune == 't' || p.Rune == 's') && len(got) == 0 {
			t.Errorf("%+v is not answered", p)
		}
	}
	if said = a.key(input.Escape); x.play.IsLive() || !hasWords(said, "Step 3 of 6: ") {
		t.Errorf("back: %q", said)
	}
}

// atInstrument leaves out what belongs to the notebook, of which a lecture has
// none, and what a lecture says of a thing that it shows.
func atInstrument(said []string) []string {
	return slices.DeleteFunc(slices.Clone(said), func(s string) bool {
		return strings.Contains(s, "shown magnified") || strings.Contains(s, "type the") || strings.Contains(s, "just type")
	})
}
