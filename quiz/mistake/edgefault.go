package mistake

import (
	"cuesta/orient"
	"cuesta/sim"
)

// otherEndForward says that the forward end pointed against the right-hand end.
func (e Evidence) otherEndForward() bool {
	return trend(e.Edge).From(e.Truth.Strike).Abs() > orient.Right
}

// dialFaults takes apart how the number on the dial departs from the right one:
// by how much the forward end pointed elsewhere, which the level shows, the
// needle, and the ring.
func (e Evidence) dialFaults(r sim.Reading, pointed orient.Angle) (faults []fault, declination fault) {
	d := r.Shown.Dial
	declination = e.ringFault(r)
	needle := fault{needleKind(d), d.North.From(trend(r).Add(declination.effect))}
	return []fault{{LevelNotCentred, pointed}, needle}, declination
}

// withTilt adds the level to a needle that rubs: it rubs only while the case
// is tilted.
func withTilt(s kinds) kinds {
	if s.has(NeedleRubbing) {
		return s | setOf(LevelNotCentred)
	}
	return s
}

// ringFault says how the ring departs from the declination of the place.
func (e Evidence) ringFault(r sim.Reading) fault {
	ring, dec := r.Shown.Dial.Ring, e.Declination
	f := fault{DeclinationMisset, (ring - dec).Wrapped()}
	switch {
	case ring.Abs() < leastSigma:
		f.kind = DeclinationNotSet
	case (ring + dec).Wrapped().Abs() < orient.Degree:
		f.kind = DeclinationWrongSign
	}
	return f
}

// needleKind says what is to blame when the needle does not stand in the field.
func needleKind(d sim.Dial) Kind {
	switch {
	case d.State == sim.NeedleLocked:
		return NeedleLocked
	case d.State == sim.NeedleRubbing:
		return NeedleRubbing
	case !d.Resting:
		return NeedleMoving
	default:
		return NeedleSticking
	}
}
