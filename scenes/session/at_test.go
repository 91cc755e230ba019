package session_test

import (
	"reflect"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/sim"
	"cuesta/sim/record"
)

func TestResumeStandsWhereTheRecordingEnds(t *testing.T) {
	setup := sim.Setup{
		Seed: 5, Plane: orient.PlaneOf(35*orient.Degree, 30*orient.Degree), Ring: 2 * orient.Degree,
		Field: sim.Field{Declination: 2 * orient.Degree, Horizontal: 18e-6},
	}
	s, err := session.At(setup, session.Options{Notation: orient.Quadrant})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []sim.Command{{Kind: sim.Swing, Angle: orient.Degree}, {Kind: sim.Place, Seat: sim.OnSide}, {Kind: sim.Read}} {
		if err := s.Do(c); err != nil {
			t.Fatal(err)
		}
		s.Advance(77)
	}
	again, err := session.Resume(s.Recording(), session.Options{Notation: orient.Quadrant})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := again.Recording(), s.Recording(); !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got, want := again.Options(), s.Options(); !reflect.DeepEqual(got, want) || !got.RingPreset {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if res, err := record.Replay(again.Recording()); err != nil || !res.Same {
		t.Errorf("the recording does not replay: %v, %v", res, err)
	}
}
