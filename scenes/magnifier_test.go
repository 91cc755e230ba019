package scenes

import (
	"strings"
	"testing"

	"cuesta/scenes/input"
	"cuesta/sim"
)

// tapAt is a finger on the middle of a circle.
func tapAt(d drive, c circle) {
	d.frame(input.Frame{Ticks: 2, Touch: true, Pointers: []input.Pointer{
		{Kind: input.PointerDown, X: c.X, Y: c.Y, Touch: true}, {Kind: input.PointerUp, X: c.X, Y: c.Y, Touch: true}}})
}

// A tap on a magnifier draws it large in the place of the rock; a second tap
// there, the key, Escape and the control each bring the rock back.
func TestATapMagnifies(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			b, d := benchAt(t, size, Settings{Text: text})
			small := b.screen.lay
			back := map[string]func(){
				"a tap":       func() { tapAt(d, b.screen.lay.Large) },
				"the key":     func() { d.frame(input.Frame{Presses: []input.Press{{Rune: 'm'}}}) },
				"Escape":      func() { d.key(input.Escape) },
				"the control": func() { d.act(idMagnifyScale) },
			}
			for name, act := range back {
				tapAt(d, small.Dial)
				large := b.screen.lay
				if b.magnified() != scaleMagnifier || large.Large.R < 1.2*small.Dial.R {
					t.Errorf("%v at %v: the tap shows magnifier %d, %.0f px wide instead of %.0f", size, text, b.magnified(), 2*large.Large.R, 2*small.Dial.R)
				}
				if !within(large.Large.box(), large.Scene) {
					t.Errorf("%v at %v: the large dial %.0f leaves the place of the rock %.0f", size, text, large.Large, large.Scene)
				}
				if large.Notes != small.Notes || large.Buttons != small.Buttons {
					t.Errorf("%v at %v: notebook and button move", size, text)
				}
				act()
				d.wait()
				if b.magnified() != noMagnifier || b.screen.lay != small {
					t.Errorf("%v at %v: %s does not bring the rock back", size, text, name)
				}
			}
		}
	}
}

// The key takes what is wanted next: the level until its bubble is home, then the
// scale.
func TestTheKeyMagnifiesWhatIsWanted(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 7})
	k.typing("m")
	if k.b.magnified() != levelMagnifier {
		t.Errorf("with the bubble out the key shows magnifier %d, want the level", k.b.magnified())
	}
	k.typing("m")
	k.level(byKeys)
	k.typing("m")
	if k.b.magnified() != scaleMagnifier {
		t.Errorf("with the bubble home (%v) the key shows magnifier %d, want the scale", k.b.obs.Round.Centred, k.b.magnified())
	}
}

// What is large is told by name, in reach of the keyboard, and goes with the plate:
// on its other side the rock is to be seen again, and so it is after the task.
func TestTheMagnifierIsToldAndGoesWithThePlate(t *testing.T) {
	b, d := benchAt(t, phones[0], Settings{})
	n := b.Description().Find(idMagnifyLevel)
	if n == nil || !n.Focusable || n.Name != "Magnify the round level" {
		t.Fatalf("got the control %+v, want it in reach and named", n)
	}
	d.act(idMagnifyLevel)
	n = b.Description().Find(idMagnifyLevel)
	if n == nil || !strings.Contains(n.Name, "back from the round level") || b.focus != idMagnifyLevel {
		t.Errorf("got the control %+v and the focus on %d, want the way back in focus", n, b.focus)
	}
	if b.Description().Find(idRound) == nil || b.Description().Find(idDial) == nil {
		t.Error("level and dial are no longer described")
	}
	b.turnOver()
	d.wait()
	if b.obs.Seat != sim.OnSide || b.magnified() != noMagnifier {
		t.Errorf("turned over, magnifier %d is in the place of the rock", b.magnified())
	}
	d.act(idMagnifyScale)
	d.write("035/30")
	b.record()
	d.wait()
	if b.magnified() != noMagnifier {
		t.Error("the verdict does not bring the rock back")
	}
}

// The captions still say in words what scale and level show, and nothing is magnified.
func TestATapBesideTheMagnifiersSaysWhatTheyShow(t *testing.T) {
	b, d := benchAt(t, phones[0], Settings{})
	at := b.screen.lay.Dial
	tapAt(d, circle{X: at.X, Y: at.Y + at.R + 20})
	if b.notice == "" || b.magnified() != noMagnifier {
		t.Errorf("got the notice %q and magnifier %d, want words and none", b.notice, b.magnified())
	}
}
