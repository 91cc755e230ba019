package quiz_test

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
)

// The wanted values follow from sin(error) = tan τ / tan d (D. M. Ragan,
// Structural Geology, ch. 1, from memory), worked out apart from this program
// with Python's math module.
func TestStrikeTolerance(t *testing.T) {
	for _, c := range []struct{ reading, levelling, dip, want float64 }{
		{2, 1, 5, 13.5084},
		{2, 1, 10, 7.6812},
		{2, 1, 15, 5.7351},
		{2, 1, 30, 3.7325},
		{2, 1, 45, 3.0002},
		{2, 1, 60, 2.5774},
		{2, 1, 85, 2.0875},
		{2, 1, 90, 2},
		{3, 2, 20, 8.5057},
		{1, 0, 30, 1},
		{2, 1, 1, 90}, // the levelling alone may turn it anywhere
		{2, 1, 0, 90},
	} {
		tol := quiz.Tolerance{Reading: deg(c.reading), Levelling: deg(c.levelling)}
		if got := tol.Strike(deg(c.dip)).Degrees(); math.Abs(got-c.want) > 1e-4 {
			t.Errorf("reading %g, levelling %g, dip %g: got %.4f, want %.4f", c.reading, c.levelling, c.dip, got, c.want)
		}
	}
}

func TestStrikeToleranceFallsWithDip(t *testing.T) {
	last := orient.Right
	for d := 0.25; d <= 90; d += 0.25 {
		got := quiz.DefaultTolerance.Strike(deg(d))
		if got > last+1e-12 {
			t.Fatalf("at %g°: got %v, want no more than %v", d, got.Degrees(), last.Degrees())
		}
		last = got
	}
}

// S. Martel, University of Hawaii, GG303 lab 1, 2011: strike full within 1°
// and half within 8°, dip full within 3° and half within 8°.
func TestSteppedMarks(t *testing.T) {
	for _, c := range []struct {
		strike, dip float64 // errors
		want        float64
	}{
		{0, 0, 1},
		{1, 3, 1},
		{-1, -3, 1},
		{1.5, 0, 0.75},
		{8, 0, 0.75},
		{-8, 8, 0.5},
		{8.5, 0, 0.5},
		{0, 3.5, 0.75},
		{0, -8.5, 0.5},
		{9, 9, 0},
	} {
		v := quiz.Judge(quiz.Case{
			Truth: plane(35, 30), Entry: entry(plane(35+c.strike, 30+c.dip)), Tolerance: quiz.SteppedTolerance,
		})
		if got := v.Points; math.Abs(got-c.want) > 1e-12 {
			t.Errorf("strike off %g, dip off %g: got %g points, want %g", c.strike, c.dip, got, c.want)
		}
		if got, want := v.Right, c.want == 1; got != want {
			t.Errorf("strike off %g, dip off %g: right %t, want %t", c.strike, c.dip, got, want)
		}
	}
}

func TestToleranceIsValid(t *testing.T) {
	nan := orient.Angle(math.NaN())
	for _, c := range []struct {
		tol  quiz.Tolerance
		want bool
	}{
		{quiz.DefaultTolerance, true},
		{quiz.SteppedTolerance, true},
		{quiz.Tolerance{}, true},
		{quiz.Tolerance{Reading: -1}, false},
		{quiz.Tolerance{Dip: nan}, false},
		{quiz.Tolerance{Levelling: orient.Half}, false},
		{quiz.Tolerance{Partial: quiz.Partial{Share: 1.5}}, false},
	} {
		if got := c.tol.IsValid(); got != c.want {
			t.Errorf("%+v: got %t, want %t", c.tol, got, c.want)
		}
	}
}

func deg(x float64) orient.Angle { return orient.Angle(x) * degree }

func plane(strike, dip float64) orient.Plane { return orient.PlaneOf(deg(strike), deg(dip)) }

// entry is a plane written by azimuth and dip, right-hand end.
func entry(p orient.Plane) orient.Entry {
	return orient.Entry{Plane: p, Written: p.Strike, HasStrike: true}
}

// TestWidened is reckoned by hand from sin(error) = tan τ / tan d at the
// gentlest dip that the uncertainty leaves (D. M. Ragan, Structural Geology,
// ch. 1, from memory), worked out with Python's math module: for a dip of 12° ±
// 1° known to ± 3° in strike, 2 + asin(tan 1° / tan 11°) + 3 = 10.152°, and 3 + 1
// for the dip.
func TestWidened(t *testing.T) {
	for _, c := range []struct{ dip, strikeOff, dipOff, strike, dips float64 }{
		{12, 3, 1, 10.1520, 4},
		{30, 1.5, 1, 5.3045, 4},
		{64, 1, 1, 3.5096, 4},
		{5, 2, 3, 33.9899, 6},
		{10, 1, 1, 9.3272, 4},
		{30, 0, 0, 3.7325, 3},
		{3, 0, 2, 90, 5}, // it may dip no more than the levelling leaves
		{1, 1, 1, 90, 4},
		{90, 0, 0, 2, 3},
	} {
		got := quiz.DefaultTolerance.Widened(deg(c.dip), deg(c.strikeOff), deg(c.dipOff))
		if s := got.Strike(deg(c.dip)).Degrees(); math.Abs(s-c.strike) > 1e-4 || math.Abs(got.Dip.Degrees()-c.dips) > 1e-9 || !got.IsValid() {
			t.Errorf("dip %g ± %g, strike ± %g: got %.4f and %.4f, want %.4f and %.4f", c.dip, c.dipOff, c.strikeOff, s, got.Dip.Degrees(), c.strike, c.dips)
		}
	}
	stepped := quiz.SteppedTolerance.Widened(deg(40), deg(2), deg(1)) // no levelling there, so nothing but the sums
	if p := stepped.Partial; math.Abs(p.Strike.Degrees()-10) > 1e-9 || math.Abs(p.Dip.Degrees()-9) > 1e-9 || p.Share != 0.5 {
		t.Errorf("got the wider limits %v", p)
	}
	if p := quiz.DefaultTolerance.Widened(deg(40), deg(2), deg(1)).Partial; p != (quiz.Partial{}) {
		t.Errorf("got wider limits %v where there are none", p)
	}
}
