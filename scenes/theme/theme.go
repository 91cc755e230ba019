// Package theme holds the palettes of the screen. Every colour has a use; no
// colour is the only sign of anything.
package theme

import "cuesta/scenes/draw"

// Theme is one palette. Alphas are in [0, 1].
type Theme struct {
	Name       Name
	Flat       bool       // no textures, gradients or shadows: outlines instead
	Dark       bool       // light text on a dark ground
	BgTop      draw.Color // backdrop, top of its vertical gradient
	BgBot      draw.Color // backdrop, bottom
	Ground     draw.Color // pool of light on the table
	Panel      draw.Color // the column
	Bar        draw.Color // the bottom line
	Field      draw.Color // the notebook field
	Line       draw.Color // hairline between areas, ornament only
	FieldLine  draw.Color // border of field and button
	Ink        draw.Color // text
	Ink2       draw.Color // quieter text
	Btn        draw.Color // the one filled button
	BtnInk     draw.Color // its text
	Rim        draw.Color // rim of an inset
	Ring       draw.Color // horizon ring and its ticks
	Shadow     draw.Color // cast shadow on the table
	Stand      draw.Color // plinth
	RockLo     draw.Color // darkest laminae
	RockMid    draw.Color // middle laminae
	RockHi     draw.Color // lightest laminae
	RockTop    draw.Color // bedding surface
	RockCool   draw.Color // grey laminae
	Stain      draw.Color // faint stain
	RockShadow draw.Color // shadow on rock
	Plate      draw.Color // instrument body
	PlateRim   draw.Color // its lit rim
	PlateLine  draw.Color // groove in the face
	PlateSide  draw.Color // sides
	PlateUnder draw.Color // underside
	Edge       draw.Color // seating edge
	EdgeInk    draw.Color // arrow
	Dial       draw.Color // scale ring
	Well       draw.Color // floor of the dial
	Bezel      draw.Color // ring round dial and level
	DialInk    draw.Color // figures
	DialInk2   draw.Color // percent figures
	North      draw.Color // north end of the needle
	South      draw.Color // south end
	Fluid      draw.Color // level fluid
	FluidHi    draw.Color // its lit part
	Bubble     draw.Color // bubble
	BubbleLine draw.Color // outline of the bubble
	LevelInk   draw.Color // marks of the levels
	Arm        draw.Color // inclination arm
	ArmLine    draw.Color // its outline
	Water      draw.Color // water surface
	WaterInk   draw.Color // overlay lines
	WaterCase  draw.Color // casing of overlay lines

	ShadowAlpha float64
	WaterAlpha  float64
}

// Name tells the palettes apart.
type Name uint8

// The palettes.
const (
	Light Name = iota
	Dark
	Contrast      // black on white
	ContrastBlack // white on black
)

// Names are the palettes in the order of the settings.
var Names = []Name{Light, Dark, Contrast, ContrastBlack}

// String is the name on the screen.
func (n Name) String() string {
	return [...]string{"light", "dark", "high contrast, white", "high contrast, black"}[n]
}

// Of returns the palette of a name.
func Of(n Name) *Theme { return palettes[n] }

var palettes = [...]*Theme{&light, &dark, &contrast, &black}

func rgb(v uint32) draw.Color {
	return draw.Color{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 255}
}

