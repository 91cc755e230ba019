package spoken_test

import (
	"fmt"
	"os"
	"strings"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
)

// A bench that is worked line by line.
func ExampleBench_Run() {
	plane := orient.PlaneOf(310*orient.Degree, 42*orient.Degree)
	practice, err := session.New(session.Options{Plane: &plane, Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	lines := "swing 400\nseat side\nnote N50W 42NE\n"
	if err := spoken.NewBench(practice, nil).Run(strings.NewReader(lines), os.Stdout, false); err != nil {
		fmt.Println(err)
	}
	// Output:
	// Read "400" behind swing. Write swing and a number of degrees up to 360, such as swing 5 or swing -2.5.
	// The plate stands on its side, on its right long edge, face upright. Tube bubble at the end of the tube: 1.79 towards the index end, in half gaps; up to 0.25 is between the marks.
	// Strike 310° (written N50W), dip 42° to the NE. Right: strike and dip are within what a careful reading allows. In figures: the strike line is 0.0° off, the dip is 0.0° off. Type new for the next plane.
}
