package instrument

import (
	"math"
	"testing"

	"cuesta/orient"
)

// period measures the time of ten small swings, in seconds, in the stepped
// motion.
func period(n Needle, horizontal float64) float64 {
	p := Pull{Horizontal: horizontal}
	b := Bearing{At: deg}
	var crossings, steps int
	var first, last float64
	for crossings < 21 && steps < 1e6 {
		before := b.At
		b = n.Step(b, p, 1, dt)
		steps++
		if (before > 0) != (b.At > 0) {
			last = dt * (float64(steps) - b.At.Radians()/(b.At-before).Radians())
			if crossings == 0 {
				first = last
			}
			crossings++
		}
	}
	return (last - first) / 10
}

func TestPeriodOfTheSteppedNeedle(t *testing.T) {
	n := StandardNeedle()
	n.Damping, n.Friction = 0, 0
	for _, h := range []float64{1e-6, 5e-6, 10e-6, 20e-6, 30e-6, 42e-6} {
		got, want := period(n, h), 2*math.Pi*math.Sqrt(n.Inertia/(n.Moment*h))
		if math.Abs(got/want-1) > 0.01 {
			t.Errorf("%v µT: got %v s, want %v s", h*1e6, got, want)
		}
	}
}

// NCERT Physics XII, example 5.3: m 0.067 A m², I 7.5e-6 kg m², ten swings in
// 6.70 s give a field of 0.01 T.
func TestPublishedPeriod(t *testing.T) {
	n := Needle{Moment: 0.067, Inertia: 7.5e-6}
	if got := n.Period(0.01); math.Abs(got/0.67-1) > 0.01 {
		t.Errorf("period: got %v s, want 0.67 s", got)
	}
	w := 2 * math.Pi / 0.67
	if got := w * w * n.Inertia / n.Moment; math.Abs(got/0.01-1) > 0.02 {
		t.Errorf("field: got %v T, want 0.01 T", got)
	}
	if got := period(n, 0.01); math.Abs(got/0.67-1) > 0.01 {
		t.Errorf("stepped: got %v s, want 0.67 s", got)
	}
}

// T1/T2 = 1.5 gives B2/B1 = 2.25 (arithmetic of T = 2π√(I/(mB))).
func TestPeriodRatio(t *testing.T) {
	n := StandardNeedle()
	if got := n.Period(20e-6) / n.Period(2.25*20e-6); math.Abs(got-1.5) > 1e-12 {
		t.Errorf("got %v, want 1.5", got)
	}
	if got := n.Period(0); !math.IsInf(got, 1) {
		t.Errorf("no field: got %v s", got)
	}
}

// T 1.6 s at 20 µT, and damping 0.25 of the critical: the second of two swings
// to the same side is smaller by exp(−2π·0.25/√(1−0.25²)) = 0.1974.
func TestStandardNeedle(t *testing.T) {
	n := StandardNeedle()
	if got := n.Period(20e-6); math.Abs(got-1.6) > 1e-12 {
		t.Errorf("period: got %v s, want 1.6 s", got)
	}
	n.Friction = 0
	b, peak := Bearing{At: -10 * deg}, orient.Angle(0)
	var peaks []orient.Angle
	for range 600 {
		before := b
		b = n.Step(b, Pull{Horizontal: 20e-6}, 1, dt)
		peak = max(peak, b.At)
		if before.At > 0 && b.At <= 0 {
			peaks, peak = append(peaks, peak), 0
		}
	}
	if got := float64(peaks[1] / peaks[0]); math.Abs(got-0.1974) > 0.01 {
		t.Errorf("second swing over first: got %v, want 0.1974", got)
	}
}

// At 20 µT the pivot leaves up to half a degree; as the horizontal field
// weakens towards the magnetic pole the same needle grows less sure.
func TestBand(t *testing.T) {
	n := StandardNeedle()
	for _, c := range []struct{ micro, want float64 }{
		{20, 0.5}, {40, 0.25}, {10, 1.0}, {2, 5.006}, {0.1, 90}, {0, 90},
	} {
		if got := n.Band(c.micro * 1e-6).Degrees(); math.Abs(got-c.want) > 1e-3 {
			t.Errorf("%v µT: got %v°, want %v°", c.micro, got, c.want)
		}
	}
}

// settle runs the needle until it is held, and returns the time in seconds.
func settle(t *testing.T, n Needle, b Bearing, p Pull) (Bearing, float64) {
	t.Helper()
	for i := range 120 * 600 {
		if b = n.Step(b, p, 1, dt); n.Held(b, p) {
			return b, float64(i) * dt
		}
	}
	t.Fatalf("still swinging after ten minutes: %+v", b)
	return b, 0
}

