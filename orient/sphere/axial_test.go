package sphere

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"cuesta/orient"
)

func deg(x float64) orient.Angle { return orient.Angle(x) * orient.Degree }

func plane(strike, dip float64) orient.Plane { return orient.PlaneOf(deg(strike), deg(dip)) }

// column reads the first column of a table with one head line.
func column(t *testing.T, path string) []float64 {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: got %d rows, %v", path, len(rows), err)
	}
	var out []float64
	for _, r := range rows[1:] {
		x, err := strconv.ParseFloat(r[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, x)
	}
	return out
}

// P. Wessel, Introduction to Statistics and Data Analysis, ch. 9: fault
// strikes of area 1 have the axial mean 138.5° and the mean resultant 0.802 of
// the doubled angles, which for level axes is the difference of the two
// largest eigenvalues.
func TestAxialMeanOfFaultStrikes(t *testing.T) {
	var lines []orient.Line
	for _, s := range column(t, "testdata/wessel_fault_strikes_area1.csv") {
		lines = append(lines, orient.Line{Trend: orient.AzimuthOf(deg(s))})
	}
	a, ok := AxialMean(lines)
	if got, want := a.Mean.Trend.Degrees(), 138.5; !ok || math.Abs(got-want) > 0.1 || a.Mean.Plunge.Abs() > 1e-9 {
		t.Errorf("mean strike: got %v, want %.1f", a.Mean, want)
	}
	if got, want := a.Eigenvalues[0]-a.Eigenvalues[1], 0.802; math.Abs(got-want) > 0.0005 {
		t.Errorf("resultant: got %.4f, want %.3f", got, want)
	}
}

func TestMeanPlane(t *testing.T) {
	for _, c := range []struct {
		name   string
		planes []orient.Plane
		want   orient.Plane
	}{
		{"one", []orient.Plane{plane(35, 30)}, plane(35, 30)},
		{"across north", []orient.Plane{plane(358, 40), plane(2, 40)}, plane(0, 39.986)}, // tan d = tan 40° · cos 2°
		{"on either side of the vertical", []orient.Plane{plane(90, 88), plane(270, 88)}, plane(90, 90)},
		{"level", []orient.Plane{plane(0, 5), plane(90, 5), plane(180, 5), plane(270, 5)}, plane(0, 0)},
	} {
		got, ok := MeanPlane(c.planes)
		if !ok || got.AngleTo(c.want).Degrees() > 0.05 {
			t.Errorf("%s: got %v/%v, %t, want %v/%v", c.name, got.Strike, got.Dip.Degrees(), ok, c.want.Strike, c.want.Dip.Degrees())
		}
	}
}

func TestNoMean(t *testing.T) {
	for name, planes := range map[string][]orient.Plane{
		"none":                nil,
		"at right angles":     {plane(0, 90), plane(90, 90)},
		"three to each other": {plane(0, 90), plane(90, 90), plane(0, 0)},
		"not finite":          {plane(math.NaN(), 30)},
	} {
		if got, ok := MeanPlane(planes); ok {
			t.Errorf("%s: got %v, want no mean", name, got)
		}
	}
}

func TestAxialMeanDoesNotDependOnTheEnds(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		var a, b []orient.Plane
		p := plane(360*r.Float64(), 80+10*r.Float64())
		for range 6 {
			q := orient.PlaneOf(p.Strike.Angle()+deg(4*r.NormFloat64()), min(orient.Right, p.Dip+deg(3*r.NormFloat64())))
			a = append(a, q)
			b = append([]orient.Plane{orient.PlaneOf(q.Strike.Angle()+orient.Half, orient.Half-q.Dip)}, b...)
		}
		m, ok := MeanPlane(a)
		n, also := MeanPlane(b)
		if !ok || !also || m.AngleTo(n).Degrees() > 1e-6 {
			t.Fatalf("got %v and %v, want the same plane", m, n)
		}
		if off := m.AngleTo(p).Degrees(); off > 12 {
			t.Errorf("got %.1f° off the middle, want near it", off)
		}
	}
}

func TestEigenvaluesSumToOne(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := 1; n < 40; n++ {
		var lines []orient.Line
		for range n {
			lines = append(lines, orient.LineOf(orient.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}))
		}
		a, _ := AxialMean(lines)
		e := a.Eigenvalues
		if math.Abs(e[0]+e[1]+e[2]-1) > 1e-9 || e[0] < e[1] || e[1] < e[2] || e[2] < 0 {
			t.Errorf("%d axes: got %v, want falling values that sum to 1", n, e)
		}
	}
}
