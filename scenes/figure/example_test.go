package figure_test

import (
	"fmt"

	"cuesta/orient"
	"cuesta/scenes/figure"
)

// Held with its forward end to the east, the circle has turned with the case
// and the needle has not: the number 090 stands at the north end.
func ExampleMarkAngle() {
	fmt.Printf("%.0f\n", figure.MarkAngle(orient.AzimuthOf(90*orient.Degree)).Degrees())
	// Output: -90
}

// A grade of 100 percent is half a right angle, not a right angle.
func ExamplePercentAngle() {
	for _, p := range []float64{20, 50, 100, 200} {
		fmt.Printf("%.0f%% %.1f°\n", p, figure.PercentAngle(p).Degrees())
	}
	// Output:
	// 20% 11.3°
	// 50% 26.6°
	// 100% 45.0°
	// 200% 63.4°
}
