package instrument

import (
	"math"

	"cuesta/orient"
)

// Dial is the graduated circle. It turns with the body while the needle stays,
// so its numbers run anticlockwise and E stands on the left of N: read at the
// north end it then gives the azimuth of the forward end. Ring is the
// declination set on it, east positive; the zero value reads magnetic
// azimuths.
type Dial struct {
	Ring orient.Angle
}

// At is the number that stands at the body angle a, clockwise from forward:
// Ring − a.
func (d Dial) At(a orient.Angle) orient.Azimuth { return orient.AzimuthOf(d.Ring - a) }

// Place is the body angle, clockwise from forward in (−π, π], at which the
// number z stands; the inverse of At.
func (d Dial) Place(z orient.Azimuth) orient.Angle { return (d.Ring - z.Angle()).Wrapped() }

// Graduated is z to the nearest whole degree of the scale, in [0, 360).
func Graduated(z orient.Azimuth) int { return int(math.Round(z.Degrees())) % 360 }
