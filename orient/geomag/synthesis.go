package geomag

import (
	"math"

	"cuesta/orient"
)

// The WGS 84 ellipsoid and the reference sphere of the model, in metres.
const (
	equatorial = 6378137.0
	flattening = 1 / 298.257223563
	reference  = 6371200.0
)

// vector is a field or its yearly change, north, east and down, in nT.
type vector struct{ north, east, down float64 }

// geocentric is a place in spherical coordinates.
type geocentric struct {
	sin, cos  float64 // of the geocentric latitude
	radius    float64 // metres
	longitude float64 // radians
	tilt      float64 // geocentric less geodetic latitude, radians
}

// geocentricOf turns height above the ellipsoid and geodetic latitude into
// radius and geocentric latitude.
func geocentricOf(s Site) geocentric {
	const e2 = flattening * (2 - flattening)
	sin, cos := s.Latitude.Sin(), math.Max(0, s.Latitude.Cos())
	if s.Latitude.Abs() == orient.Right {
		cos = 0
	}
	rc := equatorial / math.Sqrt(1-e2*sin*sin)
	p, z := (rc+s.Height)*cos, (rc*(1-e2)+s.Height)*sin
	r := math.Sqrt(p*p + z*z)
	return geocentric{
		sin: z / r, cos: p / r, radius: r, longitude: s.Longitude.Radians(),
		tilt: math.Atan2(z, p) - math.Atan2(sin, cos),
	}
}

// synthesis sums the terms and turns the result to the geodetic frame. The
// colatitude has sine g.cos and cosine g.sin.
func (t *table) synthesis(g geocentric, l *legendre) vector {
	var sum vector
	ratio := reference / g.radius
	power := ratio * ratio
	for n := 1; n <= degree; n++ {
		power *= ratio
		for m := 0; m <= n; m++ {
			sin, cos := math.Sincos(float64(m) * g.longitude)
			c := t[n][m]
			along := c.g*cos + c.h*sin
			sum.north += power * along * l.slope[n][m]
			sum.east += power * float64(m) * (c.g*sin - c.h*cos) * l.over[n][m]
			sum.down -= power * float64(n+1) * along * l.p[n][m]
		}
	}
	return sum.turned(g.tilt)
}

// turned takes a vector from the geocentric frame to the geodetic one.
func (v vector) turned(tilt float64) vector {
	sin, cos := math.Sincos(tilt)
	return vector{
		north: v.north*cos - v.down*sin,
		east:  v.east,
		down:  v.north*sin + v.down*cos,
	}
}
