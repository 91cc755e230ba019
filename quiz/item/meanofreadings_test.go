package item

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/orient/sphere"
	"cuesta/quiz/mistake"
)

// Two readings on either side of north have their mean there; the numbers as
// they stand have it in the south. The dip follows from tan d = tan 40° · cos
// 2°, worked out by hand.
func TestMeanOfReadings(t *testing.T) {
	it, ok := newMean([]orient.Plane{plane(358, 40), plane(2, 40)}, 0, Spec{})
	if got, want := it.Key(), "000/40"; !ok || got != want {
		t.Fatalf("got %s, %t, want %s", got, ok, want)
	}
	if got, want := it.readings[0], "178/40 E"; got != want {
		t.Errorf("got %s, want %s: from the other end, with letters", got, want)
	}
	holdTo(t, it, right("000/40"), right("180/40 E"), right("002/41"), right("N-S 40E"), wrong("090/40"), named("180/40", mistake.OtherEnd))

	// In dip directions nothing is turned: 088 and 092 have the mean 090.
	it, _ = newMean([]orient.Plane{plane(358, 40), plane(2, 40)}, 0, Spec{Notation: orient.DirectionDip})
	holdTo(t, it, right("090/40"), named("270/40", mistake.OtherEnd))
}

func TestAMeanAmongItsReadingsIsNotAsked(t *testing.T) {
	if it, ok := newMean([]orient.Plane{plane(34, 30), plane(35, 30), plane(36, 30)}, 0, Spec{}); ok {
		t.Errorf("got %s as a question, want none", it.Key())
	}
}

func TestNumbersAveragedAsTheyStandAreExplained(t *testing.T) {
	it, _ := newMean([]orient.Plane{plane(356, 50), plane(359, 50), plane(3, 51), plane(4, 50)}, -1, Spec{})
	m := it.Mark("180/50", Evidence{}) // the mean of 356, 359, 3 and 4
	if m.Right || !strings.Contains(m.Said, "averaged as they stand") {
		t.Errorf("got %+v, want wrong, for the numbers", m)
	}
}

func TestMeansOfEveryKindAreDealt(t *testing.T) {
	of := func(it Item) meanItem { return it.(meanItem) }
	seen(t, meanOfReadings{}, Spec{}, 1000, map[string]func(Item) bool{
		"naive mean wrong": func(it Item) bool { return of(it).naive },
		"six":              func(it Item) bool { return len(of(it).readings) == 6 },
		"gentle":           func(it Item) bool { return of(it).truth.Dip < deg(15) },
		"mean":             meanFollows(t),
	})
}

// meanFollows says that the key is the axial mean of the readings as written.
func meanFollows(t *testing.T) func(Item) bool {
	return func(it Item) bool {
		var planes []orient.Plane
		for _, text := range it.(meanItem).readings {
			e, err := orient.Parse(text, orient.AzimuthDip)
			if err != nil {
				t.Errorf("%s: %v", text, err)
			}
			planes = append(planes, e.Plane)
		}
		m, ok := sphere.MeanPlane(planes)
		return ok && m.AngleTo(it.(meanItem).truth) < deg(0.75)
	}
}
