package mistake

import (
	"cuesta/orient"
	"cuesta/sim"
)

// trend is the azimuth of the forward end of the edge.
func (e Evidence) trend() orient.Azimuth {
	f := e.Edge.Shown.Frame.Forward
	return orient.AzimuthOf(orient.Atan2(f.X, f.Y))
}

// otherEndForward says that the forward end pointed against the right-hand end.
func (e Evidence) otherEndForward() bool {
	return e.trend().From(e.Truth.Strike).Abs() > orient.Right
}

// edgeFaults takes apart how the number on the dial departs from the true
// strike, or its other end: level and needle, and the ring.
func (e Evidence) edgeFaults() (faults []fault, declination fault) {
	d := e.Edge.Shown.Dial
	level := fault{LevelNotCentred, e.trend().FromLine(e.Truth.Strike)}
	declination = e.ringFault()
	expected := e.trend().Add(declination.effect)
	needle := fault{needleKind(d), d.North.From(expected)}
	return []fault{level, needle}, declination
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
func (e Evidence) ringFault() fault {
	ring, dec := e.Edge.Shown.Dial.Ring, e.Declination
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
