package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
)

// whichWayLevel shows a round level and asks how the plate is tilted.
type whichWayLevel struct{}

// levelItem is one bubble.
type levelItem struct {
	choice
	figure LevelFigure
	asks   levelAsk
	corner bool // the bubble has run off towards a corner of the plate
}

// levelAsk is what is asked about the bubble.
type levelAsk uint8

const (
	asksHigh levelAsk = iota
	asksLower
	asksRaise
	levelAsks
)

// Name, Title and OnPaper describe the kind.
func (whichWayLevel) Name() string  { return "which-way-level" }
func (whichWayLevel) Title() string { return "Which way is level" }
func (whichWayLevel) OnPaper() bool { return true }

// sides are the sides of the plate, clockwise from the forward end.
var sides = [8]string{"front", "front right", "right", "back right", "back", "back left", "left", "front left"}

// levelled is the choice for a bubble within its ring.
const levelled = "none: it is level"

// Deal draws where the bubble stands: off towards one of eight sides, or, one
// time in nine, in its ring.
func (whichWayLevel) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	asks, side := levelAsk(r.IntN(int(levelAsks))), r.IntN(len(sides)+1)
	bearing := angle(45*side + r.IntN(17) - 8)
	off := 0.6 + 0.75*r.Float64()
	if side == len(sides) {
		off = 0.15 * r.Float64()
	}
	it := levelItem{asks: asks, corner: side%2 == 1, figure: LevelFigure{Right: off * bearing.Sin(), Forward: off * bearing.Cos()}}
	it.choice = levelChoice(r, asks, side)
	return it, nil
}

// levelChoice offers the right side, the opposite one, the two beside it and
// level.
func levelChoice(r *rand.Rand, asks levelAsk, side int) choice {
	level := option{levelled, slipped("The bubble is not wholly inside its ring.")}
	if side == len(sides) {
		level.reason = slipped("A bubble wholly inside its ring means level.")
		at := r.IntN(len(sides))
		return shuffled(r, "side", level, aside(at), aside(at+2), aside(at+4), aside(at+6))
	}
	if asks == asksRaise {
		side += 4
	}
	right := option{sides[side%8], slipped("The bubble runs to the high side.")}
	opposite := option{sides[(side+4)%8], slipped("The bubble is lighter than the liquid, so it runs to the high side, not to the low one.")}
	return shuffled(r, "side", right, opposite, aside(side+2), aside(side+6), level)
}

func aside(side int) option {
	return option{sides[side%8], slipped("Look which way the bubble has run from the middle of the ring; the plate is tilted along that line.")}
}

// Kind is the kind.
func (levelItem) Kind() Kind { return whichWayLevel{} }

// Prompt is the question.
func (it levelItem) Prompt() string {
	const seen = "The figure shows the round level on the plate from above, the forward end up. "
	switch it.asks {
	case asksHigh:
		return seen + "Which side of the plate is too high?"
	case asksLower:
		return seen + "Which side of the plate must be lowered to make it level?"
	case asksRaise, levelAsks:
	}
	return seen + "Which side of the plate must be raised to make it level?"
}

// Figure is the level.
func (it levelItem) Figure() Figure { return it.figure }

// Alt says where the bubble stands.
func (it levelItem) Alt() string {
	f := it.figure
	turn := orient.AzimuthOf(orient.Atan2(f.Right, f.Forward)).Degrees()
	return fmt.Sprintf("A round level seen from above, the forward end of the plate up. The middle of the bubble stands %.1f ring radii from the middle of the ring, %.0f degrees clockwise from the forward end; the bubble itself is 0.7 ring radii wide each way.",
		math.Hypot(f.Right, f.Forward), turn)
}

// Hints help in steps.
func (levelItem) Hints() []string {
	return []string{
		"Is the bubble wholly inside its ring? If not, it has run off along the line of the tilt.",
		"Air is lighter than the liquid: think of the bubble as climbing.",
	}
}

// Near says that both bubbles ask for the same answer to the same question.
func (it levelItem) Near(other Item) bool {
	o, ok := other.(levelItem)
	return ok && it.asks == o.asks && it.Key() == o.Key()
}

// Difficulty is higher where the low side is asked for, and for a bubble that
// runs off towards a corner.
func (it levelItem) Difficulty() float64 {
	d := 0.2
	if it.asks == asksRaise {
		d += 0.4
	}
	if it.corner {
		d += 0.2
	}
	return d
}
