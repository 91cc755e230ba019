package scenes

import (
	"testing"

	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// dragged drags from a place by so much, in steps of a few pixels, and is what
// was done at the bench.
func (k *hands) dragged(from draw.Point, dx, dy float64) map[sim.Kind]bool {
	did := map[sim.Kind]bool{}
	at := func(kind input.PointerKind, f float64) {
		k.frame(input.Frame{Ticks: 2, Touch: true, Pointers: []input.Pointer{{Kind: kind, X: from.X + f*dx, Y: from.Y + f*dy, Touch: true}}})
		for _, c := range k.b.issued {
			did[c.Kind] = true
		}
	}
	at(input.PointerDown, 0)
	for f := .1; f < 1.05; f += .1 {
		at(input.PointerMove, f)
	}
	at(input.PointerUp, 1)
	return did
}

// On the instrument a drag does what the steppers do, one at a time, whichever
// way the plate stands; only on the rock or the ground does it turn the eye.
func TestADragDoesWhatTheSteppersDo(t *testing.T) {
	for _, size := range [][2]float64{{390, 844}, {844, 390}, {1280, 720}} {
		for _, seat := range []sim.Seat{sim.OnEdge, sim.OnSide} {
			k := newHands(t, BenchOptions{Seed: 7})
			k.w, k.h = size[0], size[1]
			k.wait(2)
			if seat == sim.OnSide {
				k.b.turnOver()
			}
			k.wait(240)
			var l draw.List
			k.b.Picture(&l)
			r := k.b.stage.InstrumentBounds()
			mid := draw.Point{X: r.X + r.W/2, Y: r.Y + r.H/2}

			eye := k.b.view
			lifts := map[sim.Seat]sim.Kind{sim.OnEdge: sim.Roll, sim.OnSide: sim.Arm}[seat]
			if did := k.dragged(mid, 40, 6); len(did) != 1 || !did[sim.Swing] {
				t.Errorf("%v, %v: a drag across does %v, want a swing alone", size, seat, did)
			}
			if did := k.dragged(mid, 4, -40); len(did) != 1 || !did[lifts] {
				t.Errorf("%v, %v: a drag upwards does %v, want %v alone", size, seat, did, lifts)
			}
			if k.b.view.turn != eye.turn || k.b.view.lift != eye.lift {
				t.Errorf("%v, %v: a drag of the instrument turns the eye", size, seat)
			}
			eye = k.b.view
			s := k.b.screen.lay.Scene
			if did := k.dragged(draw.Point{X: s.X + 8, Y: s.Y + s.H - 12}, 40, 0); len(did) != 0 || k.b.view.turn == eye.turn {
				t.Errorf("%v, %v: a drag of the ground does %v, and the eye goes from %v to %v", size, seat, did, eye.turn, k.b.view.turn)
			}
		}
	}
}

// Nothing that is under the finger moves away while the plate is swung on its
// side; the eye follows when it is let go.
func TestTheEyeWaitsForTheFinger(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 7})
	k.b.turnOver()
	k.wait(240)
	var l draw.List
	k.b.Picture(&l)
	r := k.b.stage.InstrumentBounds()
	base := k.b.view.base
	x, y := r.X+r.W/2, r.Y+r.H/2
	k.frame(input.Frame{Pointers: []input.Pointer{{Kind: input.PointerDown, X: x, Y: y}}})
	for i := range 40 {
		k.frame(input.Frame{Ticks: 4, Pointers: []input.Pointer{{Kind: input.PointerMove, X: x + 8*float64(i+1), Y: y}}})
		if k.b.view.base != base {
			t.Fatalf("the eye moves after %d px", 8*(i+1))
		}
	}
}

// Measuring again takes strike and dip anew, and the strike comes first.
func TestMeasuringAgainBeginsWithTheStrike(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 7})
	k.typing("035")
	k.b.turnOver()
	k.typing("/12")
	k.key(input.Enter, 0)
	if k.b.phase != judged || k.b.verdict.Right {
		t.Fatalf("phase %v, right %v; want a wrong reading", k.b.phase, k.b.verdict.Right)
	}
	k.act(idSecondary)
	if k.b.obs.Seat != sim.OnEdge || k.b.task() != 0 || k.b.text != "" {
		t.Errorf("seat %v, step %d, note %q; want on edge, the first step, nothing written", k.b.obs.Seat, k.b.task(), k.b.text)
	}
}
