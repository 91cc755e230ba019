package item

import (
	"errors"
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/sim"
)

func TestSpecificationsAreChecked(t *testing.T) {
	nan := orient.Angle(math.NaN())
	for name, c := range map[string]struct {
		spec Spec
		ok   bool
	}{
		"zero":               {Spec{}, true},
		"whole":              {Spec{Notation: orient.PoleNotation, Tolerance: quiz.SteppedTolerance, Mix: quiz.GentleOnly, DipMin: deg(5), DipMax: deg(20), Declination: deg(-12)}, true},
		"one dip":            {Spec{DipMin: deg(30), DipMax: deg(30)}, true},
		"no such notation":   {Spec{Notation: 4}, false},
		"tolerance":          {Spec{Tolerance: quiz.Tolerance{Reading: nan}}, false},
		"share":              {Spec{Tolerance: quiz.Tolerance{Partial: quiz.Partial{Share: 2}}}, false},
		"mix":                {Spec{Mix: quiz.Mix{Steep: math.Inf(1)}}, false},
		"least above most":   {Spec{DipMin: deg(40), DipMax: deg(30)}, false},
		"dip over 90":        {Spec{DipMax: deg(91)}, false},
		"dip not finite":     {Spec{DipMin: nan}, false},
		"declination":        {Spec{Declination: deg(181)}, false},
		"field of the earth": {Spec{Field: sim.Field{Horizontal: 18e-6, Declination: deg(3), Inclination: deg(66)}}, true},
		"field in nanotesla": {Spec{Field: sim.Field{Horizontal: 18000}}, false},
	} {
		err := c.spec.Check()
		if (err == nil) != c.ok || err != nil && !errors.Is(err, ErrSpec) {
			t.Errorf("%s: got %v, want ok %t", name, err, c.ok)
		}
	}
}

func TestDipsAskedForAreDealt(t *testing.T) {
	r := source(3)
	for range 2000 {
		p, err := Spec{DipMin: deg(12), DipMax: deg(14.5)}.plane(r)
		if err != nil || p.Dip < deg(12) || p.Dip > deg(14)+1e-9 {
			t.Fatalf("got %v, %v, want 12° to 14°", p.Dip.Degrees(), err)
		}
		if p, err = (Spec{Mix: quiz.SteepOnly}).plane(r); err != nil || p.Dip < deg(60) || p.Dip > deg(85) {
			t.Fatalf("got %v, %v, want a steep bed", p.Dip.Degrees(), err)
		}
		if p, err = (Spec{Mix: quiz.SteepOnly}).planeBetween(r, 5, 30); err != nil || p.Dip < deg(5) || p.Dip > deg(30) {
			t.Fatalf("got %v, %v, want what the kind can take", p.Dip.Degrees(), err)
		}
	}
	if _, err := (Spec{DipMin: deg(30.2), DipMax: deg(30.6)}).plane(r); !errors.Is(err, ErrSpec) {
		t.Errorf("no whole dip: got %v, want an error", err)
	}
}

// Every azimuth is dealt, and those about north more often.
func TestAzimuthsWrap(t *testing.T) {
	var counts [360]int
	r := source(4)
	for range 100_000 {
		counts[azimuth(r)]++
	}
	for a, n := range counts {
		want := 100_000.0 * 5 / 6 / 360
		if a <= 12 || a >= 348 {
			want += 100_000.0 / 6 / 25
		}
		if math.Abs(float64(n)-want) > 6*math.Sqrt(want) {
			t.Errorf("%03d: got %d, want about %.0f", a, n, want)
		}
	}
}
