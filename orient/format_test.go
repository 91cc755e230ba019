package orient_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

var notations = []orient.Notation{orient.AzimuthDip, orient.Quadrant, orient.DirectionDip, orient.PoleNotation}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		strike, dip float64
		want        [4]string
	}{
		{35, 30, [4]string{"035/30", "N35E 30SE", "125/30", "305/60"}},
		{215, 30, [4]string{"215/30", "N35E 30NW", "305/30", "125/60"}},
		{115, 25, [4]string{"115/25", "N65W 25SW", "205/25", "025/65"}},
		{0, 5, [4]string{"000/05", "N0E 05E", "090/05", "270/85"}},
		{90, 45, [4]string{"090/45", "N90E 45S", "180/45", "000/45"}},
		{180, 45, [4]string{"180/45", "N0E 45W", "270/45", "090/45"}},
		{270, 45, [4]string{"270/45", "N90E 45N", "000/45", "180/45"}},
		{360, 45, [4]string{"000/45", "N0E 45E", "090/45", "270/45"}},
		{359.999, 45, [4]string{"000/45", "N0E 45E", "090/45", "270/45"}},
		{35, 90, [4]string{"035/90", "N35E 90", "125/90", "305/00"}},
		{35, 0, [4]string{"horizontal", "horizontal", "horizontal", "000/90"}},
		{35.5, 26.25, [4]string{"035.5/26.25", "N35.5E 26.25SE", "125.5/26.25", "305.5/63.75"}},
	} {
		for _, n := range notations {
			if got := orient.Format(orient.PlaneOf(deg(c.strike), deg(c.dip)), n); got != c.want[n] {
				t.Errorf("%v/%v in notation %d is %q, want %q", c.strike, c.dip, n, got, c.want[n])
			}
		}
	}
}

func TestFormatOverturned(t *testing.T) {
	p := orient.PlaneOf(deg(35), deg(30))
	p.Overturned = true
	if got, want := orient.Format(p, orient.Quadrant), "N35E 30SE overturned"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestFormatParse writes any plane in any notation and reads it back, whatever
// the course's notation is where the text says its own.
func TestFormatParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.OneOf(rapid.Custom(wholeDegrees), rapid.Custom(inclined)).Draw(t, "plane")
		p.Overturned = rapid.Bool().Draw(t, "overturned")
		n := rapid.SampledFrom(notations).Draw(t, "notation")
		assume := n
		if n == orient.Quadrant {
			assume = rapid.SampledFrom(notations).Draw(t, "assume")
		}
		text := orient.Format(p, n)
		e, err := orient.Parse(text, assume)
		if err != nil {
			t.Fatalf("%+v is written %q: %v", p, text, err)
		}
		if off := e.Plane.AngleTo(p).Degrees(); off > 0.015 || e.Plane.Overturned != p.Overturned {
			t.Fatalf("%+v is written %q and read as %+v", p, text, e.Plane)
		}
		sameStrike := e.Plane.Strike.From(p.Strike).Abs() < deg(0.0051)
		if n != orient.Quadrant && e.HasStrike && !sameStrike {
			t.Fatalf("%+v is written %q and strikes %s", p, text, e.Plane.Strike)
		}
		if again := orient.Format(e.Plane, n); again != text {
			t.Fatalf("%q comes back as %q", text, again)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, c := range readings {
		f.Add(c.text)
	}
	for _, text := range []string{"", "036/", "N95E", "040/30NE", "035/-30", "30→", "035 26 15'", "\xff", "N-35-", "dip to strike", "∘'\"", "1e9/5"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, assume := range notations {
			fuzzOne(t, text, assume)
		}
	})
}

func fuzzOne(t *testing.T, text string, assume orient.Notation) {
	part, partErr := orient.ParsePartial(text, assume)
	e, err := orient.Parse(text, assume)
	if err != nil {
		if err.Error() == "" || partErr == nil && !part.DipMissing {
			t.Fatalf("%q: %v, but in part %+v", text, err, part)
		}
		return
	}
	if !e.Plane.IsValid() || e.DipMissing || e.SideMissing || partErr != nil || e.Understood() == "" {
		t.Fatalf("%q is %+v, in part %v", text, e, partErr)
	}
	for _, n := range notations {
		written := orient.Format(e.Plane, n)
		back, err := orient.Parse(written, n)
		if err != nil {
			t.Fatalf("%q is written %q: %v", text, written, err)
		}
		if off := back.Plane.AngleTo(e.Plane).Degrees(); off > 0.015 || math.IsNaN(off) || back.Plane.Overturned != e.Plane.Overturned {
			t.Fatalf("%q is written %q and read as %+v", text, written, back.Plane)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := orient.Parse("N35E 30SE", orient.AzimuthDip); err != nil {
			b.Fatal(err)
		}
	}
}

// North is written 000 on whichever side of it a sum came out.
func TestNorthHasNoSign(t *testing.T) {
	for _, z := range []orient.Azimuth{
		orient.Azimuth(math.Copysign(0, -1)), orient.AzimuthOf(-0.001 * orient.Degree), orient.AzimuthOf(359.999 * orient.Degree), orient.AzimuthOf(-orient.Full),
	} {
		if got, want := orient.Format(orient.Plane{Strike: z, Dip: 30 * orient.Degree}, orient.AzimuthDip), "000/30"; got != want {
			t.Errorf("%v: got %s, want %s", z.Degrees(), got, want)
		}
		if got, want := z.Quadrant(), "N0E"; got != want {
			t.Errorf("%v: got %s, want %s", z.Degrees(), got, want)
		}
	}
}
