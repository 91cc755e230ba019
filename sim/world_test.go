package sim

import (
	"errors"
	"math"
	"testing"

	"cuesta/orient"
)

const deg = orient.Degree

// bench is a world on the plane strike/dip, in degrees.
func bench(t testing.TB, strike, dip float64) *World {
	t.Helper()
	w, err := New(Setup{Seed: 1, Plane: orient.PlaneOf(orient.Angle(strike)*deg, orient.Angle(dip)*deg)})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// do carries out commands one after the other.
func do(t testing.TB, w *World, cs ...Command) {
	t.Helper()
	for _, c := range cs {
		if err := w.Do(c); err != nil {
			t.Fatalf("%+v: %v", c, err)
		}
	}
}

func swing(a orient.Angle) Command { return Command{Kind: Swing, Angle: a} }
func roll(a orient.Angle) Command  { return Command{Kind: Roll, Angle: a} }

// levelAt swings to φ and levels the plate across.
func levelAt(t testing.TB, w *World, φ orient.Angle) {
	t.Helper()
	do(t, w, swing(φ-w.stance.swing))
	do(t, w, roll(-w.across()))
}

func TestLevelReadingIsTheStrike(t *testing.T) {
	for _, c := range []struct {
		strike, dip float64
		swing       orient.Angle
		want        float64
	}{
		{35, 30, 0, 35},
		{35, 30, 180 * deg, 215},
		{0, 5, 0, 0},
		{0, 5, 180 * deg, 180},
		{350, 85, 0, 350},
		{270, 45, 180 * deg, 90},
		{123, 90, 0, 123},
	} {
		w := bench(t, c.strike, c.dip)
		levelAt(t, w, c.swing)
		w.Advance(20 * TicksPerSecond)
		do(t, w, Command{Kind: Tap})
		w.Advance(5 * TicksPerSecond)
		o := w.Observe()
		got := o.Dial.North.From(orient.AzimuthOf(orient.Angle(c.want) * deg))
		if got.Abs() > 0.5*deg || !o.Dial.Resting || !o.Round.Centred {
			t.Errorf("%v/%v at %v: got %v° (off by %v°, resting %v, round %+v)", c.strike, c.dip,
				c.swing.Degrees(), o.Dial.North.Degrees(), got.Degrees(), o.Dial.Resting, o.Round)
		}
	}
}

func TestRefusedCommandsChangeNothing(t *testing.T) {
	nan := orient.Angle(math.NaN())
	for _, c := range []struct {
		name string
		cmd  Command
		want error
	}{
		{"arm on the edge", Command{Kind: Arm, Angle: deg}, ErrNotOnSide},
		{"swing by NaN", swing(nan), ErrAngle},
		{"roll by infinity", roll(orient.Angle(math.Inf(1))), ErrAngle},
		{"more than a turn", swing(361 * deg), ErrAngle},
		{"ring to NaN", Command{Kind: Ring, Angle: nan}, ErrAngle},
		{"no such seat", Command{Kind: Place, Seat: 9}, ErrSeat},
		{"no such kind", Command{Kind: 99}, ErrKind},
		{"long note", Command{Kind: Note, Text: string(make([]byte, 500))}, ErrText},
		{"note that is no text", Command{Kind: Note, Text: "\xff"}, ErrText},
	} {
		w := bench(t, 35, 30)
		before := w.Hash()
		if err := w.Do(c.cmd); !errors.Is(err, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, err, c.want)
		}
		if w.Hash() != before {
			t.Errorf("%s: the world has changed", c.name)
		}
	}
}

func BenchmarkStep(b *testing.B) {
	w := bench(b, 35, 30)
	levelAt(b, w, 0)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if i%1200 == 0 {
			w.needle.bearing.Rate = 5
		}
		w.Step()
	}
	perStep := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
	b.ReportMetric(1e9/TicksPerSecond/perStep, "realtime")
}

func BenchmarkObserve(b *testing.B) {
	w := bench(b, 35, 30)
	b.ReportAllocs()
	for b.Loop() {
		if w.Observe().Tick != 0 {
			b.Fatal("time has passed")
		}
	}
}

func TestStepAndObserveDoNotAllocate(t *testing.T) {
	w := bench(t, 35, 30)
	levelAt(t, w, 0)
	do(t, w, Command{Kind: Tap})
	for name, f := range map[string]func(){
		"Step":    w.Step,
		"Observe": func() { w.Observe() },
		"Pose":    func() { w.Pose() },
		"Hash":    func() { w.Hash() },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
}

func BenchmarkHash(b *testing.B) {
	w := bench(b, 35, 30)
	b.ReportAllocs()
	for b.Loop() {
		w.Hash()
	}
}

// BenchmarkSwing is a turn of 5°, followed half a degree at a time.
func BenchmarkSwing(b *testing.B) {
	w := bench(b, 35, 30)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		c := swing(5 * deg)
		if i%2 == 1 {
			c.Angle = -c.Angle
		}
		if err := w.Do(c); err != nil {
			b.Fatal(err)
		}
	}
}
