package mistake

import (
	"math"

	"cuesta/orient"
)

// paperStrikes start from the true strike.
func (e Evidence) paperStrikes() []claim {
	s, sigma := e.Truth.Strike, half(e.Limits.Strike)
	b := builder{e: e, sigma: sigma, claims: make([]claim, 0, roomy)}
	b.add(0, priorCareful, s)
	if !e.endless() {
		b.add(setOf(SouthEnd), priorSouthEnd, s.Opposite())
		b.add(setOf(OtherEnd), priorOtherEnd, s.Opposite())
	}
	b.mistreat(0, 1, s)
	for _, d := range []struct {
		k     Kind
		prior float64
		times orient.Angle
	}{{DeclinationNotSet, priorNotSet, -1}, {DeclinationWrongSign, priorWrongSign, -2}, {DeclinationTwice, priorTwice, 1}} {
		if e.Declination.Abs() > leastSigma && e.reckoned(d.k) {
			b.add(setOf(d.k), d.prior, s.Add(d.times*e.Declination))
		}
	}
	b.levels(s)
	b.digits(0, s)
	return without(b.claims, e.unheldStrike())
}

// reckoned says whether the declination may have been dealt with in this way:
// set on the dial, it can be neither left out nor turned round, and added once
// more only to a reading.
func (e Evidence) reckoned(k Kind) bool {
	return !e.dialSet(e.Declination) || k == DeclinationTwice && (e.HasEdge || e.flatRead())
}

// levels claims an edge off level by an unknown plunge, from 1.5° to 12° with
// a spread of 4° (ours), on a bed of the true dip.
func (b *builder) levels(s orient.Azimuth) {
	const step, sigma = 1.0, 4.0
	first := len(b.claims)
	for plunge := 1.5; plunge <= 12; plunge += step {
		beta := orient.Angle(plunge) * orient.Degree
		if beta >= b.e.Truth.Dip {
			break
		}
		w := math.Exp(-plunge * plunge / (2 * sigma * sigma))
		eps := orient.Asin(beta.Tan() / b.e.Truth.Dip.Tan())
		for _, way := range []orient.Angle{eps, -eps} {
			b.add(setOf(LevelNotCentred), w, s.Add(way))
		}
	}
	scaled(b.claims[first:], priorLevel)
}
