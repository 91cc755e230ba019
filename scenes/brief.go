package scenes

// brief is the hint in few words, for windows in which whole sentences would
// leave no room for the rock.
func (b *Bench) brief(h hint) string {
	switch h {
	case hintRubbing:
		return "Tilted too far: the needle rubs."
	case hintLevel:
		return "Bring the bubble into the ring."
	case hintLid:
		return "Level the body: swing, open the hinge."
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
		return "Read the north end; type the " + b.strikeWord() + "."
	case hintTurn:
		return "Written. Go on to the dip."
	case hintArm:
		return "Swing down the dip, centre the arm."
	case hintAlong:
		return "Swing a quarter turn, down the slope."
	case hintReadDip:
		return "Read the outer scale; type the dip."
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
