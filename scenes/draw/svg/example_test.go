package svg_test

import (
	"fmt"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/svg"
)

// A picture carries its words along, for those who cannot see it.
func ExampleElement() {
	ink := draw.Color{R: 0x1D, G: 0x26, B: 0x29, A: 255}
	l := &draw.List{W: 40, H: 20}
	l.Stroke(draw.Polyline(false, draw.Point{X: 5, Y: 10}, draw.Point{X: 35, Y: 10}), draw.Stroke{Width: 2, Color: ink})
	fmt.Print(string(svg.Element(l, svg.Options{Desc: "A level line."})))
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="40" height="20" viewBox="0 0 40 20" role="img" aria-labelledby="d">
	// <desc id="d">A level line.</desc>
	// <path d="M5 10L35 10" fill="none" stroke="#1d2629" stroke-width="2"/>
	// </svg>
}
