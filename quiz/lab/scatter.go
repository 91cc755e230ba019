package lab

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/orient/sphere"
	"cuesta/quiz/item"
)

// Repeats is what repeated readings of one station come to.
type Repeats struct {
	Count int
	Mean  orient.Plane // whose pole is the axial mean of the poles
	Off   orient.Angle // root mean square of the angles from the poles to their mean, in [0, π/2]
	Most  orient.Angle // the greatest of them
}

// RepeatsOf sums up readings. False when there are fewer than two, or they
// prefer no plane.
func RepeatsOf(planes []orient.Plane) (Repeats, bool) {
	mean, ok := sphere.MeanPlane(planes)
	if len(planes) < 2 || !ok {
		return Repeats{}, false
	}
	r := Repeats{Count: len(planes), Mean: mean}
	sum := 0.0
	for _, p := range planes {
		a := mean.AngleTo(p)
		r.Most = max(r.Most, a)
		sum += a.Radians() * a.Radians()
	}
	r.Off = orient.Angle(math.Sqrt(sum / float64(len(planes))))
	return r, true
}

// away is how far the last plane lies from the nearest of the others, between
// their poles; 0 without others.
func away(planes []orient.Plane) orient.Angle {
	if len(planes) < 2 {
		return 0
	}
	last := len(planes) - 1
	nearest := orient.Right
	for _, p := range planes[:last] {
		nearest = min(nearest, p.AngleTo(planes[last]))
	}
	return nearest
}

// Words says what they come to, in the notation of the course.
func (r Repeats) Words(n orient.Notation) string {
	s := fmt.Sprintf("%d readings: mean %s, scatter %.1f°, the farthest %.1f° from the mean.",
		r.Count, orient.Format(r.Mean.Rounded(orient.Degree), n), r.Off.Degrees(), r.Most.Degrees())
	if r.Most > item.Apart {
		s += " They do not agree: one may be written from the other end, or of another face."
	}
	return s
}
