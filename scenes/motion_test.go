package scenes

import (
	"slices"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// drawn is a picture as numbers: two that are equal show the same.
func drawn(s Scene) []draw.Vertex {
	var l draw.List
	s.Picture(&l)
	var out []draw.Vertex
	for _, m := range l.Meshes {
		out = append(out, m.Vertices...)
		if m.Texture != nil {
			out = append(out, draw.Vertex{X: float32(m.Texture.Version)})
		}
	}
	return out
}

// With reduced motion a change is there at once, and a screen on which needle
// and bubbles have come to rest stands still, the caret too.
func TestReducedMotionLeavesOnlyThePhysics(t *testing.T) {
	t.Parallel()
	acts := map[string]func(b *Bench, d drive){
		"fresh":       func(*Bench, drive) {},
		"on its side": func(b *Bench, d drive) { d.act(idTurn) },
		"end for end": func(b *Bench, d drive) { d.act(idFlip) },
		"closer":      func(b *Bench, d drive) { d.act(idViewCloser) },
		"walk round":  func(b *Bench, d drive) { d.act(idViewLeft) },
		"answer":      func(b *Bench, d drive) { d.act(idSecondary) },
		"in the note": func(b *Bench, d drive) { d.frame(input.Frame{Acts: []input.Act{{Kind: input.Focus, ID: idNotebook}}}) },
	}
	plane := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	stone := stage.New() // painted once
	for name, act := range acts {
		b, err := NewBench(BenchOptions{Seed: 7, Plane: &plane})
		if err != nil {
			t.Fatal(err)
		}
		b.stage = stone
		b.Choose(Settings{Calm: true})
		d := drive{1280, 720, b}
		d.wait()
		act(b, d)
		d.wait()
		if at := b.view.now; b.view.left != 0 || b.turn.left != 0 || b.view.zoom != 0 && b.view.zoom != 1 || b.reveal.Water && b.water != 1 {
			t.Errorf("%s: still on its way: eye at %v with %d ticks left, plate %d, zoom %v, water %v", name, at, b.view.left, b.turn.left, b.view.zoom, b.water)
		}
		for range 60 {
			d.frame(input.Frame{Ticks: sim.TicksPerSecond / 4}) // needle and bubbles come to rest
		}
		before := drawn(b)
		for range 90 {
			d.frame(input.Frame{Ticks: 2})
			if now := drawn(b); !slices.Equal(before, now) {
				t.Errorf("%s: the screen moves by itself", name)
				break
			}
		}
	}
}

// The plate turns on its side in 600 ms for the eye, and at once for the bench;
// any key ends the turn.
func TestThePlateIsSeenToTurn(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 2})
	k.typing("t")
	if k.b.obs.Seat != sim.OnSide || k.b.World().Pose().Seat != sim.OnSide {
		t.Fatal("the plate does not stand on its side at once")
	}
	k.wait(turnTicks / 2)
	seen, at := k.b.stageParams().Pose, k.b.World().Pose()
	if seen.Frame == at.Frame {
		t.Error("half way the plate is seen where it stands")
	}
	k.wait(turnTicks)
	if k.b.stageParams().Pose != at || k.b.stageParams().Off.Share != 0 {
		t.Error("after the turn the plate is not seen where it stands")
	}
	k.typing("t")
	k.wait(4)
	k.key(input.Escape, 0)
	if k.b.turn.left != 0 {
		t.Error("a key does not end the turn")
	}
}

// Nothing flashes more than three times in any second (WCAG 2.2, 2.3.1): the
// caret is all that blinks.
func TestNothingFlashes(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 2})
	k.frame(input.Frame{Acts: []input.Act{{Kind: input.Focus, ID: idNotebook}}})
	k.wait(2000) // needle and bubbles rest
	var changes []int
	last := uint64(0)
	for i := range 5 * sim.TicksPerSecond {
		k.frame(input.Frame{Ticks: 1})
		v := uint64(0)
		for z := range k.b.screen.zones {
			v += k.b.screen.zones[z].texture.Version
		}
		if v != last {
			changes, last = append(changes, i), v
		}
	}
	for i, at := range changes {
		within := 0
		for _, b := range changes[i:] {
			if b < at+sim.TicksPerSecond {
				within++
			}
		}
		if within > 6 { // a flash is a change and its undoing
			t.Fatalf("%d changes in the second after tick %d", within, at)
		}
	}
	if len(changes) < 4 {
		t.Errorf("the caret changed %d times in five seconds, want it to blink", len(changes))
	}
}
