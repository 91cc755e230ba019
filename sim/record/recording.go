package record

import (
	"math"

	"cuesta/sim"
)

// Bounds of a recording, so that reading and replaying one stays cheap.
const (
	LongestLine = 8 << 10                             // bytes, without the line end
	MostEntries = 1 << 18                             // commands
	LastTick    = 31 * 24 * 3600 * sim.TicksPerSecond // about a month of bench time
)

// Recording is what was done at one bench.
type Recording struct {
	Setup   sim.Setup
	Start   uint64 // state hash of the fresh bench
	Entries []Entry
	End     End
}

// Entry is one command: the tick at which it was carried out and the state
// hash right after it.
type Entry struct {
	Tick    sim.Tick
	Command sim.Command
	Hash    uint64
}

// End is how the bench stood at the end.
type End struct {
	Tick sim.Tick
	Hash uint64
	Seen Seen
}

// Seen is the part of the last observation that a person would read off.
type Seen struct {
	Seat           sim.Seat
	Seated         sim.Side
	Right, Forward float64 // bubble of the round level, in ring radii
	Off            float64 // bubble of the tube level, in half gaps
	North          float64 // degrees at the north end of the needle
	Arm            float64 // degrees on the arc
	Hinge          float64 // degrees between lid and body
	Direction, Dip float64 // degrees on the sensor, when it lies flat
}

// Close says whether two sights are the same to a reader: the same seat, angles
// within 0.01°, bubbles within a hundredth of their marks. Targets that round
// products and sums in one go may differ by less than that.
func (s Seen) Close(t Seen) bool {
	if s.Seat != t.Seat || s.Seated != t.Seated {
		return false
	}
	for _, d := range [...]float64{
		math.Remainder(s.North-t.North, 360), math.Remainder(s.Direction-t.Direction, 360),
		s.Arm - t.Arm, s.Hinge - t.Hinge, s.Dip - t.Dip, s.Right - t.Right, s.Forward - t.Forward, s.Off - t.Off,
	} {
		if math.Abs(d) > closeEnough {
			return false
		}
	}
	return true
}

const closeEnough = 0.01

// SeenIn is the part of an observation that a recording keeps.
func SeenIn(o sim.Observation) Seen {
	return Seen{
		Seat: o.Seat, Seated: o.Seated,
		Right: o.Round.Right, Forward: o.Round.Forward, Off: o.Tube.Off,
		North: o.Dial.North.Degrees(), Arm: o.Arc.Arm.Degrees(), Hinge: o.Hinge.Degrees(),
		Direction: o.Sensor.Direction.Degrees(), Dip: o.Sensor.Dip.Degrees(),
	}
}
