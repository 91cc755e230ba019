package grade

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// table reads a CSV of numbers: a header, then a name and the numbers.
func table(t *testing.T, name string) [][]float64 {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]float64
	for _, l := range lines[1:] {
		var row []float64
		for _, s := range l[1:] {
			x, err := strconv.ParseFloat(s, 64)
			if err != nil {
				t.Fatal(err)
			}
			row = append(row, x)
		}
		rows = append(rows, row)
	}
	return rows
}

func column(rows [][]float64, j int) []float64 {
	var c []float64
	for _, r := range rows {
		c = append(c, r[j])
	}
	return c
}

func sums(rows [][]float64) []float64 {
	var s []float64
	for _, r := range rows {
		total := 0.0
		for _, v := range r {
			total += v
		}
		s = append(s, total)
	}
	return s
}

func near(t *testing.T, what string, got Stat, want, within float64) {
	t.Helper()
	if !got.Defined() || math.Abs(got.Value-want) > within {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, within)
	}
}

// Ten students and ten items: K. L. Wuensch, East Carolina University, KR-20
// notes.
func TestWuensch(t *testing.T) {
	rows := table(t, "kr20_wuensch.csv")
	want := []float64{0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6}
	if len(rows) != 10 || len(rows[0]) != len(want) {
		t.Fatalf("%d students", len(rows))
	}
	within := 0.0
	for j, p := range want {
		near(t, "p of item "+strconv.Itoa(j+1), Difficulty(column(rows, j)), p, 1e-12)
		within += p * (1 - p)
	}
	near(t, "variance of totals", Stat{Value: variance(sums(rows))}, 5.84, 0.005)
	// KR-20 by hand from the printed p and variance: 10/9·(1 − 2.18/5.84).
	near(t, "KR-20", Reliability(rows), 10.0/9*(1-within/5.84), 0.001)
}

// Eight students, three items and their totals: J. D. Brown, JALT Testing &
// Evaluation SIG newsletter, table 2.
func TestBrown(t *testing.T) {
	rows := table(t, "point_biserial_brown.csv")
	total := column(rows, 3)
	// The newsletter rounds on the way: (45 − 30)/8.29 is 1.81, times ½ is 0.905,
	// printed as 0.91. Without rounding it is √(225/275).
	first, second := PointBiserial(column(rows, 0), total), PointBiserial(column(rows, 1), total)
	near(t, "point-biserial of item 1, as printed", first, 0.91, 0.0055)
	near(t, "point-biserial of item 2, as printed", second, -0.91, 0.0055)
	near(t, "point-biserial of item 1", first, math.Sqrt(225.0/275), 1e-12)
	near(t, "point-biserial of item 2", second, -math.Sqrt(225.0/275), 1e-12)
	if got := PointBiserial(column(rows, 2), total); got.Undefined != "all right" {
		t.Errorf("point-biserial of item 3 is %v, want undefined (all right)", got)
	}
	near(t, "mean of totals", Mean(total), 37.50, 0.005)
	near(t, "SD of totals", Deviation(total), 8.29, 0.005)
}

// The formula of the coefficient, from the means of the two groups.
func TestPointBiserialIsTheTextbookFormula(t *testing.T) {
	item, total := []float64{1, 0, 1, 1, 0}, []float64{9, 4, 7, 5, 6}
	p, sd := 0.6, Deviation(total).Value
	want := (7.0 - 5.0) / sd * math.Sqrt(p*(1-p))
	near(t, "r", PointBiserial(item, total), want, 1e-12)
}

func TestUndefined(t *testing.T) {
	for _, c := range []struct {
		what string
		got  Stat
		want string
	}{
		{"mean of nothing", Mean(nil), "undefined (nobody answered)"},
		{"deviation of nothing", Deviation(nil), "undefined (nobody answered)"},
		{"one student", PointBiserial([]float64{1}, []float64{5}), "undefined (fewer than two students)"},
		{"all wrong", PointBiserial([]float64{0, 0}, []float64{5, 6}), "undefined (all wrong)"},
		{"all half", PointBiserial([]float64{.5, .5}, []float64{5, 6}), "undefined (all have the same mark)"},
		{"equal totals", PointBiserial([]float64{0, 1}, []float64{5, 5}), "undefined (all totals are the same)"},
		{"no class", Reliability(nil), "undefined (fewer than two students)"},
		{"one item", Reliability([][]float64{{1}, {0}}), "undefined (fewer than two items)"},
		{"same totals", Reliability([][]float64{{1, 0}, {0, 1}}), "undefined (all totals are the same)"},
		{"defined", Stat{Value: -0.001}, "-0.00"},
	} {
		if got := c.got.String(); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}
