package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/sim"
)

// Camera says from where the bench is seen. Azimuth and elevation lead from
// the bench to the eye. Close goes from 0, the whole bench, to 1, the
// instrument alone, large enough to read its own figures.
type Camera struct {
	Azimuth   orient.Azimuth
	Elevation orient.Angle
	Close     float64
}

// How far the user may orbit from the starting view.
const (
	OrbitReach   = 60 * orient.Degree
	ElevationMin = 15 * orient.Degree
	ElevationMax = 60 * orient.Degree
)

// grazing is the least sine of the angle between line of sight and rock: below
// it the top could not be seen, and the painting order would fail.
const grazing = 0.17

// DefaultCamera is the starting view. With the instrument on its edge it shows
// the near end, the top and the gap under the plate in profile. On its side it
// faces the instrument. While the face can be read from the usual place the
// view does not follow the pose; else it is the nearest view from which face
// and rock are both seen. On a steep bed with the edge along the strike the face
// is turned to the hill, and there is none; it is then the usual one, and the
// face comes into view as the instrument is swung down the dip.
func DefaultCamera(p orient.Plane, o sim.Pose) Camera {
	c := usualCamera(p, o.Seat)
	if o.Seat == sim.OnSide {
		return c.facing(p, o.Frame.Out, 0.42, 60*orient.Degree)
	}
	return c.facing(p, o.Frame.Out, 0.36, 24*orient.Degree)
}

// AboveCamera looks straight down, north up on the screen: the map. Where the
// bed is so steep that its top could not be seen it stands on the falling side.
func AboveCamera() Camera {
	return Camera{Azimuth: orient.AzimuthOf(orient.Half), Elevation: 86 * orient.Degree}
}

func usualCamera(p orient.Plane, seat sim.Seat) Camera {
	if seat == sim.OnSide {
		return Camera{Azimuth: p.Strike.Add(24 * orient.Degree), Elevation: 27 * orient.Degree}
	}
	return Camera{Azimuth: p.Strike.Add(147 * orient.Degree), Elevation: 30 * orient.Degree}
}

// facing looks for the view nearest to c from which the face with the outward
// normal out is seen well enough: the sine between line of sight and face is at
// least fair. It turns by at most reach, and stays at c if that is not enough.
func (c Camera) facing(p orient.Plane, out orient.Vec, fair float64, reach orient.Angle) Camera {
	for turn := orient.Angle(0); turn <= reach; turn += 3 * orient.Degree {
		for lift := orient.Angle(0); lift <= 24*orient.Degree; lift += 6 * orient.Degree {
			for _, side := range [2]orient.Angle{1, -1} {
				d := Camera{Azimuth: c.Azimuth.Add(side * turn), Elevation: c.Elevation + lift}
				eye := direction(d.Azimuth, d.Elevation)
				if dot(eye, p.Normal()) >= grazing && dot(eye, out) >= fair {
					return d
				}
			}
		}
	}
	return c
}

// Orbit turns the camera by the two angles and keeps it where Clamp allows.
func (c Camera) Orbit(turn, lift orient.Angle, p orient.Plane, o sim.Pose) Camera {
	c.Azimuth = c.Azimuth.Add(turn)
	c.Elevation += lift
	return c.Clamp(p, o)
}

// Clamp returns the nearest camera that is allowed: within OrbitReach of the
// starting view, between the two elevations, and well above the plane of the
// rock.
func (c Camera) Clamp(p orient.Plane, o sim.Pose) Camera {
	usual := DefaultCamera(p, o)
	c.Elevation = ClampElevation(c.Elevation)
	turn := c.Azimuth.From(usual.Azimuth)
	c.Azimuth = usual.Azimuth.Add(max(-OrbitReach, min(OrbitReach, turn)))
	c.Close = max(0, min(1, c.Close))
	return c.above(p)
}

// above turns the camera towards the dip direction until it sees the top.
func (c Camera) above(p orient.Plane) Camera {
	down := p.DipDirection()
	k := p.Dip.Sin() * c.Elevation.Cos()
	if k < 1e-9 {
		return c
	}
	need := (grazing - p.Dip.Cos()*c.Elevation.Sin()) / k
	if need <= -1 {
		return c
	}
	most := orient.Acos(need)
	if turn := c.Azimuth.From(down); turn.Abs() > most {
		c.Azimuth = down.Add(orient.Angle(math.Copysign(float64(most), float64(turn))))
	}
	return c
}

// Between goes from c to d as k goes from 0 to 1, the short way round.
func (c Camera) Between(d Camera, k float64) Camera {
	return Camera{
		Azimuth:   c.Azimuth.Add(orient.Angle(k) * d.Azimuth.From(c.Azimuth)),
		Elevation: c.Elevation + orient.Angle(k)*(d.Elevation-c.Elevation),
		Close:     lerp(c.Close, d.Close, k),
	}
}

// nearer is the camera as it is used: close up it rises, or swings round, to
// look more squarely at the face.
func (c Camera) nearer(p orient.Plane, o sim.Pose) Camera {
	k := max(0, min(1, c.Close))
	if k == 0 {
		return c
	}
	d := c
	if o.Seat == sim.OnSide {
		// Only a face that is seen is turned to.
		out := o.Frame.Out
		to := orient.AzimuthOf(orient.Atan2(out.X, out.Y)).From(c.Azimuth)
		seen := ease(0.1, 0.4, dot(direction(c.Azimuth, c.Elevation), out))
		d.Azimuth = c.Azimuth.Add(orient.Angle(seen) * max(-OrbitReach, min(OrbitReach, to)))
		d.Elevation = 24 * orient.Degree
	} else {
		d.Elevation = 62 * orient.Degree
	}
	return c.Between(d, k).above(p)
}

// ClampElevation keeps an elevation between ElevationMin and ElevationMax.
func ClampElevation(a orient.Angle) orient.Angle { return max(ElevationMin, min(ElevationMax, a)) }
