package sim

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

// onLid lays the lid on the surface at the swing φ and opens the hinge until
// the forward end is level.
func onLid(t *rapid.T, w *World, φ orient.Angle) {
	must(t, w, Command{Kind: Place, Seat: OnLid}, swing((φ - w.stance.swing).Wrapped()))
	f := w.Observe().Frame
	must(t, w, roll(orient.Atan2(-f.Forward.Z, f.Out.Z)))
}

// With the lid flush and the body level the needle gives the dip direction and
// the hinge the dip, in one operation (common practice).
func TestLidGivesDipDirectionAndDipAtOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, strongField)
		p := w.Setup().Plane
		onLid(t, w, orient.Right)
		restNeedle(t, w)
		o := w.Observe()
		near(t, "dip direction", o.Dial.North.Angle(), p.DipDirection().Angle(), 0.05*deg)
		near(t, "dip", o.Hinge, p.Dip, 1e-9)
		if !o.Round.Centred || o.Touching {
			t.Fatalf("level: %+v", o)
		}
	})
}

// With the hinge δ off the strike line the body can be levelled along but not
// across: the hinge then reads the apparent dip of its section, tan κ =
// tan d · cos δ, and the bubble shows the tilt that is left, sin τ =
// sin d · sin δ (geometry, as for an edge).
func TestLidOffTheDipLeavesATilt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, Field{})
		d := w.Setup().Plane.Dip
		δ := drawAngle(t, -60, 60, "off the dip")
		onLid(t, w, orient.Right+δ)
		o := w.Observe()
		near(t, "hinge", o.Hinge, orient.Atan2(d.Sin()*δ.Cos(), d.Cos()), 1e-9)
		near(t, "along", orient.Asin(o.Frame.Forward.Z), 0, 1e-9)
		near(t, "across", orient.Asin(o.Frame.Right.Z), orient.Asin(d.Sin()*δ.Sin()), 1e-9)
	})
}

func TestLidStartsClosedAndStaysOutOfTheRock(t *testing.T) {
	w, err := New(Setup{Plane: orient.PlaneOf(35*deg, 30*deg), Tool: Lidded})
	if err != nil {
		t.Fatal(err)
	}
	do(t, w, Command{Kind: Place, Seat: OnLid})
	if o := w.Observe(); o.Hinge != 0 || !o.Touching || dot(o.Frame.Out, w.rock.normal) < 1-1e-12 {
		t.Errorf("closed: %+v", o)
	}
	do(t, w, roll(-10*deg))
	if o := w.Observe(); o.Hinge != 0 {
		t.Errorf("closed further: %v°", o.Hinge.Degrees())
	}
	do(t, w, roll(200*deg))
	if o := w.Observe(); o.Hinge != orient.Half || !o.Touching {
		t.Errorf("opened too far: %v°", o.Hinge.Degrees())
	}
	do(t, w, roll(-140*deg), Command{Kind: Place, Seat: OnSide}, Command{Kind: Place, Seat: OnLid})
	if o := w.Observe(); (o.Hinge - 40*deg).Abs() > 1e-9 {
		t.Errorf("set down again: %v°", o.Hinge.Degrees())
	}
	if err := w.Do(Command{Kind: Arm, Angle: deg}); !errors.Is(err, ErrNotOnSide) {
		t.Errorf("arm: got %v", err)
	}
}

// flat is a bench with the sensor laid on a plane at a place with a steep field.
func flat(t testing.TB, seed uint64, strike, dip float64) *World {
	t.Helper()
	w, err := New(Setup{
		Seed:  seed,
		Plane: orient.PlaneOf(orient.Angle(strike)*deg, orient.Angle(dip)*deg),
		Field: Field{Declination: 3 * deg, Inclination: 63 * deg, Horizontal: 21e-6},
		Ring:  3 * deg,
		Tool:  Sensing,
	})
	if err != nil {
		t.Fatal(err)
	}
	do(t, w, Command{Kind: Place, Seat: OnBack})
	return w
}

// sensorErrors are the root mean squares of its errors over many places, ways
// to lie and moments.
func sensorErrors(t *testing.T, calibrated bool) (direction, dip orient.Angle) {
	t.Helper()
	var a, b float64
	const n = 600
	for i := range n {
		w := flat(t, uint64(i), float64(i*37%360), 20+float64(i%60))
		do(t, w, swing(orient.Angle(i%360)*deg))
		if calibrated {
			do(t, w, Command{Kind: Calibrate})
		}
		w.Advance(i)
		s, p := w.Observe().Sensor, w.Setup().Plane
		if s.Calibrated != calibrated {
			t.Fatalf("calibrated: %v", s.Calibrated)
		}
		off, d := s.Direction.From(p.DipDirection()), s.Dip-p.Dip
		a += off.Radians() * off.Radians() / n
		b += d.Radians() * d.Radians() / n
	}
	return orient.Angle(math.Sqrt(a)), orient.Angle(math.Sqrt(b))
}

