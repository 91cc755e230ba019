package item

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
	"cuesta/sim/instrument"
)

func TestReadDial(t *testing.T) {
	holdTo(t, newDial(163, 0, false, Spec{}), right("163"), right("165°"), right("S17E"),
		wrong("167"), named("343", mistake.SouthEnd), named("197", mistake.EastWest), named("017", mistake.EastWest))
	holdTo(t, newDial(163, 12, true, Spec{}), right("343"), right("N17W"), named("163", mistake.OtherEnd), named("017", mistake.EastWest))
	holdTo(t, newDial(359, 0, false, Spec{}), right("001"), right("360"), right("358"), wrong("002"))
}

// The figure shows on its scale what is asked for, whatever the ring: east and
// west stand exchanged, so that the scale counts against the needle.
func TestTheDialShowsTheNumber(t *testing.T) {
	for _, shown := range []int{0, 1, 47, 163, 201, 359} {
		for _, ring := range []int{-20, 0, 12} {
			f := newDial(shown, ring, false, Spec{}).figure
			got := instrument.Dial{Ring: f.Ring}.At(f.Needle).Degrees()
			if math.Abs(math.Remainder(got-float64(shown), 360)) > 1e-6 {
				t.Errorf("ring %d: got %v, want %d", ring, got, shown)
			}
		}
	}
}

func TestDialsOfEveryKindAreDealt(t *testing.T) {
	seen(t, readDial{}, Spec{RingPreset: true, Declination: -9 * orient.Degree}, 1000, map[string]func(Item) bool{
		"rear end":    func(it Item) bool { return it.(dialItem).rear },
		"forward end": func(it Item) bool { return !it.(dialItem).rear },
		"over 350":    func(it Item) bool { return it.(dialItem).value > 350 },
		"under 10":    func(it Item) bool { return it.(dialItem).value < 10 },
		"south-west":  func(it Item) bool { v := it.(dialItem).value; return v > 180 && v < 270 },
		"ring set":    func(it Item) bool { return it.(dialItem).figure.Ring == -9*orient.Degree },
	})
}
