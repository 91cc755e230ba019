package scenes

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/sitting"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/scenes/lesson"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/sim"
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
		{Settings{}, "An answer is hidden: R or Page Down shows it.", input.Press{Rune: 'r'}},
		{Settings{Keys: other}, "An answer is hidden: comma or Page Down shows it.", input.Press{Rune: ','}},
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

// Pressing the keys that are said brings the bubble home, wherever it stands:
// in large steps until they say the other way, then in smaller ones.
func TestTheKeysThatAreSaidLevelThePlate(t *testing.T) {
	for seed := range uint64(12) {
		p := session.Deal(seed, Settings{}.Mix(quiz.Tally{}))
		b, err := NewBench(BenchOptions{Plane: &p, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		a := hears(b)
		if seed%2 == 1 {
			a.typed("t")
			for b.obs.Arc.Arm < 10*orient.Degree {
				a.typed("s")
				b.do(sim.Command{Kind: sim.Swing, Angle: 20 * orient.Degree})
				b.do(sim.Command{Kind: sim.Arm, Angle: 20 * orient.Degree})
			}
			a.wait(60)
		}
		follow(t, b, a)
	}
}

// follow presses each key that is said, in turn, until the bubble is home.
func follow(t *testing.T, b *Bench, a *aloud) {
	t.Helper()
	home := func() bool {
		if b.obs.Seat == sim.OnSide {
			return b.obs.Tube.Centred
		}
		return b.obs.Round.Centred
	}
	last, size := map[string]string{}, map[string]input.Mods{}
	for n := 0; !home(); n++ {
		if n == 150 {
			t.Fatalf("plane %v, %v: not level after %d presses; keys %q", b.ses.Truth(), b.obs.Seat, n, a.Description().Find(idHint).Keys)
		}
		keys := a.Description().Find(idHint).Keys
		found := homeWords.FindAllStringSubmatch(keys, -1)
		if len(found) == 0 {
			t.Fatalf("plane %v: no key is said: %q", b.ses.Truth(), keys)
		}
		f := found[n%len(found)]
		arrow, does := f[1], f[2]
		switch was, ok := last[does]; {
		case !ok:
			size[does] = input.Shift
		case was != arrow && size[does] == input.Shift:
			size[does] = 0
		case was != arrow:
			size[does] = input.Ctrl
		}
		last[does] = arrow
		a.frame(input.Frame{Presses: []input.Press{{Key: arrowKeys[arrow], Mods: size[does]}}})
		a.wait(15)
	}
}

var (
	homeWords = regexp.MustCompile(`([←→↑↓]) (rolls it in|swings it in|turns the arm home)`)
	arrowKeys = map[string]input.Key{"←": input.Left, "→": input.Right, "↑": input.Up, "↓": input.Down}
)

// The keys are those in force, and are said anew when another helps.
func TestTheKeyThatLevelsIsSaidAsItIsMapped(t *testing.T) {
	keys, _, err := keymap.Map{}.With(keymap.SwingMore, keymap.Stroke{Rune: 'k'})
	if err != nil {
		t.Fatal(err)
	}
	b, a := benchAloud(t)
	b.Choose(Settings{Keys: keys})
	b.do(sim.Command{Kind: sim.Swing, Angle: -10*orient.Degree - b.ses.World().Pose().Swing}) // its forward end is high, and the rock falls to the right
	a.said = nil
	a.wait(60)
	if !hasWords(a.said, "K swings it in") {
		t.Errorf("%q, want the key K", a.said)
	}
	said := a.press(input.Press{Rune: 'k', Mods: input.Shift}, input.Press{Rune: 'k', Mods: input.Shift})
	if !hasWords(said, "left arrow swings it in") {
		t.Errorf("%q, want the left arrow", said)
	}
}

// Nothing is said to be noted or complete before it is.
func TestTheNoteIsSaidToBeWhatItIs(t *testing.T) {
	for _, tt := range []struct {
		typed, want, not string
	}{
		{"035", "Written, not yet recorded.", "Noted"},
		{"035/3", "One digit of the dip so far: type the second, or record it.", "complete"},
		{"035/30", "The reading is complete", "so far"},
		{"N35E 3SE", "The reading is complete", "so far"},
	} {
		b, a := benchAloud(t)
		b.focus = idNotebook
		said := a.typed(tt.typed)
		last := a.Description().Find(idHint).Name
		if !hasWords(said, tt.want) || !strings.Contains(last, tt.want) || strings.Contains(last, tt.not) {
			t.Errorf("%q: %q, at last %q; want %q", tt.typed, said, last, tt.want)
		}
	}
}

// Where the bubble is, is said with its unit and how far out is still home: by
// the drawn proportions 1.3 mm of 5.0, and 1.4 mm of 5.6 (sim/instrument).
func TestTheBubbleIsSaidWithItsUnit(t *testing.T) {
	_, a := benchAloud(t)
	for _, said := range [][]string{a.said, a.typed("d"), a.typed("t"), a.typed("d")} {
		for _, s := range said {
			if strings.Contains(s, "ubble") && strings.ContainsAny(s, "0123456789") &&
				!strings.HasSuffix(s, ", in ring radii; up to 0.26 is inside.") && !strings.HasSuffix(s, ", in half gaps; up to 0.25 is between the marks.") {
				t.Errorf("%q says no unit or no limit", s)
			}
		}
	}
}

// What is wrong is said with its size and side, in the window as in the terminal.
func TestTheVerdictSaysBothSides(t *testing.T) {
	_, a := benchAloud(t) // of 035/30
	a.typed("050/25")
	said := a.key(input.Enter)
	if !hasWords(said, "Strike line: 15.0° clockwise") || !hasWords(said, "Dip: 5.0° too gentle") {
		t.Errorf("%q", said)
	}
}

// Help is a list: what is said first is short, and each line comes when it is
// gone to, over pages too; leaving it says where one is and no more.
func TestHelpIsGoneThroughLineByLine(t *testing.T) {
	for _, text := range []TextSize{Text100, Text200} {
		b, a := benchAloud(t)
		b.Choose(Settings{Text: text})
		a.wait(120)
		said := a.key(input.F1)
		n := len((&maker{b: b}).helpLines())
		if len(said) > 5 || !hasWords(said, "Help") || !hasWords(said, linesOf(n)) || !hasWords(said, "line to line") || !hasWords(said, "Escape") {
			t.Errorf("%v: help begins with %q", text, said)
		}
		var lines []string
		for range n {
			for _, s := range a.key(input.Down) {
				if !strings.HasPrefix(s, "Help ") { // the heading of the next page
					lines = append(lines, s)
				}
			}
		}
		for _, words := range []string{"Level: swing and roll", "Strike: let the needle", "down the slope", "says in words what scale", "Switches: "} {
			if !hasWords(lines, words) {
				t.Errorf("%v: %q is not among the lines: %q", text, words, lines)
			}
		}
		if said = a.key(input.Up); len(said) == 0 || len(said) > 4 {
			t.Errorf("%v: back: %q", text, said)
		}
		if said = a.key(input.Escape); !slices.Equal(said, []string{a.Description().Find(idTitle).Name + ".", "Instrument on the slab."}) {
			t.Errorf("%v: leaving says %q", text, said)
		}
	}
}

func TestTheKeysOfALectureAreGoneThroughLineByLine(t *testing.T) {
	x, a := lectureAloud(t, Settings{})
	said := a.key(input.F1)
	if len(said) > 4 || !hasWords(said, "Keys of a lecture") || !hasWords(said, linesOf(x.lines)) || !hasWords(said, "line to line") {
		t.Errorf("the keys begin with %q", said)
	}
	a.key(input.Down)
	if said = a.key(input.Down); len(said) == 0 || !hasWords(said, "step before") {
		t.Errorf("the second line: %q", said)
	}
	if said = a.key(input.Escape); len(said) != 2 || !hasWords(said, "Two beds") || !hasWords(said, "Step 1 of 6: ") {
		t.Errorf("leaving says %q", said)
	}
}

// The key of live play is one of those that can be changed.
func TestLivePlayHasAKeyThatCanBeChanged(t *testing.T) {
	keys, _, err := keymap.Map{}.With(keymap.Live, keymap.Stroke{Key: input.F6})
	if err != nil {
		t.Fatal(err)
	}
	x, a := lectureAloud(t, Settings{Keys: keys})
	if a.key(input.F5); x.play.IsLive() {
		t.Error("the usual key still begins live play")
	}
	if n := a.Description().Find(idLive); n == nil || n.Keys != "F6 or L" {
		t.Errorf("the control tells %+v, want F6 or L", n)
	}
	if a.key(input.F6); !x.play.IsLive() {
		t.Error("the key chosen does not begin live play")
	}
	if a.key(input.F6); x.play.IsLive() {
		t.Error("the key chosen does not end live play")
	}
}

// A group of scanning is called by what it holds.
func TestGroupsOfScanningHaveNames(t *testing.T) {
	b, _ := benchAloud(t)
	s := NewSwitched(b)
	b.Choose(Settings{Scan: ScanTwo})
	a := hears(s)
	var said []string
	for range 12 {
		said = append(said, a.key(input.Space)...)
	}
	for _, want := range []string{"Size of step", "Plate", "View and menu: 6 controls", "Swing"} {
		if !hasWords(said, want) {
			t.Errorf("no group is called %q: %q", want, said)
		}
	}
}

func TestTheSizesOfStepAreAGroupWithAName(t *testing.T) {
	_, a := benchAloud(t)
	for _, id := range []describe.ID{idStepCoarse, idStepNormal, idStepFine} {
		if n := a.Description().Find(id); n == nil || n.Role != describe.Choice || n.Group != "Size of step" {
			t.Errorf("%+v, want a choice of the size of step", n)
		}
	}
}

// The list of keys opens from every screen by its key, over the screen as it
// stands, and what is changed there counts in it at once.
func TestTheListOfKeysOpensEverywhere(t *testing.T) {
	lecture, _ := lectureAloud(t, Settings{})
	for name, inside := range map[string]Scene{
		"the hall": nil, "a bench": must(NewBench(BenchOptions{Seed: 3})), "a lecture": lecture, "a form": NewPaper(newMemory(t, 1), Settings{}),
	} {
		var kept Settings
		h := NewHall(HallOptions{First: inside, Keep: func(s Settings) { kept = s }, Doors: []Door{{Group: Practice, Title: "The bench", Words: "A slab."}}})
		a := hears(h)
		before := headingOf(a.Description())
		if said := a.key(input.F4); !hasWords(said, "Keys") || !hasWords(said, "press its new key") {
			t.Errorf("%s: F4 says %q", name, said)
			continue
		}
		for n := 0; a.Description().Find(idKeyRow+describe.ID(keymap.Live)) == nil && n < 9; n++ {
			a.frame(input.Frame{Acts: []input.Act{{Kind: input.Activate, ID: idPanelMore}}})
		}
		a.frame(input.Frame{Acts: []input.Act{{Kind: input.Activate, ID: idKeyRow + describe.ID(keymap.Live)}}})
		if said := a.key(input.F6); !hasWords(said, "Play with the instrument, and back: F6.") {
			t.Errorf("%s: the new key says %q", name, said)
		}
		want := keymap.Stroke{Key: input.F6}
		if got := h.Settings().Keys.Of(keymap.Live); got != want {
			t.Errorf("%s: the key is %v", name, got)
		}
		if _, own := inside.(*Bench); !own && kept.Keys.Of(keymap.Live) != want {
			t.Errorf("%s: the key is not kept", name)
		}
		a.key(input.Escape)
		if got := headingOf(a.Description()); got != before {
			t.Errorf("%s: Escape leads to %q, want %q", name, got, before)
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func TestAnArmNearTheEdgeIsNotSaidToStandAtNought(t *testing.T) {
	b, a := benchAloud(t)
	a.typed("t")
	b.do(sim.Command{Kind: sim.Arm, Angle: orient.Degree})
	a.said = nil
	a.wait(60)
	if !hasWords(a.said, "a little off the seated edge") {
		t.Errorf("%q", a.said)
	}
}

// atABench is a form at a question with a bench.
func atABench(t *testing.T) (*memory, *Paper) {
	t.Helper()
	m := newMemory(t, 1)
	p := NewPaper(m, Settings{})
	for i := range m.items {
		if p.goTo(i); p.atBench() {
			return m, p
		}
	}
	t.Fatal("no question has a bench")
	return nil, nil
}

// Back from the bench of a question, what has come of it is said, and not the
// question once more.
func TestBackFromTheBenchOfAQuestion(t *testing.T) {
	m, p := atABench(t)
	a := hears(p)
	said := a.key(input.Enter)
	if p.bench == nil || !hasWords(said, "at the bench") {
		t.Fatalf("the bench opens with %q", said)
	}
	a.typed("035/30")
	said = a.key(input.Enter)
	if p.bench != nil || !hasWords(said, "Kept: 035/30.") || !hasWords(said, "Next question, button") || hasWords(said, "Go to the bench") {
		t.Errorf("back: %q", said)
	}
	if hasWords(said, "Measure the slab") || hasWords(said, m.Title()) {
		t.Errorf("the question is said once more: %q", said)
	}
}

// lineOf is the line of the bench in words that does what a command does.
func lineOf(c sim.Command) string {
	word := map[sim.Kind]string{sim.Swing: "swing", sim.Roll: "roll", sim.Arm: "arm", sim.Flip: "flip", sim.Tap: "tap", sim.Calibrate: "calibrate"}[c.Kind]
	if c.Angle == 0 {
		return word
	}
	return fmt.Sprintf("%s %g", word, math.Round(c.Angle.Degrees()*10)/10)
}

// What is done is told with its amount, in the sentence of the bench in words.
func TestASmallMoveIsToldAsInWords(t *testing.T) {
	up, down, left, right := input.Press{Key: input.Up}, input.Press{Key: input.Down}, input.Press{Key: input.Left}, input.Press{Key: input.Right}
	fine, large := func(p input.Press) input.Press { p.Mods = input.Ctrl; return p }, func(p input.Press) input.Press { p.Mods = input.Shift; return p }
	tap, flip, turn, calibrate := input.Press{Key: input.Space}, input.Press{Rune: 'f'}, input.Press{Rune: 't'}, input.Press{Rune: 'k'}
	for m, presses := range map[Method][]input.Press{
		MethodEdge:   {up, up, down, fine(up), large(down), left, right, right, fine(left), flip, up, tap, tap, turn, up, down, down, down, fine(up), right, {Rune: ']'}, flip, up},
		MethodLid:    {up, down, fine(down), large(down), large(down), large(down), left, right, tap, flip},
		MethodSensor: {left, large(right), calibrate, flip},
	} {
		p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
		b, err := NewBench(BenchOptions{Plane: &p, Seed: 3, Method: &m})
		if err != nil {
			t.Fatal(err)
		}
		a := hears(b)
		a.wait(60)
		for i, k := range presses {
			ses, err := session.Resume(b.ses.Recording(), b.ses.Options())
			if err != nil {
				t.Fatal(err)
			}
			said := a.press(k)
			entries := b.ses.Recording().Entries
			done := entries[len(entries)-1].Command
			if done.Kind == sim.Place {
				continue
			}
			r, _ := spoken.NewBench(ses, nil).Line(lineOf(done))
			if first := firstSentence(r.Said); !slices.Contains(said, first) {
				t.Errorf("%v, press %d: %q, want %q as in words", m, i, said, first)
			}
		}
	}
}

// A run of taps is one sentence, however long it is, and the same once more is
// told once more.
func TestARunOfTapsIsToldOnce(t *testing.T) {
	right, up := input.Press{Key: input.Right}, input.Press{Key: input.Up, Mods: input.Ctrl}
	b, a := benchAloud(t)
	a.wait(60)
	runs := []struct {
		presses []input.Press
		want    []string
	}{
		{[]input.Press{right}, []string{"Swung 1°, clockwise seen from above."}},
		{[]input.Press{right}, []string{"Swung 1°, clockwise seen from above."}},
		{slices.Repeat([]input.Press{right}, 30), []string{"Swung 30°, clockwise seen from above."}},
		{[]input.Press{right, up, right, up, up}, []string{"Swung 2°, clockwise seen from above.", "Rolled 0.3°, right side down."}},
		{[]input.Press{right, {Key: input.Left}}, []string{"To and fro, and back where it was."}},
	}
	for _, r := range runs {
		said := slices.DeleteFunc(a.press(r.presses...), func(s string) bool {
			return !strings.HasPrefix(s, "Swung") && !strings.HasPrefix(s, "Rolled") && !strings.HasPrefix(s, "To and")
		})
		if !slices.Equal(said, r.want) {
			t.Errorf("%d presses: %q, want %q", len(r.presses), said, r.want)
		}
	}
	if b.phase != measuring {
		t.Error("the task has ended")
	}
}

// On another plane nothing is told of what was done on the last.
func TestMovesAreToldOnTheirOwnPlane(t *testing.T) {
	_, a := benchAloud(t)
	a.said = nil
	a.frame(input.Frame{Presses: []input.Press{{Key: input.Right}}})
	for _, r := range "035/30" {
		a.frame(input.Frame{Presses: []input.Press{{Rune: r}}})
	}
	a.key(input.Enter)
	a.frame(input.Frame{Presses: []input.Press{{Key: input.Enter}}})
	if said := a.key(input.F1); hasWords(said, "Swung") {
		t.Errorf("%q", said)
	}
	a.key(input.Escape)
	if n := a.Description().Find(idDone); n != nil && n.Name != "" {
		t.Errorf("the new plane still tells %q", n.Name)
	}
}

// A move that live play has not yet told is not waited for on the step.
func TestAStepDoesNotWaitForTheMovesOfLivePlay(t *testing.T) {
	x, a := lectureAloud(t, Settings{})
	a.key(input.F5)
	a.frame(input.Frame{Presses: []input.Press{{Key: input.Right}}})
	if !a.Description().Acting {
		t.Fatal("live play tells nothing of a move")
	}
	if a.frame(input.Frame{Presses: []input.Press{{Key: input.Escape}}}); x.play.IsLive() || a.Description().Acting {
		t.Error("the step waits for a move")
	}
}

// The noise of a sensor does not rest; what it shows is told when something has
// been done, or is asked for.
func TestTheNoiseOfTheSensorIsNotTold(t *testing.T) {
	m := MethodSensor
	for _, dip := range []float64{2, 30, 80} { // the gentler the bed, the more its direction wanders
		p := orient.PlaneOf(35*orient.Degree, orient.Angle(dip)*orient.Degree)
		b, err := NewBench(BenchOptions{Plane: &p, Seed: 3, Method: &m})
		if err != nil {
			t.Fatal(err)
		}
		a := hears(b)
		a.wait(20)
		for _, k := range []input.Press{{Key: input.Tab}, {Rune: 'k'}, {Key: input.Right}, {Rune: 'd'}, {Rune: 'f'}} {
			said := a.press(k)
			if (k.Rune == 'k' || k.Rune == 'd') && !hasWords(said, "The sensor shows") {
				t.Errorf("dip %v, %+v: %q", dip, k, said)
			}
			if n := strings.Count(b.notice, "The sensor shows"); k.Rune == 'd' && n != 1 {
				t.Errorf("dip %v: the reading stands %d times in %q", dip, n, b.notice)
			}
			a.said = nil
			if a.wait(300); len(a.said) > 0 {
				t.Errorf("dip %v, %+v: 30 s after it %q", dip, k, a.said)
			}
		}
	}
}

// However live play is begun, the keys are those of the bench: L with Control is
// not L, a bench where another key locks has no L, and arrows turn the plate.
func TestLivePlayTakesTheKeysOfTheBenchAlone(t *testing.T) {
	other, _, err := keymap.Map{}.With(keymap.LockFree, keymap.Stroke{Rune: 'y'})
	if err != nil {
		t.Fatal(err)
	}
	right := input.Press{Key: input.Right}
	for _, tt := range []struct {
		set  Settings
		ways []input.Press
		then input.Press
		kind sim.Kind // that is carried out
	}{
		{Settings{}, []input.Press{{Key: input.F5}}, input.Press{Rune: 'l'}, sim.Lock},
		{Settings{}, []input.Press{{Rune: 'l'}}, input.Press{Rune: 'l'}, sim.Lock},
		{Settings{}, []input.Press{{Key: input.F5}}, input.Press{Rune: 'l', Mods: input.Ctrl}, sim.Idle},
		{Settings{}, []input.Press{{Rune: 'l'}}, input.Press{Rune: 'l', Mods: input.Alt}, sim.Idle},
		{Settings{Keys: other}, []input.Press{{Rune: 'l'}}, input.Press{Rune: 'l'}, sim.Idle},
		{Settings{Keys: other}, []input.Press{{Rune: 'l'}}, input.Press{Rune: 'y'}, sim.Lock},
		{Settings{}, []input.Press{{Rune: 'p'}, {Rune: 'l'}}, right, sim.Swing},
		{Settings{}, []input.Press{{Rune: 'm'}, {Rune: 'l'}}, right, sim.Swing},
		{Settings{}, []input.Press{{Rune: 'l'}}, input.Press{Rune: 'i'}, sim.Idle}, // no other instrument is there
	} {
		x, a := lectureAloud(t, tt.set)
		a.press(tt.ways...)
		a.frame(input.Frame{Presses: []input.Press{tt.then}})
		did := sim.Idle
		for _, c := range x.issued {
			did = c.Kind
		}
		if did != tt.kind || !x.play.IsLive() || x.hand.ses != x.play.Session() {
			t.Errorf("%+v, then %+v: %v was done, want %v; live %v", tt.ways, tt.then, did, tt.kind, x.play.IsLive())
		}
	}
}

// The bench of a question is left with a word on where one is then.
func TestLeavingTheBenchOfAQuestionIsTold(t *testing.T) {
	_, p := atABench(t)
	a := hears(p)
	a.key(input.Enter)
	if p.bench == nil {
		t.Fatal("no bench")
	}
	a.frame(input.Frame{Acts: []input.Act{{Kind: input.Focus, ID: idSecondary}}})
	said := a.key(input.Enter)
	if want := p.name(p.at); p.bench != nil || !hasWords(said, want) || !hasWords(said, "Back at the form") {
		t.Errorf("leaving says %q, want %s", said, want)
	}
}

// In a form the keys of help and settings are answered, and so is a sign that is
// no choice.
func TestKeysOfAFormAreAnswered(t *testing.T) {
	m := newMemory(t, 1)
	p := NewPaper(m, Settings{})
	h := NewHall(HallOptions{First: p})
	for i := range m.items {
		if p.goTo(i); p.chooses() {
			break
		}
	}
	a := hears(h)
	for _, tt := range []struct {
		press input.Press
		want  string
	}{
		{input.Press{Key: input.F1}, "Page Down and Page Up lead to the next question"},
		{input.Press{Key: input.F2}, "The settings are in the menu: F10."},
		{input.Press{Rune: 'z'}, "The choices are A to "},
	} {
		if said := a.press(tt.press); !hasWords(said, tt.want) {
			t.Errorf("%+v: %q, want %q", tt.press, said, tt.want)
		}
	}
	for range 3 { // told, taken back, told again
		a.key(input.F1)
	}
	if !strings.HasPrefix(p.said, "Enter keeps") {
		t.Errorf("help does not come back: %q", p.said)
	}
}

func TestAnAnswerThatCannotBeReadIsToldInASentence(t *testing.T) {
	err := fmt.Errorf("%w: this is not a number: %q", sitting.ErrUnread, "9x9")
	if got, want := notKept(err), `Not kept: this is not a number: "9x9". It counts for no attempt.`; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := notKept(sitting.ErrTime), sitting.ErrTime.Error(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