var light = Theme{
	Name: Light, Flat: false, Dark: false, ShadowAlpha: 0.42, WaterAlpha: 0.44,
	BgTop:      rgb(0xF6F4EF),
	BgBot:      rgb(0xE6E2D9),
	Ground:     rgb(0xFBFAF6),
	Panel:      rgb(0xFBFAF7),
	Bar:        rgb(0xF6F4EF),
	Field:      rgb(0xFFFFFF),
	Line:       rgb(0xD3CEC2),
	FieldLine:  rgb(0x767B7A),
	Ink:        rgb(0x1D2629),
	Ink2:       rgb(0x4F595C),
	Btn:        rgb(0x1D2629),
	BtnInk:     rgb(0xFBFAF7),
	Rim:        rgb(0x2C383D),
	Ring:       rgb(0x7F7A6D),
	Shadow:     rgb(0x3A332A),
	Stand:      rgb(0xB4B0A6),
	RockLo:     rgb(0x9A8463),
	RockMid:    rgb(0xC0AC89),
	RockHi:     rgb(0xDFD2B7),
	RockTop:    rgb(0xD3C3A5),
	RockCool:   rgb(0x8C887E),
	Stain:      rgb(0xBD9E74),
	RockShadow: rgb(0x2E2114),
	Plate:      rgb(0x2C383D),
	PlateRim:   rgb(0x788A91),
	PlateLine:  rgb(0x55646A),
	PlateSide:  rgb(0x3A474C),
	PlateUnder: rgb(0x20292D),
	Edge:       rgb(0xEFE7D6),
	EdgeInk:    rgb(0x1D2629),
	Dial:       rgb(0xF7F3EA),
	Well:       rgb(0xFFFDF8),
	Bezel:      rgb(0x171E21),
	DialInk:    rgb(0x1D2629),
	DialInk2:   rgb(0x4A5255),
	North:      rgb(0xB5361C),
	South:      rgb(0x55605F),
	Fluid:      rgb(0xCFD9A8),
	FluidHi:    rgb(0xE8EFCB),
	Bubble:     rgb(0xFBFDF2),
	BubbleLine: rgb(0x5C6A3A),
	LevelInk:   rgb(0x2A3320),
	Arm:        rgb(0xC9CFCB),
	ArmLine:    rgb(0x1D2629),
	Water:      rgb(0x2F8FB8),
	WaterInk:   rgb(0x0F5873),
	WaterCase:  rgb(0xFBFAF7),
}

var dark = Theme{
	Name: Dark, Flat: false, Dark: true, ShadowAlpha: 0.62, WaterAlpha: 0.42,
	BgTop:      rgb(0x191E21),
	BgBot:      rgb(0x101416),
	Ground:     rgb(0x262C2F),
	Panel:      rgb(0x1B2124),
	Bar:        rgb(0x161B1D),
	Field:      rgb(0x101416),
	Line:       rgb(0x343D41),
	FieldLine:  rgb(0x87929A),
	Ink:        rgb(0xEEEAE0),
	Ink2:       rgb(0xAEB6B6),
	Btn:        rgb(0xEEEAE0),
	BtnInk:     rgb(0x15191B),
	Rim:        rgb(0x8C979A),
	Ring:       rgb(0x747C7D),
	Shadow:     rgb(0x000000),
	Stand:      rgb(0x596164),
	RockLo:     rgb(0x6E5D45),
	RockMid:    rgb(0x8F7E62),
	RockHi:     rgb(0xB0A188),
	RockTop:    rgb(0xA39378),
	RockCool:   rgb(0x6C6962),
	Stain:      rgb(0x8C7150),
	RockShadow: rgb(0x080503),
	Plate:      rgb(0x1E272B),
	PlateRim:   rgb(0x87959B),
	PlateLine:  rgb(0x4A585E),
	PlateSide:  rgb(0x2B363B),
	PlateUnder: rgb(0x0C1012),
	Edge:       rgb(0xDDD5C4),
	EdgeInk:    rgb(0x15191B),
	Dial:       rgb(0xE9E4D8),
	Well:       rgb(0xF3EFE5),
	Bezel:      rgb(0x0B0F11),
	DialInk:    rgb(0x15191B),
	DialInk2:   rgb(0x3F474A),
	North:      rgb(0xA82E16),
	South:      rgb(0x4E5958),
	Fluid:      rgb(0xB9C58D),
	FluidHi:    rgb(0xD3DDAE),
	Bubble:     rgb(0xF6F9E8),
	BubbleLine: rgb(0x4E5C2E),
	LevelInk:   rgb(0x1E2716),
	Arm:        rgb(0xB7BEBA),
	ArmLine:    rgb(0x15191B),
	Water:      rgb(0x5FB4D3),
	WaterInk:   rgb(0x8FD3EC),
	WaterCase:  rgb(0x101416),
}

