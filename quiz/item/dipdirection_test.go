package item

import (
	"testing"

	"cuesta/quiz/mistake"
)

// N65W 25S has the dip direction 205 (D. M. Ragan, Structural Geology, ch. 1),
// so its right-hand strike is 115; N30E 60NW has the dip direction 300 (orthographic
// projection in structural geology, course notes), so its right-hand strike is
// 210.
func TestDipDirection(t *testing.T) {
	holdTo(t, newDirection(115, false, Spec{}), right("205"), named("025", mistake.OtherEnd), named("115", mistake.DirectionForStrike), wrong("295"))
	holdTo(t, newDirection(300, true, Spec{}), right("210"), named("030", mistake.OtherEnd), named("300", mistake.DirectionForStrike))
	holdTo(t, newDirection(270, false, Spec{}), right("000"), right("360"), right("0"))
	holdTo(t, newDirection(0, true, Spec{}), right("270"))
	holdTo(t, newDirection(89, true, Spec{}), right("359"))
}

func TestDirectionsOfBothWaysAreDealt(t *testing.T) {
	seen(t, dipDirection{}, Spec{}, 500, map[string]func(Item) bool{
		"back":  func(it Item) bool { return it.(directionItem).back },
		"forth": func(it Item) bool { return !it.(directionItem).back },
		"wraps": func(it Item) bool { return it.(directionItem).wrapped() },
	})
}
