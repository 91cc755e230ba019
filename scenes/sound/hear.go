package sound

import (
	"math"

	"cuesta/orient"
)

// What is heard of a state, as numbers. Each grows or falls steadily with what
// it stands for, so that the way to the middle can be followed by ear.

// fineness is how much finer the ear is served near the middle than at the
// wall.
const fineness = 6.0

// spread opens the neighbourhood of 0 and keeps −1, 0 and 1 where they are.
func spread(x float64) float64 { return math.Asinh(fineness*within(x)) / asinhFineness }

var asinhFineness = math.Asinh(fineness)

// Pan is where the note of the bubble comes from: −1 left, 1 right.
func (s State) Pan() float64 { return spread(s.Right) }

// Levelled is the note of a level instrument, in hertz; the bubble's goes an
// octave up and an octave down from it.
const Levelled = 440.0

// Pitch is the note of the bubble, in hertz, in [220, 880].
func (s State) Pitch() float64 { return Levelled * math.Exp2(spread(s.Forward)) }

// Off is how far the bubble is from the middle, in [0, 1].
func (s State) Off() float64 {
	if s.Level == TubeLevel {
		return math.Abs(within(s.Right))
	}
	return min(1, math.Hypot(within(s.Right), within(s.Forward)))
}

// Pairs is how many pairs of notes there are a second, in [1.5, 4.5].
func (s State) Pairs() float64 { return 1.5 + 3*s.Off() }

// Loudness is how loud the note of the bubble is, in [0.6, 1].
func (s State) Loudness() float64 { return .6 + .4*s.Off() }

// Ticks is how many ticks of the needle there are a second: none at rest, and
// the fewer the less it swings.
func (s State) Ticks() float64 {
	switch s.Needle {
	case Swinging:
		return min(9, .8+float64(s.Speed/(12*orient.Degree)))
	case Rubbing:
		return .7
	case NoNeedle, Resting:
	}
	return 0
}
