package theme

import "cuesta/scenes/draw"

// Pair is a colour that must be told from the one it lies on.
type Pair struct {
	What       string // in words
	Ink, Under draw.Color
	Text       bool // is read; otherwise a part of a control or a picture
	Lit        bool // lies on the instrument, in the light of the scene
}

// Least is the ratio a pair must have: 4.5 for text, 7 in the themes of high
// contrast, 3 for parts (WCAG 2.2, 1.4.3, 1.4.6 and 1.4.11).
func (t *Theme) Least(p Pair) float64 {
	switch {
	case !p.Text:
		return 3
	case t.Flat:
		return 7
	default:
		return 4.5
	}
}

// Pairs is every colour of the palette on every colour it is drawn on.
func (t *Theme) Pairs() []Pair {
	out := append(t.words(), t.controls()...)
	out = append(out, t.instrument()...)
	return append(out, t.rock()...)
}

// words are texts and what they are written on.
func (t *Theme) words() []Pair {
	return []Pair{
		{"text in the column", t.Ink, t.Panel, true, false},
		{"quieter text in the column", t.Ink2, t.Panel, true, false},
		{"text in the bottom line", t.Ink, t.Bar, true, false},
		{"quieter text in the bottom line", t.Ink2, t.Bar, true, false},
		{"text in the field", t.Ink, t.Field, true, false},
		{"text in a field that is shut", t.Ink2, t.Field, true, false},
		{"text on the button", t.BtnInk, t.Btn, true, false},
		{"text at the top of the backdrop", t.Ink, t.BgTop, true, false},
		{"quieter text at the top of the backdrop", t.Ink2, t.BgTop, true, false},
		{"text at the foot of the backdrop", t.Ink, t.BgBot, true, false},
		{"quieter text at the foot of the backdrop", t.Ink2, t.BgBot, true, false},
		{"text on the table", t.Ink, t.Ground, true, false},
		{"quieter text on the table", t.Ink2, t.Ground, true, false},
		{"figures of the dial", t.DialInk, t.Dial, true, true},
		{"letters of the dial", t.DialInk, t.Well, true, true},
		{"figures of the percent scale", t.DialInk2, t.Dial, true, true},
	}
}

// controls are the parts of controls and of panels.
func (t *Theme) controls() []Pair {
	return []Pair{
		{"button", t.Btn, t.Panel, false, false},
		{"border in the column", t.FieldLine, t.Panel, false, false},
		{"border of the field", t.FieldLine, t.Field, false, false},
		{"border in the strip", t.FieldLine, t.Bar, false, false},
		{"border on the backdrop", t.FieldLine, t.BgTop, false, false},
		{"rim of an inset", t.Rim, t.Panel, false, false},
		{"focus round the button", t.Ink, t.Panel, false, false},
		{"focus in the strip", t.Ink, t.Bar, false, false},
		{"focus round the rock", t.Ink, t.BgBot, false, false},
	}
}

// instrument are the parts of the instrument.
func (t *Theme) instrument() []Pair {
	return []Pair{
		{"north end of the needle", t.North, t.Well, false, true},
		{"south end of the needle", t.South, t.Well, false, true},
		{"north end over the scale", t.North, t.Dial, false, true},
		{"south end when it is not read", t.DialInk2, t.Well, false, true},
		{"marks of a level", t.LevelInk, t.Fluid, false, true},
		{"marks of a level in the light", t.LevelInk, t.FluidHi, false, true},
		{"marks of a level over the bubble", t.LevelInk, t.Bubble, false, true},
		{"outline of the bubble", t.BubbleLine, t.Fluid, false, true},
		{"outline of the bubble in the light", t.BubbleLine, t.FluidHi, false, true},
		{"outline of the bubble against the bubble", t.BubbleLine, t.Bubble, false, true},
		{"arm", t.Arm, t.Plate, false, true},
		{"outline of the arm", t.ArmLine, t.Arm, false, true},
		{"pointer of the arm", t.ArmLine, t.Dial, false, true},
		{"scale against its ring", t.Dial, t.Bezel, false, true},
		{"level against its ring", t.Fluid, t.Bezel, false, true},
		{"scale against the body", t.Dial, t.Plate, false, true},
		{"seating edge", t.Edge, t.Plate, false, true},
		{"seating edge against the sides", t.Edge, t.PlateSide, false, false},
		{"seating edge against the back", t.Edge, t.PlateUnder, false, false},
		{"index of the case", t.Edge, t.Bezel, false, true},
		{"arrow on the seating edge", t.EdgeInk, t.Edge, false, true},
		{"rim of the body", t.PlateRim, t.Plate, false, false}, // not shaded, unlike the face
	}
}

// rock are the rock, what is drawn over it, and the table.
func (t *Theme) rock() []Pair {
	out := []Pair{
		{"horizon ring on the table", t.Ring, t.Ground, false, false},
		{"horizon ring at the foot", t.Ring, t.BgBot, false, false},
		{"lines of the answer", t.WaterInk, t.WaterCase, false, false},
		{"lines of the answer on the table", t.WaterInk, t.Ground, false, false},
		{"the student's lines", t.Ink, t.Panel, false, false},
	}
	if t.Flat {
		return append(out,
			Pair{"outline of the rock", t.Line, t.Ground, false, false},
			Pair{"outline of the instrument on the table", t.Line, t.Ground, false, false})
	}
	return append(out, Pair{"body on the rock", t.Plate, t.RockTop, false, false})
}

// Ornaments are the colours that carry nothing by themselves: what they show
// is told by an outline, by shape or in words as well.
func (t *Theme) Ornaments() []draw.Color {
	return []draw.Color{
		t.Line,   // hairline between areas; the areas differ by what they hold
		t.Shadow, // where the slab stands is seen from its foot
		t.Stand,  // holds the slab up
		t.RockLo, t.RockMid, t.RockHi, t.RockCool, t.Stain, t.RockShadow, t.RockTop,
		t.PlateLine, // groove in the face
		t.Water,     // its line on the rock is drawn in WaterInk
	}
}
