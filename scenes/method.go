package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/inset"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// Method is how strike and dip are measured.
type Method uint8

// The methods.
const (
	MethodEdge   Method = iota // the plate on its edge, then on its side
	MethodLid                  // on its lid, both in one operation
	MethodSensor               // a sensor flat on the rock
)

// Seat is how the instrument is laid on the rock first.
func (m Method) Seat() sim.Seat {
	return [...]sim.Seat{sim.OnEdge, sim.OnLid, sim.OnBack}[m]
}

// String is the method in words.
func (m Method) String() string { return [...]string{"edge and side", "lid", "sensor"}[m] }

// tool is the instrument for it.
func (m Method) tool() sim.Tool {
	return [...]sim.Tool{sim.Plain, sim.Lidded, sim.Sensing}[m]
}

// methodOf is the method that begins on a seat.
func methodOf(s sim.Seat) Method {
	switch s {
	case sim.OnLid:
		return MethodLid
	case sim.OnBack:
		return MethodSensor
	case sim.OnEdge, sim.OnSide:
	}
	return MethodEdge
}

// nextMethod goes on to the next method, on the same plane where nothing has
// been written yet, and says which it is.
func (b *Bench) nextMethod() {
	if b.exam != nil || b.phase != measuring {
		return
	}
	set := b.set
	set.Method = (set.Method + 1) % (MethodSensor + 1)
	was := b.obs.Seat
	b.Choose(set)
	words := "Method: " + set.Method.String() + "."
	if b.obs.Seat == was {
		words = "From the next plane on, method: " + set.Method.String() + "."
	}
	b.say(words)
}

// atOnce says that the instrument shows direction and dip in one operation, on
// its lid or flat on the rock: there is no second step.
func (b *Bench) atOnce() bool { return b.obs.Seat == sim.OnLid || b.obs.Seat == sim.OnBack }

// lidHint is what comes next on the lid.
func (b *Bench) lidHint() hint {
	switch {
	case b.obs.Dial.State == sim.NeedleLocked:
		return hintLocked
	case !b.obs.Round.Centred:
		return hintLid
	case b.ringWanted():
		return hintRing
	case !b.obs.Dial.Resting:
		return hintSettle
	default:
		return hintReadLid
	}
}

// flatHint is what comes next flat on the rock.
func (b *Bench) flatHint() hint {
	switch {
	case !b.obs.Sensor.Calibrated:
		return hintCalibrate
	case b.ringWanted():
		return hintRing
	default:
		return hintReadSensor
	}
}

// writeBoth says how a direction of dip and a dip are written down.
func (b *Bench) writeBoth() string {
	if b.set.Notation == orient.DirectionDip {
		return "type both."
	}
	return "write the strike, 90° less, and the dip."
}

// lidHome: a swing towards straight down the dip brings the side that is high
// down, and the hinge the end that is high. As long as the plate points up the
// rock no hinge levels it, so that it is swung first.
func (b *Bench) lidHome() (h homing) {
	least := leastOff()
	h.swing, h.tilt = -beyond(b.obs.Round.Right, least), -beyond(b.obs.Round.Forward, least)
	up := b.ses.World().Pose().Swing.Sin() < 0
	if up && b.ses.Truth().Dip >= 2*orient.Degree { // an eye sees no way down on a flatter rock
		h.tilt = 0
		if h.swing == 0 {
			h.swing = 1
		}
	}
	return h
}

// turnsIn is what the second hand does with the bubble, in words.
func (b *Bench) turnsIn() string {
	switch {
	case b.obs.Seat == sim.OnLid && b.homing().tilt > 0:
		return "opens the hinge"
	case b.obs.Seat == sim.OnLid:
		return "closes the hinge"
	case b.obs.Seat == sim.OnSide:
		return "turns the arm home"
	}
	return "rolls it in"
}

// hingeName is the caption of the third magnifier, which there is on the lid.
func (m *maker) hingeName() [2]string {
	return [2]string{"Hinge", inset.HingeState(m.b.obs.Hinge).Words()}
}

// sensorNames are the captions of the two magnifiers on the sensor.
func sensorNames(o sim.Sensor) (first, second [2]string) {
	return [2]string{"Sensor", inset.SensorState(o).Words()}, [2]string{"Display", "in degrees"}
}

// calibrateKeys is the key that calibrates.
func (b *Bench) calibrateKeys() string { return b.keysDo("calibrates", keymap.Calibrate) }
