package figure_test

import (
	"fmt"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/figure"
)

// The same figure is drawn for the window, for paper and for pages of others;
// only the palette and the painter differ.
func ExampleOf() {
	bed := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	l := figure.Of(item.MapFigure{Plane: bed}, 200, figure.Plain())
	fmt.Println(l.W, l.H, l.Texts[0].S, l.Texts[1].S)
	// Output: 200 200 30 N
}
