package item

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

func TestApparentDip(t *testing.T) {
	for _, c := range []struct {
		source  string
		plane   orient.Plane
		section float64
		answers []answer
	}{
		{"true dip 35 toward N, section NE-SW: 26.25 (J. B. Jukes 1859, The South Staffordshire Coalfield, 2nd ed., p. 216)",
			plane(270, 35), 45, []answer{right("26"), right("26°15'"), wrong("35"), named("64", mistake.Complement)}},
		{"plane N-S, 40W; section striking N50W: 32, exactly 32.7 (San Diego State University, study guide, exam II, autumn 2003, Q12)",
			plane(180, 40), 310, []answer{right("32.7"), right("32"), wrong("40")}},
		{"plane N72E 50S, its line that trends 128: 45 (J. Lorenzo, Louisiana State University, Structural Geology 1995-96, stereonet exercise 1)",
			plane(72, 50), 128, []answer{right("45"), wrong("50")}},
		{"the same, the line that trends 92: 22", plane(72, 50), 92, []answer{right("22"), wrong("50"), wrong("48")}},
		{"the same, the line that trends 182: 48", plane(72, 50), 182, []answer{right("48")}},
	} {
		it := newApparent(c.plane, orient.AzimuthOf(deg(c.section)), false, Spec{})
		t.Run(c.source, func(t *testing.T) { holdTo(t, it, c.answers...) })
	}
}

// Jukes 1859, p. 216, the other way: a section at 45° to the strike that shows
// 26° (26.25 in the table) has the true dip 35°.
func TestTrueDipFromApparent(t *testing.T) {
	it := newApparent(plane(270, 35), orient.AzimuthOf(deg(45)), true, Spec{})
	if got, want := it.shown, 26; got != want {
		t.Fatalf("shown: got %d, want %d", got, want)
	}
	holdTo(t, it, right("35"), right("34.6"), named("26", mistake.EdgeNotDownDip), wrong("19"), named("55", mistake.Complement))
}

// The right number follows from the formula worked out here, tan α = tan d ·
// sin ψ, both ways.
func TestSectionsAgreeWithTheFormula(t *testing.T) {
	seen(t, apparentDip{}, Spec{}, 1000, map[string]func(Item) bool{
		"back": func(it Item) bool {
			a := it.(apparentItem)
			psi := math.Abs(a.section.From(a.plane.Strike).Sin())
			want := math.Atan(a.plane.Dip.Tan()*psi) * 180 / math.Pi
			if a.back {
				want = math.Atan(deg(float64(a.shown)).Tan()/psi) * 180 / math.Pi
			}
			if math.Abs(a.value-want) > 0.5+1e-9 {
				t.Errorf("%s: got %v, want %v", a.Prompt(), a.value, want)
			}
			return a.back
		},
		"gentle": func(it Item) bool { return it.(apparentItem).plane.Dip < deg(15) },
		"forth":  func(it Item) bool { return !it.(apparentItem).back },
	})
}
