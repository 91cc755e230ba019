// Package assets holds the files that travel inside the programs: the reading
// fonts (SIL Open Font License, licence text beside them) and the spherical
// harmonic coefficients of the Earth's main field (public domain).
package assets

import _ "embed"

// Regular and Bold are the two weights of the reading face, TrueType.
var (
	//go:embed fonts/AtkinsonHyperlegible-Regular.ttf
	Regular []byte
	//go:embed fonts/AtkinsonHyperlegible-Bold.ttf
	Bold []byte
)

// FieldCoefficients is the coefficient file of the World Magnetic Model 2025
// (NOAA NCEI and British Geological Survey), valid 2025.0 to 2030.0.
//
//go:embed field/WMM2025.COF
var FieldCoefficients string
