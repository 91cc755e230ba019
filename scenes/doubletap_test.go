package scenes

import (
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// tapTwice taps a control and, after so many ticks, the same place again.
func (k *hands) tapTwice(id describe.ID, ticks int, touch bool) {
	k.t.Helper()
	n := k.b.Description().Find(id)
	if n == nil {
		k.t.Fatalf("no control %d on the screen", id)
	}
	at := draw.Point{X: n.Bounds.X + n.Bounds.W/2, Y: n.Bounds.Y + n.Bounds.H/2}
	k.tapPlace(at, touch)
	k.wait(ticks)
	k.tapPlace(at, touch)
}

func (k *hands) tapPlace(at draw.Point, touch bool) {
	for _, kind := range []input.PointerKind{input.PointerDown, input.PointerUp} {
		k.frame(input.Frame{Pointers: []input.Pointer{{Kind: kind, X: at.X, Y: at.Y, Touch: touch}}})
	}
}

// doubleTap is the time between the taps of a person who taps twice, 0.17 s.
const doubleTap = 170 * sim.TicksPerSecond / 1000

// written is a bench where a note waits to be recorded.
func written(t *testing.T, w, h float64) *hands {
	k := newHands(t, BenchOptions{Seed: 7})
	k.w, k.h = w, h
	k.wait(2)
	k.typing("035/30")
	return k
}

// Who taps Record twice sees the verdict, and not the next plane; who taps again
// once it has been there for half a second, or with a key, goes on, or where the buttons are piled measures again.
func TestADoubleTapOnRecordLeavesTheVerdict(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, touch := range []bool{false, true} {
			k := written(t, size[0], size[1])
			k.tapTwice(idPrimary, doubleTap, touch)
			if k.b.phase != judged || k.b.number != 1 {
				t.Errorf("%v, touch %v: tapped twice, phase %d at station %d, want the verdict at 1", size, touch, k.b.phase, k.b.number)
			}
			k = written(t, size[0], size[1])
			if k.tapTwice(idPrimary, sim.TicksPerSecond/2, touch); k.b.phase != measuring {
				t.Errorf("%v, touch %v: tapped again after half a second, phase %d, want the next plane or the same again", size, touch, k.b.phase)
			}
		}
	}
	k := written(t, 1280, 720)
	b := k.b.Description().Find(idPrimary).Bounds
	again := input.Pointer{Kind: input.PointerDown, X: b.X + b.W/2, Y: b.Y + b.H/2}
	k.tapPlace(draw.Point{X: again.X, Y: again.Y}, false)
	if k.frame(input.Frame{Ticks: sim.TicksPerSecond, Pointers: []input.Pointer{again}}); k.b.phase != judged {
		t.Error("tapped again in a slow frame that comes before the verdict was on the screen, and it is gone")
	}
	k = written(t, 1280, 720)
	k.click(idPrimary)
	if k.key(input.Enter, 0); k.b.number != 2 {
		t.Errorf("recorded by a tap, gone on by Enter, at station %d, want 2", k.b.number)
	}
	k = written(t, 1280, 720)
	k.click(idPrimary)
	if k.act(idPrimary); k.b.number != 2 {
		t.Errorf("recorded by a tap, gone on by name, at station %d, want 2", k.b.number)
	}
}

// A double tap does one thing where what is tapped makes room for another.
func TestADoubleTapDoesNotReachWhatComesUnderIt(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 7})
	if k.tapTwice(idPrimary, doubleTap, false); k.b.obs.Seat != sim.OnSide || k.b.echo != "" {
		t.Errorf("tapped twice on the way to the dip: seat %v, told %q", k.b.obs.Seat, k.b.echo)
	}
	k = newHands(t, BenchOptions{Seed: 7})
	if k.tapTwice(idSecondary, doubleTap, false); k.b.phase != shown || !k.b.reveal.Any() {
		t.Error("tapped twice on Show answer, and it is hidden again")
	}
	k = newHands(t, BenchOptions{Seed: 7})
	k.w, k.h = 390, 844
	k.wait(2)
	k.tapTwice(idKeypad, doubleTap, true)
	if k.b.text != "" || k.b.panel != keypadPanel {
		t.Errorf("tapped twice on the way to the keypad: panel %d, wrote %q", k.b.panel, k.b.text)
	}
}

// Quick taps on one control all count, and so do those that go on to another
// place.
func TestQuickTapsCount(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 7})
	for range 10 {
		k.tapTwice(idSwingMore, 6, true)
	}
	swings := 0
	for _, e := range k.b.ses.Recording().Entries {
		if e.Command.Kind == sim.Swing {
			swings++
		}
	}
	if swings != 20 {
		t.Errorf("twenty taps swing the plate %d times", swings)
	}
	k = newHands(t, BenchOptions{Seed: 7})
	k.click(idSettings)
	if k.click(idSetText + 1); k.b.set.Text != Text125 {
		t.Errorf("opened the settings and chose at once: text %v", k.b.set.Text)
	}
}
