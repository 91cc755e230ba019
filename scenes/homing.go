package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/keymap"
	"cuesta/sim"
	"cuesta/sim/instrument"
)

// homing is which turns bring the bubble of the level in use home: more is +1,
// less −1, and 0 none. It follows from where the bubble stands, which is high.
type homing struct{ swing, tilt int8 }

func (b *Bench) homing() homing {
	switch b.obs.Seat {
	case sim.OnSide:
		return homing{tilt: b.armHome()}
	case sim.OnLid:
		return b.lidHome()
	case sim.OnEdge:
		return b.ringHome()
	case sim.OnBack:
	}
	return homing{}
}

// leastOff is how far out the bubble of the round level is to go home by one of
// two turns.
func leastOff() float64 {
	v := instrument.StandardRound()
	return .7 * (v.Ring - v.Bubble) / v.Ring
}

// ringHome: the side that is high comes down by rolling, the end that is high by
// swinging it towards where the rock falls away. Where the bubble is out, one of
// the two is more than .7 of what is in.
func (b *Bench) ringHome() (h homing) {
	least := leastOff()
	h.tilt = beyond(b.obs.Round.Right, least)
	falls := int8(1)
	if b.ses.World().Pose().Swing.Cos() < 0 {
		falls = -1
	}
	if b.ses.Truth().Dip >= 2*orient.Degree { // an eye sees no way down on a flatter rock
		h.swing = falls * beyond(b.obs.Round.Forward, least)
	}
	return h
}

// armHome lowers the end of the tube that is high, unless the arm is at its stop.
func (b *Bench) armHome() int8 {
	if b.obs.Tube.Centred {
		return 0
	}
	turn := beyond(b.obs.Tube.Off, 0)
	if b.obs.Seated == sim.Left {
		turn = -turn
	}
	if arm := b.obs.Arc.Arm; arm <= 0 && turn < 0 || arm >= orient.Right && turn > 0 {
		return 0
	}
	return turn
}

// beyond is the side on which x lies farther than least from 0, or 0.
func beyond(x, least float64) int8 {
	switch {
	case x > least:
		return 1
	case x < -least:
		return -1
	}
	return 0
}

// homeKeys are the keys that bring the bubble home.
func (b *Bench) homeKeys() string {
	h := b.homing()
	swing, tilt := keymap.SwingLess, keymap.Lower
	if h.swing > 0 {
		swing = keymap.SwingMore
	}
	if h.tilt > 0 == b.liftsWithMore() {
		tilt = keymap.Lift
	}
	var rolls, swings string
	if h.tilt != 0 {
		rolls = b.keysDo(b.turnsIn(), tilt)
	}
	if h.swing != 0 {
		swings = b.keysDo("swings it in", swing)
	}
	return both(rolls, swings)
}

// tapsHome are the buttons that bring the bubble home, as they are labelled, for
// those who tap.
func (b *Bench) tapsHome(h homing) string {
	if b.manner != byTap {
		return ""
	}
	second := "Roll"
	switch b.obs.Seat {
	case sim.OnSide:
		second = "Arm"
	case sim.OnLid:
		second = "Hinge"
	case sim.OnEdge, sim.OnBack:
	}
	taps := half(second, h.tilt)
	if swing := half("Swing", h.swing); taps != "" && swing != "" {
		return taps + " and " + swing
	} else if swing != "" {
		return swing
	}
	return taps
}

// half is the half of a stepper for one way, or nothing.
func half(name string, way int8) string {
	switch {
	case way > 0:
		return name + " +"
	case way < 0:
		return name + " −"
	}
	return ""
}
