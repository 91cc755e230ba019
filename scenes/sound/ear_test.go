package sound_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/sound"
	"cuesta/sim"
)

// ear levels a bench by what it hears and nothing else. A note from the right
// asks for the right side down. Which way to swing it cannot know: it swings on
// until the note passes that of a level instrument, and then turns back by
// steps of a third.
type ear struct {
	t      *testing.T
	w      *sim.World
	listen sound.Listener
	acts   int
}

// hand is one way to move the instrument and what was last heard of it.
type hand struct {
	kind sim.Kind
	step orient.Angle
	last float64
}

// hear lets a second pass, so that the bubble settles, and measures what then
// sounds.
func (e *ear) hear() heard {
	for range sim.TicksPerSecond {
		e.w.Step()
	}
	return measure(play(&sound.Synth{}, e.listen.Hear(e.w.Observe(), nil)))
}

// turn moves a hand after off, what is now heard on its axis.
func (e *ear) turn(h *hand, off float64) heard {
	if off*h.last < 0 {
		h.step /= -3
	} else if h.last != 0 {
		h.step = min(1.5*h.step.Abs(), 12*orient.Degree) * orient.Angle(math.Copysign(1, float64(h.step)))
	}
	h.last = off
	a := h.step
	if h.kind == sim.Roll {
		a = h.step.Abs() * orient.Angle(math.Copysign(1, off))
	}
	if err := e.w.Do(sim.Command{Kind: h.kind, Angle: a}); err != nil {
		e.t.Fatal(err)
	}
	e.acts++
	return e.hear()
}

// chord says that the bubble is heard to be centred.
func chord(h heard) bool { return h.chord > .6 && math.Abs(h.pan()) < .05 }

// level goes on until the chord is heard, or gives up after most acts.
func (e *ear) level(swing, roll *hand, most int) bool {
	h := e.hear()
	for e.acts < most {
		if chord(h) {
			return true
		}
		across, along := h.pan(), math.Log2(h.pitch/sound.Levelled)
		if math.Abs(across) > math.Abs(along) {
			h = e.turn(roll, across)
		} else {
			h = e.turn(swing, along)
		}
	}
	return false
}

func TestAnEarLevelsTheRoundLevel(t *testing.T) {
	r := rand.New(rand.NewPCG(50, 2))
	most, sum := 0, 0
	for i := range 50 {
		p := orient.PlaneOf(orient.Angle(r.Float64())*orient.Full, orient.Angle(10+70*r.Float64())*orient.Degree)
		w, err := sim.New(sim.Setup{Seed: r.Uint64(), Plane: p})
		if err != nil {
			t.Fatal(err)
		}
		e := &ear{t: t, w: w}
		ok := e.level(&hand{kind: sim.Swing, step: 9 * orient.Degree}, &hand{kind: sim.Roll, step: 3 * orient.Degree}, 120)
		if !ok || !w.Observe().Round.Centred {
			o := w.Observe().Round
			t.Errorf("plane %d, %v: not level after %d acts: %.2f right, %.2f forward", i, p, e.acts, o.Right, o.Forward)
		}
		most, sum = max(most, e.acts), sum+e.acts
	}
	t.Logf("acts by ear: %.1f on average, %d at most", float64(sum)/50, most)
}

// The arm by ear: the bubble of its level is at the index end when that comes
// from the right, and asks for a smaller angle with the left edge seated.
func TestAnEarCentresTheArm(t *testing.T) {
	r := rand.New(rand.NewPCG(50, 3))
	most := 0
	for i := range 20 {
		p := orient.PlaneOf(orient.Angle(r.Float64())*orient.Full, orient.Angle(10+70*r.Float64())*orient.Degree)
		w, err := sim.New(sim.Setup{Seed: r.Uint64(), Plane: p})
		if err == nil {
			err = w.Do(sim.Command{Kind: sim.Place, Seat: sim.OnSide})
		}
		if err != nil {
			t.Fatal(err)
		}
		e := &ear{t: t, w: w}
		arm := &hand{kind: sim.Arm, step: 10 * orient.Degree}
		h := e.hear()
		for !chord(h) && e.acts < 60 {
			h = e.turn(arm, math.Log2(h.pitch/sound.Levelled))
		}
		if !w.Observe().Tube.Centred {
			t.Errorf("plane %d, %v: not centred after %d acts: %.2f off", i, p, e.acts, w.Observe().Tube.Off)
		}
		most = max(most, e.acts)
	}
	t.Logf("acts by ear: %d at most", most)
}
