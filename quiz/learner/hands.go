package learner

import (
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/sim"
	"cuesta/sim/record"
)

// hands work a bench by commands, and see nothing but the observation. The
// first error stays and stops them.
type hands struct {
	rec *record.Recorder
	r   *rand.Rand
	err error

	strike, down orient.Vec // of the rock, as seen
	dip          orient.Angle
}

func (h *hands) do(c sim.Command) {
	if h.err == nil {
		h.err = h.rec.Do(c)
	}
}

func (h *hands) turn(k sim.Kind, a orient.Angle) { h.do(sim.Command{Kind: k, Angle: a}) }

func (h *hands) act(k sim.Kind) { h.do(sim.Command{Kind: k}) }

func (h *hands) wait(seconds float64) {
	if h.err == nil {
		h.rec.Advance(int(math.Round(seconds * sim.TicksPerSecond)))
	}
}

func (h *hands) see() sim.Observation { return h.rec.World().Observe() }

// lookAround turns the edge a little: two directions of it span the rock. It
// stands for the eye, which sees at once how the slab lies.
func (h *hands) lookAround() {
	before := h.see().Frame.Forward
	h.turn(sim.Swing, 30*orient.Degree)
	after := h.see().Frame.Forward
	h.face(orient.Unit(cross(before, after)))
}

// face takes in the rock with the normal n.
func (h *hands) face(n orient.Vec) {
	if n.Z < 0 {
		n = orient.Vec{X: -n.X, Y: -n.Y, Z: -n.Z}
	}
	dips := orient.AzimuthOf(orient.Atan2(n.X, n.Y))
	h.dip = orient.Atan2(math.Sqrt(n.X*n.X+n.Y*n.Y), n.Z)
	p := orient.Plane{Strike: dips.Add(-orient.Right), Dip: h.dip}
	h.strike, h.down = p.StrikeVec(), p.DownDip()
}

func cross(a, b orient.Vec) orient.Vec {
	return orient.Vec{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

func dot(a, b orient.Vec) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// swingTo turns the edge to a swing from the right-hand end of the strike
// towards the dip.
func (h *hands) swingTo(to orient.Angle) {
	f := h.see().Frame.Forward
	h.turn(sim.Swing, (to - orient.Atan2(dot(f, h.down), dot(f, h.strike))).Wrapped())
}

// plunging is the swing, beside the right-hand end, at which the edge plunges.
func (h *hands) plunging(a orient.Angle) orient.Angle {
	s := a.Sin() / math.Max(h.dip.Sin(), 1e-9)
	return orient.Asin(max(-1, min(1, s)))
}

// level rolls the plate level across, but for off.
func (h *hands) level(off orient.Angle) {
	f := h.see().Frame
	h.turn(sim.Roll, (off - orient.Atan2(-f.Right.Z, f.Out.Z)).Wrapped())
}

// upright rolls the body on its side back to the vertical, where someone left it
// leaning.
func (h *hands) upright() {
	o := h.see()
	lean := orient.Atan2(o.Frame.Out.Z, math.Abs(o.Frame.Right.Z))
	if o.Seated == sim.RightSide {
		lean = -lean
	}
	if lean.Abs() > 1e-9 {
		h.turn(sim.Roll, -lean)
	}
}

// settle lets the needle come to rest, and taps it free of its pivot.
func (h *hands) settle() {
	h.wait(6)
	for range 12 {
		h.act(sim.Tap)
		h.wait(3)
		if h.err != nil || h.see().Dial.Resting {
			return
		}
	}
}

// some draws about nought with a standard deviation in degrees.
func (h *hands) some(sd float64) orient.Angle {
	return orient.Angle(h.r.NormFloat64()*sd) * orient.Degree
}

// either draws evenly from ±[from, to] degrees.
func (h *hands) either(from, to float64) orient.Angle {
	a := orient.Angle(from+h.r.Float64()*(to-from)) * orient.Degree
	if h.r.IntN(2) == 0 {
		return -a
	}
	return a
}
