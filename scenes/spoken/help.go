package spoken

import "strings"

// helpOf says what each line does.
func helpOf(w Word) string {
	switch w {
	case Seat:
		return "seat edge, seat side, seat lid, seat flat: puts the instrument on the rock: on a long edge with the face up (for strike), on its side with the face upright (for dip), its lid flush on the rock, or flat on its back. The way it points on the rock stays."
	case Swing:
		return "swing 5, swing -5: turns it on the rock by so many degrees, plus is clockwise seen from above. A forward end that is high comes down when the arrow swings towards the side where the rock falls away."
	case Roll:
		return "roll 5, roll -5: rolls it about the edge it stands on, plus lowers the right side. On its lid: opens the hinge, plus lifts the forward end."
	case Arm:
		return "arm 5, arm -5: turns the inclination arm, plus away from the seated edge; the reply says whether its index end went up or down. On its side only."
	case Flip:
		return "flip: turns it end for end. A level plate stays level."
	case Ring:
		return "ring 12E, ring 3.5 W, ring -3: sets the declination on the dial, east positive."
	case Wait:
		return "wait 5: lets so many seconds pass, at most 60. A line that moves something takes one second."
	case Tap:
		return "tap: taps the case, so that the needle comes to rest nearer to where it belongs."
	case Lock:
		return "lock: holds the needle."
	case Free:
		return "free: lets it go."
	case Calibrate:
		return "calibrate: turns the sensor through all directions, so that it learns its own iron. Flat on the rock only."
	case Look:
		return "look: where everything is, in words. Lay your right hand flat on the rock, fingers down the slope: the thumb points to the end of the strike line that is written."
	case Bubble:
		return "bubble: where the bubble is. It runs to the high side. Round level: in ring radii, radii of the marked ring. Tube level, on the side: in half gaps between the marks."
	case Read:
		return "read: the dial at the north end of the needle, on its side the index of the arm on both scales, on its lid the dial and the hinge, flat what the sensor shows. The judge remembers how the instrument stood at the last reading of each."
	case Note:
		return "note TEXT: writes the answer in any notation, such as note 125/40, note N20W 40NE or note 035/78 SE; then comes the verdict."
	case Picture:
		return "picture FILE.png: draws the scene as it stands into a new file."
	case Reveal:
		return "reveal: the true plane, in words."
	case New:
		return "new, new 7: the next plane, or that of a seed."
	case Help:
		return "help, help swing: the lines, or one of them."
	case Quit:
		return "quit: closes the bench. So does the end of the input."
	case Nothing:
	}
	return ""
}

// order of work, for someone at the bench for the first time.
const orderOfWork = "First the strike: with seat edge, swing and roll until the bubble is inside the ring, let the needle rest, read. " +
	"The right hand says which end is forward; flip turns to the other one. " +
	"Then the dip: seat side, swing until the arrow points straight down the slope (from the strike that is 90), arm until the tube bubble is between the marks, read the degree scale. Then note."

// otherWays are the other two methods.
const otherWays = "In one operation: seat lid, swing and roll until the bubble is inside the ring; the north end then gives the dip direction, the hinge the dip. " +
	"Or seat flat, calibrate, read. Write these with an arrow, such as note 40→215."

func help(word string) string {
	if w, ok := wordOf(word); ok {
		return helpOf(w)
	}
	lines := []string{orderOfWork, otherWays}
	for w := Seat; w <= Quit; w++ {
		lines = append(lines, helpOf(w))
	}
	return strings.Join(lines, "\n")
}
