package scenes

import (
	"errors"
	"strings"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

func testHall(o HallOptions) (*Hall, func(...input.Press)) {
	if o.Doors == nil {
		o.Doors = []Door{
			{Group: Practice, Title: "The bench", Words: "A slab and an instrument.", Open: func() (Scene, error) { return NewBench(BenchOptions{Seed: 4}) }},
			{Group: Practice, Title: "Open a form", Words: "From a file.", Wants: WantForm},
			{Group: Lectures, Title: "Broken", Words: "It cannot be opened.", Open: func() (Scene, error) { return nil, errors.New("the file is torn") }},
		}
	}
	h := NewHall(o)
	step := func(ps ...input.Press) {
		h.Update(input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 2, Presses: ps})
	}
	step()
	return h, step
}

// named finds the control of a name.
func named(t *testing.T, tree *describe.Tree, name string) describe.Node {
	t.Helper()
	for _, n := range tree.Order() {
		if n.Name == name {
			return *n
		}
	}
	t.Fatalf("no control %q on the screen %q", name, tree.Root.Name)
	return describe.Node{}
}

func TestTheHallLeadsInAndOutByKeys(t *testing.T) {
	h, step := testHall(HallOptions{})
	if got := h.Description().Root.Name; got != "Hall" {
		t.Fatalf("the first screen is %q, want the hall", got)
	}
	step(input.Press{Key: input.Enter})
	if got := h.Description().Root.Name; got != "Bench" {
		t.Fatalf("Enter on the first door leads to %q, want the bench", got)
	}
	step(input.Press{Rune: '0'}, input.Press{Rune: '3'})
	step(input.Press{Key: input.F10})
	if got := h.Description().Root.Name; got != "Hall" {
		t.Fatalf("F10 leads to %q, want the hall", got)
	}
	step(input.Press{Key: input.Escape})
	note := named(t, h.Description(), "Notebook, strike / dip")
	if note.Value != "03" {
		t.Errorf("the notebook holds %q after a visit to the hall, want 03", note.Value)
	}
}

func TestTheBenchShowsTheWayToTheHall(t *testing.T) {
	h, step := testHall(HallOptions{})
	step(input.Press{Key: input.Enter})
	menu := named(t, h.Description(), "Menu: lectures, forms and more")
	h.Update(input.Frame{W: 1280, H: 720, Scale: 1, Acts: []input.Act{{ID: menu.ID}}})
	if got := h.Description().Root.Name; got != "Hall" {
		t.Errorf("Menu leads to %q, want the hall", got)
	}
	alone, err := NewBench(BenchOptions{Seed: 4})
	if err != nil {
		t.Fatal(err)
	}
	alone.Update(input.Frame{W: 1280, H: 720, Scale: 1})
	for _, n := range alone.Description().Order() {
		if strings.HasPrefix(n.Name, "Menu") {
			t.Error("a bench without a hall offers the way to one")
		}
	}
}

// The hall names what one comes from, not what is open on it, and the front end
// learns where one is.
func TestTheHallKnowsWhereOneWas(t *testing.T) {
	open := func() (Scene, error) { return NewBench(BenchOptions{Seed: 4}) }
	h, step := testHall(HallOptions{Doors: []Door{{Group: Practice, Title: "The bench", Words: "A slab.", Place: "bench", Open: open}}})
	if got := h.Place(); got != "" {
		t.Errorf("in the hall the place is %q, want none", got)
	}
	step(input.Press{Key: input.Enter})
	if got := h.Place(); got != "bench" {
		t.Errorf("at the bench the place is %q", got)
	}
	step(input.Press{Key: input.F2}, input.Press{Key: input.F10})
	step()
	back := named(t, h.Description(), "Go on")
	if want := "Where you were. The bench, station 1"; back.Value != want || h.Place() != "" {
		t.Errorf("from the settings one comes from %q, want %q; place %q", back.Value, want, h.Place())
	}
}

// Words for those who tap name no key.
func TestWordsForTapsNameNoKey(t *testing.T) {
	for _, s := range []Scene{mustBench(t), NewPaper(newMemory(t, 4), Settings{}), NewHall(HallOptions{Doors: []Door{{Group: Practice, Title: "The bench", Words: "A slab."}}})} {
		for i := range 18 {
			if p, ok := s.(*Paper); ok {
				p.goTo(i)
			}
			s.Update(input.Frame{W: 390, H: 844, Scale: 1, Touch: true})
			line := s.Description().Find(idHint)
			for _, key := range []string{"Enter", "Escape", "arrow", "press", "Press", "↑", "type", "Type"} {
				if line != nil && strings.Contains(line.Name, key) && !strings.Contains(line.Name, "the strike") {
					t.Errorf("%T: %q names %q", s, line.Name, key)
				}
			}
		}
	}
}

