package figure

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/theme"
)

func TestDegreeTicks(t *testing.T) {
	ticks := DegreeTicks()
	if len(ticks) != 91 {
		t.Fatalf("%d ticks, want 91", len(ticks))
	}
	for d, k := range ticks {
		if want := orient.Angle(d) * orient.Degree; (k.At - want).Abs() > 1e-12 {
			t.Errorf("tick %d stands at %v°", d, k.At.Degrees())
		}
		if k.Heavy != (d%10 == 0) || k.From != DegreeBase || k.To <= k.From {
			t.Errorf("tick %d: %+v, want outward from %v and heavy at tens", d, k, DegreeBase)
		}
	}
}

// TestPercentTicks: the mark of p percent stands at atan(p/100), the definition
// of percent grade.
func TestPercentTicks(t *testing.T) {
	marks, ticks := PercentMarks(), PercentTicks()
	if len(marks) != len(ticks) {
		t.Fatalf("%d marks, %d ticks", len(marks), len(ticks))
	}
	for i, p := range marks {
		if i > 0 && marks[i-1] >= p {
			t.Errorf("marks do not ascend at %d", p)
		}
		if got := 100 * ticks[i].At.Tan(); math.Abs(got-float64(p)) > 1e-9*(1+float64(p)) {
			t.Errorf("the mark of %d%% stands at %v%%", p, got)
		}
	}
	for _, c := range []struct {
		p    float64
		want orient.Angle
	}{{0, 0}, {100, 45 * orient.Degree}, {math.Sqrt(3) * 100, 60 * orient.Degree}, {math.Inf(1), orient.Right}} {
		if got := PercentAngle(c.p); (got - c.want).Abs() > 1e-15 {
			t.Errorf("PercentAngle(%v) = %v°, want %v°", c.p, got.Degrees(), c.want.Degrees())
		}
	}
}

// TestPercentAgainstSurvey compares with the table of J. B. Jukes 1859, The
// South Staffordshire Coalfield, 2nd ed., appendix p. 211, which is rounded.
func TestPercentAgainstSurvey(t *testing.T) {
	r := published(t, "grade.csv", "percent grade to degrees")
	tol, err := strconv.ParseFloat(r[3], 64)
	if err != nil {
		t.Fatal(err)
	}
	in, out := strings.Split(r[1], ";"), strings.Split(r[2], ";")
	for i := range in {
		p, err1 := strconv.ParseFloat(strings.TrimSpace(in[i]), 64)
		want, err2 := strconv.ParseFloat(strings.TrimSpace(out[i]), 64)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if got := PercentAngle(p).Degrees(); math.Abs(got-want) > tol {
			t.Errorf("%v%% stands at %.2f°, the table says %v°", p, got, want)
		}
	}
}

// TestArcFigures: each number stands on the line of its own mark, and reads
// level when the arm under it does.
func TestArcFigures(t *testing.T) {
	for _, u := range []Upright{OnLeft, OnRight} {
		for _, x := range ArcFigures(theme.Of(theme.Light), u) {
			n, err := strconv.Atoi(x.S)
			if err != nil {
				continue // the sign %
			}
			want := orient.Angle(n) * orient.Degree
			if x.Size == percentSize {
				want = PercentAngle(float64(n))
			}
			if got := direction(x); (got - want).Abs() > 0.6*orient.Degree {
				t.Errorf("%s stands at %.2f°, want %.2f°", x.S, got.Degrees(), want.Degrees())
			}
			if got := (orient.Angle(x.Rotate) - want - u.Turn()).Wrapped(); got.Abs() > 1e-9 {
				t.Errorf("%s is turned %.2f° against the level arm", x.S, got.Degrees())
			}
		}
	}
}
