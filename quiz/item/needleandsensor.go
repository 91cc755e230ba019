package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// needleAndSensor has the readings of a needle and a sensor compared.
type needleAndSensor struct{}

// comparedItem is one pair of readings.
type comparedItem struct {
	choice
	needle, sensor orient.Plane
	notation       orient.Notation
	story          story
	declination    int // degrees, east positive
}

// story is what is behind the difference.
type story uint8

const (
	bothGood     story = iota // within a few degrees
	needleUnset               // the ring stands at zero
	sensorUnset               // no declination in the sensor
	sensorIron                // not calibrated for its own iron
	needleRubs                // tilted case
	needleLocked              // held
	ironNear                  // a vehicle beside both
	needleScale               // the percent scale read for the dip
	stories
)

// storyWords are the choices.
var storyWords = [stories]string{
	bothGood:     "neither: they agree as well as a needle and a sensor can",
	needleUnset:  "the needle: its ring was not set to the declination",
	sensorUnset:  "the sensor: it was not told the declination",
	sensorIron:   "the sensor: it was not calibrated, and its own iron turns it",
	needleRubs:   "the needle: it touched the glass and was not free",
	needleLocked: "the needle: it was held by its lock",
	ironNear:     "both: iron beside them turns needle and sensor",
	needleScale:  "the arc beside the needle: its percent scale was read as degrees",
}

// storyKinds are the mistakes of the catalogue behind them, where there is one.
var storyKinds = map[story]mistake.Kind{
	needleUnset: mistake.DeclinationNotSet, sensorUnset: mistake.DeclinationNotSet,
	needleRubs: mistake.NeedleRubbing, needleLocked: mistake.NeedleLocked, needleScale: mistake.PercentScale,
}

// Name, Title and OnPaper describe the kind.
func (needleAndSensor) Name() string  { return "needle-and-sensor" }
func (needleAndSensor) Title() string { return "Compare needle and sensor" }
func (needleAndSensor) OnPaper() bool { return true }

// Deal draws a bed, a declination from 8° to 20° of either sign and a story,
// and what both instruments then show.
func (needleAndSensor) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.planeBetween(r, 25, 80)
	if err != nil {
		return nil, err
	}
	it := comparedItem{notation: readInField(s.Notation), story: story(r.IntN(int(stories))), declination: signed(r, 8, 20)}
	if p.Dip >= 40*orient.Degree && it.story == needleScale {
		it.story = bothGood
	}
	it.show(p, r)
	it.choice = it.offered(r)
	return it, nil
}

// show sets what both instruments read on the bed p.
func (it *comparedItem) show(p orient.Plane, r *rand.Rand) {
	d, odd := angle(it.declination), angle(it.oddTurn(r))
	it.needle = turnedBy(p, angle(r.IntN(3)-1), angle(r.IntN(3)-1))
	it.sensor = turnedBy(p, angle(r.IntN(3)-1), angle(r.IntN(3)-1))
	switch it.story {
	case bothGood, stories:
	case needleUnset:
		it.needle = turnedBy(it.sensor, -d, 0)
	case sensorUnset:
		it.sensor = turnedBy(it.needle, -d, 0)
	case sensorIron:
		it.sensor = turnedBy(p, odd, 0)
	case needleRubs, needleLocked:
		it.needle = turnedBy(p, odd, 0)
	case ironNear:
		it.needle, it.sensor = turnedBy(p, odd, 0), turnedBy(p, -odd/2, 0)
	case needleScale:
		it.needle = orient.Plane{Strike: it.needle.Strike, Dip: angle(whole(orient.Angle(orient.PercentGrade(p.Dip)) * orient.Degree))}
	}
}

// oddTurn is a turn that neither the declination nor its opposite explains.
func (it *comparedItem) oddTurn(r *rand.Rand) int {
	for {
		n := signed(r, 24, 60)
		if n != it.declination && n != -it.declination {
			return n
		}
	}
}

func turnedBy(p orient.Plane, turn, dip orient.Angle) orient.Plane {
	return orient.Plane{Strike: p.Strike.Add(turn), Dip: p.Dip + dip}.Rounded(orient.Degree)
}

