package sound

import (
	"cuesta/orient"
	"cuesta/sim"
)

// Level is the level that is heard.
type Level uint8

// The levels.
const (
	NoLevel Level = iota
	RoundLevel
	TubeLevel
)

// Needle is how the needle is heard.
type Needle uint8

// The ways.
const (
	NoNeedle Needle = iota // silent: none, or locked
	Resting
	Swinging
	Rubbing
)

// State is all that is to be heard at a moment. The zero value is silence.
// Taps, Turns and Contacts count up; each rise is heard once.
type State struct {
	Volume         float64 // in [0, 1]
	Level          Level
	Right, Forward float64 // of the bubble, in [−1, 1]: 1 is at the wall
	Centred        bool    // wholly inside the ring or between the marks
	AtWall         bool
	Needle         Needle
	Speed          orient.Angle // of a swinging needle at its fastest, a second
	Taps           int          // on the case
	Turns          int          // of the plate on its side, or end for end
	Contacts       int          // of the plate with the rock
}

// How far the middle of a bubble can go: in radii of the ring, and in half gaps
// between the marks.
const (
	roundReach = (10.8 - 3.7) / 5.0
	tubeReach  = (14.25 - 4.2) / 5.6
)

// Listener makes states of what is seen, one frame after another. The zero
// value has seen nothing yet.
type Listener struct {
	last  sim.Observation
	known bool
	state State
}

// Hear is the state after a frame in which some commands were carried out and
// that ended as o, at full volume.
func (l *Listener) Hear(o sim.Observation, done []sim.Command) State {
	l.count(o, done)
	l.state.Volume = 1
	l.level(o)
	l.needle(o)
	l.last, l.known = o, true
	return l.state
}

// Rest is the state while no instrument is on the screen: silence, and what
// comes next is not taken for a change.
func (l *Listener) Rest() State {
	l.known = false
	s := State{Taps: l.state.Taps, Turns: l.state.Turns, Contacts: l.state.Contacts}
	l.state = s
	return s
}

func (l *Listener) count(o sim.Observation, done []sim.Command) {
	for _, c := range done {
		switch c.Kind {
		case sim.Tap:
			l.state.Taps++
		case sim.Flip, sim.Place:
			l.state.Turns++
		case sim.Idle, sim.Swing, sim.Roll, sim.Arm, sim.Ring, sim.Lock, sim.Free, sim.Read, sim.Note, sim.Calibrate:
		}
	}
	if l.known && o.Touching && !l.last.Touching {
		l.state.Contacts++
	}
}

func (l *Listener) level(o sim.Observation) {
	s := &l.state
	switch o.Seat {
	case sim.OnEdge, sim.OnLid:
		s.Level, s.Centred, s.AtWall = RoundLevel, o.Round.Centred, o.Round.AtWall
		s.Right, s.Forward = within(o.Round.Right/roundReach), within(o.Round.Forward/roundReach)
	case sim.OnSide:
		s.Level, s.Centred, s.AtWall = TubeLevel, o.Tube.Centred, o.Tube.AtEnd
		s.Right = within(o.Tube.Off / tubeReach)
		s.Forward = s.Right
	case sim.OnBack:
		s.Level = NoLevel
	}
}

// within draws x into [−1, 1]; what is no number is 0.
func within(x float64) float64 {
	if x != x {
		return 0
	}
	return max(-1, min(x, 1))
}

func (l *Listener) needle(o sim.Observation) {
	s := &l.state
	switch {
	case o.Seat == sim.OnSide || o.Seat == sim.OnBack || o.Dial.State == sim.NeedleLocked:
		s.Needle, s.Speed = NoNeedle, 0
	case o.Dial.State == sim.NeedleRubbing:
		s.Needle, s.Speed = Rubbing, 0
	case o.Dial.Resting:
		s.Needle, s.Speed = Resting, 0
	default:
		s.Needle = Swinging
		s.Speed = l.fastest(o)
	}
}

// fade is the share of the speed that a tick leaves: a swing is heard by its
// fastest part and not by its turning points.
const fade = 0.995

// fastest is the speed of the needle against the case, held over the turning
// points of a swing. A move of the case is no swing of the needle.
func (l *Listener) fastest(o sim.Observation) orient.Angle {
	ticks := o.Tick - l.last.Tick
	speed := l.state.Speed
	if !l.known || ticks <= 0 || ticks > sim.TicksPerSecond {
		return speed
	}
	for range ticks {
		speed *= fade
	}
	if o.Frame != l.last.Frame {
		return speed
	}
	turned := (o.Dial.Needle - l.last.Dial.Needle).Wrapped().Abs()
	return max(speed, turned*sim.TicksPerSecond/orient.Angle(ticks))
}
