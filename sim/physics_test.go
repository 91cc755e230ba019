package sim

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

// strongField makes the pivot friction negligible (0.01°), so that what is
// left in a reading is geometry.
var strongField = Field{Horizontal: 1e-3}

// drawn is a bench on a random plane of 5° to 85° of dip.
func drawn(t *rapid.T, f Field) *World {
	w, err := New(Setup{
		Seed: rapid.Uint64().Draw(t, "seed"),
		Plane: orient.PlaneOf(
			orient.Angle(rapid.Float64Range(0, 359.999).Draw(t, "strike"))*deg,
			orient.Angle(rapid.Float64Range(5, 85).Draw(t, "dip"))*deg),
		Field: f,
		Tool:  Complete,
	})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func drawAngle(t *rapid.T, low, high float64, name string) orient.Angle {
	return orient.Angle(rapid.Float64Range(low, high).Draw(t, name)) * deg
}

// must carries out commands in a property.
func must(t *rapid.T, w *World, cs ...Command) {
	for _, c := range cs {
		if err := w.Do(c); err != nil {
			t.Fatal(err)
		}
	}
}

// near fails unless got is within tol of want, as angles around a circle.
func near(t *rapid.T, what string, got, want, tol orient.Angle) {
	if off := (got - want).Wrapped(); !(off.Abs() <= tol) {
		t.Fatalf("%s: got %.4f°, want %.4f°, off by %.4f°", what, got.Degrees(), want.Degrees(), off.Degrees())
	}
}

// restNeedle waits for the needle, taps, and waits again.
func restNeedle(t *rapid.T, w *World) {
	w.Advance(15 * TicksPerSecond)
	must(t, w, Command{Kind: Tap})
	w.Advance(5 * TicksPerSecond)
	if d := w.Observe().Dial; !d.Resting || d.State != NeedleFree {
		t.Fatalf("the needle does not rest: %+v", d)
	}
}

// D. M. Ragan, Structural Geology, ch. 1 (from memory; it follows from the
// apparent-dip formula): with the bubble off by β along the edge the strike is
// off by asin(tan β / tan d).
func TestStrikeErrorOfATiltedEdge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, strongField)
		p := w.Setup().Plane
		β := drawAngle(t, -2.5, 2.5, "tilt along the edge")
		end := orient.Angle(rapid.IntRange(0, 1).Draw(t, "end")) * orient.Half
		φ := orient.Asin(β.Sin()/p.Dip.Sin()) + end
		must(t, w, swing((φ - w.stance.swing).Wrapped()))
		must(t, w, roll(-w.across()))
		restNeedle(t, w)
		must(t, w, Command{Kind: Read})
		r, ok := w.Reading(OnEdge)
		if !ok {
			t.Fatal("no reading is kept")
		}
		sign := orient.Angle(1)
		if end != 0 {
			sign = -1 // the plunge of the other end
		}
		want := p.Strike.Add(end).Add(orient.Asin(β.Tan() / p.Dip.Tan()))
		near(t, "β", r.Along, sign*β, 1e-9)
		near(t, "across", r.Across, 0, 1e-9)
		near(t, "dial", r.Shown.Dial.North.Angle(), want.Angle(), 0.05*deg)
	})
}

// The trend of the edge leaves the strike by ε, tan ε = tan φ · cos d, and
// together with sin β = sin d · sin φ that is tan β = tan d · sin ε, the
// apparent-dip formula (checks of apparent dip; Ragan ch. 1, from memory).
func TestEdgeObeysTheApparentDipFormula(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, Field{})
		p := w.Setup().Plane
		φ := drawAngle(t, -180, 180, "swing")
		must(t, w, swing((φ - w.stance.swing).Wrapped()))
		f := w.Observe().Frame.Forward
		β := orient.Asin(-f.Z)
		ε := orient.Atan2(f.X, f.Y) - p.Strike.Angle()
		near(t, "β", β, orient.Asin(p.Dip.Sin()*φ.Sin()), 1e-9)
		near(t, "ε", ε, orient.Atan2(φ.Sin()*p.Dip.Cos(), φ.Cos()), 1e-9)
		if d := β.Tan() - p.Dip.Tan()*ε.Sin(); math.Abs(d) > 1e-9 {
			t.Fatalf("tan β − tan d · sin ε = %v", d)
		}
	})
}

// centreTube turns the arm, as a student does, until the bubble of the tube
// level stands in the middle.
func centreTube(t *rapid.T, w *World) {
	for range 12 {
		w.Advance(2 * TicksPerSecond)
		off := w.Observe().Tube.Off
		if math.Abs(off) < 1e-6 {
			return
		}
		halfGap := orient.Angle(w.parts.tube.Mark / w.parts.tube.Radius)
		turn := -orient.Angle(off) * halfGap // the bubble is at the high end
		if w.Observe().Seated == RightSide {
			turn = -turn // the arc hangs down: a wider angle lowers the index
		}
		if w.Observe().Tube.AtEnd {
			turn *= 6
		}
		must(t, w, Command{Kind: Arm, Angle: turn})
	}
}

