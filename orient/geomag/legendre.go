package geomag

import "math"

// legendre holds the associated Legendre functions P(n,m) of the cosine of the
// colatitude θ, Schmidt semi-normalised, with their derivatives by θ. For
// m ≥ 1, over holds P(n,m)/sin θ, reckoned without dividing, so that the
// poles are places like any other.
type legendre struct {
	p, slope, over [degree + 1][degree + 1]float64
}

func legendreAt(sin, cos float64) *legendre {
	l := &legendre{}
	l.p[0][0] = 1
	for n := 1; n <= degree; n++ {
		for m := 0; m < n; m++ {
			l.below(n, m, sin, cos)
		}
		l.diagonal(n, sin, cos)
	}
	return l
}

// diagonal sets P(n,n) = √((2n−1)/2n) · sin θ · P(n−1,n−1); P(1,1) = sin θ.
func (l *legendre) diagonal(n int, sin, cos float64) {
	k := math.Sqrt(float64(2*n-1) / float64(2*n))
	if n == 1 {
		k = 1
	}
	l.p[n][n] = k * sin * l.p[n-1][n-1]
	l.slope[n][n] = k * (cos*l.p[n-1][n-1] + sin*l.slope[n-1][n-1])
	l.over[n][n] = k * l.p[n-1][n-1]
}

// below sets P(n,m) for m < n from the two degrees before:
// √(n²−m²) P(n,m) = (2n−1) cos θ P(n−1,m) − √((n−1)²−m²) P(n−2,m).
func (l *legendre) below(n, m int, sin, cos float64) {
	d := math.Sqrt(float64(n*n - m*m))
	a := float64(2*n-1) / d
	l.p[n][m] = a * cos * l.p[n-1][m]
	l.slope[n][m] = a * (cos*l.slope[n-1][m] - sin*l.p[n-1][m])
	l.over[n][m] = a * cos * l.over[n-1][m]
	if m > n-2 {
		return
	}
	b := math.Sqrt(float64((n-1)*(n-1)-m*m)) / d
	l.p[n][m] -= b * l.p[n-2][m]
	l.slope[n][m] -= b * l.slope[n-2][m]
	l.over[n][m] -= b * l.over[n-2][m]
}
