package mistake

import "cuesta/orient"

// kindEntry is all that is said about a kind. A new kind is a constant, an
// entry here, and the claims that predict its answers.
type kindEntry struct {
	name   string
	what   string // what happened, to follow "probably"
	advice string // how to see it and what to do next time: whole sentences

	// The same where the dip direction is written instead of the strike, if
	// the words differ.
	directionWhat, directionAdvice string
}

var catalogue = [Kinds]kindEntry{
	OtherEnd: {name: "other-end", what: "the other end of the strike line was written",
		advice:          "Lay the right hand on the bed, fingers down the dip: the thumb points to the end to write.",
		directionWhat:   "the dip direction was reckoned from the other end of the strike line",
		directionAdvice: "Lay the right hand on the bed, fingers down the dip: the fingers point the way to write."},
	SouthEnd: {name: "south-end", what: "the south end of the needle was read",
		advice: "Find the north end by its shape, and read the number there."},
	DirectionForStrike: {name: "dip-direction-for-strike", what: "the dip direction was written where the strike belongs",
		advice:        "The strike is level along the bed; the dip direction is 90° clockwise from its right-hand end.",
		directionWhat: "the strike was written where the dip direction belongs"},
	EastWest: {name: "east-west-exchanged", what: "east and west were exchanged",
		advice: "On the dial E stands to the left of N on purpose: write the number as it stands, without turning it round."},
	WrongLetters: {name: "wrong-letters", what: "the letters name the side that rises",
		advice: "Look which way water would run down the bed, and write the letters of that side."},
	DeclinationNotSet: {name: "declination-not-set", what: "the declination was left out",
		advice: "The needle shows magnetic north: set the ring to the declination of the place before reading."},
	DeclinationWrongSign: {name: "declination-wrong-sign", what: "the declination was taken with the wrong sign",
		advice: "East declination is added to a magnetic azimuth, west is taken off: look whether the ring says E or W."},
	DeclinationMisset: {name: "declination-misset", what: "the ring was not set to the declination of the place",
		advice: "Compare the ring with the declination of the place before reading."},
	DeclinationTwice: {name: "declination-twice", what: "the declination was added once more to a reading that had it already",
		advice: "With the declination set on the ring the dial shows true azimuths: write them as they stand."},
	LevelNotCentred: {name: "level-not-centred", what: "the round level was not centred when the dial was read",
		advice: "Bring the bubble wholly inside its ring first; on a gentle bed even a little tilt turns the strike far."},
	NeedleMoving: {name: "needle-not-at-rest", what: "the needle was still swinging when it was read",
		advice: "Wait until it stands still, then read."},
	NeedleRubbing: {name: "needle-rubbing", what: "the case was tilted so far that the needle touched the glass",
		advice: "Level the case and tap it, so that the needle swings free before you read."},
	NeedleLocked: {name: "needle-locked", what: "the needle was held by its lock when it was read",
		advice: "Free the needle and let it come to rest before you read."},
	NeedleSticking: {name: "needle-sticking", what: "the needle stuck a little on its pivot",
		advice: "Tap the case lightly once the needle stands still, and read again."},
	EdgeNotDownDip: {name: "edge-not-down-dip", what: "the edge did not point straight down the dip, so an apparent dip was measured",
		advice: "Turn the edge until the angle is greatest: at a right angle to the strike."},
	BodyLeaning: {name: "body-leaning", what: "the body leaned while the dip was read",
		advice: "Hold the face upright: leaning makes the dip too large."},
	TubeNotCentred: {name: "tube-not-centred", what: "the tube level was off when the arc was read",
		advice: "Turn the arm until the bubble stands between its marks, then read."},
	PercentScale: {name: "percent-scale", what: "the percent scale was read as degrees",
		advice: "Read the degree scale: 45° is 100 percent."},
	Complement: {name: "complement", what: "the angle was counted from the vertical",
		advice: "Dip is counted from the horizontal: a level bed is 0°, an upright one 90°."},
	DigitsSwapped: {name: "digits-swapped", what: "two digits were exchanged in writing",
		advice: "Read the number aloud as you write it."},
	StrikeDipSwapped: {name: "strike-dip-swapped", what: "strike and dip stand in each other's place",
		advice:        "The azimuth comes first, with three digits; the dip follows, with two.",
		directionWhat: "dip direction and dip stand in each other's place"},
	LettersContradict: {name: "letters-contradict", what: "the letters name a direction along the strike line, not to a side of it",
		advice: "A bed dips at a right angle to its strike: one striking 040° dips SE or NW."},
	NotCalibrated: {name: "sensor-not-calibrated", what: "the sensor was not calibrated, so its own iron turned the direction it showed",
		advice: "Calibrate it before the first reading; turned end for end it must show the same."},
}

// what says what happened, in the words of the notation.
func (k Kind) what(n orient.Notation) string {
	if c := catalogue[k]; n == orient.DirectionDip && c.directionWhat != "" {
		return c.directionWhat
	}
	return catalogue[k].what
}

// advice says what to do next time, in the words of the notation.
func (k Kind) advice(n orient.Notation) string {
	if c := catalogue[k]; n == orient.DirectionDip && c.directionAdvice != "" {
		return c.directionAdvice
	}
	return catalogue[k].advice
}
