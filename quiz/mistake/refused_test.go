package mistake

import (
	"testing"

	"cuesta/orient"
)

func TestOfRefused(t *testing.T) {
	for _, c := range []struct {
		text string
		e    Evidence
		want Kind
		ok   bool
	}{
		// 100 percent is 45° (J. B. Jukes 1859, p. 211), 2 in 1 is 63° (p. 212).
		{"035/100", bed(35, 45, 0, 0), PercentScale, true},
		{"035/200", bed(35, 63, 0, 0), PercentScale, true},
		{"035/173", bed(35, 80, 0, 0).arc(60, 0, 60), PercentScale, true},
		{"035/130", bed(35, 30, 0, 0), 0, false},
		{"30/125", bed(125, 30, 0, 0), StrikeDipSwapped, true},
		{"035/30 NE", bed(35, 30, 0, 0), LettersContradict, true},
		{"125/30 SE", bed(35, 30, 0, 0), DirectionForStrike, true},
		{"nonsense", bed(35, 30, 0, 0), 0, false},
		{"", bed(35, 30, 0, 0), 0, false},
		{"400/30", bed(35, 30, 0, 0), 0, false},
	} {
		_, err := orient.Parse(c.text, orient.AzimuthDip)
		if err == nil {
			t.Errorf("%q: got an answer, want it refused", c.text)
			continue
		}
		got, ok := OfRefused(c.text, err, c.e)
		if ok != c.ok || got.Kind != c.want {
			t.Errorf("%q: got %v %t, want %v %t", c.text, got.Kind, ok, c.want, c.ok)
		}
		if ok && (got.Said == "" || got.Probability < NameFrom) {
			t.Errorf("%q: got %q at %g", c.text, got.Said, got.Probability)
		}
	}
}

func FuzzOfRefused(f *testing.F) {
	f.Add("035/100", 35.0, 45.0)
	f.Add("125/30 SE", 35.0, 30.0)
	f.Add("1e999/.../9", 0.0, 90.0)
	f.Fuzz(func(t *testing.T, text string, strike, dip float64) {
		_, err := orient.Parse(text, orient.AzimuthDip)
		got, ok := OfRefused(text, err, bed(strike, dip, 0, 0))
		if ok && !(got.Kind.IsValid() && got.Probability >= NameFrom && got.Probability <= 1) {
			t.Errorf("%q: got %+v", text, got)
		}
	})
}
