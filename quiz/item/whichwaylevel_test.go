package item

import (
	"math"
	"math/rand/v2"
	"testing"

	"cuesta/orient"
	"cuesta/sim"
)

func bubble(asks levelAsk, side int) levelItem {
	return levelItem{asks: asks, choice: levelChoice(rand.New(rand.NewPCG(1, 1)), asks, side)}
}

func TestWhichWayLevel(t *testing.T) {
	holdTo(t, bubble(asksHigh, 1), right("front right"), wrong("back left"), wrong("none"))
	holdTo(t, bubble(asksLower, 1), right("front right"), wrong("back left"))
	holdTo(t, bubble(asksRaise, 1), right("back left"), wrong("front right"))
	holdTo(t, bubble(asksRaise, 8), right("none"), right("level"))
}

// On the bench a plate whose right side is lowered has its bubble on the left,
// the high side.
func TestTheBubbleRunsToTheHighSide(t *testing.T) {
	w, err := sim.New(sim.Setup{Seed: 1, Plane: plane(35, 30)})
	if err != nil {
		t.Fatal(err)
	}
	level := func() float64 {
		f := w.Observe().Frame
		return orient.Atan2(-f.Right.Z, f.Out.Z).Degrees()
	}
	for _, tilt := range []float64{2, -2} { // right side down positive
		if err := w.Do(sim.Command{Kind: sim.Roll, Angle: deg(tilt - level())}); err != nil {
			t.Fatal(err)
		}
		w.Advance(5 * sim.TicksPerSecond)
		if got := w.Observe().Round.Right; got*tilt >= 0 {
			t.Errorf("right side %v° down: the bubble stands %v to the right, want the other side", tilt, got)
		}
	}
}

func TestBubblesOfEverySideAreDealt(t *testing.T) {
	properties := map[string]func(Item) bool{}
	for _, s := range append(sides[:], levelled) {
		properties[s] = func(it Item) bool { return it.Key() == s }
	}
	seen(t, whichWayLevel{}, Spec{}, 2000, properties)
	seen(t, whichWayLevel{}, Spec{}, 500, map[string]func(Item) bool{"in the vial": func(it Item) bool {
		// The bubble, 3.7 mm, stays within the wall at 10.8 mm of a ring of 5 mm.
		f := it.Figure().(LevelFigure)
		return math.Sqrt(f.Right*f.Right+f.Forward*f.Forward) <= (10.8-3.7)/5
	}})
}
