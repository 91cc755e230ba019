package net

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"cuesta/orient"
)

// place is a point of the globe in degrees, north and east positive.
type place struct{ lat, lon float64 }

func (p place) frame() (out, east, north orient.Vec) {
	lat, lon := orient.Angle(p.lat)*orient.Degree, orient.Angle(p.lon)*orient.Degree
	out = orient.Vec{X: lat.Cos() * lon.Cos(), Y: lat.Cos() * lon.Sin(), Z: lat.Sin()}
	east = orient.Vec{X: -lon.Sin(), Y: lon.Cos()}
	return out, east, r3.Cross(out, east)
}

// row is a row of the table of checks: columns quantity, inputs, expected,
// tolerance, source.
func row(t *testing.T, prefix string) []string {
	t.Helper()
	f, err := os.Open("testdata/nets.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if strings.HasPrefix(r[0], prefix) {
			return r
		}
	}
	t.Fatalf("no row %q", prefix)
	return nil
}

// TestAgainstSnyder holds both projections beside the numerical examples of
// J. P. Snyder 1987, USGS Professional Paper 1395, which have another centre
// than ours and a sphere of their own radius: the primitive of the equal-area
// net has the radius √2·R, that of the equal-angle net 2·R.
func TestAgainstSnyder(t *testing.T) {
	centre := place{40, -100}
	for _, c := range []struct {
		prefix string
		kind   Kind
		radius float64
		at     place
		inputs string
	}{
		{"Lambert azimuthal equal-area", EqualArea, 3 * math.Sqrt2, place{-20, 100}, "20S 100E"},
		{"stereographic", EqualAngle, 2, place{30, -75}, "30N 75W"},
	} {
		r := row(t, c.prefix)
		if r[1] != c.inputs {
			t.Errorf("%s: the table gives %q, the test knows %q", c.prefix, r[1], c.inputs)
		}
		var x, y, tol float64
		if _, err := fmt.Sscanf(strings.ReplaceAll(r[2], ",", " "), "x %g y %g", &x, &y); err != nil {
			t.Fatal(err)
		}
		if _, err := fmt.Sscan(r[3], &tol); err != nil {
			t.Fatal(err)
		}
		out, east, north := centre.frame()
		n := Net{Kind: c.kind, Down: out, East: east, North: north}
		v, _, _ := c.at.frame()
		got := n.Project(v)
		if math.Abs(got.X*c.radius-x) > tol || math.Abs(got.Y*c.radius-y) > tol {
			t.Errorf("%s: got %.7f %.7f, want %.7f %.7f", c.prefix, got.X*c.radius, got.Y*c.radius, x, y)
		}
	}
}

// TestPrimitive is the definition of the lower-hemisphere net.
func TestPrimitive(t *testing.T) {
	r := row(t, "lower hemisphere, primitive radius 1")
	if r[1] != "plunge 0; 90" || r[2] != "radius 1; 0" {
		t.Fatalf("the table reads %q %q", r[1], r[2])
	}
	for _, k := range []Kind{EqualArea, EqualAngle} {
		n := Lower(k)
		for _, c := range []struct {
			line orient.Line
			want Point
		}{
			{orient.Line{}, Point{0, 1}},
			{orient.Line{Trend: orient.AzimuthOf(orient.Right)}, Point{1, 0}},
			{orient.Line{Trend: orient.AzimuthOf(orient.Half)}, Point{0, -1}},
			{orient.Line{Trend: orient.AzimuthOf(-orient.Right)}, Point{-1, 0}},
			{orient.Line{Plunge: orient.Right}, Point{0, 0}},
		} {
			if got := n.Line(c.line); distance(got, c.want) > 1e-15 {
				t.Errorf("kind %d: %v stands at %v, want %v", k, c.line, got, c.want)
			}
		}
	}
}

func distance(a, b Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// TestGreatCircles: both ends lie on the primitive, the middle stands down the
// dip, and every point is at right angles to the pole.
func TestGreatCircles(t *testing.T) {
	for _, k := range []Kind{EqualArea, EqualAngle} {
		n := Lower(k)
		for _, p := range []orient.Plane{
			orient.PlaneOf(35*orient.Degree, 30*orient.Degree), orient.PlaneOf(0, orient.Right),
			orient.PlaneOf(215*orient.Degree, 5*orient.Degree), orient.PlaneOf(270*orient.Degree, 88*orient.Degree),
		} {
			c := n.GreatCircle(p, 18)
			for _, end := range []Point{c[0], c[18]} {
				if r := math.Hypot(end.X, end.Y); math.Abs(r-1) > 1e-12 {
					t.Errorf("%v: an end lies at radius %v", p, r)
				}
			}
			if want := n.Line(orient.Line{Trend: p.DipDirection(), Plunge: p.Dip}); distance(c[9], want) > 1e-12 {
				t.Errorf("%v: the middle lies at %v, want %v", p, c[9], want)
			}
			for _, q := range c {
				v, ok := n.Direction(q)
				if dot := r3.Dot(v, p.Normal()); !ok || math.Abs(dot) > 1e-12 {
					t.Errorf("%v: %v is %v off the plane", p, q, dot)
				}
			}
		}
	}
}

// TestEqualArea: a cap of the sphere keeps its share of the area: the circle
// about the middle out to plunge p holds 1−sin p of the hemisphere.
func TestEqualArea(t *testing.T) {
	for d := 0; d <= 90; d += 15 {
		p := orient.Angle(d) * orient.Degree
		q := Lower(EqualArea).Line(orient.Line{Plunge: p})
		if got, want := q.X*q.X+q.Y*q.Y, 1-p.Sin(); math.Abs(got-want) > 1e-12 {
			t.Errorf("out to plunge %d° lies %v of the net, want %v", d, got, want)
		}
	}
}

func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := Lower(rapid.SampledFrom([]Kind{EqualArea, EqualAngle}).Draw(t, "kind"))
		l := orient.Line{
			Trend:  orient.AzimuthOf(orient.Angle(rapid.Float64Range(0, 359.9).Draw(t, "trend")) * orient.Degree),
			Plunge: orient.Angle(rapid.Float64Range(0.001, 90).Draw(t, "plunge")) * orient.Degree,
		}
		got, ok := n.LineAt(n.Line(l))
		if d := r3.Norm(r3.Cross(got.Vec(), l.Vec())); !ok || d > 1e-9 {
			t.Fatalf("%v came back as %v", l, got)
		}
	})
}

func TestSmallCircle(t *testing.T) {
	n := Lower(EqualArea)
	axis := orient.Line{Trend: orient.AzimuthOf(120 * orient.Degree), Plunge: 40 * orient.Degree}
	for i, q := range n.SmallCircle(axis, 30*orient.Degree, 12) {
		v, ok := n.Direction(q)
		got := orient.Acos(math.Abs(r3.Dot(v, axis.Vec())))
		if !ok || (got-30*orient.Degree).Abs() > 1e-9 {
			t.Errorf("point %d is %v° from the axis, want 30°", i, got.Degrees())
		}
	}
}

func TestOutside(t *testing.T) {
	for _, k := range []Kind{EqualArea, EqualAngle} {
		if _, ok := Lower(k).LineAt(Point{1.01, 0}); ok {
			t.Errorf("kind %d: a line was found outside the primitive", k)
		}
		if _, ok := Lower(k).LineAt(Point{math.NaN(), 0}); ok {
			t.Errorf("kind %d: a line was found nowhere", k)
		}
	}
	if _, ok := Lower(EqualArea).Direction(Point{1.5, 0}); ok {
		t.Error("the equal-area net ends at √2")
	}
}
