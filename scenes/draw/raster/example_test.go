package raster_test

import (
	"fmt"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
)

// A picture is data; Image paints it without a display.
func Example() {
	var l draw.List
	l.Reset(64, 32)
	l.Fill(draw.Box(draw.Rect{X: 8, Y: 8, W: 16, H: 16}), draw.Color{R: 0xb5, G: 0x36, B: 0x1c, A: 255})
	img := raster.Image(&l)
	fmt.Println(img.Bounds(), img.RGBAAt(10, 10), img.RGBAAt(40, 10))
	// Output: (0,0)-(64,32) {181 54 28 255} {0 0 0 0}
}
