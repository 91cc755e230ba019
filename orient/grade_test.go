package orient_test

import (
	"math"
	"testing"

	"cuesta/orient"
)

func TestPublishedGrade(t *testing.T) {
	for _, row := range readPublished(t, "grade.csv") {
		in := numbers(t, row.inputs)
		var got []float64
		switch row.quantity {
		case "percent grade to degrees":
			for _, percent := range in {
				got = append(got, orient.OfPercentGrade(percent).Degrees())
			}
		case "gradient to degrees":
			for i := 0; i < len(in); i += 2 {
				got = append(got, orient.OfPercentGrade(100*in[i]/in[i+1]).Degrees())
			}
		default:
			t.Errorf("no check for %+v", row)
		}
		row.check(t, got...)
	}
}

func TestPercentGrade(t *testing.T) {
	for _, c := range []struct{ degrees, want float64 }{{0, 0}, {45, 100}, {-45, -100}, {30, 100 / math.Sqrt(3)}} {
		got := orient.PercentGrade(deg(c.degrees))
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v° is %v %%, want %v", c.degrees, got, c.want)
		}
		if back := orient.OfPercentGrade(got).Degrees(); math.Abs(back-c.degrees) > 1e-9 {
			t.Errorf("%v° comes back as %v°", c.degrees, back)
		}
	}
}
