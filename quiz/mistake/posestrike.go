package mistake

import (
	"cuesta/orient"
	"cuesta/sim"
)

// poseStrikes start from what the last reading showed; none where there is no
// reading.
func (e Evidence) poseStrikes() []claim {
	s, ok := e.strikeSeat()
	switch {
	case !ok:
	case s == sim.OnLid:
		return e.lidStrikes()
	case s == sim.OnBack:
		return e.sensorStrikes()
	default:
		return e.edgeStrikes()
	}
	return nil
}

// edgeStrikes start from what the dial showed with an edge on the rock.
func (e Evidence) edgeStrikes() []claim {
	x := orient.AzimuthOf(e.Edge.Shown.Dial.North.Angle())
	b := builder{e: e, sigma: half(e.Limits.Reading), claims: make([]claim, 0, roomy)}
	faults, declination := e.dialFaults(e.Edge, trend(e.Edge).FromLine(e.Truth.Strike))
	own := withTilt(blamed(append(faults, declination), e.Limits.Strike))
	z := x // what the dial says of the right-hand end
	switch {
	case e.endless() || !e.otherEndForward():
		b.add(own, priorAsRead, x)
		if !e.endless() {
			b.add(own|setOf(SouthEnd), priorSouthEnd, x.Opposite())
		}
	default:
		z = x.Opposite()
		b.add(own|setOf(OtherEnd), priorAsRead-priorConverted, x)
		b.add(own, priorConverted, z)
		b.mistreat(own|setOf(OtherEnd), 0.5, x)
	}
	b.mistreat(own, 1, z)
	b.byHand(z, faults, declination)
	b.digits(own, z)
	return b.claims
}

// byHand claims that the declination was dealt with on paper.
func (b *builder) byHand(z orient.Azimuth, faults []fault, d fault) {
	dec, rest := b.e.Declination, withTilt(blamed(faults, b.e.Limits.Strike))
	if d.effect.Abs() > leastSigma {
		b.add(rest, priorByHand, z.Add(-d.effect))
	}
	if dec.Abs() <= leastSigma {
		return
	}
	switch d.kind {
	case DeclinationNotSet:
		b.add(rest|setOf(DeclinationWrongSign), priorByHandWrong, z.Add(-dec))
	default:
		b.add(rest|setOf(DeclinationTwice), priorByHandWrong, z.Add(dec))
	}
}
