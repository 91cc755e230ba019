package orient_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

func TestPublishedApparentDip(t *testing.T) {
	letters := map[string]struct{ plane, section string }{
		"true dip 35 toward N; vertical section NE-SW": {"35 toward N", "NE-SW"},
		"plane N-S, 40W; section striking N50W":        {"N-S, 40W", "N50W"},
	}
	for _, row := range readPublished(t, "apparent_dip.csv") {
		switch row.quantity {
		case "apparent dip":
			in, ok := letters[row.inputs]
			if !ok {
				t.Fatalf("no check for %+v", row)
			}
			section, err := orient.Parse(in.section+" vertical", orient.AzimuthDip)
			if err != nil {
				t.Fatal(err)
			}
			row.check(t, mustParse(t, in.plane).ApparentDip(section.Written).Abs().Degrees())
		case "plunge of the line of plane N72E/50S (162/50) that trends":
			p, trend := mustParse(t, "N72E/50S"), numbers(t, row.inputs)[0]
			l := p.LineAt(az(trend))
			row.check(t, l.Plunge.Degrees())
			if off := math.Abs(l.Trend.Degrees() - trend); off > 1e-9 {
				t.Errorf("the line trends %v, want %v", l.Trend, trend)
			}
		default:
			t.Errorf("no check for %+v", row)
		}
	}
}

func TestApparentDipExact(t *testing.T) {
	for _, c := range []struct{ strike, dip, section, want float64 }{
		{35, 30, 125, 30}, {35, 30, 305, -30}, {35, 30, 35, 0}, {35, 30, 215, 0},
		{0, 45, 90, 45}, {270, 45, 0, 45}, {0, 45, 360, 0},
		{35, 0, 80, 0},
		{35, 90, 125, 90}, {35, 90, 80, 90}, {35, 90, 35, 0}, {35, 90, 215, 0},
	} {
		got := orient.PlaneOf(deg(c.strike), deg(c.dip)).ApparentDip(az(c.section)).Degrees()
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%03.0f/%02.0f in the section %03.0f: got %v, want %v", c.strike, c.dip, c.section, got, c.want)
		}
	}
}

func TestTrueDipUndoesApparentDip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := inclined(t)
		psi := deg(rapid.Float64Range(1, 179).Draw(t, "psi"))
		got := orient.TrueDip(p.ApparentDip(p.Strike.Add(psi)), psi)
		if off := (got - p.Dip).Abs().Degrees(); off > 1e-6 {
			t.Fatalf("%v seen at %v: true dip %v", p, psi.Degrees(), got.Degrees())
		}
	})
}

func TestTrueDipAlongTheStrike(t *testing.T) {
	for _, c := range []struct{ apparent, psi, want float64 }{
		{0, 0, 0}, {10, 0, 90}, {10, 180, 90}, {0, 40, 0}, {90, 40, 90}, {30, 90, 30}, {-30, 270, 30},
	} {
		if got := orient.TrueDip(deg(c.apparent), deg(c.psi)).Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("TrueDip(%v, %v) = %v, want %v", c.apparent, c.psi, got, c.want)
		}
	}
}