// Once calibrated the sensor agrees with the needle within a few degrees
// (common practice); before, its own iron turns it.
func TestCalibrationMakesTheSensorRight(t *testing.T) {
	raw, dip := sensorErrors(t, false)
	direction, again := sensorErrors(t, true)
	t.Logf("direction off by %.1f° before calibration, %.2f° after; dip by %.2f° and %.2f°",
		raw.Degrees(), direction.Degrees(), dip.Degrees(), again.Degrees())
	if raw < 4*deg || direction > 1.5*deg {
		t.Errorf("direction off by %v° before calibration, %v° after", raw.Degrees(), direction.Degrees())
	}
	if dip > deg/2 || again > deg/2 {
		t.Errorf("dip off by %v° and %v°", dip.Degrees(), again.Degrees())
	}
}

// A magnetised device errs differently whichever way it lies, so turning it
// round gives the fault away.
func TestBiasTurnsWithTheSensor(t *testing.T) {
	var spread [2]orient.Angle
	for seed := range uint64(40) {
		for i, calibrated := range []bool{false, true} {
			w := flat(t, seed, 35, 30)
			if calibrated {
				do(t, w, Command{Kind: Calibrate})
			}
			one := w.Observe().Sensor.Direction
			do(t, w, Command{Kind: Flip})
			spread[i] += w.Observe().Sensor.Direction.From(one).Abs() / 40
		}
	}
	if spread[0] < 5*deg || spread[1] > 2*deg {
		t.Errorf("turned end for end it changes by %v°, calibrated by %v°", spread[0].Degrees(), spread[1].Degrees())
	}
}

func TestSensorNoiseFollowsTheTickAlone(t *testing.T) {
	w := flat(t, 9, 35, 30)
	one := w.Observe().Sensor
	if two := w.Observe().Sensor; two != one {
		t.Errorf("looked at twice: %+v and %+v", one, two)
	}
	w.Advance(shownTicks)
	if two := w.Observe().Sensor; two == one {
		t.Errorf("a tenth of a second later: still %+v", two)
	}
	v := flat(t, 9, 35, 30)
	v.Advance(shownTicks)
	if v.Observe() != w.Observe() {
		t.Error("looking has changed the bench")
	}
}

func TestRingTurnsTheDirectionShown(t *testing.T) {
	w := flat(t, 9, 35, 30)
	one := w.Observe().Sensor.Direction
	do(t, w, Command{Kind: Ring, Angle: -7 * deg})
	if got := w.Observe().Sensor.Direction.From(one); (got - -10*deg).Abs() > 1e-9 {
		t.Errorf("ring turned by -10°: the direction by %v°", got.Degrees())
	}
}

func TestFlatSeatRefuses(t *testing.T) {
	w := flat(t, 9, 35, 30)
	if err := w.Do(roll(deg)); !errors.Is(err, ErrFlat) {
		t.Errorf("roll: got %v", err)
	}
	do(t, w, Command{Kind: Place, Seat: OnEdge})
	if err := w.Do(Command{Kind: Calibrate}); !errors.Is(err, ErrNotFlat) {
		t.Errorf("calibrate on the edge: got %v", err)
	}
	if s := w.Observe().Sensor; s != (Sensor{}) {
		t.Errorf("on the edge the sensor shows %+v", s)
	}
}

func TestToolDecidesTheSeats(t *testing.T) {
	for _, c := range []struct {
		tool      Tool
		lid, back bool
	}{{Plain, false, false}, {Lidded, true, false}, {Sensing, false, true}, {Complete, true, true}} {
		for s, want := range map[Seat]bool{OnEdge: true, OnSide: true, OnLid: c.lid, OnBack: c.back, 9: false} {
			w, err := New(Setup{Tool: c.tool})
			if err != nil {
				t.Fatal(err)
			}
			if err := w.Do(Command{Kind: Place, Seat: s}); errors.Is(err, ErrSeat) == want {
				t.Errorf("%v, %v: got %v", c.tool, s, err)
			}
		}
	}
}
