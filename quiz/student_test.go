package quiz_test

import (
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

const degree = orient.Degree

// student is one measurement with a mistake in it: the bed, the pose at both
// readings, and what is made of the numbers. It is worked out from the
// geometry of the bench, apart from the diagnosis.
type student struct {
	r        *rand.Rand
	truth    orient.Plane
	dec      orient.Angle
	notation orient.Notation
	letters  bool

	swing, swingSide orient.Angle // φ of the edge, for strike and dip
	lean             orient.Angle
	tubeOff          orient.Angle
	ring             orient.Angle
	needle           orient.Angle // how far the needle stands off the field
	state            sim.NeedleState
	moving           bool

	number func(orient.Azimuth) orient.Azimuth // what is written for the dial
	angle  func(orient.Angle) orient.Angle     // what is written for the arc
	side   bool                                // letters of the wrong side
	swap   bool
	refuse bool // the number could not be read
}

// careful levels within 0.4°, sets the ring, and reads with 1° of scatter.
func careful(r *rand.Rand, n orient.Notation, letters bool) *student {
	s := &student{r: r, truth: quiz.DefaultMix.Plane(r), notation: n, letters: letters}
	s.dec = orient.Angle(math.Round(r.Float64()*40-20)) * degree
	s.ring = s.dec
	s.swing = s.plunging(orient.Angle(r.NormFloat64()) * 0.3 * degree)
	s.swingSide = orient.Right + orient.Angle(r.NormFloat64())*2*degree
	s.needle = orient.Angle(r.NormFloat64()) * 0.2 * degree
	s.number = func(z orient.Azimuth) orient.Azimuth { return z }
	s.angle = func(a orient.Angle) orient.Angle { return a }
	return s
}

// plunging is the swing, near the right-hand end, at which the edge plunges β.
func (s *student) plunging(beta orient.Angle) orient.Angle {
	return orient.Asin(beta.Sin() / s.truth.Dip.Sin())
}

// forward is the edge at a swing: cos φ · S + sin φ · D.
func (s *student) forward(swing orient.Angle) orient.Vec {
	a, b := s.truth.StrikeVec(), s.truth.DownDip()
	c, d := swing.Cos(), swing.Sin()
	return orient.Vec{X: c*a.X + d*b.X, Y: c*a.Y + d*b.Y, Z: c*a.Z + d*b.Z}
}

func (s *student) edge() sim.Reading {
	f := s.forward(s.swing)
	trend := orient.AzimuthOf(orient.Angle(math.Atan2(f.X, f.Y)))
	return sim.Reading{Seat: sim.OnEdge, Swing: s.swing, Along: orient.Asin(-f.Z), Shown: sim.Observation{
		Seat: sim.OnEdge, Frame: sim.Frame{Forward: f},
		Dial: sim.Dial{North: trend.Add(s.ring - s.dec + s.needle), Ring: s.ring, Resting: !s.moving, State: s.state},
	}}
}

func (s *student) sideways() sim.Reading {
	f := s.forward(s.swingSide)
	beta := orient.Asin(-f.Z)
	arm := orient.Angle(math.Atan(beta.Abs().Tan()/s.lean.Cos())) + s.tubeOff
	return sim.Reading{Seat: sim.OnSide, Swing: s.swingSide, Along: beta, Across: s.lean, Shown: sim.Observation{
		Seat: sim.OnSide, Arc: sim.Arc{Arm: max(0, min(arm, orient.Right))},
	}}
}

func (s *student) rounded(a orient.Angle) orient.Angle {
	return orient.Angle(math.Round(a.Degrees()+s.r.NormFloat64())) * degree
}

// write puts the numbers down in the notation; false when they would be
// refused.
func (s *student) write() (orient.Entry, bool) {
	z := orient.AzimuthOf(s.rounded(s.edge().Shown.Dial.North.Angle()))
	dip := max(s.rounded(s.sideways().Shown.Arc.Arm), 0)
	if s.notation == orient.DirectionDip {
		z = z.Add(orient.Right)
	}
	z, dip = s.number(z), s.angle(dip)
	if s.swap {
		z, dip = orient.AzimuthOf(dip), z.Angle()
	}
	e := orient.Entry{Notation: s.notation, Written: z, HasStrike: true}
	e.Plane = orient.Plane{Strike: z, Dip: dip}
	if s.notation == orient.DirectionDip {
		e.Plane.Strike = z.Add(-orient.Right)
	}
	if s.letters {
		s.settle(&e)
	}
	return e, !s.refuse && dip >= 0 && dip <= orient.Right
}

// settle adds letters: of the falling side, unless the mistake is there.
func (s *student) settle(e *orient.Entry) {
	e.Letters = "X" // which letters does not matter once the entry is read
	away := e.Plane.Strike.From(s.truth.Strike).Abs() > orient.Right
	if away != s.side {
		e.Plane.Strike = e.Plane.Strike.Opposite()
	}
}

func (s *student) paper(e orient.Entry) quiz.Case {
	return quiz.Case{Entry: e, Truth: s.truth, Declination: s.dec, Notation: s.notation, Tolerance: quiz.DefaultTolerance}
}

func (s *student) bench(e orient.Entry) quiz.Case {
	c := s.paper(e)
	c.Edge, c.Side, c.HasEdge, c.HasSide = s.edge(), s.sideways(), true, true
	return c
}

// between draws evenly from ±[from, to] degrees.
func (s *student) between(from, to float64) orient.Angle {
	a := orient.Angle(from+s.r.Float64()*(to-from)) * degree
	if s.r.IntN(2) == 0 {
		return -a
	}
	return a
}

// digits exchanges the last two digits of a number of whole degrees.
func digits(deg float64) float64 {
	n := int(math.Round(deg))
	return float64(n/100*100 + n%10*10 + n/10%10)
}

// slips are the students who make one mistake each.
var slips = map[mistake.Kind]func(*student){
	mistake.OtherEnd: func(s *student) { s.swing = orient.Half - s.swing },
	mistake.SouthEnd: func(s *student) { s.number = orient.Azimuth.Opposite },
	mistake.DirectionForStrike: func(s *student) {
		turn := orient.Right
		if s.notation == orient.DirectionDip {
			turn = -turn
		}
		s.number = func(z orient.Azimuth) orient.Azimuth { return z.Add(turn) }
	},
	mistake.EastWest: func(s *student) {
		s.number = func(z orient.Azimuth) orient.Azimuth { return orient.AzimuthOf(-z.Angle()) }
	},
	mistake.WrongLetters:         func(s *student) { s.side = true },
	mistake.DeclinationNotSet:    func(s *student) { s.ring = 0 },
	mistake.DeclinationWrongSign: func(s *student) { s.ring = -s.dec },
	mistake.DeclinationMisset: func(s *student) {
		for s.ring = s.dec; s.ring == s.dec || s.ring.Abs() < degree || (s.ring+s.dec).Abs() < 2*degree; {
			s.ring = s.dec + s.between(5, 20)
		}
	},
	mistake.DeclinationTwice: func(s *student) {
		s.number = func(z orient.Azimuth) orient.Azimuth { return z.Add(s.dec) }
	},
	mistake.LevelNotCentred: func(s *student) { s.swing = s.plunging(s.between(1, 4.9)) },
	mistake.NeedleMoving:    func(s *student) { s.needle, s.moving = s.between(3, 25), true },
	mistake.NeedleRubbing:   func(s *student) { s.needle, s.state = s.between(3, 90), sim.NeedleRubbing },
	mistake.NeedleLocked:    func(s *student) { s.needle, s.state = s.between(3, 90), sim.NeedleLocked },
	mistake.NeedleSticking:  func(s *student) { s.needle = s.between(3, 8) },
	mistake.EdgeNotDownDip:  func(s *student) { s.swingSide = orient.Right + s.between(10, 60) },
	mistake.BodyLeaning:     func(s *student) { s.lean = s.between(15, 50) },
	mistake.TubeNotCentred:  func(s *student) { s.tubeOff = s.between(4, 15) },
	mistake.PercentScale: func(s *student) {
		s.angle = func(a orient.Angle) orient.Angle { return orient.Angle(math.Round(100*a.Tan())) * degree }
	},
	mistake.Complement: func(s *student) { s.angle = func(a orient.Angle) orient.Angle { return orient.Right - a } },
	mistake.DigitsSwapped: func(s *student) {
		s.number = func(z orient.Azimuth) orient.Azimuth {
			d := digits(z.Degrees())
			s.refuse = d >= 360
			return orient.AzimuthOf(orient.Angle(d) * degree)
		}
	},
	mistake.StrikeDipSwapped: func(s *student) { s.swap = true },
}
