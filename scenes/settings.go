package scenes

import (
	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/scenes/keymap"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// Declination says who sets the declination on the dial.
type Declination uint8

// The policies.
const (
	DeclinationNone  Declination = iota // the bench stands where it is zero
	DeclinationSet                      // there is one, already set on the dial
	DeclinationYours                    // there is one, the student sets it
)

// Dips is the choice of planes to practise.
type Dips uint8

// The choices.
const (
	AllDips Dips = iota
	GentleDips
	ModerateDips
	SteepDips
	MostMissed
)

// Step is how far one stroke of an arrow key turns the instrument.
type Step uint8

// The steps: 10°, 1° and 0.1°.
const (
	Coarse Step = iota
	Normal
	Fine
)

// Angle is the size of the step.
func (s Step) Angle() orient.Angle {
	return [...]orient.Angle{10 * orient.Degree, orient.Degree, 0.1 * orient.Degree}[s]
}

// String is the step on its button.
func (s Step) String() string { return [...]string{"10°", "1°", "0.1°"}[s] }

// Settings are what a student may choose. The zero value is a sensible start.
type Settings struct {
	Notation    orient.Notation
	Declination Declination
	Dips        Dips
	Method      Method
	Text        TextSize
	Theme       theme.Name
	Calm        bool // reduced motion

	Sound  Loudness // of the levels and the needle
	Speech bool     // announcements are spoken
	Scan   Scan     // working the screen with one switch
	Pace   Pace     // of scanning by itself
	Quiet  bool     // signs that are typed are no short cuts
	Keys   keymap.Map
}

// Loudness is how loud the sound is. The zero value is silence: nothing sounds
// before it is asked for.
type Loudness uint8

// The steps.
const (
	SoundOff Loudness = iota
	SoundSoft
	SoundMiddle
	SoundLoud
)

// Gain is the factor on the samples, in [0, 1].
func (l Loudness) Gain() float64 { return [...]float64{0, 0.25, 0.5, 1}[l] }

// String is the loudness in words.
func (l Loudness) String() string { return [...]string{"off", "soft", "middle", "loud"}[l] }

// Scan is how one or two switches reach every control.
type Scan uint8

// The ways.
const (
	ScanOff    Scan = iota
	ScanItself      // the mark goes from control to control; one switch presses
	ScanTwo         // one switch moves the mark, the other presses
)

// Pace is how long the mark of scanning stays on a control.
type Pace uint8

// The paces.
const (
	PaceSlow   Pace = iota // 4 s
	PaceMiddle             // 2 s
	PaceQuick              // 1 s
)

// String is the way in words.
func (s Scan) String() string { return [...]string{"off", "one switch", "two switches"}[s] }

// Ticks is how long the mark stays, in steps of 1/120 s.
func (p Pace) Ticks() int { return [...]int{4, 2, 1}[p] * sim.TicksPerSecond }

// String is the pace in words.
func (p Pace) String() string { return [...]string{"4 s", "2 s", "1 s"}[p] }

// TextSize is the size of all text.
type TextSize uint8

// The sizes.
const (
	Text100 TextSize = iota
	Text125
	Text150
	Text200
)

// Factor is the size as a factor.
func (t TextSize) Factor() float64 { return [...]float64{1, 1.25, 1.5, 2}[t] }

// String is the size in words.
func (t TextSize) String() string { return [...]string{"100 %", "125 %", "150 %", "200 %"}[t] }

// IsValid says whether every choice is one of those offered.
func (s Settings) IsValid() bool {
	return s.Notation <= orient.DirectionDip && s.Declination <= DeclinationYours &&
		s.Dips <= MostMissed && s.Method <= MethodSensor && s.Text <= Text200 && s.Theme <= theme.ContrastBlack &&
		s.Sound <= SoundLoud && s.Scan <= ScanTwo && s.Pace <= PaceQuick
}

// Mix is the share of gentle, moderate and steep planes to deal, given what
// the student has missed so far.
func (s Settings) Mix(t quiz.Tally) quiz.Mix {
	switch s.Dips {
	case GentleDips:
		return quiz.Mix{Gentle: 1}
	case ModerateDips:
		return quiz.Mix{Moderate: 1}
	case SteepDips:
		return quiz.Mix{Steep: 1}
	case MostMissed:
		return t.Mix()
	default:
		return quiz.DefaultMix
	}
}
