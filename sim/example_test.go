package sim_test

import (
	"fmt"

	"cuesta/orient"
	"cuesta/sim"
)

// A bench is driven by commands and by time, and only looked at otherwise. Here
// the plate is laid flat on a horizontal bed, pointing 035, with the declination
// of the place set on the dial.
func Example() {
	w, err := sim.New(sim.Setup{Seed: 1, Plane: orient.PlaneOf(0, 0), Ring: 4 * orient.Degree,
		Field: sim.Field{Declination: 4 * orient.Degree, Horizontal: 20e-6}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range []sim.Command{
		{Kind: sim.Swing, Angle: 35*orient.Degree - w.Pose().Swing},
		{Kind: sim.Roll, Angle: orient.Half}, // right side down, as far as the rock allows
	} {
		if err := w.Do(c); err != nil {
			fmt.Println(err)
		}
	}
	w.Advance(15 * sim.TicksPerSecond)
	o := w.Observe()
	fmt.Printf("centred %v, resting %v, north end at %03d\n", o.Round.Centred, o.Dial.Resting, o.Dial.Degree())
	// Output: centred true, resting true, north end at 035
}

// A command that cannot be carried out says why and changes nothing.
func ExampleWorld_Do() {
	w, err := sim.New(sim.Setup{})
	if err != nil {
		fmt.Println(err)
		return
	}
	before := w.Hash()
	fmt.Println(w.Do(sim.Command{Kind: sim.Arm, Angle: orient.Degree}))
	fmt.Println(w.Hash() == before)
	// Output:
	// the inclination arm is turned with the instrument on its side
	// true
}
