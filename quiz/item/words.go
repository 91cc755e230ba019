package item

import "cuesta/orient"

// notationNames say what a notation writes.
var notationNames = [...]string{
	orient.AzimuthDip:   "right-hand strike and dip",
	orient.Quadrant:     "quadrant bearing and dip, with letters",
	orient.DirectionDip: "dip direction and dip",
	orient.PoleNotation: "trend and plunge of the pole",
}

// readInField is the notation of readings in a course of the notation n: poles
// are reckoned, nobody reads them.
func readInField(n orient.Notation) orient.Notation {
	if n == orient.PoleNotation {
		return orient.AzimuthDip
	}
	return n
}

// bare is embedded by items without a figure.
type bare struct{}

// Figure is nil.
func (bare) Figure() Figure { return nil }

// Alt is empty.
func (bare) Alt() string { return "" }
