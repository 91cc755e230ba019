package mistake

import (
	"math"

	"cuesta/orient"
	"cuesta/sim"
)

// Priors of the strike part on paper, where the answer has to speak alone.
// They are our assumptions; only their ratios matter.
const (
	priorCareful     = 0.60
	priorOtherEnd    = 0.07
	priorSouthEnd    = 0.05
	priorDirection   = 0.05
	priorEastWest    = 0.04
	priorLetters     = 0.05
	priorNotSet      = 0.06
	priorWrongSign   = 0.03
	priorTwice       = 0.03
	priorLevel       = 0.06
	priorDigits      = 0.015
	priorSlip        = 0.06 // a nameless slip: on paper, where the instrument was not seen
	priorSlipSeen    = 0.02 // and with a reading, which shows what the instrument did
	priorAnything    = 0.04
	priorStale       = 0.10 // that the answer does not come from the last reading
	priorAsRead      = 0.70 // with a reading: the number written as it stands
	priorConverted   = 0.35 // turned to the right-hand end by a student at the other one
	priorByHand      = 0.15 // declination put right on paper
	priorByHandWrong = 0.03
)

// strikeClaims are all ways in which the strike of the answer may have come
// about. Their centres are strikes as understood.
func (e Evidence) strikeClaims() []claim {
	paper, other := e.paperStrikes(), e.otherStrike().prior()
	if !e.edgeUsable() {
		return scaled(paper, 1-other)
	}
	return append(scaled(e.poseStrikes(), 1-other-priorStale), scaled(paper, priorStale)...)
}

// otherStrike is the claim of something else about the strike.
func (e Evidence) otherStrike() something {
	slip := priorSlip
	if e.edgeUsable() {
		slip = priorSlipSeen
	}
	return something{slip, priorAnything, e.Truth.Strike.Angle(), orient.Full}
}

// paperStrikes start from the true strike.
func (e Evidence) paperStrikes() []claim {
	s, sigma := e.Truth.Strike, half(e.Limits.Strike)
	b := builder{e: e, sigma: sigma, claims: make([]claim, 0, roomy)}
	b.add(0, priorCareful, s)
	b.treat(0, 1, s)
	for _, d := range []struct {
		k     Kind
		prior float64
		times orient.Angle
	}{{DeclinationNotSet, priorNotSet, -1}, {DeclinationWrongSign, priorWrongSign, -2}, {DeclinationTwice, priorTwice, 1}} {
		if e.Declination.Abs() > leastSigma {
			b.add(setOf(d.k), d.prior, s.Add(d.times*e.Declination))
		}
	}
	b.levels(s)
	b.digits(0, s)
	return b.claims
}

// builder gathers claims about the strike.
type builder struct {
	e      Evidence
	sigma  orient.Angle
	claims []claim
}

// add claims that the azimuth z was taken for the strike.
func (b *builder) add(k kinds, prior float64, z orient.Azimuth) {
	b.claims = append(b.claims, claim{k, prior, b.e.turned(z).Angle(), b.sigma})
}

// treat claims what may be done wrong with the right number z, beside faults
// that are there already.
func (b *builder) treat(with kinds, share float64, z orient.Azimuth) {
	if !b.e.endless() {
		b.add(with|setOf(SouthEnd), share*priorSouthEnd, z.Opposite())
		b.add(with|setOf(OtherEnd), share*priorOtherEnd, z.Opposite())
	}
	b.mistreat(with, share, z)
}

// mistreat leaves the ends out.
func (b *builder) mistreat(with kinds, share float64, z orient.Azimuth) {
	if b.e.Entry.Letters != "" && !b.e.upright() {
		c := claim{with | setOf(WrongLetters), share * priorLetters, b.e.turned(z).Opposite().Angle(), b.sigma}
		b.claims = append(b.claims, c)
	}
	b.direction(with, share*priorDirection, z)
	mirrored := orient.AzimuthOf(-b.e.writtenFrom(z).Angle())
	b.add(with|setOf(EastWest), share*priorEastWest, b.e.strikeFrom(mirrored))
}

// direction claims that dip direction and strike were taken for each other,
// seven times in ten the way the notation invites. Letters settle nothing
// then: either end may be understood.
func (b *builder) direction(with kinds, prior float64, z orient.Azimuth) {
	invited := 0.7
	switch {
	case b.e.Entry.Letters != "":
		invited = 0.5
	case b.e.Entry.Notation == orient.DirectionDip:
		invited = 0.3
	}
	with |= setOf(DirectionForStrike)
	b.claims = append(b.claims,
		claim{with, prior * invited, z.Add(orient.Right).Angle(), b.sigma},
		claim{with, prior * (1 - invited), z.Add(-orient.Right).Angle(), b.sigma})
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

// misreading is by how many whole degrees a number may have been read wrong
// before its digits were exchanged: each reading is one more prediction.
func misreading(sigma orient.Angle) int { return int(math.Ceil(2.5 * min(sigma.Degrees(), 4))) }

// digits claims two digits exchanged in writing a number that was read as z,
// give or take.
func (b *builder) digits(with kinds, z orient.Azimuth) {
	read := b.e.writtenFrom(z).Degrees()
	n, around, first := int(math.Round(read)), misreading(b.sigma), len(b.claims)
	for m := n - around; m <= n+around; m++ {
		w := claim{sigma: b.sigma}.density(orient.Angle(float64(m)-read) * orient.Degree)
		for _, x := range b.e.exchanged((m + 360) % 360) {
			at := b.e.strikeFrom(orient.AzimuthOf(orient.Angle(x) * orient.Degree))
			b.claims = append(b.claims, claim{with | setOf(DigitsSwapped), w, b.e.turned(at).Angle(), leastSigma})
		}
	}
	scaled(b.claims[first:], priorDigits)
}

// exchanged are the azimuths, in whole degrees, that come of exchanging two
// digits of the azimuth n: of three, or of the two of a quadrant bearing.
func (e Evidence) exchanged(n int) []int {
	if e.Entry.Notation != orient.Quadrant {
		return swapped(n, 3, 359)
	}
	from, way := n/180*180, 1 // north or south, and which way from it
	if n%180 > 90 {
		from, way = from+180, -1
	}
	out := swapped(way*(n-from), 2, 90)
	for i, q := range out {
		out[i] = (from + way*q + 360) % 360
	}
	return out
}

// edgeUsable says whether there is a reading of the dial that can be used.
func (e Evidence) edgeUsable() bool {
	f := e.Edge.Shown.Frame.Forward
	d := e.Edge.Shown.Dial
	return e.HasEdge && finite(d.North.Angle(), d.Ring, orient.Angle(f.X), orient.Angle(f.Y)) && (f.X != 0 || f.Y != 0)
}

// poseStrikes start from what the dial showed.
func (e Evidence) poseStrikes() []claim {
	x := orient.AzimuthOf(e.Edge.Shown.Dial.North.Angle())
	b := builder{e: e, sigma: half(e.Limits.Reading), claims: make([]claim, 0, roomy)}
	faults, declination := e.edgeFaults()
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
	level := fault{LevelNotCentred, lineOffset(e.trend(), e.Truth.Strike)}
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
