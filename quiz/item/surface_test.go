package item

import (
	"strings"
	"testing"

	"cuesta/orient"
)

func stationOf(t *testing.T, s Surface) AtStation {
	t.Helper()
	it, err := labStation{}.Deal(Spec{Station: Station{
		Name: "B", Known: true, Plane: orient.PlaneOf(35*orient.Degree, 30*orient.Degree), Surface: s,
	}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return it.(AtStation)
}

// No word about a joint, a fault or a slab speaks of a bed; about bedding the
// words are what they were.
func TestStationSpeaksOfItsSurface(t *testing.T) {
	answers := []string{"035/30", "215/30", "125/30", "045/20", "035/50", "230/44", "035/12 NE", "035", "0/0", "325/60", "035/58", "215/30 NW"}
	for s := Surface(0); s < surfaces; s++ {
		it, bedding := stationOf(t, s), stationOf(t, Bedding)
		for _, a := range answers {
			m, was := it.Mark(a, Evidence{}), bedding.Mark(a, Evidence{})
			if m.Share != was.Share || m.Right != was.Right || len(m.Mistakes) != len(was.Mistakes) {
				t.Errorf("%v, %s: got %+v, want the marks of bedding: %+v", s, a, m, was)
			}
			words := []string{m.Said}
			for _, f := range m.Mistakes {
				words = append(words, f.Said)
			}
			if m.Verdict != nil {
				words = append(words, m.Verdict.Said)
				for _, f := range m.Verdict.Mistakes {
					words = append(words, f.Said)
				}
			}
			for _, w := range words {
				if s != Bedding && bed.MatchString(w) {
					t.Errorf("%v, %s: got %q, want no bed in it", s, a, w)
				}
			}
			if s == Bedding && m.Said != was.Said {
				t.Errorf("%s: got %q, want %q", a, m.Said, was.Said)
			}
		}
	}
	said := stationOf(t, Fault).Mark("215/30", Evidence{}).Said
	if want := "written from its other end the fault plane would dip to the wrong side"; !strings.Contains(said, want) {
		t.Errorf("got %q, want %q in it", said, want)
	}
}

func TestStationAsksForItsSurface(t *testing.T) {
	for s, want := range map[Surface]string{
		Bedding: "Measure the slab and write it", Joint: "Measure the joint and write it", Foliation: "Measure the foliation plane and write it",
	} {
		if got := stationOf(t, s).Prompt(); !strings.Contains(got, want) {
			t.Errorf("%v: got %q, want %q in it", s, got, want)
		}
	}
}

// Only a bed has a way up: the word is refused elsewhere, so that no attempt is
// spent on it.
func TestOnlyBeddingIsOverturned(t *testing.T) {
	if m := stationOf(t, Joint).Mark("035/30 overturned", Evidence{}); !m.Refused || m.Said != "This could not be read. A joint has no way up; leave out \"overturned\"." {
		t.Errorf("got %+v, want it refused", m)
	}
	if m := stationOf(t, Bedding).Mark("035/30 overturned", Evidence{}); m.Refused || m.Verdict.WayUpRight {
		t.Errorf("got %+v, want it marked", m)
	}
}
