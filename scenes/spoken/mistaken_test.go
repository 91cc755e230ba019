package spoken_test

import (
	"fmt"
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// habit is a student who does one thing wrong and everything else right, and
// writes the answer down.
type habit struct {
	name string
	made mistake.Kind
	do   func(s *student) (strike, dip int)
}

var habits = []habit{
	{"the other end of the strike line", mistake.OtherEnd, func(s *student) (int, int) {
		s.setRing()
		s.level()
		if s.fallsRight() {
			s.typed("flip")
		}
		strike := s.readStrike()
		s.typed("flip")
		dip, _ := s.readDip()
		return strike, dip
	}},
	{"the south end of the needle", mistake.SouthEnd, func(s *student) (int, int) {
		strike, dip := s.measure()
		return (strike + 180) % 360, dip
	}},
	{"the percent scale", mistake.PercentScale, func(s *student) (int, int) {
		s.setRing()
		s.level()
		s.toRightHand()
		strike := s.readStrike()
		_, percent := s.readDip()
		return strike, int(percent)
	}},
	{"declination forgotten", mistake.DeclinationNotSet, func(s *student) (int, int) {
		s.level()
		s.toRightHand()
		strike := s.readStrike()
		dip, _ := s.readDip()
		return strike, dip
	}},
	{"the bubble off", mistake.LevelNotCentred, func(s *student) (int, int) {
		s.setRing()
		s.level()
		s.toRightHand()
		back := s.leaveOff()
		strike := s.readStrike()
		s.typed("swing %.3f", -back)
		dip, _ := s.readDip()
		return strike, dip
	}},
}

// leaveOff swings the levelled edge until the bubble is well out of the ring,
// but not so far that the needle touches the glass. It returns the swing.
func (s *student) leaveOff() (swung float64) {
	s.t.Helper()
	for range 60 {
		if math.Hypot(s.now.Round.Right, s.now.Round.Forward) > 0.9 {
			return swung
		}
		step := 1.5
		swung += step
		s.typed("swing %.3f", step)
	}
	return swung
}

// evidence is what a judge knows of the measurement.
func (s *student) evidence(text string) mistake.Evidence {
	ses := s.bench.Session()
	e, err := orient.Parse(text, orient.AzimuthDip)
	if err != nil {
		s.t.Fatal(err)
	}
	truth, tol := ses.Truth(), quiz.DefaultTolerance
	v := mistake.Evidence{
		Truth: truth, Entry: e, Declination: ses.Declination(),
		Limits: mistake.Limits{Reading: tol.Reading, Strike: tol.Strike(truth.Dip), Dip: tol.Dip},
	}
	v.Edge, v.HasEdge = ses.World().Reading(sim.OnEdge)
	v.Side, v.HasSide = ses.World().Reading(sim.OnSide)
	return v
}

// told says whether the reply to an answer gives the mistake as the most
// probable one.
func (r reply) told(k mistake.Kind) bool {
	return r.Verdict != nil && len(r.Verdict.Mistakes) > 0 && r.Verdict.Mistakes[0].Kind == k.String()
}

// apart says whether the mistake can be told apart in this answer: it made the
// answer wrong, and nothing else would have given the same one. An answer that
// is no plane at all, such as a dip of 173, has to be told apart always.
func (s *student) apart(k mistake.Kind, text string, r reply) bool {
	if !r.OK {
		return true
	}
	apart, _ := s.evidence(text).Apart(k)
	return apart && !r.Verdict.Right
}

func TestAStudentIsToldTheMistake(t *testing.T) {
	const n = 300
	for _, h := range habits {
		t.Run(h.name, func(t *testing.T) {
			t.Parallel()
			asked, told := 0, 0
			for _, o := range planes(uint64(20+h.made), n) {
				s := sit(t, o)
				strike, dip := h.do(s)
				text := fmt.Sprintf("%03d/%02d", strike, dip)
				r := s.try("note %s", text)
				if !s.apart(h.made, text, r) {
					continue
				}
				asked++
				if r.told(h.made) {
					told++
				} else if asked-told < 8 {
					t.Logf("%v° %v°, declination %v°: %s: %s", o.Plane.Strike.Degrees(), o.Plane.Dip.Degrees(), o.Field.Declination.Degrees(), text, r.Said)
				}
			}
			t.Logf("told in %d of the %d planes of %d where it can be told apart", told, asked, n)
			if asked < n/5 || told*100 < asked*95 {
				t.Errorf("told in %d of %d, want 95 %%", told, asked)
			}
		})
	}
}
