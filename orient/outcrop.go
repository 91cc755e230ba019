package orient

// TrueThickness is the thickness of a bed that crops out over the width on
// flat ground, measured across the strike: width · sin d, in the unit of
// width.
func TrueThickness(width float64, dip Angle) float64 { return width * dip.Sin() }

// DipOfOutcrop is the dip of a bed of the thickness that crops out over the
// width on flat ground: asin(thickness/width), and 90° where the width is no
// more than the thickness.
func DipOfOutcrop(thickness, width float64) Angle {
	if width <= thickness {
		return Right
	}
	return Asin(thickness / width)
}
