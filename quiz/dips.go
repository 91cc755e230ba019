package quiz

import "cuesta/orient"

// DipClass is how steep a bed is.
type DipClass uint8

// The classes. Their limits, 30° and 60°, are those in common use for beds and
// fold limbs (after M. J. Fleuty 1964, from memory). Planes are dealt from 5°
// to 85°: below 5° the strike tolerance passes 13° and the strike says little,
// above 85° a careful reading may fall on either side of the vertical. The
// steps between are all dealt, because strikes scatter most below 15° of dip
// (Breeding, McKay & Bassett 2017, GSA Abstracts 260-4).
const (
	Gentle   DipClass = iota // [5°, 30°)
	Moderate                 // [30°, 60°)
	Steep                    // [60°, 85°)
)

// Classes is the number of dip classes.
const Classes = 3

// ClassOf returns the class of the dip d; flatter and steeper beds than are
// dealt belong to the nearest class.
func ClassOf(d orient.Angle) DipClass {
	switch {
	case d < 30*orient.Degree:
		return Gentle
	case d < 60*orient.Degree:
		return Moderate
	default:
		return Steep
	}
}

// Range returns the dips dealt in the class, [from, to).
func (c DipClass) Range() (from, to orient.Angle) {
	switch c {
	case Gentle:
		return 5 * orient.Degree, 30 * orient.Degree
	case Moderate:
		return 30 * orient.Degree, 60 * orient.Degree
	case Steep:
		return 60 * orient.Degree, 85 * orient.Degree
	}
	panic("quiz: no such dip class")
}

// String is the class in one word: gentle, moderate or steep.
func (c DipClass) String() string {
	switch c {
	case Gentle:
		return "gentle"
	case Moderate:
		return "moderate"
	case Steep:
		return "steep"
	}
	panic("quiz: no such dip class")
}
