package item

import (
	"math"
	"testing"
)

// The greatest error is asin(tan e / tan d) (D. M. Ragan, Structural Geology,
// ch. 1, from memory), the scatter sd / sin d (D. M. Cruden & H. A. K.
// Charlesworth 1976, GSA Bulletin 87(7):977–980); the numbers are worked out
// with Python's math module.
func TestStrikeUncertainty(t *testing.T) {
	for _, c := range []struct {
		dip, error int
		scatter    bool
		want       float64
	}{
		{10, 1, false, 5.6812}, {5, 1, false, 11.5084}, {15, 2, false, 7.4884}, {30, 3, false, 5.2081}, {6, 3, false, 29.9092},
		{10, 1, true, 5.7588}, {30, 2, true, 4}, {15, 3, true, 11.5911},
	} {
		it := newUncertain(c.dip, c.error, c.scatter)
		if got := it.value; math.Abs(got-c.want) > 0.5 {
			t.Errorf("%s got %v, want %v", it.Prompt(), got, c.want)
		}
		holdTo(t, it, wrong(it.write(float64(c.error))), right(it.write(c.want)))
	}
}

// A strike is as good as the reading on a steep bed: there is nothing to ask.
func TestSteepBedsAreRefused(t *testing.T) {
	if it, err := (strikeUncertainty{}).Deal(Spec{DipMin: deg(42), DipMax: deg(80)}, source(1)); err == nil {
		t.Errorf("got %v, want an error", it.Prompt())
	}
	if it, err := (strikeUncertainty{}).Deal(Spec{DipMin: deg(60), DipMax: deg(80)}, source(1)); err == nil {
		t.Errorf("got %v, want an error", it.Prompt())
	}
}

func TestUncertaintiesOfBothKindsAreDealt(t *testing.T) {
	of := func(it Item) uncertainItem { return it.(uncertainItem) }
	seen(t, strikeUncertainty{}, Spec{}, 500, map[string]func(Item) bool{
		"scatter":  func(it Item) bool { return of(it).scatter },
		"level":    func(it Item) bool { return !of(it).scatter },
		"gentle":   func(it Item) bool { return of(it).dip < 10 },
		"moderate": func(it Item) bool { return of(it).dip > 20 },
	})
}
