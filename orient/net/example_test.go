package net_test

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/orient/net"
)

// The pole of a bed that dips gently lies near the middle of the net, on the
// side away from the dip.
func ExampleNet_Pole() {
	bed := orient.PlaneOf(0, 20*orient.Degree) // dips east
	p := net.Lower(net.EqualArea).Pole(bed)
	fmt.Printf("%.3f from the middle, on the side of the west: %v\n", math.Hypot(p.X, p.Y), p.X < 0)
	// Output: 0.246 from the middle, on the side of the west: true
}
