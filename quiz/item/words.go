package item

import "cuesta/orient"

// notationNames say what a notation writes.
var notationNames = [...]string{
	orient.AzimuthDip:   "right-hand strike and dip",
	orient.Quadrant:     "quadrant bearing of the strike, with the dip and its letters",
	orient.DirectionDip: "dip direction and dip",
	orient.PoleNotation: "trend and plunge of the pole",
}

// bare is embedded by items without a figure.
type bare struct{}

// Figure is nil.
func (bare) Figure() Figure { return nil }

// Alt is empty.
func (bare) Alt() string { return "" }
