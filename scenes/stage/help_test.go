package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// wide is the scene rectangle of a window of 1280×720.
var wide = draw.Rect{W: 928, H: 664}

var (
	strikes = []float64{0, 35, 90, 137, 180, 250, 315}
	dips    = []float64{0, 2, 10, 30, 45, 70, 88, 90}
)

func degrees(d float64) orient.Angle { return orient.Angle(d) * orient.Degree }

func planeOf(strike, dip float64) orient.Plane { return orient.PlaneOf(degrees(strike), degrees(dip)) }

// turned rotates v about a unit axis (Rodrigues' formula).
func turned(v, axis orient.Vec, a orient.Angle) orient.Vec {
	s, c := a.Sin(), a.Cos()
	return add(add(mul(c, v), mul(s, cross(axis, v))), mul((1-c)*dot(axis, v), axis))
}

// poseOf seats the instrument with the swing φ and the angle of the plate
// above the rock about the seated edge, in [0, π].
func poseOf(p orient.Plane, seat sim.Seat, swing, above orient.Angle) sim.Pose {
	f := add(mul(swing.Cos(), p.StrikeVec()), mul(swing.Sin(), p.DownDip()))
	o := sim.Pose{Seat: seat, Swing: swing}
	falling := swing.Cos() >= 0
	if seat == sim.OnSide {
		falling = swing.Sin() >= 0
	}
	// Flat on the rock, face up, and then turned up about the seated edge.
	right, out := cross(f, p.Normal()), p.Normal()
	if falling {
		o.Seated = sim.Left
		right, out = turned(right, f, -above), turned(out, f, -above)
	} else {
		o.Seated = sim.RightSide
		right, out = turned(right, f, above), turned(out, f, above)
	}
	o.Frame = sim.Frame{Forward: f, Right: right, Out: out}
	return o
}

func params(p orient.Plane, o sim.Pose) Params {
	return Params{
		Rect: wide, Unit: 1, Theme: theme.Of(theme.Light), Plane: p, Pose: o,
		Observation: sim.Observation{Seat: o.Seat, Seated: o.Seated, Frame: o.Frame},
		Camera:      DefaultCamera(p, o), RockSeed: 7, Coarse: true,
	}
}

// sceneOf works a scene out without drawing it.
func sceneOf(p Params) *scene {
	var l draw.List
	sc := &scene{}
	sc.set(&l, p)
	sc.plan()
	sc.arrowA = sc.sideForArrow()
	return sc
}

// level is the pose that reads the strike: forward along it, face up, level.
func level(p orient.Plane) sim.Pose { return poseOf(p, sim.OnEdge, 0, p.Dip) }

// upright is the pose that reads the dip: forward down it, face upright.
func upright(p orient.Plane) sim.Pose { return poseOf(p, sim.OnSide, orient.Right, orient.Right) }

// poses are good and bad ones.
func poses(p orient.Plane) []sim.Pose {
	list := []sim.Pose{level(p), upright(p), poseOf(p, sim.OnEdge, orient.Half, p.Dip), poseOf(p, sim.OnSide, -orient.Right, orient.Right)}
	for _, swing := range []float64{-50, 35, 140, -120} {
		for _, above := range []float64{0, 20, 90, 150, 180} {
			list = append(list, poseOf(p, sim.OnEdge, degrees(swing), degrees(above)))
			list = append(list, poseOf(p, sim.OnSide, degrees(swing), degrees(above)))
		}
	}
	return list
}

// cameras are the corners and the middle of what Clamp allows.
func cameras(p orient.Plane, o sim.Pose) []Camera {
	var list []Camera
	for _, turn := range []float64{-60, -25, 0, 40, 60} {
		for _, el := range []float64{15, 30, 60} {
			c := DefaultCamera(p, o)
			c.Elevation = degrees(el)
			c.Azimuth = c.Azimuth.Add(degrees(turn))
			list = append(list, c.Clamp(p, o))
		}
	}
	return list
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// eachScene calls f for every plane, a few poses and every camera.
func eachScene(f func(sc *scene)) {
	for i, s := range strikes {
		for j, d := range dips {
			p := planeOf(s, d)
			all := poses(p)
			for k := range 4 {
				o := all[(7*i+5*j+11*k)%len(all)]
				for _, c := range cameras(p, o) {
					q := params(p, o)
					q.Camera = c
					f(sceneOf(q))
				}
			}
		}
	}
}

// lidded is the pose on the lid, flush on the rock, opened so far.
func lidded(p orient.Plane, swing, open orient.Angle) sim.Pose {
	f := add(mul(swing.Cos(), p.StrikeVec()), mul(swing.Sin(), p.DownDip()))
	right := cross(f, p.Normal())
	o := sim.Pose{Seat: sim.OnLid, Swing: swing}
	o.Frame = sim.Frame{Forward: turned(f, right, open), Right: right, Out: turned(p.Normal(), right, open)}
	return o
}

// flatOn is the pose flat on the rock.
func flatOn(p orient.Plane, swing orient.Angle) sim.Pose { return poseOf(p, sim.OnBack, swing, 0) }