var contrast = Theme{
	Name: Contrast, Flat: true, Dark: false, ShadowAlpha: 0, WaterAlpha: 0.5,
	BgTop:      rgb(0xFFFFFF),
	BgBot:      rgb(0xFFFFFF),
	Ground:     rgb(0xFFFFFF),
	Panel:      rgb(0xFFFFFF),
	Bar:        rgb(0xFFFFFF),
	Field:      rgb(0xFFFFFF),
	Line:       rgb(0x000000),
	FieldLine:  rgb(0x000000),
	Ink:        rgb(0x000000),
	Ink2:       rgb(0x262626),
	Btn:        rgb(0x000000),
	BtnInk:     rgb(0xFFFFFF),
	Rim:        rgb(0x000000),
	Ring:       rgb(0x000000),
	Shadow:     rgb(0x000000),
	Stand:      rgb(0x858585),
	RockLo:     rgb(0xB5B0A4),
	RockMid:    rgb(0xDDD9CF),
	RockHi:     rgb(0xEFECE4),
	RockTop:    rgb(0xEFECE4),
	RockCool:   rgb(0xA09C92),
	Stain:      rgb(0xEFECE4),
	RockShadow: rgb(0x000000),
	Plate:      rgb(0x111111),
	PlateRim:   rgb(0xFFFFFF),
	PlateLine:  rgb(0x8A8A8A),
	PlateSide:  rgb(0x111111),
	PlateUnder: rgb(0x000000),
	Edge:       rgb(0xFFFFFF),
	EdgeInk:    rgb(0x000000),
	Dial:       rgb(0xFFFFFF),
	Well:       rgb(0xFFFFFF),
	Bezel:      rgb(0x000000),
	DialInk:    rgb(0x000000),
	DialInk2:   rgb(0x000000),
	North:      rgb(0xA3150A),
	South:      rgb(0x3A3A3A),
	Fluid:      rgb(0xFFFFFF),
	FluidHi:    rgb(0xFFFFFF),
	Bubble:     rgb(0x6E6E6E),
	BubbleLine: rgb(0x000000),
	LevelInk:   rgb(0x000000),
	Arm:        rgb(0xFFFFFF),
	ArmLine:    rgb(0x000000),
	Water:      rgb(0x9CC9DC),
	WaterInk:   rgb(0x00405A),
	WaterCase:  rgb(0xFFFFFF),
}

var black = Theme{
	Name: ContrastBlack, Flat: true, Dark: true, ShadowAlpha: 0, WaterAlpha: 0.5,
	BgTop:      rgb(0x000000),
	BgBot:      rgb(0x000000),
	Ground:     rgb(0x000000),
	Panel:      rgb(0x000000),
	Bar:        rgb(0x000000),
	Field:      rgb(0x000000),
	Line:       rgb(0xFFFFFF),
	FieldLine:  rgb(0xFFFFFF),
	Ink:        rgb(0xFFFFFF),
	Ink2:       rgb(0xE2E2E2),
	Btn:        rgb(0xFFFFFF),
	BtnInk:     rgb(0x000000),
	Rim:        rgb(0xFFFFFF),
	Ring:       rgb(0xFFFFFF),
	Shadow:     rgb(0x000000),
	Stand:      rgb(0x5A5A5A),
	RockLo:     rgb(0x6A665C),
	RockMid:    rgb(0x99948A),
	RockHi:     rgb(0xB5B0A4),
	RockTop:    rgb(0xB5B0A4),
	RockCool:   rgb(0x7C786F),
	Stain:      rgb(0xB5B0A4),
	RockShadow: rgb(0x000000),
	Plate:      rgb(0x111111),
	PlateRim:   rgb(0xFFFFFF),
	PlateLine:  rgb(0x8A8A8A),
	PlateSide:  rgb(0x111111),
	PlateUnder: rgb(0x000000),
	Edge:       rgb(0xFFFFFF),
	EdgeInk:    rgb(0x000000),
	Dial:       rgb(0xFFFFFF),
	Well:       rgb(0xFFFFFF),
	Bezel:      rgb(0x000000),
	DialInk:    rgb(0x000000),
	DialInk2:   rgb(0x000000),
	North:      rgb(0xA3150A),
	South:      rgb(0x3A3A3A),
	Fluid:      rgb(0xFFFFFF),
	FluidHi:    rgb(0xFFFFFF),
	Bubble:     rgb(0x6E6E6E),
	BubbleLine: rgb(0x000000),
	LevelInk:   rgb(0x000000),
	Arm:        rgb(0xFFFFFF),
	ArmLine:    rgb(0x000000),
	Water:      rgb(0x2E7FA0),
	WaterInk:   rgb(0x9FE0FF),
	WaterCase:  rgb(0x000000),
}
