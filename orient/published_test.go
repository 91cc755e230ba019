package orient_test

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"strconv"
	"testing"

	"cuesta/orient"
)

// published is one value from outside the project; its source stands in the
// file beside it.
type published struct {
	quantity, inputs, expected, tolerance, source string
}

func readPublished(t *testing.T, file string) []published {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []published
	for _, r := range records[1:] {
		rows = append(rows, published{r[0], r[1], r[2], r[3], r[4]})
	}
	return rows
}

// within is the tolerance of the row as a number; exact rows get rounding.
func (p published) within(t *testing.T) float64 {
	t.Helper()
	if p.tolerance == "exact" || p.tolerance == "identity" {
		return 1e-9
	}
	x, err := strconv.ParseFloat(p.tolerance, 64)
	if err != nil {
		t.Fatalf("%+v: tolerance: %v", p, err)
	}
	return x
}

var numeral = regexp.MustCompile(`\d+(?:\.\d+)?(?: deg \d+ min)?`)

// numbers are the numbers of a text in order, with degrees and minutes as one.
func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var xs []float64
	for _, s := range numeral.FindAllString(text, -1) {
		var parts []float64
		for _, d := range regexp.MustCompile(`\d+(?:\.\d+)?`).FindAllString(s, -1) {
			x, err := strconv.ParseFloat(d, 64)
			if err != nil {
				t.Fatal(err)
			}
			parts = append(parts, x)
		}
		if len(parts) == 2 {
			parts[0] += parts[1] / 60
		}
		xs = append(xs, parts[0])
	}
	return xs
}

// check compares numbers with those the row expects; azimuths wrap.
func (p published) check(t *testing.T, got ...float64) {
	t.Helper()
	want := numbers(t, p.expected)
	if len(got) != len(want) {
		t.Fatalf("%s: got %v, want %v (%s)", p.inputs, got, want, p.source)
	}
	for i := range got {
		if off := math.Abs(math.Remainder(got[i]-want[i], 360)); off > p.within(t) {
			t.Errorf("%s, %s: got %v, want %v ± %s (%s)", p.quantity, p.inputs, got[i], want[i], p.tolerance, p.source)
		}
	}
}

func mustParse(t *testing.T, text string) orient.Plane {
	return mustParseAs(t, text, orient.AzimuthDip)
}

func mustParseAs(t *testing.T, text string, assume orient.Notation) orient.Plane {
	t.Helper()
	e, err := orient.Parse(text, assume)
	if err != nil {
		t.Fatal(err)
	}
	return e.Plane
}

func deg(x float64) orient.Angle { return orient.Angle(x) * orient.Degree }

func az(x float64) orient.Azimuth { return orient.AzimuthOf(deg(x)) }

func lineOf(trend, plunge float64) orient.Line {
	return orient.Line{Trend: az(trend), Plunge: deg(plunge)}
}
