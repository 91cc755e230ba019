package mistake

import "cuesta/orient"

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
	priorGuess       = 0.20 // each, where a watched bench shows no reading: by eye, or anything
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
	pose := e.poseStrikes()
	if pose == nil {
		return scaled(paper, 1-other)
	}
	return append(scaled(pose, 1-other-priorStale), scaled(paper, priorStale)...)
}

// otherStrike is the claim of something else about the strike.
func (e Evidence) otherStrike() something {
	slip, anything := priorSlip, priorAnything
	if _, seen := e.strikeSeat(); seen {
		slip = priorSlipSeen
	} else if !e.strikeRead() {
		slip, anything = priorGuess, priorGuess
	}
	return something{slip, anything, e.Truth.Strike.Angle(), orient.Full}
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

// mistreat claims what may be done wrong with the right number z, beside faults
// that are there already and but for its ends.
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
