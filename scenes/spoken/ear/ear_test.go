package ear_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/scenes/spoken/ear"
	"cuesta/sim"
)

// bench is a spoken bench of which only the sentences come out.
func bench(t testing.TB, o session.Options) (welcome string, say ear.Say, lines *int) {
	t.Helper()
	s, err := session.New(o)
	if err != nil {
		t.Fatal(err)
	}
	b, n := spoken.NewBench(s, nil), 0
	return b.Welcome(), func(line string) string {
		n++
		r, _ := b.Line(line)
		return r.Said
	}, &n
}

// mostLines bounds the lines of a measurement.
const mostLines = 60

// TestTheSentencesSuffice measures 200 random planes, with any declination up
// to 25°, by nothing but what is said.
func TestTheSentencesSuffice(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 1))
	var lines []int
	for range 200 {
		p := orient.PlaneOf(orient.Angle(360*r.Float64())*orient.Degree, orient.Angle(5+80*r.Float64())*orient.Degree)
		d := orient.Angle(math.Round(500*r.Float64()-250)/10) * orient.Degree
		welcome, say, n := bench(t, session.Options{Plane: &p, Seed: r.Uint64(), Field: sim.Field{Declination: d, Inclination: 62 * orient.Degree, Horizontal: 20e-6}})
		got, err := ear.Measure(welcome, say)
		if err != nil {
			t.Errorf("%s: %v", orient.Format(p, orient.AzimuthDip), err)
			continue
		}
		told := say(fmt.Sprintf("note %03d/%02d", got.Strike, got.Dip))
		if !strings.Contains(told, "Right: strike and dip") || !within(p, got) {
			t.Errorf("%s: read %+v, told %q", orient.Format(p, orient.AzimuthDip), got, told)
		}
		lines = append(lines, *n)
	}
	slices.Sort(lines)
	t.Logf("lines: median %d, most %d", lines[len(lines)/2], lines[len(lines)-1])
	if most := lines[len(lines)-1]; most > mostLines {
		t.Errorf("%d lines, want at most %d", most, mostLines)
	}
}

// within says whether a reading is as near as a careful one comes: 2° for the
// reading, and what an edge 1° off level does to the strike,
// asin(tan 1°/tan d) (Ragan, Structural Geology); 3° for the dip (common
// practice).
func within(p orient.Plane, r ear.Reading) bool {
	off := math.Abs(math.Mod(float64(r.Strike)-p.Strike.Degrees()+540, 360) - 180)
	most := 2 + 180/math.Pi*math.Asin(math.Min(1, math.Tan(math.Pi/180)/math.Tan(p.Dip.Radians())))
	return off <= most && math.Abs(float64(r.Dip)-p.Dip.Degrees()) <= 3
}

func TestABenchThatSaysNothingIsGivenUp(t *testing.T) {
	if _, err := ear.Measure("", func(string) string { return "Hm." }); !errors.Is(err, ear.ErrLost) {
		t.Errorf("got %v, want ErrLost", err)
	}
}
