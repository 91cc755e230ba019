package scenes

import (
	"cuesta/orient"
	"cuesta/sim"
)

// compass is a direction in words.
func compass(z orient.Azimuth) string {
	names := [...]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}
	return names[int(z.Degrees()/45+.5)%8]
}

// liftsWithMore says whether the more of the second hand lifts the free side
// of the plate, opens the hinge, or lifts the index of the arm.
func (b *Bench) liftsWithMore() bool {
	return b.obs.Seat == sim.OnSide || b.obs.Seat == sim.OnLid || b.obs.Seated == sim.RightSide
}
