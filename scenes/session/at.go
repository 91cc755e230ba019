package session

import (
	"cuesta/quiz"
	"cuesta/sim"
	"cuesta/sim/record"
)

// At is a session at a bench that is set up already, as the items of a form
// are. Of the options it takes what the set-up does not say: place, notation,
// tolerance. The error wraps sim.ErrSetup.
func At(setup sim.Setup, o Options) (*Session, error) {
	bench, err := record.Start(setup)
	if err != nil {
		return nil, err
	}
	return standing(bench, o), nil
}

// Resume is the session that a recording has come to: what was done is done
// again, and recording goes on. The error wraps sim.ErrSetup, or is the reason
// why the bench refuses a command of the recording.
func Resume(r record.Recording, o Options) (*Session, error) {
	bench, err := record.Start(r.Setup)
	if err != nil {
		return nil, err
	}
	for _, e := range r.Entries {
		bench.Advance(int(e.Tick - bench.World().Tick()))
		if err := bench.Do(e.Command); err != nil {
			return nil, err
		}
	}
	bench.Advance(int(r.End.Tick - bench.World().Tick()))
	return standing(bench, o), nil
}

// standing is the session at a bench.
func standing(bench *record.Recorder, o Options) *Session {
	setup := bench.World().Setup()
	o.Plane, o.Seed, o.Field, o.Tool = &setup.Plane, setup.Seed, setup.Field, setup.Tool
	o.RingPreset = setup.Ring == setup.Field.Declination
	if o.Tolerance == (quiz.Tolerance{}) {
		o.Tolerance = quiz.DefaultTolerance
	}
	return &Session{options: o, seed: setup.Seed, bench: bench}
}