func TestFrictionLeavesARestError(t *testing.T) {
	n := StandardNeedle()
	p := Pull{North: 40 * deg, Horizontal: 20e-6}
	worst := orient.Angle(0)
	for a := orient.Angle(-179); a < 180; a++ {
		b, s := settle(t, n, n.Shaken(Bearing{At: a * deg}, p), p)
		off := (b.At - p.North).Wrapped().Abs()
		worst = max(worst, off)
		if off > n.Band(p.Horizontal)+1e-9 {
			t.Errorf("from %v°: rests %v° off", a, off.Degrees())
		}
		if s > 12 {
			t.Errorf("from %v°: takes %v s", a, s)
		}
	}
	if worst < 0.3*deg {
		t.Errorf("the pivot never leaves more than %v°", worst.Degrees())
	}
}

func TestAStoppedNeedleStaysBelowThePivotTorque(t *testing.T) {
	n := StandardNeedle()
	p := Pull{Horizontal: 20e-6}
	for _, c := range []struct {
		off  float64
		held bool
	}{{0.49, true}, {-0.49, true}, {0.51, false}, {-0.51, false}} {
		b := Bearing{At: orient.Angle(c.off) * deg}
		got := n.Step(b, p, 1, dt)
		if n.Held(b, p) != c.held || (got == b) != c.held {
			t.Errorf("%v° off: held %v, moved to %+v", c.off, n.Held(b, p), got)
		}
	}
}

// Friction takes energy from a swing and never gives any.
func TestFrictionNeverReverses(t *testing.T) {
	n := StandardNeedle()
	n.Damping = 0
	b := Bearing{Rate: 0.01 * deg}
	for range 100 {
		b = n.Step(b, Pull{}, 1, dt)
		if b.Rate < 0 {
			t.Fatalf("runs backwards: %+v", b)
		}
	}
	if b.Rate != 0 {
		t.Errorf("still moving: %+v", b)
	}
}

// The pull vanishes where the needle stands against the field; a shake starts
// it, so that nobody reads the wrong end off a needle that balances there.
func TestAShakeStartsANeedleAgainstTheField(t *testing.T) {
	n := StandardNeedle()
	p := Pull{North: 40 * deg, Horizontal: 20e-6}
	for _, off := range []float64{180, 179.7, -179.7, 179.999} {
		b := Bearing{At: (p.North + orient.Angle(off)*deg).Wrapped()}
		if !n.Held(b, p) {
			t.Errorf("%v° off: not held", off)
		}
		b, _ = settle(t, n, n.Shaken(b, p), p)
		if got := (b.At - p.North).Wrapped(); got.Abs() > n.Band(p.Horizontal)+1e-9 {
			t.Errorf("%v° off: comes to rest %v° off", off, got.Degrees())
		}
	}
	for _, b := range []Bearing{{At: 41 * deg}, {At: -140 * deg, Rate: 1}} {
		if got := n.Shaken(b, p); got != b {
			t.Errorf("%+v: got %+v", b, got)
		}
	}
}

func TestNoFieldNoTorque(t *testing.T) {
	n := StandardNeedle()
	b := Bearing{At: 77 * deg}
	if got := n.Step(b, Pull{}, 0, dt); got != b {
		t.Errorf("got %+v, want %+v", got, b)
	}
}

func TestBearingStaysWrapped(t *testing.T) {
	n := StandardNeedle()
	n.Damping, n.Friction = 0, 0
	b := Bearing{At: 179 * deg, Rate: 3600 * deg}
	for range 1000 {
		b = n.Step(b, Pull{Horizontal: 20e-6}, 1, dt)
		if b.At > orient.Half || b.At <= -orient.Half {
			t.Fatalf("got %v°", b.At.Degrees())
		}
	}
}

func TestRubs(t *testing.T) {
	n := StandardNeedle()
	for _, c := range []struct {
		tilt, dip float64
		before    bool
		want      bool
	}{
		{0, 0, false, false}, {4.9, 0, false, false}, {5.1, 0, false, true},
		{4.9, 0, true, true}, {3.1, 0, true, true}, {2.9, 0, true, false},
		{0, 5.5, false, true}, {2, 2.5, false, false}, {2, 3.5, false, true}, {0, 3.6, true, true}, {180, 0, false, true},
	} {
		if got := n.Rubs(orient.Angle(c.tilt)*deg, orient.Angle(c.dip)*deg, c.before); got != c.want {
			t.Errorf("tilt %v°, needle dips %v°, rubbing %v: got %v", c.tilt, c.dip, c.before, got)
		}
	}
}

// The drag of a needle balanced for another zone grows with the vertical field.
func TestDip(t *testing.T) {
	n := StandardNeedle()
	for _, c := range []struct{ here, balanced, want float64 }{
		{45e-6, 45e-6, 0}, {0, 0, 0}, {45e-6, 0, 3.6}, {0, 45e-6, 3.6}, {45e-6, -45e-6, 7.2},
	} {
		if got := n.Dip(c.here, c.balanced).Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v T, balanced for %v T: got %v°, want %v°", c.here, c.balanced, got, c.want)
		}
	}
}
