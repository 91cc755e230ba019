package instrument

import (
	"fmt"
	"math"
	"testing"

	"cuesta/orient"
)

// General reference: geological compass. With a fixed circle the numbers
// ascend anticlockwise and E stands on the left of N.
func TestNumbersRunAnticlockwise(t *testing.T) {
	d := Dial{}
	if got := d.At(-90 * deg).Degrees(); math.Abs(got-90) > 1e-9 {
		t.Errorf("on the left stands %v, want 090", got)
	}
	for a := orient.Angle(0); a < 350; a += 10 {
		here, next := d.At(-a*deg), d.At(-(a+10)*deg)
		if math.Abs(next.From(here).Degrees()-10) > 1e-9 {
			t.Errorf("from %v to %v, ten degrees anticlockwise", here.Degrees(), next.Degrees())
		}
	}
}

// At the north end the dial gives the azimuth of the forward end; the ring adds
// the declination (common practice: true = magnetic + declination).
func TestDialReadsTheForwardAzimuth(t *testing.T) {
	for _, c := range []struct{ forward, declination, ring, want float64 }{
		{35, 0, 0, 35},
		{0, 0, 0, 0},
		{270, 0, 0, 270},
		{35, 12, 12, 35},
		{35, 12, 0, 23},
		{35, 12, -12, 11},
		{5, 12, 0, 353},
		{355, -12, 0, 7},
	} {
		needle := orient.Angle(c.declination-c.forward) * deg
		got := Dial{Ring: orient.Angle(c.ring) * deg}.At(needle).Degrees()
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("forward %v, declination %v, ring %v: got %v, want %v", c.forward, c.declination, c.ring, got, c.want)
		}
	}
}

func TestPlaceUndoesAt(t *testing.T) {
	d := Dial{Ring: -7 * deg}
	for a := orient.Angle(-179); a <= 180; a++ {
		if got := d.Place(d.At(a * deg)); (got - a*deg).Wrapped().Abs() > 1e-9 {
			t.Errorf("%v°: got %v°", a, got.Degrees())
		}
	}
}

func TestGraduated(t *testing.T) {
	for _, c := range []struct {
		degrees float64
		want    int
	}{{0, 0}, {0.4, 0}, {0.6, 1}, {359.4, 359}, {359.6, 0}, {180, 180}} {
		if got := Graduated(orient.AzimuthOf(orient.Angle(c.degrees) * deg)); got != c.want {
			t.Errorf("%v°: got %d, want %d", c.degrees, got, c.want)
		}
	}
}

// 100·tan: 45° is 100 %; 26.565° is 50 % and 60° is 173.2 % (arithmetic).
func TestArc(t *testing.T) {
	for _, c := range []struct {
		arm     float64
		degree  int
		percent float64
	}{{0, 0, 0}, {26.565, 27, 50}, {45, 45, 100}, {60, 60, 173.205}, {90, 90, math.Inf(1)}} {
		a := Arc{Arm: orient.Angle(c.arm) * deg}
		if a.Degree() != c.degree || math.Abs(a.Percent()-c.percent) > 1e-3 {
			t.Errorf("%v°: got %d° and %v %%", c.arm, a.Degree(), a.Percent())
		}
	}
}

func TestArmHasStops(t *testing.T) {
	a := Arc{Arm: 80 * deg}
	if got := a.Turned(30 * deg).Arm; got != orient.Right {
		t.Errorf("up: got %v°", got.Degrees())
	}
	if got := a.Turned(-100 * deg).Arm; got != 0 {
		t.Errorf("down: got %v°", got.Degrees())
	}
}

// With the body pointing north-east and no declination, the needle stands 45°
// to the left of forward, where the dial carries the number 045.
func ExampleDial() {
	d := Dial{}
	fmt.Printf("%.0f\n", d.At(-45*orient.Degree).Degrees())
	// Output: 45
}

// In half the field the needle takes √2 times as long for a swing.
func ExampleNeedle_Period() {
	n := StandardNeedle()
	fmt.Printf("%.2f s and %.2f s\n", n.Period(20e-6), n.Period(10e-6))
	// Output: 1.60 s and 2.26 s
}
