package stage

import (
	"math"
	"testing"

	"cuesta/orient"
	"gonum.org/v1/gonum/mat"
)

// The projection against the textbook one: a view matrix, then a perspective
// divide, in homogeneous coordinates (general computer graphics practice),
// multiplied out by gonum.
func TestProjectionAgreesWithMatrices(t *testing.T) {
	for _, az := range []float64{0, 35, 182, 301} {
		for _, el := range []float64{15, 30, 60} {
			l := lensOf(orient.AzimuthOf(degrees(az)), degrees(el))
			l.scale, l.cx, l.cy = 16.2, 464, 344
			for _, p := range []orient.Vec{{}, {X: 20}, {X: -7, Y: 12, Z: 19}, {Y: -20.1}} {
				x, y := l.project(p)
				wantX, wantY := byMatrix(degrees(az), degrees(el), 16.2, 464, 344, p)
				if !near(x, wantX, 1e-9) || !near(y, wantY, 1e-9) {
					t.Errorf("azimuth %g, elevation %g, %v: got %.6f, %.6f, want %.6f, %.6f", az, el, p, x, y, wantX, wantY)
				}
			}
		}
	}
}

// byMatrix turns the world so that the eye looks along −z, moves it back, and
// divides by the depth.
func byMatrix(az, el orient.Angle, k, cx, cy float64, p orient.Vec) (x, y float64) {
	// Turn by the azimuth so that the eye stands to the south, then tip by 90° − el.
	a := math.Pi - az.Radians()
	z := mat.NewDense(4, 4, []float64{math.Cos(-a), -math.Sin(-a), 0, 0, math.Sin(-a), math.Cos(-a), 0, 0, 0, 0, 1, 0, 0, 0, 0, 1})
	tip := el.Radians() - math.Pi/2
	r := mat.NewDense(4, 4, []float64{1, 0, 0, 0, 0, math.Cos(tip), -math.Sin(tip), 0, 0, math.Sin(tip), math.Cos(tip), 0, 0, 0, 0, 1})
	lift := mat.NewDense(4, 4, []float64{1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, -target.Z, 0, 0, 0, 1})
	back := mat.NewDense(4, 4, []float64{1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, -distance, 0, 0, 0, 1})
	f := distance * k
	persp := mat.NewDense(4, 4, []float64{f, 0, 0, 0, 0, -f, 0, 0, 0, 0, 1, 0, 0, 0, -1, 0})
	var m mat.Dense
	m.Product(persp, back, r, z, lift)
	var v mat.VecDense
	v.MulVec(&m, mat.NewVecDense(4, []float64{p.X, p.Y, p.Z, 1}))
	return cx + v.AtVec(0)/v.AtVec(3), cy + v.AtVec(1)/v.AtVec(3)
}

func TestTargetKeepsItsScale(t *testing.T) {
	l := lensOf(orient.AzimuthOf(degrees(182)), degrees(30))
	l.scale, l.cx, l.cy = 16, 400, 300
	if x, y := l.project(target); !near(x, 400, 1e-9) || !near(y, 300, 1e-9) {
		t.Errorf("target: got %g, %g, want 400, 300", x, y)
	}
	if x, _ := l.project(add(target, l.right)); !near(x, 416, 1e-9) {
		t.Errorf("1 cm to the right of the target: got x = %g, want 416", x)
	}
}

// Seen from the south, east is to the right and north is farther away.
func TestCompassPointsOnTheScreen(t *testing.T) {
	l := lensOf(orient.AzimuthOf(orient.Half), degrees(30))
	at := func(az float64) (x, y float64) {
		return l.project(mul(ringOuter, orient.AzimuthOf(degrees(az)).Vec()))
	}
	nx, ny := at(0)
	ex, _ := at(90)
	sx, sy := at(180)
	wx, _ := at(270)
	if !(wx < nx && nx < ex && wx < sx && sx < ex) {
		t.Errorf("x of west %g, north %g, south %g, east %g: want west left of all, east right", wx, nx, sx, ex)
	}
	if !(ny < sy) {
		t.Errorf("y of north %g, of south %g: want north above", ny, sy)
	}
}
