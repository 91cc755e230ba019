package spoken_test

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/sim"
)

// What is told of a roll is how far it went, not how far it was to go.
func TestARollIsToldAsFarAsItWent(t *testing.T) {
	const stop, rock = " It is at its stop.", " The plate touches the rock and goes no further that way."
	for _, tt := range []struct {
		seat  string
		lines []string
		want  string
	}{
		{"lid", []string{"roll -180", "roll -10"}, "The hinge did not move." + stop},
		{"lid", []string{"roll -180", "roll 30"}, "The hinge turned 30°, forward end up."},
		{"lid", []string{"roll -180", "roll 30", "roll -40"}, "The hinge turned 30°, forward end down." + stop},
		{"edge", []string{"roll -360", "roll 360"}, "Rolled 180°, right side down." + rock},
		{"edge", []string{"roll 360", "roll 360"}, "The plate did not move." + rock},
		{"edge", []string{"roll 360", "roll -360"}, "Rolled 180°, left side down." + rock},
		{"edge", []string{"roll 360", "roll -7.25"}, "Rolled 7.25°, left side down."},
		{"side", []string{"roll 360", "roll 360"}, "The plate did not move. The face"},
		{"side", []string{"roll 360", "roll -360"}, "Rolled 180°. The face"},
	} {
		for _, first := range []string{"", "flip"} {
			p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
			s := sit(t, session.Options{Plane: &p, Seed: 5, Tool: sim.Complete})
			s.typed("%s", "seat "+tt.seat)
			if first != "" {
				s.typed("%s", first)
			}
			var said string
			for _, l := range tt.lines {
				said = s.typed("%s", l).Said
			}
			if !strings.HasPrefix(said, tt.want) {
				t.Errorf("%s %s %q: %q, want %q", tt.seat, first, tt.lines, said, tt.want)
			}
		}
	}
}
