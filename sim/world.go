package sim

import (
	"math"

	"cuesta/orient"
	"cuesta/sim/instrument"
)

// stepSeconds is the length of the fixed step.
const stepSeconds = 1.0 / TicksPerSecond

// World is a bench at work. Make one with New; the zero value is not valid. It
// is not safe for use by several goroutines at once.
type World struct {
	setup  Setup
	parts  parts
	rock   rock
	tick   Tick
	stance stance
	frame  Frame // follows from stance and rock
	round  round
	tube   tube
	needle needle
	sensor sensor

	readings [seats]Reading
	taken    [seats]bool
	notes    []string
	written  hasher // over the notes
}

// seats is the number of ways to rest.
const seats = int(OnBack) + 1

// parts are the fixed figures of the instrument.
type parts struct {
	round  instrument.RoundLevel
	tube   instrument.TubeLevel
	needle instrument.Needle
	sensor instrument.Sensor
}

func standardParts() parts {
	return parts{
		instrument.StandardRound(), instrument.StandardTube(),
		instrument.StandardNeedle(), instrument.StandardSensor(),
	}
}

// round and tube are the bubbles and where they are heading in this pose.
type round struct {
	spot instrument.Spot
	goal instrument.Offset
}

type tube struct {
	bubble instrument.Motion
	goal   float64
}

// New sets up a bench: on its edge, at a random swing and off level, both from
// the seed. The error wraps ErrSetup.
func New(s Setup) (*World, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	w := &World{
		setup: s,
		parts: standardParts(),
		rock:  rockOf(s.Plane),
	}
	w.needle = needleIn(s.Field.orDefault(), s.Balance, w.parts.needle)
	w.sensor = sensorIn(s.Field.orDefault(), s.Seed, w.parts.sensor)
	w.lay()
	return w, nil
}

// Setup is what the bench was set up from.
func (w *World) Setup() Setup { return w.setup }

// Tick is the number of steps since the bench was set up.
func (w *World) Tick() Tick { return w.tick }

// Step lets one tick pass.
func (w *World) Step() {
	w.tick++
	w.round.spot = w.parts.round.Step(w.round.spot, w.round.goal, stepSeconds)
	w.tube.bubble = w.parts.tube.Step(w.tube.bubble, w.tube.goal, stepSeconds)
	w.needle.step(w.parts.needle)
}

// restCheck is how many steps lie between two looks at whether all is at rest.
const restCheck = TicksPerSecond / 2

// Advance lets n ticks pass; none when n is negative. It ends in the same
// state as n calls of Step, bit for bit: once a step changes nothing but the
// tick, no later one will.
func (w *World) Advance(n int) {
	for i := 1; i <= n; i++ {
		round, tube, needle := w.round, w.tube, w.needle
		w.Step()
		if i%restCheck == 0 && w.round == round && w.tube == tube && w.needle == needle {
			w.tick += Tick(n - i)
			return
		}
	}
}

// rest puts the instrument at a stance: the frame, where the bubbles are
// heading, and what becomes of the needle.
func (w *World) rest(t stance) {
	before := w.frame
	w.stance = t
	w.frame = t.frame(w.rock)
	f := w.frame
	w.round.goal = w.parts.round.Goal(f.Right.Z, f.Forward.Z, f.Out.Z)
	w.tube.goal = w.tubeGoal()
	w.needle.follow(before, f, w.parts.needle)
}

// tubeGoal is where the bubble of the tube level is heading. The arm opens from
// forward towards the right of the body, whichever edge is seated.
func (w *World) tubeGoal() float64 {
	f, arm := w.frame, w.stance.arm
	along := blend(f.Forward, f.Right, arm)
	across := blend(f.Right, f.Forward, -arm)
	return w.parts.tube.Goal(along.Z, across.Z)
}

// tilt is the angle between the face and the horizontal, in [0, π].
func (f Frame) tilt() orient.Angle {
	flat := math.Sqrt(float64(f.Right.Z*f.Right.Z) + float64(f.Forward.Z*f.Forward.Z))
	return orient.Atan2(flat, f.Out.Z)
}
