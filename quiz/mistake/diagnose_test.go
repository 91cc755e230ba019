package mistake

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"cuesta/orient"
)

func TestProbabilitiesSumToOne(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 300 {
		e := bed(r.Float64()*360, 1+r.Float64()*89, r.Float64()*360, r.Float64()*90).at(r.Float64()*40 - 20)
		if r.IntN(2) == 0 {
			e = e.dial(r.Float64()*360, r.Float64()*360, r.Float64()*20).arc(r.Float64()*90, r.Float64()*20, r.Float64()*90)
		}
		if r.IntN(3) == 0 {
			e = e.letters("SE")
		}
		e.Entry.Notation = orient.Notation(r.IntN(4))
		for _, xs := range [][]Explanation{e.StrikeExplanations(), e.DipExplanations()} {
			var sum float64
			for _, x := range xs {
				sum += x.Probability
			}
			if math.Abs(sum-1) > 1e-9 {
				t.Fatalf("%+v: got a sum of %.12f, want 1", e, sum)
			}
		}
	}
}

// Turning bed, answer, instrument and all by the same angle changes nothing,
// but for mistakes that hang on the numbers themselves.
func TestDiagnosisTurnsWithTheBed(t *testing.T) {
	for turn := 0.0; turn < 360; turn += 7 {
		e := bed(35+turn, 30, 215+turn, 30).dial(35+turn, 35+turn, 0)
		got := Diagnose(e, strikeOnly)
		if len(got) == 0 || got[0].Kind != SouthEnd {
			t.Errorf("turned by %g: got %v, want south-end", turn, got)
		}
	}
}

func TestAnswerOfNoNumberHasNoReason(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, e := range []Evidence{bed(35, 30, nan, 30), bed(35, 30, 35, inf), bed(nan, 30, 35, 30), bed(35, 30, 215, 30).at(nan)} {
		if got := Diagnose(e, both); len(got) != 0 {
			t.Errorf("%+v: got %v, want nothing", e.Entry.Plane, got)
		}
	}
}

// A reading that is not finite is as good as none: the tie of the paper form
// comes back.
func TestBrokenReadingIsLeftOut(t *testing.T) {
	e := bed(35, 30, 215, 30).dial(math.NaN(), 35, 0)
	if got := Diagnose(e, strikeOnly); !sameKinds(got, []Kind{OtherEnd, SouthEnd}) {
		t.Errorf("got %v, want other-end and south-end", got)
	}
}

func TestDigitsAreExchanged(t *testing.T) {
	for _, c := range []struct {
		n, digits, largest int
		want               []int
	}{
		{148, 3, 359, []int{184}}, // 418 is no azimuth
		{35, 3, 359, []int{53, 305}},
		{111, 3, 359, nil},
		{37, 2, 90, []int{73}},
		{9, 2, 90, []int{90}},
		{19, 2, 90, nil}, // 91 is no dip
	} {
		got := swapped(c.n, c.digits, c.largest)
		if len(got) != len(c.want) {
			t.Errorf("%d: got %v, want %v", c.n, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%d: got %v, want %v", c.n, got, c.want)
			}
		}
	}
	// N35W is 325, N53W is 307; S12E is 168, S21E is 159.
	e := Evidence{Entry: orient.Entry{Notation: orient.Quadrant}}
	for _, c := range []struct{ n, want int }{{325, 307}, {168, 159}, {35, 53}, {215, 233}} {
		if got := e.exchanged(c.n); len(got) != 1 || got[0] != c.want {
			t.Errorf("quadrant %d: got %v, want [%d]", c.n, got, c.want)
		}
	}
}

// An azimuth that points up the dip is along the line of dip, but no dip
// direction.
func TestUpTheDipTheLineOfDipIsNamed(t *testing.T) {
	for _, c := range []struct {
		answer float64
		want   string
	}{
		{35, "Probably the line of dip was read, not the strike. "},
		{215, "Probably the dip direction was written where the strike belongs. "},
	} {
		got := Diagnose(bed(126, 34, c.answer, 34), strikeOnly)
		if len(got) != 1 || got[0].Kind != DirectionForStrike || !strings.HasPrefix(got[0].Said, c.want) {
			t.Errorf("%g: got %+v, want %q", c.answer, got, c.want)
		}
	}
}
