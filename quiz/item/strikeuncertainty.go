package item

import (
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
)

// strikeUncertainty asks how uncertain a strike is at a dip.
type strikeUncertainty struct{}

// uncertainItem is one gentle bed and one error.
type uncertainItem struct {
	quantity
	bare
	dip, error int  // degrees
	scatter    bool // of strikes against that of dips; else of an edge off level
}

// Name, Title and OnPaper describe the kind.
func (strikeUncertainty) Name() string  { return "strike-uncertainty" }
func (strikeUncertainty) Title() string { return "How uncertain is this strike" }
func (strikeUncertainty) OnPaper() bool { return true }

// Deal draws a dip of 4° to 45° and an error of 1° to 3° among those at which
// the strike is clearly less certain than the error itself.
func (strikeUncertainty) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	from, to, err := s.dips(4, 45)
	if err != nil {
		return nil, err
	}
	var all []uncertainItem
	for d := from; d <= to; d++ {
		for e := 1; e <= 3; e++ {
			for _, scatter := range []bool{false, true} {
				if it := newUncertain(d, e, scatter); it.fair() {
					all = append(all, it)
				}
			}
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("%w: at these dips a strike is as certain as the reading; ask for gentler beds", ErrSpec)
	}
	return all[r.IntN(len(all))], nil
}

func newUncertain(dip, e int, scatter bool) uncertainItem {
	it := uncertainItem{dip: dip, error: e, scatter: scatter}
	label, value := "greatest error of the strike", orient.StrikeError(angle(e), angle(dip))
	if scatter {
		label, value = "scatter of the strikes", orient.StrikeScatter(angle(e), angle(dip))
	}
	it.quantity = slope(label, whole(value), slopeReckoned, none)
	it.full = max(1, math.Round(it.value/10))
	it.slip(float64(e), slipped("The strike is less certain than that: the gentler the bed, the further a small tilt turns its strike."))
	it.slip(float64(dip), slipped("This is the dip itself."))
	return it
}

// fair says that the answer is none of the given numbers, and that the edge is
// nearer to level than the bed.
func (it uncertainItem) fair() bool {
	return it.value > float64(it.error)+it.full && it.apart(it.value, float64(it.dip)) > it.full && 2*it.error <= it.dip
}

// Kind is the kind.
func (uncertainItem) Kind() Kind { return strikeUncertainty{} }

// Prompt is the question.
func (it uncertainItem) Prompt() string {
	if it.scatter {
		return fmt.Sprintf("Repeated readings of a bed that dips %d° have dips with a standard deviation of %d°. What standard deviation do you expect of their strikes, to the nearest degree?", it.dip, it.error)
	}
	return fmt.Sprintf("A bed dips %d°. While the dial is read, the edge of the plate is up to %d° off level. By how much can the strike be off, to the nearest degree?", it.dip, it.error)
}

// Hints help in steps.
func (it uncertainItem) Hints() []string {
	hints := []string{
		"Think of a bed that is nearly level: a small tilt swings its strike a long way round.",
		"The steeper the bed, the more certain its strike; at an upright bed the error is no more than that of the reading.",
	}
	if it.scatter {
		return append(hints, "The scatter of the strikes is that of the dips divided by the sine of the dip.")
	}
	return append(hints, "The sine of the error of the strike is the tangent of the tilt divided by the tangent of the dip.")
}

// Near says that both ask much the same: there are few answers of this kind, so
// the question counts with the answer.
func (it uncertainItem) Near(other Item) bool {
	o, ok := other.(uncertainItem)
	return ok && it.near(o.quantity) && it.scatter == o.scatter && max(it.dip, o.dip)-min(it.dip, o.dip) <= 3
}

// Difficulty is how near the known mistakes lie.
func (it uncertainItem) Difficulty() float64 { return it.closeness() }
