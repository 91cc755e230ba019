package scenes

// brief is the hint in few words, for windows in which whole sentences would
// leave no room for the rock.
func (b *Bench) brief(h hint) string {
	switch h {
	case hintRubbing, hintLevel, hintLid, hintArm:
		return b.briefLevel(h, b.homing())
	case hintReadLid:
		return "North end: direction; hinge: dip."
	case hintCalibrate:
		return "Calibrate the sensor."
	case hintReadSensor:
		return "Write down what the sensor shows."
	case hintSettle:
		return "Let the needle rest, or tap."
	case hintLocked:
		return "Free the needle."
	case hintRing:
		return "Set the ring to " + declinationWords(b.field.Declination) + "."
	case hintReadStrike:
		return "Read the north end; " + b.manner.by("type", "write") + " the " + b.strikeWord() + "."
	case hintTurn:
		return "Written. Go on to the dip."
	case hintAlong:
		return "Swing a quarter turn, down the slope."
	case hintReadDip:
		return "Read the outer scale; " + b.manner.by("type", "write") + " the dip."
	case hintFirstStrike:
		return "Note the dip; the strike is still to come."
	case hintOneDigit:
		return "One digit: type the second, or record."
	case hintRecord:
		return "Complete: record it."
	case hintRight:
		return "Right. Look at the true plane."
	case hintWrong:
		return "Not yet. Look at the true plane."
	case hintShown:
		return b.truth()
	case hintPanel:
		return ""
	}
	return ""
}

// briefLevel is what is to be levelled, in few words.
func (b *Bench) briefLevel(h hint, home homing) string {
	taps := b.tapsHome(home)
	switch {
	case h == hintRubbing && taps != "":
		return "Tilted too far: " + taps + "."
	case h == hintRubbing:
		return "Tilted too far: the needle rubs."
	case h == hintLid && taps != "":
		return "Level the body: " + taps + "."
	case h == hintLid:
		return "Level the body: swing, open the hinge."
	case h == hintArm && taps != "":
		return "Swing down the dip; bubble: " + taps + "."
	case h == hintArm:
		return "Swing down the dip, centre the arm."
	case taps != "":
		return "Bubble into the ring: " + taps + "."
	}
	return "Bring the bubble into the ring."
}
