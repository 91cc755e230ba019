package orient_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"cuesta/orient"
)

func TestPublishedUncertainty(t *testing.T) {
	for _, row := range readPublished(t, "uncertainty.csv") {
		switch row.quantity {
		case "sd of strike from sd of dip": // sd(dip)/sin d
			for _, d := range []float64{5, 30, 90} {
				got, want := orient.StrikeScatter(deg(2), deg(d)).Degrees(), 2/math.Sin(d*math.Pi/180)
				if math.Abs(got-want) > 1e-9 {
					t.Errorf("dip %v: scatter %v, want %v", d, got, want)
				}
			}
		case "largest strike error from a levelling error e":
			rapid.Check(t, strikeErrorIsGeometry)
		case "safe distance from iron and electricity", "compass fit for use", // for the scenes
			"full and half marks in one course", "students' scatter": // for the quiz
		default:
			t.Errorf("no check for %+v", row)
		}
	}
}

// strikeErrorIsGeometry finds the line of the plane that plunges by β by its
// vector, and sees how far its trend leaves the strike.
func strikeErrorIsGeometry(t *rapid.T) {
	p := inclined(t)
	beta := orient.Angle(rapid.Float64Range(0.01, 0.99).Draw(t, "share")) * p.Dip
	phi := orient.Asin(beta.Sin() / p.Dip.Sin())
	f := r3.Add(r3.Scale(phi.Cos(), p.StrikeVec()), r3.Scale(phi.Sin(), p.DownDip()))
	want := orient.AzimuthOf(orient.Atan2(f.X, f.Y)).From(p.Strike)
	if off := (orient.StrikeError(beta, p.Dip) - want).Abs().Degrees(); off > 1e-5 {
		t.Fatalf("%v, β %v: off by %v", p, beta.Degrees(), off)
	}
}

func TestStrikeErrorLimits(t *testing.T) {
	for _, c := range []struct{ beta, dip, want float64 }{
		{0, 30, 0}, {0, 0, 0}, {1, 0, 90}, {30, 30, 90}, {31, 30, 90}, {-31, 30, -90}, {1, 90, 0},
		{1, 45, math.Asin(math.Tan(math.Pi/180)) * 180 / math.Pi},
	} {
		if got := orient.StrikeError(deg(c.beta), deg(c.dip)).Degrees(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("StrikeError(%v, %v) = %v, want %v", c.beta, c.dip, got, c.want)
		}
	}
}