// Help for those who tap tells what stands on the controls, and no key.
func TestHelpForTapsNamesNoKey(t *testing.T) {
	b := mustBench(t)
	d := drive{390, 844, b}
	d.frame(input.Frame{Ticks: 2, Touch: true})
	b.open(helpPanel)
	words := ""
	for range 12 {
		d.frame(input.Frame{Ticks: 2, Touch: true})
		visit(&b.Description().Root, func(n *describe.Node) { words += n.Name + " | " })
		b.page++
	}
	if strings.Contains(words, "Enter") || strings.Contains(words, "Ctrl") || !strings.Contains(words, "123: opens keys") {
		t.Errorf("help for taps tells %q", words)
	}
}

func mustBench(t *testing.T) *Bench {
	t.Helper()
	b, err := NewBench(BenchOptions{Seed: 4})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestADoorThatCannotBeOpenedSaysWhy(t *testing.T) {
	h, _ := testHall(HallOptions{})
	broken := named(t, h.Description(), "Broken")
	h.Update(input.Frame{W: 1280, H: 720, Scale: 1, Acts: []input.Act{{ID: broken.ID}}})
	said := h.Description().Find(idHint)
	if said == nil || said.Name != "the file is torn" {
		t.Errorf("the hall says %v, want why the door stays shut", said)
	}
}

func TestTheHallAsksForAFileOnce(t *testing.T) {
	h, _ := testHall(HallOptions{})
	form := named(t, h.Description(), "Open a form")
	h.Update(input.Frame{W: 1280, H: 720, Scale: 1, Acts: []input.Act{{ID: form.ID}}})
	if first, second := h.Wanted(), h.Wanted(); first != WantForm || second != NoWant {
		t.Errorf("asked for %v and then %v, want a form and nothing", first, second)
	}
}

func TestSettingsOfTheHallHoldInEveryScene(t *testing.T) {
	var kept Settings
	h, step := testHall(HallOptions{Keep: func(s Settings) { kept = s }})
	big := named(t, h.Description(), "Text: 200 %")
	h.Update(input.Frame{W: 1280, H: 720, Scale: 1, Acts: []input.Act{{ID: big.ID}}})
	if h.Settings().Text != Text200 || kept.Text != Text200 {
		t.Errorf("text %v, kept %v, want 200 %%", h.Settings().Text, kept.Text)
	}
	h.page = 0
	bench := named(t, h.Description(), "The bench")
	h.Update(input.Frame{W: 1280, H: 720, Scale: 1, Acts: []input.Act{{ID: bench.ID}}})
	step()
	if got := h.inside.(*Bench).Settings().Text; got != Text200 {
		t.Errorf("the bench has text %v, want 200 %%", got)
	}
}

// closable counts how often it is closed.
type closable struct {
	Scene
	closed int
	err    error
}

func (c *closable) Close() error { c.closed++; return c.err }

func TestEverySceneIsClosedOnceAndItsErrorTold(t *testing.T) {
	b, err := NewBench(BenchOptions{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	first, second := &closable{Scene: b, err: errors.New("disk full")}, &closable{Scene: b}
	h, _ := testHall(HallOptions{First: first})
	h.Enter(second, "")
	err = h.Close()
	if first.closed != 1 || second.closed != 1 || err == nil || !strings.Contains(err.Error(), "disk full") {
		t.Errorf("closed %d and %d times with %v, want once each and the error", first.closed, second.closed, err)
	}
}

func TestTheHallPaintsItsRockOnce(t *testing.T) {
	h, step := testHall(HallOptions{})
	var l draw.List
	for range 6 {
		step()
		h.Picture(&l)
	}
	if n := testing.AllocsPerRun(20, func() { step(); h.Picture(&l) }); n > 4 {
		t.Errorf("%v allocations in a frame in which nothing happens", n)
	}
}

// The keys of help and settings do in the hall what they do everywhere, also
// where the settings stand on another page.
func TestTheHallHasKeysAndSettings(t *testing.T) {
	for _, size := range [][2]float64{{1280, 720}, {390, 844}, {844, 390}} {
		h, _ := testHall(HallOptions{})
		press := func(k input.Key) {
			h.Update(input.Frame{W: size[0], H: size[1], Scale: 1, Ticks: 2, Presses: []input.Press{{Key: k}}})
		}
		press(input.F1)
		if !h.listing {
			t.Errorf("%v: F1 does not open the list of keys", size)
		}
		press(input.F2)
		if n := h.Description().Find(h.Description().Focus); h.listing || n == nil || !strings.HasPrefix(n.Name, "Text: ") {
			t.Errorf("%v: F2 goes to %v, want the first setting", size, n)
		}
		if said := h.Description().Find(idHint); said == nil || said.Name != h.ofSettings() {
			t.Errorf("%v: F2 says %v, want %q", size, said, h.ofSettings())
		}
		press(input.Right)
		press(input.Enter)
		if h.Settings().Text == (Settings{}).Text {
			t.Errorf("%v: the next key does not choose among the settings", size)
		}
		if said := h.Description().Find(idHint); said == nil || said.Name == h.ofSettings() {
			t.Errorf("%v: the hall still says %v", size, said)
		}
	}
}
