package scenes

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// turning is the instrument as it is seen on its way from one pose to another.
// The bench knows nothing of the way: there a pose changes at once.
type turning struct {
	to   sim.Pose // as the bench has it
	from sim.Pose // as it was seen when the way began
	left int      // ticks of the way that remain
}

// turnTicks is the length of the way, 600 ms.
const turnTicks = 600 * sim.TicksPerSecond / 1000

// meet sets out for a pose that the bench has come to.
func (t *turning) meet(p sim.Pose, atOnce bool) {
	if p == t.to {
		return
	}
	t.from, t.left = t.seen(), turnTicks
	if atOnce || t.to.Frame == (sim.Frame{}) {
		t.left = 0
	}
	t.to = p
}

func (t *turning) pass(ticks int) { t.left = max(0, t.left-ticks) }

// share is what of the way is left, in [0, 1].
func (t *turning) share() float64 { return 1 - ease(1-float64(t.left)/turnTicks) }

// seen is the pose as it is seen now.
func (t *turning) seen() sim.Pose {
	k := t.share()
	if k == 0 {
		return t.to
	}
	p := t.to
	p.Frame = between(t.to.Frame, t.from.Frame, k)
	p.Arm += orient.Angle(k) * (t.from.Arm - t.to.Arm)
	return p
}

func (t *turning) off() stage.Off {
	return stage.Off{Share: t.share(), Seat: t.from.Seat, Seated: t.from.Seated}
}

// seenBy is what is observed while the instrument is on its way: a needle that
// swings free keeps its direction in the world.
func (t *turning) seenBy(o sim.Observation) sim.Observation {
	if t.left == 0 {
		return o
	}
	p := t.seen()
	if o.Dial.State == sim.NeedleFree {
		s, c := math.Sincos(o.Dial.Needle.Radians())
		f, r := o.Frame.Forward, o.Frame.Right
		n := orient.Unit(orient.Vec{X: c*f.X + s*r.X, Y: c*f.Y + s*r.Y})
		o.Dial.Needle = orient.Atan2(n.X*p.Frame.Right.X+n.Y*p.Frame.Right.Y, n.X*p.Frame.Forward.X+n.Y*p.Frame.Forward.Y)
	}
	o.Frame, o.Arc.Arm = p.Frame, p.Arm
	return o
}

// between is the frame a share k of the turn that leads from one to the other,
// the short way round.
func between(from, to sim.Frame, k float64) sim.Frame {
	axis, angle := turnOf(from, to)
	a := orient.Angle(k) * angle
	return sim.Frame{Forward: spun(from.Forward, axis, a), Right: spun(from.Right, axis, a), Out: spun(from.Out, axis, a)}
}

// turnOf is the axis and angle of the turn from one frame to another, by way of
// its quaternion: the greatest of the four squares is taken for the root, so
// that half turns have an axis too (Shepperd 1978, J. Guidance and Control 1,
// 223; from memory).
func turnOf(from, to sim.Frame) (axis orient.Vec, angle orient.Angle) {
	var m [3][3]float64 // maps from to to
	for _, p := range [3][2]orient.Vec{{from.Forward, to.Forward}, {from.Right, to.Right}, {from.Out, to.Out}} {
		u, v := [3]float64{p[0].X, p[0].Y, p[0].Z}, [3]float64{p[1].X, p[1].Y, p[1].Z}
		for i := range 3 {
			for j := range 3 {
				m[i][j] += v[i] * u[j]
			}
		}
	}
	w := 1 + m[0][0] + m[1][1] + m[2][2]
	x := 1 + m[0][0] - m[1][1] - m[2][2]
	y := 1 - m[0][0] + m[1][1] - m[2][2]
	z := 1 - m[0][0] - m[1][1] + m[2][2]
	var q [4]float64 // w, x, y, z, each times the root
	switch max(w, x, y, z) {
	case w:
		q = [4]float64{w, m[2][1] - m[1][2], m[0][2] - m[2][0], m[1][0] - m[0][1]}
	case x:
		q = [4]float64{m[2][1] - m[1][2], x, m[1][0] + m[0][1], m[0][2] + m[2][0]}
	case y:
		q = [4]float64{m[0][2] - m[2][0], m[1][0] + m[0][1], y, m[2][1] + m[1][2]}
	default:
		q = [4]float64{m[1][0] - m[0][1], m[0][2] + m[2][0], m[2][1] + m[1][2], z}
	}
	axis = orient.Vec{X: q[1], Y: q[2], Z: q[3]}
	sine := math.Sqrt(axis.X*axis.X + axis.Y*axis.Y + axis.Z*axis.Z)
	angle = (2 * orient.Atan2(sine, q[0])).Wrapped()
	return orient.Unit(axis), angle
}

// spun is v turned about a unit axis (Rodrigues' formula).
func spun(v, axis orient.Vec, a orient.Angle) orient.Vec {
	s, c := a.Sin(), a.Cos()
	k := (1 - c) * (axis.X*v.X + axis.Y*v.Y + axis.Z*v.Z)
	return orient.Vec{
		X: c*v.X + s*(axis.Y*v.Z-axis.Z*v.Y) + k*axis.X,
		Y: c*v.Y + s*(axis.Z*v.X-axis.X*v.Z) + k*axis.Y,
		Z: c*v.Z + s*(axis.X*v.Y-axis.Y*v.X) + k*axis.Z,
	}
}
