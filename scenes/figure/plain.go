package figure

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// Plain is the palette of pictures in ink on white: for paper, for printers
// without colour and for pages of others. It is no palette of the screen.
func Plain() *theme.Theme { return &plain }

var (
	black = draw.Color{A: 255}
	white = draw.Color{R: 255, G: 255, B: 255, A: 255}
)

var plain = plainTheme()

func plainTheme() theme.Theme {
	th := *theme.Of(theme.Contrast)
	grey := func(v uint8) draw.Color { return draw.Color{R: v, G: v, B: v, A: 255} }
	th.Ink, th.Ink2 = black, grey(0x33)
	th.Line, th.Ring = grey(0xB0), grey(0x8C)
	th.Plate, th.PlateRim, th.PlateLine = white, black, grey(0x8C)
	th.Bezel, th.Rim = white, black
	th.Edge, th.EdgeInk = black, white
	th.North, th.South = black, grey(0x50)
	th.Bubble, th.Fluid, th.FluidHi = white, grey(0xE4), grey(0xE4)
	th.RockLo, th.RockMid, th.RockHi, th.RockTop = grey(0xB4), grey(0xD2), grey(0xF2), grey(0xF2)
	th.WaterInk = black
	return th
}
