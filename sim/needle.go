package sim

import (
	"cuesta/orient"
	"cuesta/sim/instrument"
)

// needle is the needle in its case. While it is free it keeps its direction in
// the world; while it is locked or rubs it keeps its angle in the body.
type needle struct {
	state   NeedleState
	bearing instrument.Bearing // while free
	held    orient.Angle       // otherwise: clockwise from forward, (−π, π]
	tremble int                // ticks for which the case still trembles from a tap
	pull    instrument.Pull
	dip     orient.Angle // the needle off the horizontal
	tilt    orient.Angle // of the case
}

// trembleTicks is how long a tapped case trembles; the pivot friction comes
// back evenly over that time (design assumption).
const trembleTicks = 3 * TicksPerSecond / 2

// needleIn is the needle n at a place.
func needleIn(f Field, b Balance, n instrument.Needle) needle {
	z := f.Vertical()
	return needle{
		pull: instrument.Pull{North: f.Declination, Horizontal: f.Horizontal},
		dip:  n.Dip(z, b.vertical(z)),
	}
}

// step lets one tick pass.
func (d *needle) step(n instrument.Needle) {
	grip := 1.0
	if d.tremble > 0 {
		grip = 1 - float64(d.tremble)/trembleTicks
		d.tremble--
	}
	if d.state == NeedleFree {
		d.bearing = n.Step(d.bearing, d.pull, grip, stepSeconds)
	}
}

// follow takes the needle along from one pose of the case to the next.
func (d *needle) follow(before, after Frame, n instrument.Needle) {
	d.tilt = after.tilt()
	switch d.state {
	case NeedleFree:
		if n.Rubs(d.tilt, d.dip, false) {
			d.held = before.inBody(d.bearing.At)
			d.state = NeedleRubbing
		}
	case NeedleRubbing:
		if !n.Rubs(d.tilt, d.dip, true) {
			d.release(after, n)
		}
	case NeedleLocked:
	}
}

// release lets the needle swing from where it stands in the body; the glass or
// the lock gives it a shake as it lets go.
func (d *needle) release(f Frame, n instrument.Needle) {
	d.bearing = n.Shaken(instrument.Bearing{At: f.inWorld(d.held)}, d.pull)
	d.state = NeedleFree
}

// tap makes the case tremble; a needle that rubs comes free if there is room.
func (d *needle) tap(f Frame, n instrument.Needle) {
	d.tremble = trembleTicks
	switch {
	case d.state == NeedleFree:
		d.bearing = n.Shaken(d.bearing, d.pull)
	case d.state == NeedleRubbing && !n.Rubs(d.tilt, d.dip, false):
		d.release(f, n)
	}
}

// lock holds the needle where it stands in the body.
func (d *needle) lock(f Frame) {
	if d.state == NeedleFree {
		d.held = f.inBody(d.bearing.At)
	}
	d.state = NeedleLocked
}

// free lifts the lock; a tilted case then holds the needle by itself.
func (d *needle) free(f Frame, n instrument.Needle) {
	switch {
	case d.state != NeedleLocked:
	case n.Rubs(d.tilt, d.dip, false):
		d.state = NeedleRubbing
	default:
		d.release(f, n)
	}
}

// angle is the north end in the body, clockwise from forward.
func (d *needle) angle(f Frame) orient.Angle {
	if d.state == NeedleFree {
		return f.inBody(d.bearing.At)
	}
	return d.held
}

// resting says whether the needle will stay where it is.
func (d *needle) resting(n instrument.Needle) bool {
	return d.state != NeedleFree || d.tremble == 0 && n.Held(d.bearing, d.pull)
}

// inBody is the angle, clockwise from forward and seen along the normal of the
// face, of the horizontal direction a clockwise from north.
func (f Frame) inBody(a orient.Angle) orient.Angle {
	s, c := a.Sin(), a.Cos()
	right := float64(s*f.Right.X) + float64(c*f.Right.Y)
	forward := float64(s*f.Forward.X) + float64(c*f.Forward.Y)
	return orient.Atan2(right, forward)
}

// inWorld is the direction, clockwise from north, above which the body angle a
// clockwise from forward lies.
func (f Frame) inWorld(a orient.Angle) orient.Angle {
	v := blend(f.Forward, f.Right, a)
	return orient.Atan2(v.X, v.Y)
}
