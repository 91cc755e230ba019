package sim

import (
	"math"

	"cuesta/orient"
)

// stance is how the instrument rests on the rock: what the student has set by
// hand. Everything else about the pose follows from it and the rock.
type stance struct {
	seat  Seat
	swing orient.Angle // φ in (−π, π]
	edge  orient.Angle // OnEdge: the plate above the rock about the seated edge, [0, π]
	lean  orient.Angle // OnSide: η off the vertical, face turned up positive
	hinge orient.Angle // OnLid: the body above the lid, [0, π]
	arm   orient.Angle // [0, π/2]
	ring  orient.Angle // (−π, π]
}

// rock is the surface: strike line, line of steepest descent, upward normal.
type rock struct {
	strike, down, normal orient.Vec
}

func rockOf(p orient.Plane) rock {
	return rock{strike: p.StrikeVec(), down: p.DownDip(), normal: p.Normal()}
}

// along is f, the edge at the swing φ: cos φ · S + sin φ · D.
func (k rock) along(φ orient.Angle) orient.Vec { return blend(k.strike, k.down, φ) }

// aside is the direction in the surface to the right of the edge, f × N:
// cos φ · D − sin φ · S.
func (k rock) aside(φ orient.Angle) orient.Vec {
	return blend(k.down, k.strike, -φ)
}

// blend is cos a · u + sin a · v, each product rounded before the sum.
func blend(u, v orient.Vec, a orient.Angle) orient.Vec {
	c, s := a.Cos(), a.Sin()
	return orient.Vec{
		X: float64(c*u.X) + float64(s*v.X),
		Y: float64(c*u.Y) + float64(s*v.Y),
		Z: float64(c*u.Z) + float64(s*v.Z),
	}
}

// seated is the long edge that stands on the rock. It follows from the swing,
// so that a level plate always reaches out over the falling side and the arm
// always reads a positive angle. Flat seats stand on no edge; they say Left.
func (t stance) seated() Side {
	switch {
	case t.seat == OnEdge && t.swing.Cos() < 0, t.seat == OnSide && t.swing.Sin() < 0:
		return RightSide
	}
	return Left
}

// hand is +1 with the left edge seated, −1 with the right one.
func (t stance) hand() orient.Angle {
	if t.seated() == Left {
		return 1
	}
	return -1
}

// above is the angle of the plate above the rock about the seated edge or the
// hinge, in [0, π]: 0 lies flat on it, face up; π lies against it, face down.
func (t stance) above(k rock) orient.Angle {
	switch t.seat {
	case OnEdge:
		return t.edge
	case OnSide:
		return max(0, min(orient.Half, k.upright(t)-t.lean))
	case OnLid:
		return t.hinge
	case OnBack:
	}
	return 0
}

// upright is the angle above the rock at which the face is vertical. Where
// the edge itself is vertical the face always is; then it is a right angle.
func (k rock) upright(t stance) orient.Angle {
	across := k.aside(t.swing).Z * t.hand().Radians()
	if math.Abs(across)+k.normal.Z < 1e-12 {
		return orient.Right
	}
	return orient.Atan2(k.normal.Z, across)
}

// level is the angle above the rock at which the plate is level across.
func (k rock) level(t stance) orient.Angle {
	return orient.Atan2(math.Abs(k.aside(t.swing).Z), k.normal.Z)
}

// frame is the body in the world.
func (t stance) frame(k rock) Frame {
	if t.seat == OnLid {
		return t.hinged(k)
	}
	turn := t.above(k) * t.hand()
	aside := k.aside(t.swing)
	return Frame{
		Forward: k.along(t.swing),
		Right:   blend(aside, k.normal, turn),
		Out:     blend(k.normal, aside, -turn),
	}
}

// hinged is the body above a lid that lies flush on the rock. The hinge lies in
// the surface, at the back end, square to the swing; opening it lifts the
// forward end. So the body is level only with the hinge along the strike and
// opened by the dip, and then points down the dip.
func (t stance) hinged(k rock) Frame {
	along := k.along(t.swing)
	return Frame{
		Forward: blend(along, k.normal, t.hinge),
		Right:   k.aside(t.swing),
		Out:     blend(k.normal, along, -t.hinge),
	}
}

// swung is the stance after a turn on the surface. On its edge and on its lid
// the plate keeps its angle to the rock; on its side the hand keeps its lean.
func (t stance) swung(a orient.Angle, k rock) stance {
	t.swing = (t.swing + a).Wrapped()
	return t.clear(k)
}

// rolled is the stance after a roll about the seated edge, right side down
// positive, or about the hinge, forward end up positive, as far as the rock
// allows. What lies flat cannot roll.
func (t stance) rolled(a orient.Angle, k rock) stance {
	switch t.seat {
	case OnEdge:
		t.edge -= a * t.hand()
	case OnSide:
		t.lean += a * t.hand()
	case OnLid:
		t.hinge += a
	case OnBack:
	}
	return t.clear(k)
}

// clear keeps the plate out of the rock.
func (t stance) clear(k rock) stance {
	t.edge = max(0, min(orient.Half, t.edge))
	t.hinge = max(0, min(orient.Half, t.hinge))
	if t.seat == OnSide {
		up := k.upright(t)
		t.lean = max(up-orient.Half, min(up, t.lean))
	}
	return t
}

// touching says whether the plate lies against the rock.
func (t stance) touching(k rock) bool {
	a := t.above(k)
	return a <= 0 || a >= orient.Half
}

// flipped is the stance turned end for end: a level plate stays level. A hinge
// keeps its angle.
func (t stance) flipped() stance {
	t.swing = (t.swing + orient.Half).Wrapped()
	return t
}
