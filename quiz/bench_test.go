package quiz_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// hands measure on the real bench of package sim, by commands alone.
type hands struct {
	t     *testing.T
	r     *rand.Rand
	w     *sim.World
	truth orient.Plane
	dec   orient.Angle
}

func newHands(t *testing.T, r *rand.Rand) *hands {
	h := &hands{t: t, r: r, truth: quiz.DefaultMix.Plane(r), dec: deg(math.Round(8 + 17*r.Float64()))}
	if r.IntN(2) == 0 {
		h.dec = -h.dec
	}
	w, err := sim.New(sim.Setup{Seed: r.Uint64(), Plane: h.truth, Field: sim.Field{Declination: h.dec, Horizontal: 20e-6}, Ring: h.dec})
	if err != nil {
		t.Fatal(err)
	}
	h.w = w
	return h
}

func (h *hands) do(k sim.Kind, a orient.Angle) {
	h.t.Helper()
	if err := h.w.Do(sim.Command{Kind: k, Angle: a}); err != nil {
		h.t.Fatal(err)
	}
}

func (h *hands) seat(s sim.Seat) {
	if err := h.w.Do(sim.Command{Kind: sim.Place, Seat: s}); err != nil {
		h.t.Fatal(err)
	}
}

// swingTo turns the edge to the swing φ.
func (h *hands) swingTo(phi orient.Angle) { h.do(sim.Swing, (phi - h.w.Pose().Swing).Wrapped()) }

// plunging is the swing near the right-hand end at which the edge plunges β.
func (h *hands) plunging(beta orient.Angle) orient.Angle {
	return orient.Asin(beta.Sin() / h.truth.Dip.Sin())
}

// level rolls the plate level across.
func (h *hands) level() {
	f := h.w.Observe().Frame
	h.do(sim.Roll, -orient.Atan2(-f.Right.Z, f.Out.Z))
}

// settle waits, taps and waits.
func (h *hands) settle() {
	h.w.Advance(10 * sim.TicksPerSecond)
	h.do(sim.Tap, 0)
	h.w.Advance(5 * sim.TicksPerSecond)
}

// strike is the strike read with care, but for the swing.
func (h *hands) strike(phi orient.Angle) orient.Angle {
	h.swingTo(phi)
	h.level()
	h.settle()
	return h.dial()
}

// dial reads the dial to the degree.
func (h *hands) dial() orient.Angle {
	h.do(sim.Read, 0)
	return deg(float64(h.w.Observe().Dial.Degree()))
}

// dip is the dip read at a swing, with a lean and the arm off by some angle.
func (h *hands) dip(phi, lean, off orient.Angle) (degrees, percent orient.Angle) {
	h.seat(sim.OnSide)
	h.swingTo(phi)
	h.do(sim.Roll, lean)
	f := h.w.Observe().Frame
	beta := orient.Asin(-f.Forward.Z).Abs()
	eta := orient.Atan2(math.Abs(f.Out.Z), math.Abs(f.Right.Z))
	arm := orient.Atan2(beta.Sin(), beta.Cos()*eta.Cos()) + off
	h.do(sim.Arm, arm-h.w.Pose().Arm)
	h.w.Advance(2 * sim.TicksPerSecond)
	h.do(sim.Read, 0)
	arc := h.w.Observe().Arc
	return deg(float64(arc.Degree())), deg(math.Round(arc.Percent))
}

// either draws evenly from ±[from, to] degrees.
func (h *hands) either(from, to float64) orient.Angle {
	a := deg(from + h.r.Float64()*(to-from))
	if h.r.IntN(2) == 0 {
		return -a
	}
	return a
}

func (h *hands) straight() orient.Angle {
	d, _ := h.dip(orient.Right, 0, 0)
	return d
}

