package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// readDial has the dial read at the north end of the needle, for either end of
// the edge.
type readDial struct{}

// dialItem is one dial.
type dialItem struct {
	quantity
	figure DialFigure
	rear   bool // the direction of the rear end of the edge is asked for
}

// Name, Title and OnPaper describe the kind.
func (readDial) Name() string  { return "read-dial" }
func (readDial) Title() string { return "Read the dial" }
func (readDial) OnPaper() bool { return true }

// Deal draws where the needle stands and which end of the edge is asked for.
// The ring stands at the declination of the place where it is preset.
func (readDial) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	ring := 0
	if s.RingPreset {
		ring = int(math.Round(s.field().Declination.Degrees()))
	}
	shown, rear := azimuth(r), r.IntN(3) == 0
	for !plainDial(shown, ring) {
		shown = azimuth(r)
	}
	return newDial(shown, ring, rear, s), nil
}

// plainDial says that no number beside the dial happens to be the answer, so
// that the figure has to be read.
func plainDial(shown, ring int) bool {
	needle := (ring - shown + 720) % 360
	return needle != shown && needle != (shown+180)%360 && shown%10 != 0
}

func newDial(shown, ring int, rear bool, s Spec) dialItem {
	t := s.tolerance()
	value, label := shown, "azimuth of the forward end"
	if rear {
		value, label = shown+180, "azimuth of the rear end"
	}
	it := dialItem{quantity: bearing(label, value, t.Reading, t.Partial), rear: rear}
	it.figure = DialFigure{Needle: angle(ring - shown).Wrapped(), Ring: angle(ring)}
	v := float64(value)
	if rear {
		it.slip(v+180, of(mistake.OtherEnd, "This is the number for the forward end. The rear end points the other way: 180° more, or less."))
	} else {
		it.slip(v+180, catalogued(mistake.SouthEnd, orient.AzimuthDip))
	}
	it.slip(360-v, catalogued(mistake.EastWest, orient.AzimuthDip))
	it.slip(180-v, of(mistake.EastWest, "East and west were exchanged, and the other end was read. Write the number at the north end as it stands."))
	it.slip(miscounted(v), slipped("The marks were counted the wrong way from the nearest number: on this dial the numbers grow anticlockwise."))
	return it
}

// miscounted is what is read when the marks are counted away from the nearest
// ten instead of towards it.
func miscounted(v float64) float64 { return 2*math.Round(v/10)*10 - v }

// Kind is the kind.
func (dialItem) Kind() Kind { return readDial{} }

// Prompt is the question.
func (it dialItem) Prompt() string {
	if it.rear {
		return "The edge of the plate lies along the strike, the plate is level and the needle at rest. Which azimuth does the rear end of the edge point to?"
	}
	return "The edge of the plate lies along the strike, the plate is level and the needle at rest. Which azimuth does the forward end of the edge point to?"
}

// Figure is the dial.
func (it dialItem) Figure() Figure { return it.figure }

// Alt says where the needle stands, not what the scale shows there.
func (it dialItem) Alt() string {
	text := "A dial seen from above, the forward end of the plate up. Its numbers run from 0 to 359 anticlockwise, so that E stands to the left of N. "
	if it.figure.Ring == 0 {
		text += "The zero of the scale stands at the forward end. "
	} else {
		text += "The ring is set to a declination of " + declinationWords(it.figure.Ring) + ": the zero of the scale stands that far " + clockwise(it.figure.Ring) + " from the forward end. "
	}
	n := orient.AzimuthOf(it.figure.Needle).Degrees()
	return text + fmt.Sprintf("The north end of the needle stands %.0f degrees clockwise from the forward end.", n)
}

// clockwise says which way a positive or negative turn goes.
func clockwise(a orient.Angle) string {
	if a < 0 {
		return "anticlockwise"
	}
	return "clockwise"
}

// Hints help in steps.
func (it dialItem) Hints() []string {
	hints := []string{
		"The north end of the needle is the one with its own shape and colour; the number is read there.",
		"The numbers on the dial grow anticlockwise. Find the number on either side of the needle and count the marks from the smaller one.",
	}
	if it.rear {
		return append(hints, "The number at the north end is the direction of the forward end; the rear end points the opposite way.")
	}
	return append(hints, "E and W stand exchanged on purpose, so that the number at the north end is already the direction of the forward end.")
}

// Near says that both dials show the same.
func (it dialItem) Near(other Item) bool {
	o, ok := other.(dialItem)
	return ok && it.near(o.quantity)
}

// Difficulty is how near the known mistakes lie.
func (it dialItem) Difficulty() float64 { return it.closeness() }
