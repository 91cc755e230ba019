package stage

import (
	"cuesta/orient"
)

// distance is how far the eye is from the target, in cm. The focal length is
// distance times the scale, so that zooming never changes the perspective.
const distance = 88

var target = orient.Vec{Z: 5}

// lens projects the world on the picture.
type lens struct {
	eye, right, up, ahead orient.Vec
	scale                 float64 // px per cm at the target
	cx, cy                float64 // where the target falls
}

func lensOf(az orient.Azimuth, el orient.Angle) lens {
	back := direction(az, el)
	ahead := mul(-1, back)
	right := orient.Unit(cross(ahead, orient.Up))
	return lens{
		eye: add(target, mul(distance, back)), ahead: ahead, right: right, up: cross(right, ahead), scale: 1,
	}
}

// project returns the place of p in the picture.
func (l *lens) project(p orient.Vec) (x, y float64) {
	q := sub(p, l.eye)
	k := l.scale * distance / dot(q, l.ahead)
	return l.cx + k*dot(q, l.right), l.cy - k*dot(q, l.up)
}

// sees says whether the side of a plane through p towards which n points
// faces the eye.
func (l *lens) sees(p, n orient.Vec) bool { return dot(n, sub(l.eye, p)) > 0 }
