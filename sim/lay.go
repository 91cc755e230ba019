package sim

import (
	"math/rand/v2"

	"cuesta/orient"
)

// stream tells the draws of the first pose from other uses of the same seed.
const stream = 0x637565737461

// lay puts the instrument on the rock as a fresh bench starts: either end of
// the strike line, 8° to 50° off it, rolled 5° to 25° off level, the needle
// pointing anywhere.
func (w *World) lay() {
	r := rand.New(rand.NewPCG(w.setup.Seed, stream))
	t := stance{ring: w.setup.Ring.Wrapped()}
	if r.IntN(2) == 1 {
		t.swing = orient.Half
	}
	t.swing = (t.swing + between(r, 8, 50)).Wrapped()
	level, off := w.rock.level(t), between(r, 5, 25)
	if level+off < 0 {
		off = -off
	}
	t.edge = level + off
	w.needle.held = between(r, 0, 180)
	w.needle.state = NeedleRubbing
	w.frame = t.frame(w.rock)
	w.rest(t)
	w.round.spot.Right.At = w.round.goal.Right
	w.round.spot.Forward.At = w.round.goal.Forward
	w.tube.bubble.At = w.tube.goal
	w.Step()
	w.tick = 0
}

// between draws an angle of low to high degrees, to either side.
func between(r *rand.Rand, low, high float64) orient.Angle {
	a := orient.Angle(low+float64(r.Float64()*(high-low))) * orient.Degree
	if r.IntN(2) == 1 {
		return -a
	}
	return a
}
