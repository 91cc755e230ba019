package spoken

import (
	"regexp"
	"strconv"
	"testing"

	"cuesta/sim"
	"cuesta/sim/instrument"
)

// Figures are rounded; a bubble that is not between the marks is never said to
// stand where it would be.
func TestRoundingDoesNotCentreTheTube(t *testing.T) {
	figures := regexp.MustCompile(`(\d\.\d\d) (?:towards|away).*up to (\d\.\d\d) is`)
	tube := instrument.StandardTube()
	limit := (tube.Mark - tube.Bubble) / tube.Mark
	for _, past := range []float64{1e-9, .001, .004, .01, .1} {
		for _, side := range []float64{1, -1} {
			said := tubeBubble(sim.TubeLevel{Off: side * (limit + past)})
			m := figures.FindStringSubmatch(said)
			if m == nil {
				t.Fatalf("no figures in %q", said)
			}
			at, _ := strconv.ParseFloat(m[1], 64)
			up, _ := strconv.ParseFloat(m[2], 64)
			if at <= up {
				t.Errorf("%v past the limit: %q", past, said)
			}
		}
	}
}
