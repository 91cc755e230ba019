package scenes

import (
	"cmp"
	"math"
	"strings"

	"cuesta/orient"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// hint is the one line that says what to do next.
type hint uint8

const (
	hintLevel hint = iota
	hintRubbing
	hintSettle
	hintRing
	hintReadStrike
	hintTurn
	hintArm
	hintReadDip
	hintFirstStrike
	hintRecord
	hintOneDigit
	hintLocked
	hintRight
	hintWrong
	hintShown
	hintPanel
	hintTouching
	hintLid
	hintReadLid
	hintCalibrate
	hintReadSensor
	hintAlong
	hints
)

// stage of the task that a hint belongs to: strike, dip or note.
func (b *Bench) task() int {
	switch {
	case b.phase != measuring || b.complete:
		return 2
	case b.obs.Seat == sim.OnSide:
		return 1
	default:
		return 0
	}
}

func (b *Bench) nextHint() hint {
	switch {
	case b.panel != noPanel:
		return hintPanel
	case b.phase == judged && b.verdict.Right:
		return hintRight
	case b.phase == judged:
		return hintWrong
	case b.phase == shown:
		return hintShown
	case b.complete && b.oneDigit():
		return hintOneDigit
	case b.complete:
		return hintRecord
	}
	switch b.obs.Seat {
	case sim.OnSide:
		return b.sideHint()
	case sim.OnLid:
		return b.lidHint()
	case sim.OnBack:
		return b.flatHint()
	case sim.OnEdge:
	}
	return b.edgeHint()
}

func (b *Bench) edgeHint() hint {
	switch {
	case b.strikeWritten:
		return hintTurn
	case b.obs.Dial.State == sim.NeedleLocked:
		return hintLocked
	case b.obs.Touching && !b.obs.Round.Centred:
		return hintTouching
	case b.obs.Dial.State == sim.NeedleRubbing:
		return hintRubbing
	case !b.obs.Round.Centred:
		return hintLevel
	case b.ringWanted():
		return hintRing
	case !b.obs.Dial.Resting:
		return hintSettle
	default:
		return hintReadStrike
	}
}

func (b *Bench) sideHint() hint {
	switch {
	case b.alongStrike():
		return hintAlong
	case !b.obs.Tube.Centred || b.obs.Arc.Arm < 2*orient.Degree:
		return hintArm
	case !b.strikeWritten:
		return hintFirstStrike
	default:
		return hintReadDip
	}
}

// alongStrike says that the edge runs level across the slope, on the side: the
// tube then looks finished, with the arm at 0.
func (b *Bench) alongStrike() bool {
	const eye = 8 * orient.Degree
	return b.obs.Seat == sim.OnSide && b.obs.Tube.Centred && b.obs.Arc.Arm < 2*orient.Degree &&
		b.ses.Truth().Dip >= 2*orient.Degree && math.Abs(b.ses.World().Pose().Swing.Sin()) < eye.Sin()
}

// oneDigit says that the note ends in a single digit of a dip, which may be the
// first of two.
func (b *Bench) oneDigit() bool {
	rest := strings.TrimRight(b.text, "0123456789.")
	return len(b.text)-len(rest) == 1
}

// ofInstrument says that the next thing to do is done at the instrument and not
// in the notebook.
func (b *Bench) ofInstrument() bool {
	switch b.nextHint() {
	case hintLevel, hintRubbing, hintTouching, hintLocked, hintRing, hintSettle, hintArm, hintAlong, hintLid, hintCalibrate:
		return true
	case hintReadStrike, hintTurn, hintReadDip, hintFirstStrike, hintRecord, hintOneDigit, hintRight, hintWrong, hintShown, hintPanel, hintReadLid, hintReadSensor:
	}
	return false
}

// ringWanted says that the declination is the student's to set and that the
// ring still stands at zero.
func (b *Bench) ringWanted() bool {
	return b.set.Declination == DeclinationYours && b.obs.Dial.Ring.Abs() < .5*orient.Degree
}

// line is the hint in words and the key that goes with it.
func (b *Bench) line(h hint) (say, keys string) {
	swing, lift := b.keysDo("swing", keymap.SwingLess, keymap.SwingMore), b.keysDo("roll", keymap.Lift, keymap.Lower)
	switch h {
	case hintRubbing, hintLevel:
		return b.levelWords(h, b.homing()), cmp.Or(b.homeKeys(), both(swing, lift))
	case hintTouching:
		return "The plate lies against the rock: roll it back, or swing it.", both(swing, lift)
	case hintLid:
		return b.levelWords(h, b.homing()), cmp.Or(b.homeKeys(), both(swing, b.keysDo("hinge", keymap.Lift, keymap.Lower)))
	case hintReadLid:
		return "North end: dip direction. Hinge: dip. So " + b.writeBoth(), b.justType()
	case hintCalibrate:
		return "Calibrate the sensor: its own iron turns the direction that it shows.", b.calibrateKeys()
	case hintReadSensor:
		return "The sensor shows dip direction and dip: " + b.writeBoth(), b.justType()
	case hintSettle:
		return "Let the needle come to rest; " + b.manner.by("a tap on the case", "the button Tap") + " helps.", b.keysDo("taps", keymap.Tap)
	case hintLocked:
		return "The needle is locked: free it.", b.keysDo("frees the needle", keymap.LockFree)
	case hintRing:
		return "Set the declination on the dial: " + declinationWords(b.field.Declination) + ".", b.keysDo("turn the ring", keymap.RingLess, keymap.RingMore)
	case hintReadStrike:
		return "Read the dial at the north end, check which end is forward, and " + b.writeDown(b.strikeWord()) + ".", b.justType()
	case hintTurn:
		return "Written, not yet recorded. " + b.manner.by("Turn the plate on its side, edge", "Tap Go on to dip; there the edge runs") + " straight down the dip.", b.enterDoes("turns the plate")
	case hintArm:
		return b.levelWords(h, b.homing()), both(swing, cmp.Or(b.homeKeys(), b.keysDo("arm", keymap.Lift, keymap.Lower)))
	case hintAlong:
		return alongWords, swing
	case hintReadDip:
		return "With the edge straight down the dip, read the outer scale; " + b.writeDown("dip") + ".", b.justType()
	case hintFirstStrike:
		return "Note the dip, then turn the plate back: the strike is still to come.", b.keysDo("turns the plate", keymap.TurnOver)
	case hintOneDigit:
		return "One digit of the dip so far: type the second, or " + b.manner.by("record it", "tap Record") + ".", b.enterDoes("records")
	case hintRecord:
		return "The reading is complete: " + b.manner.by("record it", "tap Record") + ".", b.enterDoes("records")
	case hintRight:
		return "The buttons under the rock show the true plane; or go on to the next one.", b.enterDoes("goes on")
	case hintWrong:
		return "The buttons under the rock show the true plane; look, and measure again.", b.enterDoes("goes on")
	case hintShown:
		return "The waterline on the rock is the strike; the arrow runs straight down the dip.", b.enterDoes("goes on")
	case hintPanel:
		return b.panelLine(), ""
	}
	return "", ""
}

// levelWords say what is to be levelled, and to those who tap by which controls:
// those at a keyboard are told the keys.
func (b *Bench) levelWords(h hint, home homing) string {
	taps := b.tapsHome(home)
	switch {
	case h == hintRubbing && taps != "":
		return "The needle rubs: tap " + taps + " to level the plate."
	case h == hintRubbing:
		return "The plate is tilted too far and the needle rubs: bring the bubble towards the ring."
	case h == hintLid && taps != "":
		return "Level the body: tap " + taps + "."
	case h == hintLid:
		return "Level the body: swing it, and open the hinge."
	case h == hintArm && taps != "":
		return "Swing the edge down the dip, where the arm reads most; centre its bubble: " + taps + "."
	case h == hintArm:
		return "Swing the edge down the dip, where the arm reads most; centre its bubble."
	case taps != "":
		return "Bring the bubble into the ring: tap " + taps + "."
	}
	return "Bring the bubble into the ring: swing the edge and roll the plate."
}

// writeDown is how a figure comes into the notebook.
func (b *Bench) writeDown(what string) string {
	return b.manner.by("type the "+what, "write the "+what+" with 123")
}

// panelLine is the line under an open panel.
func (b *Bench) panelLine() string {
	switch {
	case b.notice != "": // its own place is covered
		return b.notice
	case b.panel == keysPanel:
		return b.keys.line()
	case b.panel == helpPanel:
		return b.manner.by("The arrow keys go from line to line; Escape", "Back") + " leads to " + b.over.back("the bench") + "."
	case b.panel == keypadPanel:
		return "Write the " + b.strikeWord() + " and the dip, " + b.example() + "."
	}
	return b.manner.by("Choose with the arrow keys or the pointer", "Tap what you choose") + "; " +
		b.manner.by("Escape", "Back") + " leads to the bench."
}

// alongWords say why a tube that is home is not yet the dip.
const alongWords = "The edge runs along the strike: swing it a quarter turn, its arrow straight down the slope."

// keysDo is what keys do, behind the keys in force; nothing where none is.
func (b *Bench) keysDo(does string, as ...keymap.Action) string {
	if b.manner == byTap {
		return ""
	}
	if k := b.set.keysFor(as...); k != "" {
		return k + " " + does
	}
	return ""
}

// enterDoes is what Enter does, for those who have it.
func (b *Bench) enterDoes(does string) string { return b.manner.by("Enter "+does, "") }

func both(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// justType says that figures go into the notebook from everywhere, where they
// do.
func (b *Bench) justType() string {
	if b.manner == byTap || b.set.Quiet {
		return b.manner.by("in the notebook", "")
	}
	return "just type"
}

func (b *Bench) strikeWord() string {
	if b.set.Notation == orient.DirectionDip {
		return "dip direction"
	}
	return "strike"
}
