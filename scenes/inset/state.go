package inset

import (
	"math"

	"cuesta/orient"
	"cuesta/sim"
)

// State is what a magnifier shows, in words that stay the same while only the
// exact place changes. States compare equal when their words do. The zero value
// is the round level with its bubble wholly inside the ring.
type State struct {
	place place
	way   uint8
}

type place uint8

const (
	roundInside place = iota
	roundTouching
	roundOutside
	roundWall
	tubeBetween
	tubeTouching
	tubePast
	tubeEnd
	dialRest
	dialSwinging
	dialRubbing
	dialLocked
	hingeClosed
	hingeOpen
	hingeStop
	sensorRaw
	sensorReady
)

// The ways to the ends of the tube; those of the round level are eighths of a
// turn from forward.
const (
	pivotEnd uint8 = iota
	indexEnd
)

var words = [...][8]string{
	roundInside:   {"wholly inside the ring"},
	roundTouching: {"touching the ring"},
	roundOutside: {
		"outside the ring, forward", "outside the ring, forward right", "outside the ring, right", "outside the ring, rear right",
		"outside the ring, rear", "outside the ring, rear left", "outside the ring, left", "outside the ring, forward left",
	},
	roundWall: {
		"at the wall, forward", "at the wall, forward right", "at the wall, right", "at the wall, rear right",
		"at the wall, rear", "at the wall, rear left", "at the wall, left", "at the wall, forward left",
	},
	tubeBetween:  {"between the marks"},
	tubeTouching: {"touching a mark, pivot end", "touching a mark, index end"},
	tubePast:     {"past the mark, pivot end", "past the mark, index end"},
	tubeEnd:      {"at the end, pivot end", "at the end, index end"},
	dialRest:     {"at rest"},
	dialSwinging: {"swinging"},
	dialRubbing:  {"rubbing on the glass: the case is tilted too far"},
	dialLocked:   {"locked"},
	hingeClosed:  {"closed"},
	hingeOpen:    {"open"},
	hingeStop:    {"folded right back"},
	sensorRaw:    {"not calibrated"},
	sensorReady:  {"calibrated"},
}

// Words says what can be seen.
func (s State) Words() string { return words[s.place][s.way] }

// RoundState is the state of the round level. A bubble counts as outside when
// its middle has crossed the ring.
func RoundState(o sim.RoundLevel) State {
	switch {
	case o.AtWall:
		return State{roundWall, eighth(o)}
	case o.Centred:
		return State{place: roundInside}
	case math.Hypot(o.Right, o.Forward) <= 1:
		return State{place: roundTouching}
	default:
		return State{roundOutside, eighth(o)}
	}
}

// eighth is the way to the bubble in eighths of a turn clockwise from forward.
func eighth(o sim.RoundLevel) uint8 {
	a := orient.AzimuthOf(orient.Atan2(o.Right, o.Forward))
	return uint8(math.Round(a.Degrees()/45)) % 8
}

// TubeState is the state of the tube level. A bubble counts as past a mark when
// its middle has crossed it.
func TubeState(o sim.TubeLevel) State {
	way := pivotEnd
	if o.Off > 0 {
		way = indexEnd
	}
	switch {
	case o.AtEnd:
		return State{tubeEnd, way}
	case o.Centred:
		return State{place: tubeBetween}
	case math.Abs(o.Off) <= 1:
		return State{tubeTouching, way}
	default:
		return State{tubePast, way}
	}
}

// DialState is the state of the needle.
func DialState(o sim.Dial) State {
	switch {
	case o.State == sim.NeedleLocked:
		return State{place: dialLocked}
	case o.State == sim.NeedleRubbing:
		return State{place: dialRubbing}
	case o.Resting:
		return State{place: dialRest}
	default:
		return State{place: dialSwinging}
	}
}

// HingeState is the state of the hinge of the lid.
func HingeState(open orient.Angle) State {
	switch {
	case open <= 0:
		return State{place: hingeClosed}
	case open >= orient.Half:
		return State{place: hingeStop}
	default:
		return State{place: hingeOpen}
	}
}

// SensorState is the state of the sensor.
func SensorState(o sim.Sensor) State {
	if o.Calibrated {
		return State{place: sensorReady}
	}
	return State{place: sensorRaw}
}
