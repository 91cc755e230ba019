package scenes

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// On its side along the strike the tube stands between its marks at 0, and that
// is no dip yet: no line across the true dip slopes less than the strike line,
// which does not slope at all.
func TestTheEdgeAlongTheStrikeIsNotTheDip(t *testing.T) {
	const want = "The edge runs along the strike: swing it a quarter turn"
	for _, swing := range []orient.Angle{0, 90, 180} {
		b, a := benchAloud(t) // dips 30°
		b.do(sim.Command{Kind: sim.Swing, Angle: swing*orient.Degree - b.ses.World().Pose().Swing})
		b.do(sim.Command{Kind: sim.Place, Seat: sim.OnSide})
		b.do(sim.Command{Kind: sim.Arm, Angle: -orient.Right})
		for range 40 { // until the bubble rests
			b.Update(input.Frame{W: 1280, H: 720, Scale: 1, Ticks: longestFrame})
		}
		along := swing != 90
		if b.obs.Tube.Centred != along {
			t.Fatalf("swing %v: the tube is centred: %v", swing, !along)
		}
		if hint := a.Description().Find(idHint).Name; strings.HasPrefix(hint, want) != along {
			t.Errorf("swing %v: the hint is %q", swing, hint)
		}
		if said := a.typed("d"); hasWords(said, want) != along {
			t.Errorf("swing %v: D says %q", swing, said)
		}
	}
}
