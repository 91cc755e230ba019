package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage/rock"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// Where things stand, in cm.
const (
	baseTop  = 0.9  // height of the base plate
	clearing = 0.36 // between base plate and the lowest corner of the slab
)

// scene is one picture in the making: the parameters and what follows from
// them. S, D and N are the strike line, straight down the dip and the upward
// normal; H is level, under D.
type scene struct {
	p          Params
	th         *theme.Theme
	lens       lens
	S, D, N, H orient.Vec
	top        orient.Vec // middle of the top of the slab
	light      orient.Vec // towards the light
	tool       tool
	list       *draw.List
	arrowA     float64 // where along the strike the arrow lies
	water      water
	slabHull   hull
	standHull  hull
	toolHull   hull
	placed     [8]box // labels so far
	boxes      int
	part       wet // what of the instrument is being painted
}

// set works out everything that is not drawn.
func (sc *scene) set(l *draw.List, p Params) {
	sc.p, sc.th, sc.list = p, p.Theme, l
	sc.S, sc.D, sc.N, sc.H = p.Plane.StrikeVec(), p.Plane.DownDip(), p.Plane.Normal(), p.Plane.DipDirection().Vec()
	sc.top = slabTop(p.Plane)
	sc.tool = seatTool(sc)
	cam := p.Camera.above(p.Plane).nearer(p.Plane, p.Pose)
	sc.light = lightFor(p.Plane, cam, p.Pose.Seat)
	sc.lens = lensOf(cam.Azimuth, cam.Elevation)
	sc.frame()
	sc.outlines()
	sc.boxes = 0
}

// slabTop is the middle of the top: high enough for the lowest corner to clear
// the base, and set so that the slab stands over the middle of the ring.
func slabTop(p orient.Plane) orient.Vec {
	sin, cos := p.Dip.Sin(), p.Dip.Cos()
	c := mul(rock.Thick/2*sin, p.DipDirection().Vec())
	c.Z = baseTop + clearing + rock.HalfB*sin + rock.Thick*cos
	return c
}

// lightFor follows the view, so that the light falls from the upper left; on
// steep beds it comes round to the front, or the top would lie in the dark.
func lightFor(p orient.Plane, cam Camera, seat sim.Seat) orient.Vec {
	turn := 42 * orient.Degree
	if seat == sim.OnSide {
		turn = 10 * orient.Degree // so that the near end of the slab is lit
	}
	az := cam.Azimuth.Add(turn)
	down := p.DipDirection()
	most := orient.Angle(lerp(200, 48, ease(0.2, 1.2, p.Dip.Radians()))) * orient.Degree
	off := az.From(down)
	off = max(-most, min(most, off))
	return direction(down.Add(off), 56*orient.Degree)
}

// on is the point a along the strike and b down the dip on the plane of the
// top, n above it.
func (sc *scene) on(a, b, n float64) orient.Vec {
	q := sc.top
	q.X += a*sc.S.X + b*sc.D.X + n*sc.N.X
	q.Y += a*sc.S.Y + b*sc.D.Y + n*sc.N.Y
	q.Z += a*sc.S.Z + b*sc.D.Z + n*sc.N.Z
	return q
}

// at is the level frame under the slab: a along the strike, h towards the dip,
// z up.
func (sc *scene) at(a, h, z float64) orient.Vec {
	return orient.Vec{X: a*sc.S.X + h*sc.H.X, Y: a*sc.S.Y + h*sc.H.Y, Z: z}
}

// coords is the inverse of on.
func (sc *scene) coords(p orient.Vec) (a, b, n float64) {
	q := sub(p, sc.top)
	return dot(q, sc.S), dot(q, sc.D), dot(q, sc.N)
}

// shade is how much light a face with the normal n gives back.
func (sc *scene) shade(n orient.Vec) float64 {
	l := dot(n, sc.light)
	if sc.th.Flat {
		switch {
		case n.Z > 0.3:
			return 1
		case l > 0.2:
			return 0.86
		default:
			return 0.74
		}
	}
	return min(1, 0.57+0.11*n.Z+0.43*max(0, l))
}

// px is a length in the picture that grows with the unit.
func (sc *scene) px(v float64) float64 { return v * sc.p.Unit }

func (sc *scene) open(t *draw.Texture) brush {
	return brush{pen: sc.list.Open(t), lens: &sc.lens}
}
