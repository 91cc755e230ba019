package spoken_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/sim"
)

// planes draws benches: strikes from the whole circle, dips from 5° to 85°,
// any declination up to 25°.
func planes(seed uint64, n int) []session.Options {
	r := rand.New(rand.NewPCG(seed, 1))
	var out []session.Options
	for range n {
		p := orient.PlaneOf(orient.Angle(360*r.Float64())*orient.Degree, orient.Angle(5+80*r.Float64())*orient.Degree)
		d := orient.Angle(math.Round(500*r.Float64()-250)/10) * orient.Degree
		out = append(out, session.Options{
			Plane: &p, Seed: r.Uint64(),
			Field: sim.Field{Declination: d, Inclination: 62 * orient.Degree, Horizontal: 20e-6},
		})
	}
	return out
}

// tolerated is what a strike may be off by: 2° for the reading, and what an
// edge 1° off level does to the strike, asin(tan 1°/tan d) (Ragan).
func tolerated(dip orient.Angle) float64 {
	d := dip.Radians()
	return 2 + 180/math.Pi*math.Asin(math.Min(1, math.Tan(math.Pi/180)/math.Tan(d)))
}

func between(a, b float64) float64 {
	d := math.Mod(a-b+540, 360) - 180
	return math.Abs(d)
}

func TestACarefulStudentMeasures(t *testing.T) {
	const n = 1000
	good, lines, worstDip := 0, 0, 0.0
	for _, o := range planes(11, n) {
		s := sit(t, o)
		strike, dip := s.measure()
		r := s.typed("note %03d/%02d", strike, dip)
		lines += s.lines
		off := between(float64(strike), o.Plane.Strike.Degrees())
		if off <= tolerated(o.Plane.Dip) {
			good++
		} else {
			t.Logf("strike %03d for %v/%v", strike, o.Plane.Strike.Degrees(), o.Plane.Dip.Degrees())
		}
		dipOff := math.Abs(float64(dip) - o.Plane.Dip.Degrees())
		worstDip = math.Max(worstDip, dipOff)
		if dipOff > 1.5 {
			t.Errorf("dip %02d for %v", dip, o.Plane.Dip.Degrees())
		}
		if want := off <= tolerated(o.Plane.Dip) && dipOff <= 3; r.Verdict.Right != want {
			t.Errorf("%03d/%02d for %v: verdict right %v, want %v", strike, dip, o.Plane, r.Verdict.Right, want)
		}
	}
	t.Logf("%d of %d strikes within tolerance, worst dip %.2f° off, %.0f lines a plane", good, n, worstDip, float64(lines)/n)
	if good < n*995/1000 {
		t.Errorf("%d of %d strikes within tolerance, want 99.5 %%", good, n)
	}
}
