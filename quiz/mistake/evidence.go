package mistake

import (
	"math"

	"cuesta/orient"
)

// Evidence is everything from which the reason of an answer is judged.
type Evidence struct {
	Truth       orient.Plane
	Entry       orient.Entry // the answer
	Declination orient.Angle // at the place, east positive
	Limits      Limits
	Readings    // of the bench, if any
}

// Limits are the tolerances of the course at the true dip. The spread of a
// careful reading is taken as half of them.
type Limits struct {
	Reading orient.Angle // of the dial alone
	Strike  orient.Angle // of the strike, levelling included
	Dip     orient.Angle
}

// leastSigma keeps the spread of a careful reading from vanishing in a course
// that tolerates nothing: half the graduation of dial and arc.
const leastSigma = 0.5 * orient.Degree

func half(limit orient.Angle) orient.Angle { return max(limit/2, leastSigma) }

// endless says that the answer does not rest on the end of the strike line:
// letters give the side, or the bed is as good as vertical.
func (e Evidence) endless() bool { return e.Entry.Letters != "" || e.upright() }

// upright says that the bed cannot be told from a vertical one.
func (e Evidence) upright() bool { return e.Truth.Dip+e.Limits.Dip >= orient.Right }

// flat says that the bed has no strike worth diagnosing in truth or answer.
func (e Evidence) flat() bool { return e.Truth.Dip <= 0 || !e.Entry.HasStrike }

// turned is the strike that a student understands who arrives at the azimuth z
// by way of the right-hand strike: with letters, z or its other end, whichever
// has the falling side on its right.
func (e Evidence) turned(z orient.Azimuth) orient.Azimuth {
	if e.Entry.Letters != "" && z.From(e.Truth.Strike).Abs() > orient.Right+1e-9 {
		return z.Opposite()
	}
	return z
}

// offset is how far the strike z lies from the strike y: by the whole circle,
// or by the line where the end means nothing.
func (e Evidence) offset(z, y orient.Azimuth) orient.Angle {
	if e.upright() {
		return z.FromLine(y)
	}
	return z.From(y)
}

// writtenFrom is what the notation of the answer writes for the strike z, and
// strikeFrom reads it back.
func (e Evidence) writtenFrom(z orient.Azimuth) orient.Azimuth { return z.Add(e.shift()) }

func (e Evidence) strikeFrom(written orient.Azimuth) orient.Azimuth { return written.Add(-e.shift()) }

// shift is what the notation adds to the right-hand strike.
func (e Evidence) shift() orient.Angle {
	switch e.Entry.Notation {
	case orient.DirectionDip:
		return orient.Right
	case orient.PoleNotation:
		return -orient.Right
	case orient.AzimuthDip, orient.Quadrant:
	}
	return 0
}

// sane says that truth and answer are planes and the limits are limits.
func (e Evidence) sane() bool {
	a, t, l := e.Entry.Plane, e.Truth, e.Limits
	return finite(a.Strike.Angle(), a.Dip, t.Strike.Angle(), t.Dip, e.Declination, l.Reading, l.Strike, l.Dip)
}

func finite(angles ...orient.Angle) bool {
	for _, a := range angles {
		if math.IsNaN(float64(a)) || math.IsInf(float64(a), 0) {
			return false
		}
	}
	return true
}
