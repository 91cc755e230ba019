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

// Agree says whether their mean stands for them.
func (r Repeats) Agree() bool { return r.Most <= item.Apart }

// Words says what they come to, in the notation of the course. Readings that do
// not agree have no mean worth telling: that of 140/14 and 320/14 is level.
func (r Repeats) Words(n orient.Notation) string {
	if !r.Agree() {
		return fmt.Sprintf("%d readings: they do not agree (scatter %.1f°), so no mean is given. One may be written from the other end, or of another face.",
			r.Count, r.Off.Degrees())
	}
	return fmt.Sprintf("%d readings: mean %s, scatter %.1f°, the farthest %.1f° from the mean.",
		r.Count, orient.Format(r.Mean.Rounded(orient.Degree), n), r.Off.Degrees(), r.Most.Degrees())
}
