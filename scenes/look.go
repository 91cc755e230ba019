package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/inset"
	"cuesta/sim"
)

// compass is a direction in words.
func compass(z orient.Azimuth) string {
	names := [...]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}
	return names[int(z.Degrees()/45+.5)%8]
}

// look is the instrument on the slab in words, without the answer.
func (b *Bench) look() string {
	o := b.obs
	edge := [...]string{sim.Left: "left", sim.RightSide: "right"}[o.Seated]
	if o.Seat == sim.OnSide {
		return "On its side, on the " + edge + " long edge. Tube bubble " + inset.TubeState(o.Tube).Words() + "."
	}
	return "On its " + edge + " long edge. Bubble " + inset.RoundState(o.Round).Words() + "; needle " + inset.DialState(o.Dial).Words() + "."
}

// liftsWithMore says whether the more of the second hand lifts the free side
// of the plate, or the index of the arm.
func (b *Bench) liftsWithMore() bool {
	return b.obs.Seat == sim.OnSide || b.obs.Seated == sim.RightSide
}
