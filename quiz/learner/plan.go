package learner

import (
	"cuesta/orient"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// plan is how a learner is going to measure: everything right, unless changed.
type plan struct {
	ring   orient.Angle // set on the dial
	end    orient.Angle // of the strike line: 0 the right-hand one, or a half turn
	plunge orient.Angle // of the edge while the strike is read
	lean   orient.Angle // of the plate, meanwhile
	loose  bool         // without a look at the bubble
	needle wait

	aside orient.Angle // of the edge, off the dip, while the dip is read
	side  orient.Angle // of the body, off the vertical, meanwhile
	arm   orient.Angle // off level

	percent bool // the percent scale is read
}

// wait is what a learner does about the needle.
type wait uint8

const (
	tapped  wait = iota // waits, taps, waits
	resting             // waits
	none                // reads while it swings
	glassed             // reads it while it touches the glass
	locked              // reads it as it is held
)

// near draws the small imperfections of someone who takes care. The figures
// are assumptions: a bubble can be seen off its middle by about a fifth of a
// ring, 0.3°; an eye finds the dip within 2°, which the reading hardly feels.
func (d *desk) near(h *hands, declination orient.Angle) plan {
	return plan{
		ring: declination, plunge: h.some(0.25), lean: h.some(0.25),
		aside: h.some(2), side: h.some(1.5), arm: h.some(0.15),
	}
}

// plan is what the learner will do at this bench.
func (d *desk) plan(h *hands, declination orient.Angle) plan {
	p := d.near(h, declination)
	switch d.Manner {
	case Hurried:
		d.hurry(&p, h)
	case Mistaken:
		d.spoil(&p, h, declination)
	case Careful, Guessing:
	}
	return p
}

// How often a hurried learner leaves something out; assumptions.
const (
	leavesLevel = 0.3
	leavesTap   = 0.5
)

// hurry leaves things out.
func (d *desk) hurry(p *plan, h *hands) {
	p.aside, p.arm = h.some(5), h.some(1)
	if d.r.Float64() < leavesLevel {
		p.plunge, p.lean, p.loose = h.some(1.5), h.some(1.5), true
	}
	if d.r.Float64() < leavesTap {
		p.needle = resting
	}
}

// spoil makes the mistake of the learner, if it is one of handling; those of
// writing come later.
func (d *desk) spoil(p *plan, h *hands, declination orient.Angle) {
	d.makesHere()
	switch d.Mistake {
	case mistake.OtherEnd:
		p.end = orient.Half
	case mistake.DeclinationNotSet:
		p.ring = 0
	case mistake.DeclinationWrongSign:
		p.ring = -declination
	case mistake.DeclinationMisset:
		for p.ring.Abs() < orient.Degree || (p.ring-declination).Abs() < orient.Degree || (p.ring+declination).Abs() < 2*orient.Degree {
			p.ring = declination + h.either(5, 20)
		}
	case mistake.LevelNotCentred:
		p.plunge, p.loose = h.either(1, 4.5), true
	case mistake.NeedleMoving:
		p.needle = none
	case mistake.NeedleRubbing:
		p.needle = glassed
		d.made = append(d.made, mistake.LevelNotCentred) // one goes with the other
	case mistake.NeedleLocked:
		p.needle = locked
	case mistake.NeedleSticking:
		p.needle = resting
	case mistake.EdgeNotDownDip:
		p.aside = h.either(15, 60)
	case mistake.BodyLeaning:
		p.side = h.either(15, 50)
	case mistake.TubeNotCentred:
		p.arm = h.either(4, 15)
	case mistake.PercentScale:
		p.percent = true
	case mistake.SouthEnd, mistake.DirectionForStrike, mistake.EastWest, mistake.WrongLetters, mistake.DeclinationTwice,
		mistake.Complement, mistake.DigitsSwapped, mistake.StrikeDipSwapped, mistake.LettersContradict, mistake.NotCalibrated:
	}
}

// ringNeeded says whether the ring has to be turned.
func (p plan) ringNeeded(o sim.Observation) bool {
	return (p.ring - o.Dial.Ring).Wrapped().Abs() > 1e-9
}
