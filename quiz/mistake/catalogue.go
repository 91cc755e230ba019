package mistake

import "cuesta/orient"

// kindEntry is all that is said about a kind. A new kind is a constant, an
// entry here, and the claims that predict its answers.
type kindEntry struct {
	name   string
	what   string // what happened, to follow "probably"
	advice string // how to see it and what to do next time: whole sentences
}

var catalogue = [Kinds]kindEntry{
	OtherEnd: {"other-end", "the other end of the strike line was written",
		"Lay the right hand on the bed, fingers down the dip: the thumb points to the end to write."},
	SouthEnd: {"south-end", "the south end of the needle was read",
		"Find the north end by its shape, and read the number there."},
	DirectionForStrike: {"dip-direction-for-strike", "the dip direction was written where the strike belongs",
		"The strike is level along the bed; the dip direction is 90° clockwise from its right-hand end."},
	EastWest: {"east-west-exchanged", "east and west were exchanged",
		"On the dial E stands to the left of N on purpose: write the number as it stands, without turning it round."},
	WrongLetters: {"wrong-letters", "the letters name the side that rises",
		"Look which way water would run down the bed, and write the letters of that side."},
	DeclinationNotSet: {"declination-not-set", "the declination was left out",
		"The needle shows magnetic north: set the ring to the declination of the place before reading."},
	DeclinationWrongSign: {"declination-wrong-sign", "the declination was taken with the wrong sign",
		"East declination is added to a magnetic azimuth, west is taken off: look whether the ring says E or W."},
	DeclinationMisset: {"declination-misset", "the ring was not set to the declination of the place",
		"Compare the ring with the declination of the place before reading."},
	DeclinationTwice: {"declination-twice", "the declination was added once more to a reading that had it already",
		"With the declination set on the ring the dial shows true azimuths: write them as they stand."},
	LevelNotCentred: {"level-not-centred", "the round level was not centred when the dial was read, so the edge did not lie along the strike",
		"Bring the bubble wholly inside its ring first; on a gentle bed even a little tilt turns the strike far."},
	NeedleMoving: {"needle-not-at-rest", "the needle was still swinging when it was read",
		"Wait until it stands still, then read."},
	NeedleRubbing: {"needle-rubbing", "the case was tilted so far that the needle touched the glass",
		"Level the case and tap it, so that the needle swings free before you read."},
	NeedleLocked: {"needle-locked", "the needle was held by its lock when it was read",
		"Free the needle and let it come to rest before you read."},
	NeedleSticking: {"needle-sticking", "the needle stuck a little on its pivot",
		"Tap the case lightly once the needle stands still, and read again."},
	EdgeNotDownDip: {"edge-not-down-dip", "the edge did not point straight down the dip, so an apparent dip was measured",
		"Turn the edge until the angle is greatest: at a right angle to the strike."},
	BodyLeaning: {"body-leaning", "the body leaned while the dip was read",
		"Hold the face upright: leaning makes the dip too large."},
	TubeNotCentred: {"tube-not-centred", "the tube level was off when the arc was read",
		"Turn the arm until the bubble stands between its marks, then read."},
	PercentScale: {"percent-scale", "the percent scale was read as degrees",
		"Read the degree scale: 45° is 100 percent."},
	Complement: {"complement", "the angle was counted from the vertical",
		"Dip is counted from the horizontal: a level bed is 0°, an upright one 90°."},
	DigitsSwapped: {"digits-swapped", "two digits were exchanged in writing",
		"Read the number aloud as you write it."},
	StrikeDipSwapped: {"strike-dip-swapped", "strike and dip stand in each other's place",
		"The azimuth comes first, with three digits; the dip follows, with two."},
	LettersContradict: {"letters-contradict", "the letters name a direction along the strike line, not to a side of it",
		"A bed dips at a right angle to its strike: one striking 040° dips SE or NW."},
}

// what says what happened, in the words of the notation.
func (k Kind) what(n orient.Notation) string {
	if k == DirectionForStrike && n == orient.DirectionDip {
		return "the strike was written where the dip direction belongs"
	}
	return catalogue[k].what
}

func (k Kind) advice() string { return catalogue[k].advice }
