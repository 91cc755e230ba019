package spoken_test

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/sim"
)

func TestTaken(t *testing.T) {
	p := given(35, 30)
	s, err := session.New(p)
	if err != nil {
		t.Fatal(err)
	}
	b := spoken.NewBench(s, nil)
	swing := func(to float64) {
		w := s.World()
		if err := s.Do(sim.Command{Kind: sim.Swing, Angle: (orient.Angle(to)*orient.Degree - w.Pose().Swing).Wrapped()}); err != nil {
			t.Fatal(err)
		}
	}
	swing(180)
	b.Line("wait 1")
	b.Line("read")
	b.Line("seat side")
	swing(60)
	b.Line("arm 20")
	b.Line("read")
	for seat, want := range map[sim.Seat][]string{
		sim.OnEdge: {"on its right long edge", "falls away to the left", "Bubble", "The north end stands at"},
		sim.OnSide: {"on its side. The arrow points slantwise down", "The face is upright.", "Tube bubble", "The index stands at"},
	} {
		r, ok := s.World().Reading(seat)
		if !ok {
			t.Fatalf("no reading on seat %v", seat)
		}
		got := spoken.Taken(r, s.Truth().Dip)
		for _, w := range want {
			if !strings.Contains(got, w) {
				t.Errorf("seat %v: %q lacks %q", seat, got, w)
			}
		}
	}
}
