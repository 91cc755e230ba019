package mistake_test

import (
	"fmt"

	"cuesta/orient"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// The bed strikes 035. Was it the other end of the strike line, or the south
// end of the needle? The answer alone, 215, does not tell; the reading does:
// the edge pointed to 035, and the dial showed it.
func ExampleDiagnose() {
	e := mistake.Evidence{
		Truth:  orient.PlaneOf(35*orient.Degree, 30*orient.Degree),
		Entry:  orient.Entry{Plane: orient.PlaneOf(215*orient.Degree, 30*orient.Degree), HasStrike: true},
		Limits: mistake.Limits{Reading: 2 * orient.Degree, Strike: 3.7 * orient.Degree, Dip: 3 * orient.Degree},
	}
	wrong := mistake.Wrong{Strike: true}
	for _, f := range mistake.Diagnose(e, wrong) {
		fmt.Println(f.Kind, "or", f.With)
	}
	e.HasEdge = true
	e.Edge.Shown.Frame.Forward = orient.AzimuthOf(35 * orient.Degree).Vec()
	e.Edge.Shown.Dial = sim.Dial{North: orient.AzimuthOf(35 * orient.Degree), Resting: true}
	for _, f := range mistake.Diagnose(e, wrong) {
		fmt.Println(f.Said)
	}
	// Output:
	// other-end or [south-end]
	// south-end or [other-end]
	// Probably the south end of the needle was read. Find the north end by its shape, and read the number there.
}

// Exchanging east and west shows on a bed that strikes 035; on one that
// strikes 090 it gives the same answer as the other end.
func ExampleEvidence_Apart() {
	for _, strike := range []orient.Angle{35, 90} {
		e := mistake.Evidence{
			Truth:  orient.PlaneOf(strike*orient.Degree, 30*orient.Degree),
			Limits: mistake.Limits{Reading: 2 * orient.Degree, Strike: 3.7 * orient.Degree, Dip: 3 * orient.Degree},
		}
		apart, rivals := e.Apart(mistake.EastWest)
		fmt.Println(apart, rivals)
	}
	// Output:
	// true []
	// false [other-end south-end]
}
