package orient_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"cuesta/orient"
)

const tiny = 1e-9 // radians, or the length of a vector

func TestConventions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := wholeDegrees(t)
		d, s, n := p.DownDip(), p.StrikeVec(), p.Normal()
		if off := r3.Norm(r3.Sub(r3.Cross(d, s), n)); off > tiny {
			t.Fatalf("%+v: D × S is off N by %v", p, off)
		}
		if n.Z < -tiny || math.Abs(r3.Norm(n)-1) > tiny {
			t.Fatalf("%+v: normal %v", p, n)
		}
		if off := p.Pole().AngleTo(orient.LineOf(n)); off > tiny {
			t.Fatalf("%+v: the pole %v is off the normal by %v", p, p.Pole(), off)
		}
	})
}

func TestPlaneOfPole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.OneOf(rapid.Custom(wholeDegrees), rapid.Custom(inclined)).Draw(t, "plane")
		if q := orient.PlaneOfPole(p.Pole()); q.AngleTo(p) > tiny || !q.IsValid() {
			t.Fatalf("%+v comes back from its pole as %+v", p, q)
		}
		up := rapid.SampledFrom([]float64{1, -1, 3, -1e-3}).Draw(t, "length")
		q, ok := orient.PlaneFromNormal(r3.Scale(up, p.Normal()))
		if !ok || q.AngleTo(p) > tiny || !q.IsValid() {
			t.Fatalf("%+v comes back from its normal as %+v", p, q)
		}
	})
}

func TestNoNormal(t *testing.T) {
	for _, v := range []orient.Vec{{}, {X: math.NaN()}, {Z: math.Inf(1)}} {
		if p, ok := orient.PlaneFromNormal(v); ok {
			t.Errorf("%v is the normal of %+v", v, p)
		}
	}
}

func TestLineOf(t *testing.T) {
	for _, c := range []struct {
		v    orient.Vec
		want string
	}{
		{orient.Vec{Z: -1}, "000/90"}, {orient.Vec{Z: 7}, "000/90"},
		{orient.Vec{Y: 1}, "000/00"}, {orient.Vec{Y: -1}, "000/00"}, {orient.Vec{X: 2}, "090/00"}, {orient.Vec{X: -1}, "090/00"},
		{orient.Vec{X: 1, Z: -1}, "090/45"}, {orient.Vec{X: 1, Z: 1}, "270/45"}, {orient.Vec{Y: -1, Z: -1}, "180/45"},
		{orient.Vec{X: -1, Y: 1, Z: 1e-17}, "135/00"}, {orient.Vec{}, "000/90"},
	} {
		if got := orient.LineOf(c.v).String(); got != c.want && c.v != (orient.Vec{}) {
			t.Errorf("%v is %s, want %s", c.v, got, c.want)
		}
	}
	if got := orient.LineOf(orient.Vec{}); got != (orient.Line{}) {
		t.Errorf("the zero vector is %v, want the zero line", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		l := anyLine(t)
		back, other := orient.LineOf(l.Vec()), orient.LineOf(r3.Scale(-2, l.Vec()))
		if back.AngleTo(l) > tiny || other.AngleTo(l) > tiny || !back.IsValid() || !other.IsValid() {
			t.Fatalf("%v comes back as %v and %v", l, back, other)
		}
	})
}

func TestIntersectionLiesInBoth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := inclined(t), wholeDegrees(t)
		l, ok := orient.Intersection(p, q)
		if !ok {
			return
		}
		for _, plane := range []orient.Plane{p, q} {
			if off := math.Abs(r3.Dot(l.Vec(), plane.Normal())); off > 1e-6 {
				t.Fatalf("%v leaves %+v by %v", l, plane, off)
			}
		}
		// The plane through the line and another line of p is p again.
		if back, ok := orient.PlaneThrough(l, p.LineOfRake(p.Rake(l)+orient.Right)); !ok || back.AngleTo(p) > 1e-6 {
			t.Fatalf("the plane through two lines of %+v is %+v", p, back)
		}
	})
}

