package figure

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// published is the row of a table of checks that starts with a quantity.
func published(t *testing.T, file, quantity string) []string {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if r[0] == quantity {
			return r
		}
	}
	t.Fatalf("%s has no row %q", file, quantity)
	return nil
}

// TestDialNumbering holds the drawn figures beside the general reference on
// geological compasses: numbers ascend anticlockwise, E on the left of N.
func TestDialNumbering(t *testing.T) {
	want := "numbers ascend anticlockwise, E on the left of N"
	if got := published(t, "levels.csv", "dial numbering")[2]; got != want {
		t.Fatalf("the published row reads %q, the test knows %q", got, want)
	}
	texts := DialFigures(theme.Of(theme.Light))
	if got := len(texts); got != 36+4 {
		t.Fatalf("%d figures and letters, want 40", got)
	}
	for i, x := range texts[:36] {
		d, err := strconv.Atoi(x.S)
		if err != nil || d != 10*i || len(x.S) != 3 {
			t.Errorf("figure %d is %q, want %03d", i, x.S, 10*i)
		}
		next := middle(texts[(i+1)%36])
		if turn := cross(middle(x), next); turn >= 0 {
			t.Errorf("from %s to the next figure the turn is clockwise", x.S)
		}
		if got, want := direction(x), (orient.Angle(-d) * orient.Degree); (got - want).Wrapped().Abs() > orient.Degree {
			t.Errorf("figure %s stands at %.2f°, want %.2f°", x.S, got.Degrees(), want.Degrees())
		}
	}
	n, e := texts[36], texts[37]
	if n.S != "N" || e.S != "E" {
		t.Fatalf("letters begin with %s %s, want N E", n.S, e.S)
	}
	if cross(middle(n), middle(e)) >= 0 {
		t.Error("with N up, E stands on the right of N; it must stand on its left")
	}
}

func TestDialTicks(t *testing.T) {
	ticks := DialTicks()
	if len(ticks) != 360 {
		t.Fatalf("%d ticks, want 360", len(ticks))
	}
	lengths := map[float64]int{}
	for d, k := range ticks {
		lengths[math.Round((k.To-k.From)*100)/100]++
		if want := (-orient.Angle(d) * orient.Degree); (k.At - want).Wrapped().Abs() > 1e-12 {
			t.Errorf("tick %d stands at %v°, want %v°", d, k.At.Degrees(), want.Degrees())
		}
		if k.From != DialBase || k.To <= k.From {
			t.Errorf("tick %d runs from %v to %v, want outward from %v", d, k.From, k.To, DialBase)
		}
	}
	want := map[float64]int{tick1: 288, tick5: 36, tick10: 36}
	for n, c := range want {
		if lengths[n] != c {
			t.Errorf("%d ticks of length %v, want %d", lengths[n], n, c)
		}
	}
}

// middle is the middle of the ink of a text.
func middle(x draw.Text) draw.Point {
	b := inkOf(x)
	c := b.mid()
	s, k := math.Sincos(x.Rotate)
	return draw.Point{X: x.At.X + k*c.X - s*c.Y, Y: x.At.Y + s*c.X + k*c.Y}
}

func direction(x draw.Text) orient.Angle {
	m := middle(x)
	return orient.Atan2(m.Y, m.X)
}

func cross(a, b draw.Point) float64 { return a.X*b.Y - a.Y*b.X }
