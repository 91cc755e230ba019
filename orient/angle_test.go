package orient_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

func TestAzimuthWraps(t *testing.T) {
	for _, c := range []struct{ in, want float64 }{
		{0, 0}, {90, 90}, {180, 180}, {270, 270}, {360, 0}, {-90, 270}, {720, 0}, {-360, 0}, {450, 90}, {-1e-18, 0},
	} {
		if got := az(c.in).Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("azimuth of %v is %v, want %v", c.in, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		z := az(rapid.Float64Range(-1e6, 1e6).Draw(t, "degrees"))
		if z < 0 || z >= orient.Azimuth(orient.Full) || z.Opposite() < 0 || z.Opposite() >= orient.Azimuth(orient.Full) {
			t.Fatalf("%v is no azimuth", z)
		}
	})
}

func TestFrom(t *testing.T) {
	for _, c := range []struct{ z, y, want float64 }{
		{10, 350, 20}, {350, 10, -20}, {180, 0, 180}, {0, 180, 180}, {90, 90, 0}, {270, 0, -90},
	} {
		if got := az(c.z).From(az(c.y)).Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v from %v is %v, want %v", c.z, c.y, got, c.want)
		}
	}
}

// Exact at the quarters: 270 is the other end of 090.
func TestFromLine(t *testing.T) {
	for _, c := range []struct{ z, y, want float64 }{
		{10, 350, 20}, {190, 350, 20}, {180, 0, 0}, {90, 0, 90}, {270, 0, 90}, {0, 90, 90}, {100, 0, -80}, {35, 215, 0},
	} {
		if got := az(c.z).FromLine(az(c.y)).Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v from the line %v is %v, want %v", c.z, c.y, got, c.want)
		}
	}
}

func TestWrapped(t *testing.T) {
	for _, c := range []struct{ in, want float64 }{{0, 0}, {180, 180}, {-180, 180}, {181, -179}, {540, 180}, {-90, -90}, {360, 0}} {
		if got := deg(c.in).Wrapped().Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v wraps to %v, want %v", c.in, got, c.want)
		}
	}
}

func TestLettersAndQuadrants(t *testing.T) {
	for _, c := range []struct {
		deg                    float64
		letters, bearing, text string
	}{
		{0, "N", "N0E", "000"}, {22, "N", "N22E", "022"}, {23, "NE", "N23E", "023"}, {45, "NE", "N45E", "045"},
		{90, "E", "N90E", "090"}, {135, "SE", "S45E", "135"}, {180, "S", "S0E", "180"}, {225, "SW", "S45W", "225"},
		{270, "W", "N90W", "270"}, {315, "NW", "N45W", "315"}, {338, "N", "N22W", "338"}, {359.999, "N", "N0E", "000"},
		{26.25, "NE", "N26.25E", "026.25"},
	} {
		z := az(c.deg)
		if z.Letters() != c.letters || z.Quadrant() != c.bearing || z.String() != c.text {
			t.Errorf("%v is %s, %s, %s; want %s, %s, %s", c.deg, z.Letters(), z.Quadrant(), z, c.letters, c.bearing, c.text)
		}
	}
}

func TestRounded(t *testing.T) {
	for _, c := range []struct{ strike, dip, step, s, d float64 }{
		{35.4, 29.6, 1, 35, 30}, {359.6, 89.9, 1, 0, 90}, {37, 28, 5, 35, 30}, {35.26, 30.24, 0.5, 35.5, 30},
	} {
		got := orient.PlaneOf(deg(c.strike), deg(c.dip)).Rounded(deg(c.step))
		if math.Abs(got.Strike.Degrees()-c.s)+math.Abs(got.Dip.Degrees()-c.d) > 1e-9 {
			t.Errorf("%v/%v by %v is %v/%v", c.strike, c.dip, c.step, got.Strike.Degrees(), got.Dip.Degrees())
		}
	}
}

func TestIsValid(t *testing.T) {
	nan := orient.Angle(math.NaN())
	for _, p := range []orient.Plane{
		{Dip: deg(91)}, {Dip: deg(-1)}, {Strike: orient.Azimuth(deg(360))}, {Strike: -1}, {Dip: nan}, {Strike: orient.Azimuth(nan)},
	} {
		if p.IsValid() {
			t.Errorf("%+v counts as valid", p)
		}
	}
	if !(orient.Plane{}).IsValid() || !orient.PlaneOf(deg(360), deg(90)).IsValid() {
		t.Error("a sound plane counts as invalid")
	}
	if (orient.Line{Plunge: nan}).IsValid() || !(orient.Line{}).IsValid() {
		t.Error("IsValid of lines")
	}
}

func TestUnit(t *testing.T) {
	if got := orient.Unit(orient.Vec{}); got != (orient.Vec{}) {
		t.Errorf("the zero vector becomes %v", got)
	}
	if got := orient.Unit(orient.Vec{X: 3, Z: 4}); math.Abs(got.X-0.6)+math.Abs(got.Z-0.8) > tiny {
		t.Errorf("got %v", got)
	}
}