// careless are the measurements with one mistake each, on the real bench.
var careless = []struct {
	made mistake.Kind
	do   func(h *hands) (strike, dip orient.Angle)
}{
	{mistake.OtherEnd, func(h *hands) (orient.Angle, orient.Angle) { return h.strike(orient.Half), h.straight() }},
	{mistake.SouthEnd, func(h *hands) (orient.Angle, orient.Angle) { return h.strike(0) + orient.Half, h.straight() }},
	{mistake.EastWest, func(h *hands) (orient.Angle, orient.Angle) { return orient.Full - h.strike(0), h.straight() }},
	{mistake.DeclinationNotSet, func(h *hands) (orient.Angle, orient.Angle) {
		h.do(sim.Ring, 0)
		return h.strike(0), h.straight()
	}},
	{mistake.DeclinationWrongSign, func(h *hands) (orient.Angle, orient.Angle) {
		h.do(sim.Ring, -h.dec)
		return h.strike(0), h.straight()
	}},
	{mistake.LevelNotCentred, func(h *hands) (orient.Angle, orient.Angle) {
		return h.strike(h.plunging(h.either(1, 4.5))), h.straight()
	}},
	{mistake.NeedleMoving, func(h *hands) (orient.Angle, orient.Angle) {
		h.strike(h.either(40, 90))
		h.swingTo(0)
		h.level()
		h.w.Advance(sim.TicksPerSecond * (1 + h.r.IntN(4)) / 4)
		return h.dial(), h.straight()
	}},
	{mistake.NeedleRubbing, func(h *hands) (orient.Angle, orient.Angle) {
		h.strike(h.either(10, 60))
		h.do(sim.Roll, deg(12))
		h.swingTo(0)
		h.settle()
		return h.dial(), h.straight()
	}},
	{mistake.NeedleLocked, func(h *hands) (orient.Angle, orient.Angle) {
		h.strike(h.either(10, 60))
		h.do(sim.Lock, 0)
		h.swingTo(0)
		h.level()
		h.settle()
		return h.dial(), h.straight()
	}},
	{mistake.EdgeNotDownDip, func(h *hands) (orient.Angle, orient.Angle) {
		s := h.strike(0)
		d, _ := h.dip(orient.Right+h.either(15, 60), 0, 0)
		return s, d
	}},
	{mistake.BodyLeaning, func(h *hands) (orient.Angle, orient.Angle) {
		s := h.strike(0)
		d, _ := h.dip(orient.Right, h.either(15, 50), 0)
		return s, d
	}},
	{mistake.TubeNotCentred, func(h *hands) (orient.Angle, orient.Angle) {
		s := h.strike(0)
		d, _ := h.dip(orient.Right, 0, h.either(4, 15))
		return s, d
	}},
	{mistake.PercentScale, func(h *hands) (orient.Angle, orient.Angle) {
		s := h.strike(0)
		_, p := h.dip(orient.Right, 0, 0)
		return s, p
	}},
	{mistake.Complement, func(h *hands) (orient.Angle, orient.Angle) { return h.strike(0), orient.Right - h.straight() }},
}

// judge gives the verdict on what the hands wrote; false when it would have
// been refused.
func (h *hands) judge(strike, dip orient.Angle) (quiz.Case, quiz.Verdict, bool) {
	c := quiz.Case{Entry: entry(orient.PlaneOf(strike, dip)), Truth: h.truth, Declination: h.dec, Tolerance: quiz.DefaultTolerance}
	c.Edge, c.HasEdge = h.w.Reading(sim.OnEdge)
	c.Side, c.HasSide = h.w.Reading(sim.OnSide)
	return c, quiz.Judge(c), dip >= 0 && dip <= orient.Right
}

func TestMistakesAreToldOnTheRealBench(t *testing.T) {
	const n = 120
	for i, c := range careless {
		var wrong, apart, told int
		r := rand.New(rand.NewPCG(uint64(i), 6))
		for range n {
			h := newHands(t, r)
			cs, v, ok := h.judge(c.do(h))
			if !ok || v.Right {
				continue
			}
			wrong++
			if is, _ := cs.Evidence().Apart(c.made); !is {
				continue
			}
			apart++
			if names(v, c.made) {
				told++
			} else {
				t.Logf("%v: %v answered %v: %v", c.made, cs.Truth, v.Understood, v.Mistakes)
			}
		}
		t.Logf("%-26s planes %d wrong %3d apart %3d told %3d", c.made, n, wrong, apart, told)
		if apart < n/6 || float64(told) < 0.95*float64(apart) {
			t.Errorf("%v: told in %d of %d, want at least %d and 95 %%", c.made, told, apart, n/6)
		}
	}
}

// names says whether k is the most probable mistake, alone or beside others of
// the same probability.
func names(v quiz.Verdict, k mistake.Kind) bool {
	for _, f := range v.Mistakes {
		if f.Kind == k {
			return f.Probability >= v.Mistakes[0].Probability-0.02
		}
	}
	return false
}

func TestCarefulHandsAreRight(t *testing.T) {
	const n = 200
	r := rand.New(rand.NewPCG(9, 6))
	var right, strike int
	for range n {
		h := newHands(t, r)
		_, v, _ := h.judge(h.strike(h.plunging(h.either(0, 0.3))), h.straight())
		if v.StrikeRight {
			strike++
		}
		if v.Right {
			right++
		} else {
			t.Logf("%v answered %v: off %.1f° and %.1f°", h.truth, v.Understood, v.LineError.Degrees(), v.DipError.Degrees())
		}
	}
	if got, want := right, n*995/1000; got < want {
		t.Errorf("right %d of %d, want at least %d (strike right %d)", got, n, want, strike)
	}
}
