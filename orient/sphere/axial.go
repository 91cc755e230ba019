package sphere

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"cuesta/orient"
)

// Axial is the mean of axes and how they scatter about it.
type Axial struct {
	Mean orient.Line
	// Eigenvalues of the orientation tensor, the largest first, each in [0, 1];
	// they sum to 1. Equal axes give 1, 0, 0; axes spread evenly, thirds.
	Eigenvalues [3]float64
}

// AxialMean is the axis along the eigenvector of the largest eigenvalue of the
// orientation tensor (1/n) Σ v·vᵀ, which does not depend on the end of an axis
// that was written (A. E. Scheidegger 1965, US Geological Survey Professional
// Paper 525-C; N. H. Woodcock 1977, GSA Bulletin 88, both from memory). False
// when there are no axes, one is not finite, or no axis is preferred: the two
// largest eigenvalues are the same.
func AxialMean(axes []orient.Line) (Axial, bool) {
	t, ok := tensor(axes)
	if !ok {
		return Axial{}, false
	}
	var e mat.EigenSym
	if !e.Factorize(t, true) {
		return Axial{}, false
	}
	var v mat.Dense
	e.VectorsTo(&v)
	s := e.Values(nil) // ascending
	a := Axial{Mean: orient.LineOf(orient.Vec{X: v.At(0, 2), Y: v.At(1, 2), Z: v.At(2, 2)})}
	for i := range a.Eigenvalues {
		a.Eigenvalues[i] = max(0, s[2-i])
	}
	return a, a.Eigenvalues[0]-a.Eigenvalues[1] > least
}

// least is the difference of eigenvalues below which no axis is preferred.
const least = 1e-9

// tensor is the orientation tensor in the world frame.
func tensor(axes []orient.Line) (*mat.SymDense, bool) {
	t := mat.NewSymDense(3, nil)
	for _, l := range axes {
		u := l.Vec()
		if v := u.X + u.Y + u.Z; math.IsNaN(v) {
			return nil, false
		}
		t.SymRankOne(t, 1/float64(len(axes)), mat.NewVecDense(3, []float64{u.X, u.Y, u.Z}))
	}
	return t, len(axes) > 0
}

// MeanPlane is the plane whose pole is the axial mean of the poles. It does
// not depend on the notation the planes were written in, nor on the end of
// their strikes near the vertical; which side is the younger is not looked at.
// False as AxialMean says.
func MeanPlane(planes []orient.Plane) (orient.Plane, bool) {
	poles := make([]orient.Line, len(planes))
	for i, p := range planes {
		poles[i] = p.Pole()
	}
	a, ok := AxialMean(poles)
	if !ok {
		return orient.Plane{}, false
	}
	p := orient.PlaneOfPole(a.Mean)
	p.Dip = max(0, p.Dip)
	return p, true
}
