package item

import (
	"math"
	"testing"

	"cuesta/quiz/mistake"
	"cuesta/sim/instrument"
)

// 50.04 per cent is 26° and 83.40 per cent 40° (J. B. Jukes 1859, The South
// Staffordshire Coalfield, 2nd ed., appendix p. 211, to 0.8°).
func TestReadArc(t *testing.T) {
	holdTo(t, arcInDegrees(Spec{}, 26), right("26"), right("27°"), right("24"), wrong("29"),
		named("49", mistake.PercentScale), named("50", mistake.PercentScale), named("64", mistake.Complement))
	holdTo(t, arcInPercent(Spec{}, 85), right("85 %"), right("83.4"), right("87"), wrong("90"), named("40", mistake.PercentScale))
	if got := arcInPercent(Spec{}, 85).arm.Degrees(); math.Abs(got-40) > 0.8 {
		t.Errorf("85 per cent: got %v°, want near 40°", got)
	}
}

func TestTheArmStandsAtTheNumber(t *testing.T) {
	for _, d := range []int{4, 26, 45, 86} {
		f := arcInDegrees(Spec{}, d).Figure().(ArcFigure)
		if got := (instrument.Arc{Arm: f.Arm}).Degree(); got != d {
			t.Errorf("got %d, want %d", got, d)
		}
	}
	f := arcInPercent(Spec{}, 60).Figure().(ArcFigure)
	if got, want := (instrument.Arc{Arm: f.Arm}).Percent(), 60.0; math.Abs(got-want) > 1e-9 {
		t.Errorf("got %v %%, want %v", got, want)
	}
}

func TestArcsOfBothScalesAreDealt(t *testing.T) {
	seen(t, readArc{}, Spec{}, 1000, map[string]func(Item) bool{
		"per cent":   func(it Item) bool { return it.(arcItem).percent },
		"under 15°":  func(it Item) bool { return !it.(arcItem).percent && it.(arcItem).value < 15 },
		"beyond 100": func(it Item) bool { return it.(arcItem).arm > deg(50) },
	})
}
