package mistake

import (
	"cuesta/orient"
	"cuesta/sim"
)

// Readings is what a bench kept of the readings: the last on each seat. The
// zero value is of an answer that nobody watched, on paper or with a recording
// that is lost: the number has to speak alone.
type Readings struct {
	Watched bool // a bench kept every reading: what is missing here was not read

	Edge, Side       sim.Reading // for the strike, for the dip
	Lid, Back        sim.Reading // for both at once: by the hinged lid, by the sensor
	HasEdge, HasSide bool
	HasLid, HasBack  bool

	RingPreset bool // the declination stood on the dial from the start
}

// ReadingsOf is what the bench has kept until now.
func ReadingsOf(w *sim.World) Readings {
	r := Readings{Watched: true, RingPreset: w.Setup().Ring == w.Setup().Field.Declination}
	r.Edge, r.HasEdge = w.Reading(sim.OnEdge)
	r.Side, r.HasSide = w.Reading(sim.OnSide)
	r.Lid, r.HasLid = w.Reading(sim.OnLid)
	r.Back, r.HasBack = w.Reading(sim.OnBack)
	return r
}

// flatRead says that lid or sensor showed the whole plane.
func (r Readings) flatRead() bool { return r.HasLid || r.HasBack }

// dialSet says that the declination stood on the dial, as far as is known.
func (r Readings) dialSet(declination orient.Angle) bool {
	stood := func(has bool, s sim.Reading) bool {
		return !has || (s.Shown.Dial.Ring-declination).Wrapped().Abs() <= leastSigma
	}
	known := r.RingPreset || r.flatRead()
	return known && stood(r.HasEdge, r.Edge) && stood(r.HasLid, r.Lid) && stood(r.HasBack, r.Back)
}

// Mistakes that only a reading can hold: of the dial, of the arc, of either.
var (
	ofDial = setOf(SouthEnd, EastWest, DeclinationNotSet, DeclinationWrongSign, DeclinationMisset, DeclinationTwice,
		LevelNotCentred, NeedleMoving, NeedleRubbing, NeedleLocked, NeedleSticking, DigitsSwapped)
	ofNeedle = setOf(SouthEnd, EastWest, LevelNotCentred)
	ofArc    = setOf(EdgeNotDownDip, BodyLeaning, TubeNotCentred, PercentScale)
	ofDip    = ofArc | setOf(Complement, DigitsSwapped)
)

// strikeRead and dipRead say whether the part may have been read: nobody
// watched, or a reading is there.
func (e Evidence) strikeRead() bool {
	_, seen := e.strikeSeat()
	return !e.Watched || seen
}

func (e Evidence) dipRead() bool {
	_, seen := e.dipSeat()
	return !e.Watched || seen
}

// unheldStrike are the mistakes that the answer cannot hold, of those that a
// number alone suggests.
func (e Evidence) unheldStrike() kinds {
	s, seen := e.strikeSeat()
	switch {
	case seen && s == sim.OnBack:
		return ofNeedle
	case e.Watched && !seen:
		return ofDial
	}
	return 0
}

func (e Evidence) unheldDip() kinds {
	s, seen := e.dipSeat()
	switch {
	case seen && s != sim.OnSide:
		return ofArc
	case e.Watched && !seen:
		return ofDip
	}
	return 0
}

// without leaves out the claims of some kinds.
func without(cs []claim, s kinds) []claim {
	kept := cs[:0]
	for _, c := range cs {
		if c.kinds&s == 0 {
			kept = append(kept, c)
		}
	}
	return kept
}
