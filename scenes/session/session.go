// Package session is one student's practice at the bench, the same under every
// front end: a world that is recorded, the answers and their verdicts, and the
// way to the next plane.
package session

import (
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/sim"
	"cuesta/sim/record"
)

// Options is what a practice starts from. The zero value is a random plane of
// the default mix, from seed 0, where the declination is zero.
type Options struct {
	Plane      *orient.Plane // a given first plane, or nil for one from the seed
	Seed       uint64        // of the plane and of the pose the bench starts in
	Field      sim.Field     // of the place; zero for the teaching default
	Place      string        // the place in words, or ""
	RingPreset bool          // the declination is already set on the dial
	Tool       sim.Tool      // the instrument on the bench
	Method     sim.Seat      // the seat the bench starts on; the instrument must take it
	Notation   orient.Notation
	Tolerance  quiz.Tolerance // quiz.DefaultTolerance when zero
	Mix        quiz.Mix       // of the planes dealt; quiz.DefaultMix when not valid
}

// Session is a practice. Make one with New.
type Session struct {
	options  Options
	seed     uint64
	bench    *record.Recorder
	past     []record.Recording
	revealed bool
	answered bool
}

// New lays the first plane on the bench. The error wraps sim.ErrSetup, or
// sim.ErrSeat for a method the instrument is not made for.
func New(o Options) (*Session, error) {
	if o.Tolerance == (quiz.Tolerance{}) {
		o.Tolerance = quiz.DefaultTolerance
	}
	s := &Session{options: o}
	plane := Deal(o.Seed, o.Mix)
	if o.Plane != nil {
		plane = *o.Plane
	}
	if err := s.lay(o.Seed, plane); err != nil {
		return nil, err
	}
	return s, nil
}

// stream tells the draw of the plane from other uses of the same seed.
const stream = 0x6265642d706c616e

// Deal is the plane that a seed stands for in a mix.
func Deal(seed uint64, m quiz.Mix) orient.Plane {
	return m.Plane(rand.New(rand.NewPCG(seed, stream)))
}

// Next lays the plane of another seed on the bench, at the same place. After
// an error everything is as it was.
func (s *Session) Next(seed uint64) error { return s.lay(seed, Deal(seed, s.options.Mix)) }

func (s *Session) lay(seed uint64, p orient.Plane) error {
	setup := sim.Setup{Seed: seed, Plane: p, Field: s.options.Field, Tool: s.options.Tool}
	if s.options.RingPreset {
		setup.Ring = s.options.Field.Declination
	}
	bench, err := record.Start(setup)
	if err != nil {
		return err
	}
	if m := s.options.Method; m != sim.OnEdge {
		if err := bench.Do(sim.Command{Kind: sim.Place, Seat: m}); err != nil {
			return err
		}
		bench.Advance(sim.TicksPerSecond) // the bubble comes to where this seat sends it
	}
	if s.bench != nil {
		s.past = append(s.past, s.bench.Recording())
	}
	s.seed, s.bench = seed, bench
	s.revealed, s.answered = false, false
	return nil
}

// World is the bench as it stands. Look at it as you like, but drive it
// through Do and Advance, which record.
func (s *Session) World() *sim.World { return s.bench.World() }

// Do carries out a command of the student. The errors are those of
// sim.World.Do and record.ErrFull.
func (s *Session) Do(c sim.Command) error { return s.bench.Do(c) }

// Advance lets ticks pass; none when negative.
func (s *Session) Advance(ticks int) { s.bench.Advance(ticks) }

// Truth is the plane on the bench.
func (s *Session) Truth() orient.Plane { return s.World().Setup().Plane }

// Seed is the seed of the plane on the bench.
func (s *Session) Seed() uint64 { return s.seed }

// Options is what the practice was started from.
func (s *Session) Options() Options { return s.options }

// Declination is that of the place, east positive.
func (s *Session) Declination() orient.Angle { return s.options.Field.Declination }

// Reveal shows the true plane.
func (s *Session) Reveal() { s.revealed = true }

// Revealed says whether the true plane of this bench has been shown.
func (s *Session) Revealed() bool { return s.revealed }

// Answered says whether an answer to this plane has been judged.
func (s *Session) Answered() bool { return s.answered }

// Recording is what was done at the bench as it stands.
func (s *Session) Recording() record.Recording { return s.bench.Recording() }

// Recordings is the whole practice, one recording a plane, oldest first.
func (s *Session) Recordings() []record.Recording {
	return append(append([]record.Recording(nil), s.past...), s.Recording())
}

// Write sets the notation in which answers are taken from now on, where one
// written form could be two.
func (s *Session) Write(n orient.Notation) { s.options.Notation = n }
