package scenes

import (
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
)

// screenOf is a screen that a test drives: its scene, and the zones it draws.
type screenOf struct {
	name  string
	s     Scene
	zones func() *[zoneCount]zone
	unit  func() float64
	ready []input.Press
}

func presses(keys ...input.Key) []input.Press {
	var out []input.Press
	for _, k := range keys {
		out = append(out, input.Press{Key: k})
	}
	return out
}

// screensAll are all screens with something to press.
func screensAll(t *testing.T) []screenOf {
	t.Helper()
	var out []screenOf
	bench := func(name string, ready ...input.Press) {
		b, err := NewBench(BenchOptions{Seed: 2})
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, screenOf{name, b, func() *[zoneCount]zone { return &b.screen.zones }, func() float64 { return b.screen.lay.Unit }, ready})
	}
	bench("bench")
	bench("on its side", input.Press{Rune: 't'})
	bench("settings", presses(input.F2)...)
	bench("help", presses(input.F1)...)
	bench("keys", presses(input.F4)...)
	bench("judged", input.Press{Rune: '1'}, input.Press{Rune: '/'}, input.Press{Rune: '2'}, input.Press{Key: input.Enter})
	p := NewPaper(newMemory(t, 4), Settings{})
	out = append(out, screenOf{"form", p, func() *[zoneCount]zone { return &p.screen.zones }, func() float64 { return p.screen.lay.Unit }, presses(input.PageDown, input.PageDown)})
	h := NewHall(HallOptions{Doors: []Door{{Group: "Practice", Title: "Measure", Words: "One slab."}, {Group: "Practice", Title: "Form", Words: "A form."}}})
	out = append(out, screenOf{"hall", h, func() *[zoneCount]zone { return &h.screen.zones }, func() float64 { return h.screen.lay.Unit }, nil})
	l, err := NewLecture(lesson.Shipped()[0], LectureOptions{})
	if err != nil {
		t.Fatal(err)
	}
	out = append(out, screenOf{"lecture", l, func() *[zoneCount]zone { return &l.screen.zones }, func() float64 { return l.screen.lay.Unit }, presses(input.Tab)})
	for _, o := range out {
		o.frame()
		for _, p := range o.ready {
			o.frame(p)
		}
	}
	return out
}

func (o screenOf) frame(ps ...input.Press) {
	o.s.Update(input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 2, Presses: ps})
}

func (o screenOf) focus() describe.ID { return o.s.Description().Focus }

// From every control Tab leads to the next and Shift Tab back, round all of
// them: the keyboard is trapped nowhere (WCAG 2.2, 2.1.1 and 2.1.2).
func TestTheKeyboardReachesEverythingAndIsTrappedNowhere(t *testing.T) {
	for _, o := range screensAll(t) {
		order := o.s.Description().Order()
		seen := map[describe.ID]bool{}
		for range order {
			was := o.focus()
			o.frame(input.Press{Key: input.Tab})
			next := o.focus()
			seen[next] = true
			if o.frame(input.Press{Key: input.Tab, Mods: input.Shift}); o.focus() != was && was != idNone {
				t.Errorf("%s: Shift Tab does not lead back from control %d to %d", o.name, next, was)
			}
			o.frame(input.Press{Key: input.Tab})
		}
		for _, n := range order {
			if !seen[n.ID] {
				t.Errorf("%s: Tab does not reach %q", o.name, n.Name)
			}
		}
	}
}

// What has the focus is marked on the screen (WCAG 2.2, 2.4.7): it is drawn
// with its ring, in a zone that has room for most of it.
func TestTheFocusIsSeenOnEveryControl(t *testing.T) {
	for _, o := range screensAll(t) {
		for range o.s.Description().Order() {
			o.frame(input.Press{Key: input.Tab})
			if !o.rings(o.focus()) {
				t.Errorf("%s: nothing marks control %d, %q", o.name, o.focus(), o.s.Description().Find(o.focus()).Name)
			}
		}
	}
}

// rings says whether a control is drawn with a mark of the focus.
func (o screenOf) rings(id describe.ID) bool {
	if id == idInstrument {
		return true // a frame round the rock, which TestPicture of the bench holds
	}
	for z := range o.zones() {
		zone := &o.zones()[z]
		for _, w := range zone.widgets {
			if w.id == id && w.look != hidden && zone.baked.focused == id {
				return within(grow(w.rect, 2*o.unit()), zone.rect)
			}
		}
	}
	return false
}

// Escape leads out of every panel, and nothing has to be done before.
func TestEscapeLeadsOut(t *testing.T) {
	for _, key := range []input.Key{input.F1, input.F2, input.F4} {
		k := newHands(t, BenchOptions{Seed: 2})
		k.key(key, 0)
		if k.b.panel == noPanel {
			t.Fatalf("key %d opens no panel", key)
		}
		for range 3 {
			k.key(input.Tab, 0)
		}
		if k.key(input.Escape, 0); k.b.panel != noPanel || k.b.focus != idInstrument {
			t.Errorf("Escape leads from panel %d to panel %v, focus %d", key, k.b.panel, k.b.focus)
		}
	}
	k := newHands(t, BenchOptions{Seed: 2})
	k.typing("035")
	if k.key(input.Escape, 0); k.b.focus != idInstrument || k.b.text != "035" {
		t.Errorf("Escape leads from the notebook to %d and leaves %q", k.b.focus, k.b.text)
	}
}

// TestNothingIsTimed leaves every screen alone for ten minutes. Nothing goes,
// nothing comes, nothing is taken back (WCAG 2.2, 2.2.1): what can be pressed
// and what is written stays. Only needle and bubbles come to rest.
func TestNothingIsTimed(t *testing.T) {
	t.Parallel()
	for _, o := range screensAll(t) {
		for range 60 { // what moves by itself comes to rest
			o.s.Update(input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 30})
		}
		before := stillness(o.s.Description())
		for range 10 * 60 * 4 {
			o.s.Update(input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 30})
		}
		if after := stillness(o.s.Description()); after != before {
			t.Errorf("%s: after ten minutes\n%s\nbefore\n%s", o.name, after, before)
		}
	}
}

// stillness is all of a screen that must not change by itself.
func stillness(t *describe.Tree) string {
	out := ""
	visit(&t.Root, func(n *describe.Node) {
		if n.Role != describe.Image && n.ID != idHint {
			out += n.Name + " " + n.Value + "\n"
		}
	})
	return out
}

// What a pointer held down repeats is done by presses alone as well: each one
// makes one step.
func TestHoldingIsNeverNeeded(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	for _, id := range []describe.ID{idSwingLess, idSwingMore, idTiltLess, idTiltMore, idViewLeft, idViewRight} {
		k.wait(120)
		before, eye := k.b.World().Pose(), k.b.view.turn
		k.click(id)
		k.wait(200)
		once, turned := k.b.World().Pose(), k.b.view.turn
		if once == before && turned == eye {
			t.Errorf("a press of control %d does nothing", id)
		}
		if k.click(id); k.b.World().Pose() == once && k.b.view.turn == turned {
			t.Errorf("a second press of control %d does nothing", id)
		}
	}
}
