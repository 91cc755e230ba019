package item

import (
	"strings"
	"testing"

	"cuesta/quiz/mistake"
)

// J. B. Jukes 1859, The South Staffordshire Coalfield, 2nd ed., appendix
// pp. 211–212: 50.04 per cent is 26°, 83.40 per cent 40°, 100 per cent 45°;
// gradients of 1 in 5, 1 in 4, 1 in 3 and 1 in 2 are 11, 14, 18 and 26°, of 1
// in 1 45° (tolerance of the old table 0.8°).
func TestPercentGrade(t *testing.T) {
	for percent, degrees := range map[int]string{50: "26", 83: "40", 100: "45", 20: "11", 25: "14", 33: "18"} {
		holdTo(t, newGrade(percent, true, Spec{}), right(degrees), right(degrees+"°"))
	}
	holdTo(t, newGrade(26, false, Spec{}), right("49"), right("50 %"),
		wrong("26"), wrong("29"), wrong("58"), named("205", mistake.Complement))
	holdTo(t, newGrade(40, false, Spec{}), right("83.40"), right("84 %"), wrong("40"), named("119", mistake.Complement))
	holdTo(t, newGrade(50, true, Spec{}), named("50", mistake.PercentScale), wrong("45"), named("63", mistake.Complement), wrong("23"))
}

func TestGradesOfBothWaysAreDealt(t *testing.T) {
	seen(t, percentGrade{}, Spec{}, 500, map[string]func(Item) bool{
		"to degrees":   func(it Item) bool { return it.(gradeItem).back },
		"to per cent":  func(it Item) bool { return !it.(gradeItem).back },
		"over 100":     func(it Item) bool { return !it.(gradeItem).back && it.(gradeItem).value > 100 },
		"gentle slope": func(it Item) bool { return it.(gradeItem).back && it.(gradeItem).value < 10 },
	})
}

// Degrees written for per cent are the reverse of a percent scale read as
// degrees: they are explained, and not counted among those.
func TestDegreesForPerCentAreNoPercentScale(t *testing.T) {
	m := newGrade(46, false, Spec{}).Mark("46 %", Evidence{})
	if len(m.Mistakes) != 0 {
		t.Errorf("got %v, want no mistake of the catalogue", m.Mistakes)
	}
	if want := "This is the number of degrees; a slope in per cent is 100 times its tangent."; !strings.Contains(m.Said, want) {
		t.Errorf("got %q, want it to say %q", m.Said, want)
	}
}
