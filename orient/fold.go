package orient

import "gonum.org/v1/gonum/spatial/r3"

// Hinge is the fold axis between two limbs: the line they share. False if the
// limbs are parallel.
func Hinge(p, q Plane) (Line, bool) { return Intersection(p, q) }

// InterlimbAngle is the angle between two limbs measured across the fold that
// closes upwards or downwards with both limbs in view: 180° less the angle
// between their upward normals, in [0, π]. Flat-lying limbs give 180°. A limb
// marked as overturned has turned past the vertical and counts with its
// normal reversed.
func InterlimbAngle(p, q Plane) Angle {
	a, b := stratigraphicUp(p), stratigraphicUp(q)
	return Half - Atan2(length(r3.Cross(a, b)), r3.Dot(a, b))
}

// AxialPlane halves the interlimb angle: it holds the hinge and the line
// midway between the limbs. False if the limbs are parallel.
func AxialPlane(p, q Plane) (Plane, bool) {
	a, b := stratigraphicUp(p), stratigraphicUp(q)
	if length(r3.Cross(a, b)) < parallel {
		return Plane{}, false
	}
	return PlaneFromNormal(r3.Sub(a, b))
}

// stratigraphicUp points to the younger side of the bed.
func stratigraphicUp(p Plane) Vec {
	if p.Overturned {
		return r3.Scale(-1, p.Normal())
	}
	return p.Normal()
}
