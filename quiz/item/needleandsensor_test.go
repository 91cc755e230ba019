package item

import (
	"math/rand/v2"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

func TestNeedleAndSensor(t *testing.T) {
	for s, kind := range storyKinds {
		it := comparedItem{story: s, declination: 12}
		it.choice = it.offered(rand.New(rand.NewPCG(1, 1)))
		holdTo(t, it, right(storyWords[s]), named(storyWords[bothGood], kind))
	}
	it := comparedItem{story: bothGood}
	it.choice = it.offered(rand.New(rand.NewPCG(1, 1)))
	holdTo(t, it, right("neither"))
}

// Needle and sensor agree within a few degrees (common practice); a compass
// that errs by more than 3° is not to be used (US Army FM 3-25.26, Map Reading
// and Land Navigation, sect. 9-2).
func TestStoriesShowInTheNumbers(t *testing.T) {
	properties := map[string]func(Item) bool{}
	for s := range stories {
		properties[storyWords[s]] = func(it Item) bool {
			c := it.(comparedItem)
			if c.story == s && !showsIn(c) {
				t.Errorf("%s: needle %s, sensor %s, declination %d", storyWords[s], orient.Format(c.needle, 0), orient.Format(c.sensor, 0), c.declination)
			}
			return c.story == s
		}
	}
	seen(t, needleAndSensor{}, Spec{}, 2000, properties)
}

// showsIn says that the difference of the two is what the story makes it.
func showsIn(c comparedItem) bool {
	turn := c.needle.Strike.From(c.sensor.Strike).Degrees()
	dips := (c.needle.Dip - c.sensor.Dip).Abs().Degrees()
	d := float64(c.declination)
	switch c.story {
	case bothGood:
		return abs(turn) <= 3.01 && dips <= 3.01
	case needleUnset:
		return abs(turn+d) < 0.01 && dips <= 3.01
	case sensorUnset:
		return abs(turn-d) < 0.01 && dips <= 3.01
	case sensorIron, ironNear, needleRubs, needleLocked:
		return abs(turn) > 20 && dips <= 3.01
	case needleScale:
		return abs(turn) <= 3.01 && dips > 15
	case stories:
	}
	return false
}

func abs(x float64) float64 { return max(x, -x) }

// The note rules the other stories out.
func TestNotesRuleOutTheOthers(t *testing.T) {
	clues := map[story]string{ // what a note must say unless the story is this one
		needleUnset: "declination is set|dial is turned", sensorUnset: "in the sensor|knows its place",
		sensorIron: "turned through all directions", needleRubs: "bubble centred|bubble was centred",
		needleLocked: "swung freely|lock was open", ironNear: "no iron", needleScale: "degree scale",
	}
	for s := range stories {
		note := strings.ToLower(comparedItem{story: s}.note())
		for other, clue := range clues {
			if got, want := saysOne(note, clue), other != s; got != want {
				t.Errorf("%s: the note says %q: %t, want %t\n%s", storyWords[s], clue, got, want, note)
			}
		}
	}
}

// saysOne says that one of the clues stands in the note.
func saysOne(note, clues string) bool {
	for _, c := range strings.Split(clues, "|") {
		if strings.Contains(note, c) {
			return true
		}
	}
	return false
}

func TestStoriesNameMistakesOfTheCatalogue(t *testing.T) {
	for s, k := range storyKinds {
		if !k.IsValid() || k == mistake.OtherEnd {
			t.Errorf("%s: got %v, want a mistake of reading", storyWords[s], k)
		}
	}
}
