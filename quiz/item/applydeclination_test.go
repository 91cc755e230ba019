package item

import (
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

func TestApplyDeclination(t *testing.T) {
	for _, c := range []struct {
		source             string
		given, declination int
		back               bool
		answers            []answer
	}{
		{"US interagency wildfire mathematics course, ch. 5", 35, 17, false, []answer{right("52"), right("052°"),
			named("35", mistake.DeclinationNotSet), named("18", mistake.DeclinationWrongSign), named("69", mistake.DeclinationTwice)}},
		{"civil surveying worked examples, to the degree", 189, -2, false, []answer{right("187"), wrong("191")}},
		{"compass electronics course notes", 45, -18, true, []answer{right("63"), named("27", mistake.DeclinationWrongSign)}},
		{"field navigation web page, which gives the wrong 330", 315, -15, false, []answer{right("300"), named("330", mistake.DeclinationWrongSign)}},
		{"across north", 350, 17, false, []answer{right("7"), right("007")}},
		{"across north, back", 5, 17, true, []answer{right("348"), named("22", mistake.DeclinationWrongSign)}},
		{"to north itself", 343, 17, false, []answer{right("0"), right("360"), right("000")}},
	} {
		t.Run(c.source, func(t *testing.T) { holdTo(t, newDeclination(c.given, c.declination, c.back, Spec{}), c.answers...) })
	}
}

// A declination left out is within 8° here, and still earns nothing where
// steps are marked: the answer is the number that was given.
func TestAKnownMistakeEarnsNoPart(t *testing.T) {
	it := newDeclination(100, 6, false, Spec{Tolerance: quiz.SteppedTolerance})
	for typed, want := range map[string]float64{"106": 1, "104": 0.5, "100": 0, "94": 0} {
		if got := it.Mark(typed, Evidence{}).Share; got != want {
			t.Errorf("%s: got %v, want %v", typed, got, want)
		}
	}
}

func TestDeclinationsOfEveryKindAreDealt(t *testing.T) {
	of := func(it Item) declinationItem { return it.(declinationItem) }
	seen(t, applyDeclination{}, Spec{Declination: -11 * orient.Degree}, 2000, map[string]func(Item) bool{
		"east, forth":  func(it Item) bool { return of(it).declination > 0 && !of(it).back },
		"east, back":   func(it Item) bool { return of(it).declination > 0 && of(it).back },
		"west, forth":  func(it Item) bool { return of(it).declination < 0 && !of(it).back },
		"west, back":   func(it Item) bool { return of(it).declination < 0 && of(it).back },
		"below 0":      func(it Item) bool { return of(it).wrapped() && of(it).value > 300 },
		"over 360":     func(it Item) bool { return of(it).wrapped() && of(it).value < 60 },
		"of the place": func(it Item) bool { return of(it).declination == -11 },
	})
}