// The arm reads the plunge of the edge, sin λ = sin d · sin φ, an apparent dip;
// and tan λ = tan β / cos η when the face leans by η (geometry; the first is
// the rake formula of Ragan ch. 1, from memory).
func TestArmReadsTheApparentDip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, Field{})
		d := w.Setup().Plane.Dip
		φ := drawAngle(t, -180, 180, "swing")
		must(t, w, swing((φ - w.stance.swing).Wrapped()), Command{Kind: Place, Seat: OnSide})
		β := orient.Asin(d.Sin() * φ.Sin()).Abs()
		must(t, w, Command{Kind: Arm, Angle: β - 2*deg})
		centreTube(t, w)
		o := w.Observe()
		near(t, "upright", o.Arc.Arm, β, 0.05*deg)
		if !o.Tube.Centred || o.Lean != 0 {
			t.Fatalf("tube %+v, lean %v", o.Tube, o.Lean)
		}

		must(t, w, roll(drawAngle(t, -30, 30, "lean")))
		η := w.lean()
		leaning := orient.Atan2(β.Sin(), β.Cos()*η.Cos())
		must(t, w, Command{Kind: Arm, Angle: leaning - w.stance.arm})
		centreTube(t, w)
		must(t, w, Command{Kind: Read})
		r, _ := w.Reading(OnSide)
		near(t, "leaning", r.Shown.Arc.Arm, leaning, 0.05*deg)
		near(t, "lean kept", r.Across, η, 1e-12)
	})
}

// Straight down the dip the arm reads the dip itself, either end forward.
func TestArmReadsTheDipStraightDownIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t, Field{})
		d := w.Setup().Plane.Dip
		must(t, w, Command{Kind: Place, Seat: OnSide}, swing((orient.Right - w.stance.swing).Wrapped()))
		if rapid.Bool().Draw(t, "turned end for end") {
			must(t, w, Command{Kind: Flip})
		}
		must(t, w, Command{Kind: Arm, Angle: d + 1*deg})
		centreTube(t, w)
		near(t, "arm", w.Observe().Arc.Arm, d, 0.01*deg)
	})
}

// poleOff is the plane whose pole lies off from that of p, towards the azimuth
// a seen along the pole.
func poleOff(p orient.Plane, off, a orient.Angle) orient.Plane {
	n := blend(p.Normal(), blend(p.StrikeVec(), p.DownDip(), a), off)
	return orient.PlaneOf(orient.Atan2(n.X, n.Y)-orient.Right, orient.Acos(n.Z))
}

// The error of a strike grows as that of the dip over sin d (Cruden &
// Charlesworth 1976, Errors in strike and dip measurements, GSA Bull.
// 87:977–980): surfaces whose poles scatter alike in all directions, each
// measured with the level centred and the edge straight down the dip.
func TestStrikeScatterOverDipScatter(t *testing.T) {
	const n = 360
	for _, dip := range []orient.Angle{15 * deg, 30 * deg, 60 * deg, 80 * deg} {
		mean := orient.PlaneOf(90*deg, dip)
		var strikes, dips float64
		for i := range n {
			w, err := New(Setup{Plane: poleOff(mean, deg/2, orient.Angle(i)*deg)})
			if err != nil {
				t.Fatal(err)
			}
			levelAt(t, w, 0)
			f := w.Observe().Frame.Forward
			strike := orient.Atan2(f.X, f.Y) - 90*deg
			do(t, w, Command{Kind: Place, Seat: OnSide}, swing(orient.Right))
			plunge := orient.Asin(-w.Observe().Frame.Forward.Z) - dip
			strikes += strike.Radians() * strike.Radians()
			dips += plunge.Radians() * plunge.Radians()
		}
		got, want := math.Sqrt(strikes/dips), 1/dip.Sin()
		if math.Abs(got/want-1) > 0.02 {
			t.Errorf("dip %v°: got %v, want %v", dip.Degrees(), got, want)
		}
	}
}

// The ends of the range: a flat bed and an upright one.
func TestArmAtTheEndsOfTheRange(t *testing.T) {
	for _, c := range []struct {
		dip   float64
		swing orient.Angle
		want  orient.Angle
	}{{0, 90 * deg, 0}, {0, 0, 0}, {90, 90 * deg, 90 * deg}, {90, -90 * deg, 90 * deg}, {90, 0, 0}, {90, 30 * deg, 30 * deg}} {
		w := bench(t, 35, c.dip)
		do(t, w, swing((c.swing - w.stance.swing).Wrapped()), Command{Kind: Place, Seat: OnSide},
			Command{Kind: Arm, Angle: c.want})
		w.Advance(2 * TicksPerSecond)
		if o := w.Observe(); !o.Tube.Centred || math.Abs(o.Tube.Off) > 1e-6 || (o.Arc.Arm-c.want).Abs() > 1e-12 {
			t.Errorf("dip %v°, swing %v°, arm %v°: %+v", c.dip, c.swing.Degrees(), o.Arc.Arm.Degrees(), o.Tube)
		}
	}
}
