package sound_test

import (
	"testing"

	"cuesta/orient"
	"cuesta/scenes/sound"
	"cuesta/sim"
)

// A needle let go on a level plate is heard to swing less and less, and then to
// rest.
func TestTheListenerFollowsTheNeedle(t *testing.T) {
	w, err := sim.New(sim.Setup{Seed: 1, Plane: orient.PlaneOf(0, 0)})
	if err != nil {
		t.Fatal(err)
	}
	do := func(c sim.Command) {
		if err := w.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	do(sim.Command{Kind: sim.Roll, Angle: -90 * orient.Degree})
	do(sim.Command{Kind: sim.Lock})
	do(sim.Command{Kind: sim.Swing, Angle: 60 * orient.Degree})
	var l sound.Listener
	if s := l.Hear(w.Observe(), nil); s.Needle != sound.NoNeedle {
		t.Errorf("locked: %+v, want no needle", s)
	}
	for range 40 { // level, whatever the seed laid the plate like
		o := w.Observe()
		do(sim.Command{Kind: sim.Roll, Angle: orient.Asin(o.Frame.Right.Z)})
		w.Step()
	}
	do(sim.Command{Kind: sim.Free})
	var early, late orient.Angle
	for i := range 30 * sim.TicksPerSecond {
		w.Step()
		s := l.Hear(w.Observe(), nil)
		if i == sim.TicksPerSecond {
			early = s.Speed
		}
		if i == 4*sim.TicksPerSecond {
			late = s.Speed
		}
		if s.Needle == sound.Resting {
			if s.Speed != 0 || early <= late || early < 5*orient.Degree {
				t.Errorf("speed %v° a second at first, %v° later, %v° at rest", early.Degrees(), late.Degrees(), s.Speed.Degrees())
			}
			return
		}
	}
	t.Error("the needle never came to rest")
}

// What happens once is counted once; contact is heard when it begins.
func TestTheListenerCounts(t *testing.T) {
	var l sound.Listener
	o := sim.Observation{}
	l.Hear(o, nil)
	s := l.Hear(o, []sim.Command{{Kind: sim.Tap}, {Kind: sim.Tap}, {Kind: sim.Flip}, {Kind: sim.Swing}, {Kind: sim.Place}})
	if s.Taps != 2 || s.Turns != 2 || s.Contacts != 0 {
		t.Errorf("%+v, want 2 taps, 2 turns, no contact", s)
	}
	o.Touching = true
	l.Hear(o, nil)
	if s = l.Hear(o, nil); s.Contacts != 1 {
		t.Errorf("%d contacts of one, want 1", s.Contacts)
	}
	if s = l.Rest(); s.Volume != 0 || s.Level != sound.NoLevel || s.Taps != 2 {
		t.Errorf("at rest: %+v, want silence and the same counts", s)
	}
	if s = l.Hear(o, nil); s.Contacts != 1 {
		t.Errorf("%d contacts after a pause, want still 1", s.Contacts)
	}
}
