package quiz_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"cuesta/orient"
	"cuesta/quiz"
)

// The planes of three seeds, so that a seed written down today deals the same
// planes next year. PCG is fixed by math/rand/v2.
func TestSeedsDealTheSamePlanes(t *testing.T) {
	for _, c := range []struct {
		seed uint64
		mix  quiz.Mix
		want string
	}{
		{1, quiz.DefaultMix, "180.331700/6.249978 270.006044/47.177292 2.039477/24.275177 42.561704/17.217785 "},
		{2, quiz.GentleOnly, "187.040763/10.560481 93.787198/9.842826 208.960606/22.013780 13.439578/8.900053 "},
		{2026, quiz.Mix{Gentle: 1, Steep: 3}, "198.599906/69.017198 163.706257/27.267075 322.152351/84.109120 83.250795/77.257007 "},
	} {
		r := rand.New(rand.NewPCG(c.seed, 0))
		got := ""
		for range 4 {
			p := c.mix.Plane(r)
			got += fmt.Sprintf("%.6f/%.6f ", p.Strike.Degrees(), p.Dip.Degrees())
		}
		if got != c.want {
			t.Errorf("seed %d: got %q, want %q", c.seed, got, c.want)
		}
	}
}

// chiSquared is the statistic of counts that should be alike, and the value it
// exceeds once in a thousand times (gonum's chi-squared distribution).
func chiSquared(counts []int) (got, limit float64) {
	var n int
	for _, c := range counts {
		n += c
	}
	want := float64(n) / float64(len(counts))
	for _, c := range counts {
		got += (float64(c) - want) * (float64(c) - want) / want
	}
	return got, distuv.ChiSquared{K: float64(len(counts) - 1)}.Quantile(0.999)
}

func TestStrikesAreEven(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 0))
	counts := make([]int, 36)
	for range 36000 {
		counts[int(quiz.DefaultMix.Plane(r).Strike.Degrees()/10)]++
	}
	if got, limit := chiSquared(counts); got > limit {
		t.Errorf("chi-squared %.1f, want at most %.1f", got, limit)
	}
}

func TestDipsFollowTheMix(t *testing.T) {
	for _, m := range []quiz.Mix{quiz.DefaultMix, quiz.GentleOnly, quiz.ModerateOnly, quiz.SteepOnly, {Gentle: 2, Moderate: 1, Steep: 1}} {
		r := rand.New(rand.NewPCG(12, 0))
		const n = 12000
		var counts [quiz.Classes]int
		tenths := make([]int, 10)
		for range n {
			d := m.Plane(r).Dip
			c := quiz.ClassOf(d)
			from, to := c.Range()
			if d < from || d >= to {
				t.Fatalf("%+v: got dip %v in class %v, want [%v, %v)", m, d.Degrees(), c, from.Degrees(), to.Degrees())
			}
			counts[c]++
			tenths[int(10*(d-from)/(to-from))]++
		}
		for c, got := range counts {
			want := m.Share(quiz.DipClass(c)) * n
			if math.Abs(float64(got)-want) > 4*math.Sqrt(n)/2 {
				t.Errorf("%+v: %d planes in class %v, want about %.0f", m, got, quiz.DipClass(c), want)
			}
		}
		if got, limit := chiSquared(tenths); got > limit {
			t.Errorf("%+v: dips uneven in their class: chi-squared %.1f, want at most %.1f", m, got, limit)
		}
	}
}

func TestMixThatIsNoMixDealsLikeTheDefault(t *testing.T) {
	for _, m := range []quiz.Mix{{}, {Gentle: -1, Steep: 2}, {Moderate: math.NaN()}, {Steep: math.Inf(1)}, {Gentle: math.MaxFloat64, Steep: math.MaxFloat64}} {
		if m.IsValid() {
			t.Errorf("%+v: got valid, want not", m)
		}
		got := m.Plane(rand.New(rand.NewPCG(7, 0)))
		want := quiz.DefaultMix.Plane(rand.New(rand.NewPCG(7, 0)))
		if got != want {
			t.Errorf("%+v: got %v, want %v", m, got, want)
		}
	}
}

func TestClassOf(t *testing.T) {
	for _, c := range []struct {
		dip  float64
		want quiz.DipClass
	}{{0, quiz.Gentle}, {29.9, quiz.Gentle}, {30, quiz.Moderate}, {59.9, quiz.Moderate}, {60, quiz.Steep}, {90, quiz.Steep}} {
		if got := quiz.ClassOf(orient.Angle(c.dip) * degree); got != c.want {
			t.Errorf("%g: got %v, want %v", c.dip, got, c.want)
		}
	}
}
