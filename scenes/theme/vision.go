package theme

import "cuesta/scenes/draw"

// Vision is a way of seeing colour.
type Vision uint8

// Usual colour vision, and the three in which one kind of cone is wanting.
const (
	Usual Vision = iota
	Protan
	Deutan
	Tritan
)

// Visions are all of them.
var Visions = []Vision{Usual, Protan, Deutan, Tritan}

// String is the name of the vision.
func (v Vision) String() string {
	return [...]string{"usual vision", "protanopia", "deuteranopia", "tritanopia"}[v]
}

// seen turns light, in linear sRGB, into what it looks like: the model of
// Machado, Oliveira and Fernandes, "A Physiologically-based Model for
// Simulation of Color Vision Deficiency" (IEEE TVCG 15, 2009), at severity 1.
// The numbers are from memory; each row sums to 1, so that greys stay.
var seen = [...][3][3]float64{
	Usual: {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	Protan: {
		{0.152286, 1.052583, -0.204868},
		{0.114503, 0.786281, 0.099216},
		{-0.003882, -0.048116, 1.051998},
	},
	Deutan: {
		{0.367322, 0.860646, -0.227968},
		{0.280085, 0.672501, 0.047413},
		{-0.011820, 0.042940, 0.968881},
	},
	Tritan: {
		{1.255528, -0.076749, -0.178779},
		{-0.078411, 0.930809, 0.147602},
		{0.004733, 0.691367, 0.303900},
	},
}

// See is what an opaque colour looks like.
func (v Vision) See(c draw.Color) draw.Color {
	r, g, b := linear(c)
	at := func(row [3]float64) uint8 { return fromLight(row[0]*r + row[1]*g + row[2]*b) }
	m := seen[v]
	return draw.Color{R: at(m[0]), G: at(m[1]), B: at(m[2]), A: c.A}
}
