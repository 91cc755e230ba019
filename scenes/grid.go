package scenes

import (
	"math"
	"slices"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// toward is where an arrow key takes the focus among the controls in a place:
// left and right within the row, up and down to what is nearest in the next row,
// or to the choice in force where that is one of several. It is false where
// nothing lies that way. From outside the place it goes to the first control
// there.
func toward(t *describe.Tree, in draw.Rect, now describe.ID, k input.Key) (describe.ID, bool) {
	var from *describe.Node
	var order []*describe.Node
	for _, n := range t.Order() {
		if !contains(in, middle(n.Bounds), n.Bounds.Y+n.Bounds.H/2) {
			continue
		}
		order = append(order, n)
		if n.ID == now && from == nil {
			from = n
		}
	}
	switch {
	case len(order) == 0:
		return now, false
	case from == nil:
		return order[0].ID, true
	case k == input.Left || k == input.Right:
		return besideIn(order, from, k == input.Left)
	default:
		return rowFrom(order, from, k == input.Up)
	}
}

// inPanel is where an arrow key takes the focus in a panel, line by line where it
// has lines. turns says that the last row was left for the next page.
func inPanel(t *describe.Tree, in draw.Rect, now describe.ID, k input.Key, lines int) (to describe.ID, turns bool) {
	if id, ok := lineBeside(now, k == input.Left || k == input.Up, lines); ok {
		return id, false
	}
	to, ok := toward(t, in, now, k)
	return to, !ok && k == input.Down && t.Find(idPanelMore) != nil
}

// besideIn is the next control of the same row.
func besideIn(order []*describe.Node, from *describe.Node, left bool) (describe.ID, bool) {
	to, best := from.ID, math.Inf(1)
	for _, n := range order {
		d := n.Bounds.X - from.Bounds.X
		if left {
			d = -d
		}
		if d > 0 && d < best && inOneRow(n.Bounds, from.Bounds) {
			to, best = n.ID, d
		}
	}
	return to, !math.IsInf(best, 1)
}

// inOneRow says that two boxes stand in one row: they share half of the lower
// one's height.
func inOneRow(a, b describe.Rect) bool {
	return min(a.Y+a.H, b.Y+b.H)-max(a.Y, b.Y) >= min(a.H, b.H)/2
}

// rowFrom is what stands next in the same column, down or up, or what is nearest
// in the next row.
func rowFrom(order []*describe.Node, from *describe.Node, up bool) (describe.ID, bool) {
	top := func(r describe.Rect) float64 {
		if up { // turned over, up is down
			return -r.Y - r.H
		}
		return r.Y
	}
	below := top(from.Bounds) + from.Bounds.H
	row, end := order[:0:0], math.Inf(1)
	for _, n := range order {
		if top(n.Bounds) > top(from.Bounds) && !inOneRow(n.Bounds, from.Bounds) {
			row = append(row, n)
			end = min(end, top(n.Bounds)+n.Bounds.H)
		}
	}
	to, best := from.ID, [3]float64{math.Inf(1)}
	for _, n := range row {
		r, across := n.Bounds, apartAcross(n.Bounds, from.Bounds)
		d := [3]float64{1 + across, math.Abs(middle(r) - middle(from.Bounds))}
		if gap := top(r) - below; across == 0 && gap < min(r.H, from.Bounds.H) {
			d = [3]float64{0, gap, d[1]}
		} else if top(r) >= end {
			continue
		}
		if slices.Compare(d[:], best[:]) < 0 {
			to, best = n.ID, d
		}
	}
	if next := nodeOf(row, to); next != nil && groupOf(next) != groupOf(from) {
		to = inForce(row, to)
	}
	return to, len(row) > 0
}

// inForce is where one stands on coming to a control: where it is one of several
// choices, on the one of them in force.
func inForce(order []*describe.Node, to describe.ID) describe.ID {
	at := nodeOf(order, to)
	if at == nil || at.Role != describe.Choice || groupOf(at) == "" {
		return to
	}
	for _, n := range order {
		if n.Role == describe.Choice && n.On && groupOf(n) == groupOf(at) {
			return n.ID
		}
	}
	return to
}

func nodeOf(order []*describe.Node, id describe.ID) *describe.Node {
	for _, n := range order {
		if n.ID == id {
			return n
		}
	}
	return nil
}

// firstInPanel is where one stands on a page of a panel that was turned to.
func firstInPanel(t *describe.Tree) describe.ID {
	return inForce(t.Order(), nextFocus(t, idClosePanel, false))
}

// apartAcross is the gap from left to right between two boxes; 0 where one
// stands under the other.
func apartAcross(a, b describe.Rect) float64 { return max(0, a.X-b.X-b.W, b.X-a.X-a.W) }

func middle(r describe.Rect) float64 { return r.X + r.W/2 }