// offered are the right choice, that they agree, and three that the note beside
// the readings rules out.
func (it comparedItem) offered(r *rand.Rand) choice {
	right := option{storyWords[it.story], slipped(storyAdvice)}
	var others []option
	for _, i := range r.Perm(int(stories)) {
		if s := story(i); s != it.story && s != bothGood && len(others) < 3 {
			others = append(others, option{storyWords[s], slipped("The note beside the readings speaks against this.")})
		}
	}
	reason := slipped("Look by how much the directions and the dips differ.")
	if k, ok := storyKinds[it.story]; ok {
		reason = of(k, reason.words)
	}
	return shuffled(r, "which to distrust", right, append(others, option{storyWords[bothGood], reason})...)
}

const storyAdvice = "A needle and a sensor on one bed agree within a few degrees; where they do not, find the cause before you use either."

// Kind is the kind.
func (comparedItem) Kind() Kind { return needleAndSensor{} }

// Prompt is the question.
func (it comparedItem) Prompt() string {
	return fmt.Sprintf("The same bed was read with a needle and with a sensor laid flat. The declination of the place is %s. %s Which reading is to be distrusted, and why?",
		declinationWords(angle(it.declination)), it.note())
}

// note is what the notebook says beside the readings. It rules the other
// stories out without naming the right one.
func (it comparedItem) note() string {
	const (
		set    = "The declination is set on the dial and in the sensor"
		free   = "the needle swung freely with the bubble centred"
		alone  = "no iron or wire is near"
		turned = "the sensor had been turned through all directions beforehand"
		dips   = "the angle of dip was read on the degree scale"
	)
	switch it.story {
	case needleUnset:
		return "The zero of the dial stands at its index; the sensor knows its place. Otherwise " + free + ", " + alone + ", " + turned + " and " + dips + "."
	case sensorUnset:
		return "The dial is turned to the declination; the sensor gives directions from magnetic north. Otherwise " + free + ", " + alone + ", " + turned + " and " + dips + "."
	case sensorIron:
		return set + "; " + free + ", " + alone + " and " + dips + ". The sensor came straight from a bag with a magnetic clasp. Turned end for end, the needle's two readings differ by exactly half a turn, the sensor's do not."
	case needleRubs:
		return set + "; " + alone + ", " + turned + " and " + dips + ". The bubble had run to the wall when the dial was read, and the lock was open, but tapping the case moved nothing."
	case needleLocked:
		return set + "; the bubble was centred, " + alone + ", " + turned + " and " + dips + ". Turned end for end, the dial still showed the same number."
	case ironNear:
		return set + "; " + free + ", " + turned + " and " + dips + ". Both were read beside the field vehicle; forty steps away they agree with each other, and with neither of these."
	case needleScale:
		return set + "; " + free + ", " + alone + " and " + turned + ". The arc has two scales."
	case bothGood, stories:
	}
	return set + "; " + free + ", " + alone + ", " + turned + " and " + dips + "."
}

// Figure is the table of both.
func (it comparedItem) Figure() Figure {
	return TableFigure{Head: []string{"instrument", "plane"}, Rows: [][]string{
		{"needle and arc", orient.Format(it.needle, it.notation)},
		{"sensor", orient.Format(it.sensor, it.notation)},
	}}
}

// Alt tells the table.
func (it comparedItem) Alt() string {
	return fmt.Sprintf("A table of two readings: needle and arc %s, sensor %s.",
		orient.Format(it.needle, it.notation), orient.Format(it.sensor, it.notation))
}

// Hints help in steps.
func (comparedItem) Hints() []string {
	return []string{
		"How far apart are the directions, and how far the dips? A few degrees are in order.",
		"Compare the difference with the declination, and ask whether the dip is wrong too: iron and declination turn directions only.",
		"Read the note once more: what was looked after, and what was not?",
	}
}

// Near says that both tell the same story of much the same bed.
func (it comparedItem) Near(other Item) bool {
	o, ok := other.(comparedItem)
	return ok && it.story == o.story && it.needle.AngleTo(o.needle) <= 5*orient.Degree
}

// Difficulty is our estimate for the story.
func (it comparedItem) Difficulty() float64 {
	switch it.story {
	case bothGood:
		return 0.3
	case needleUnset, sensorUnset:
		return 0.6
	case sensorIron, ironNear:
		return 0.5
	case needleScale:
		return 0.7
	case needleRubs, needleLocked, stories:
	}
	return 0.4
}