func TestParallel(t *testing.T) {
	p := orient.PlaneOf(deg(35), deg(30))
	if l, ok := orient.Intersection(p, p); ok {
		t.Errorf("a plane meets itself in %v", l)
	}
	if l, ok := orient.Intersection(orient.PlaneOf(deg(35), deg(90)), orient.PlaneOf(deg(215), deg(90))); ok {
		t.Errorf("two ends of one vertical plane meet in %v", l)
	}
	l := lineOf(100, 20)
	if q, ok := orient.PlaneThrough(l, l); ok {
		t.Errorf("a line and itself span %v", q)
	}
	if q, ok := orient.AxialPlane(p, p); ok {
		t.Errorf("parallel limbs have the axial plane %v", q)
	}
}

func TestRake(t *testing.T) {
	p := orient.PlaneOf(deg(35), deg(30))
	for _, c := range []struct {
		line        orient.Line
		rake, pitch float64
	}{
		{lineOf(35, 0), 0, 0}, {lineOf(215, 0), 0, 0}, {lineOf(125, 30), 90, 90},
		{p.LineOfRake(deg(40)), 40, 40}, {p.LineOfRake(deg(140)), 140, 40}, {p.LineOfRake(deg(320)), 140, 40},
	} {
		if r, s := p.Rake(c.line).Degrees(), p.Pitch(c.line).Degrees(); math.Abs(r-c.rake) > 1e-6 || math.Abs(s-c.pitch) > 1e-6 {
			t.Errorf("%v in 035/30: rake %v, pitch %v; want %v, %v", c.line, r, s, c.rake, c.pitch)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		p := inclined(t)
		r := deg(rapid.Float64Range(0.01, 179.99).Draw(t, "rake"))
		l := p.LineOfRake(r)
		if off := (p.Rake(l) - r).Abs(); off > 1e-7 {
			t.Fatalf("%+v: rake %v comes back as %v", p, r, p.Rake(l))
		}
		// sin plunge = sin dip · sin rake
		if off := math.Abs(l.Plunge.Sin() - p.Dip.Sin()*r.Sin()); off > tiny {
			t.Fatalf("%+v at rake %v plunges %v", p, r, l.Plunge)
		}
	})
}

func TestLineAtTakesTheEndThatGoesDown(t *testing.T) {
	p := orient.PlaneOf(deg(35), deg(30))
	for trend, want := range map[float64]string{125: "125/30", 305: "125/30", 35: "035/00"} {
		if got := p.LineAt(az(trend)).String(); got != want {
			t.Errorf("along %v: %s, want %s", trend, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		p := inclined(t)
		l := p.LineAt(az(rapid.Float64Range(0, 360).Draw(t, "trend")))
		if off := math.Abs(r3.Dot(l.Vec(), p.Normal())); off > tiny || !l.IsValid() {
			t.Fatalf("%v leaves %+v by %v", l, p, off)
		}
	})
}

func TestAngleTo(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"035/30", "035/30", 0}, {"035/30", "035/40", 10}, {"035/30", "215/30", 60}, {"000/90", "090/90", 90},
		{"000/90", "180/90", 0}, {"000/89", "180/89", 2}, {"horizontal", "123/45", 45},
	} {
		got := mustParse(t, c.a).AngleTo(mustParse(t, c.b)).Degrees()
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s to %s: %v, want %v", c.a, c.b, got, c.want)
		}
	}
	if got := lineOf(10, 0).AngleTo(lineOf(190, 20)).Degrees(); math.Abs(got-20) > 1e-9 {
		t.Errorf("lines: %v, want 20", got)
	}
}

func TestInterlimb(t *testing.T) {
	for _, c := range []struct {
		p, q string
		want float64
	}{
		{"000/45", "180/45", 90}, {"000/10", "180/10", 160}, {"000/80", "180/80", 20}, {"000/30", "000/30 overturned", 0},
		{"000/60", "000/40 overturned", 20}, {"horizontal", "000/90", 90},
	} {
		got := orient.InterlimbAngle(mustParse(t, c.p), mustParse(t, c.q)).Degrees()
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s and %s: %v, want %v", c.p, c.q, got, c.want)
		}
	}
	axial, ok := orient.AxialPlane(mustParse(t, "000/45"), mustParse(t, "180/45"))
	if !ok || axial.AngleTo(mustParse(t, "000/90")).Degrees() > 1e-9 {
		t.Errorf("an upright fold has the axial plane %v", axial)
	}
}
