package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/sim"
)

// doubled tells the second tap of a double tap from one that is meant: what the
// first tap brought to its place is not pressed before it can have been seen.
type doubled struct {
	new   target // what the last press brought to its place, if anything
	brief int    // ticks left in which that is not pressed
}

// target is a control as one sees it, or none.
type target struct {
	id   describe.ID
	name string // of a button that does one thing after another
}

// targetOf is a control as one sees it. The two buttons of the column are
// others when they say something else; all other controls stay what they are.
func targetOf(n *describe.Node) target {
	switch {
	case n == nil:
		return target{}
	case n.ID == idPrimary, n.ID == idSecondary:
		return target{n.ID, n.Name}
	}
	return target{id: n.ID}
}

// briefly is how long what is new is kept from the pointer, half a second.
const briefly = sim.TicksPerSecond / 2

// pass lets time pass. A slow frame brings no more of it than elsewhere: what has
// not been on the screen has not been seen.
func (d *doubled) pass(ticks int) {
	d.brief = max(0, d.brief-min(ticks, longestFrame))
}

// holds says that a press would reach what came under the pointer just now.
func (d *doubled) holds(n *describe.Node) bool {
	return n != nil && d.brief > 0 && targetOf(n) == d.new
}

// meet takes note of a press: what was at its place before it, and is now.
func (d *doubled) meet(was target, now *describe.Node) {
	*d = doubled{}
	if is := targetOf(now); is != was {
		d.brief, d.new = briefly, is
	}
}
