package scenes

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"cuesta/scenes/describe"
)

// spot is where the mark of scanning can stand: on one control, or round
// several, which are gone through one by one when the group is pressed.
type spot struct {
	id   describe.ID
	name string
	of   string // the group of controls it belongs to, or ""
	box  describe.Rect
	one  bool // of several choices
	sub  []spot
}

// Bounds of the groups, in marks: no control is to be farther from the start
// than mostMarks, and no group is to have more than mostInGroup controls
// unless that would be.
const (
	mostMarks   = 12
	mostInGroup = 6
	mostInTwo   = 36 // controls that can be reached so by group and control
)

// spotsOf puts the controls of a screen into groups, row by row in reading
// order. Fields are left out, since a switch writes with the buttons beside
// them.
func spotsOf(t *describe.Tree) []spot {
	var all []spot
	for _, n := range t.Order() {
		if n.Role != describe.Field {
			all = append(all, spot{id: n.ID, name: n.Name, of: groupOf(n), box: n.Bounds, one: n.Role == describe.Choice})
		}
	}
	rows := rowsOf(all)
	if len(all) <= mostInTwo {
		return grouped(rows)
	}
	return blocksOf(rows, len(all))
}

// rowsOf parts controls where a new row begins on the screen.
func rowsOf(all []spot) [][]spot {
	var rows [][]spot
	for i, s := range all {
		if i == 0 || !beside(all[i-1].box, s.box) {
			rows = append(rows, nil)
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], s)
	}
	var out [][]spot
	for _, r := range rows {
		out = append(out, parted(r, mostInGroup, apart)...)
	}
	return out
}

// beside says that two boxes stand in one row.
func beside(a, b describe.Rect) bool {
	low, high := math.Min(a.H, b.H), math.Max(a.H, b.H)
	over := math.Min(a.Y+a.H, b.Y+b.H) - math.Max(a.Y, b.Y)
	return over > low/2 && high < 2.5*low
}

// parted cuts a row into about equal parts of about n, where two controls may
// be parted.
func parted(row []spot, n int, may func(a, b spot) bool) [][]spot {
	parts := (len(row) + n - 1) / n
	var out [][]spot
	from := 0
	for i := 1; i <= parts; i++ {
		to := i * len(row) / parts
		for _, d := range [...]int{0, -1, 1, -2, 2} {
			if at := to + d; i < parts && at > from && at < len(row) && may(row[at-1], row[at]) {
				to = at
				break
			}
		}
		out = append(out, row[from:to])
		from = to
	}
	return out
}

// apart says that two controls are not choices of one thing.
func apart(a, b spot) bool { return !a.one || !b.one }

func anywhere(_, _ spot) bool { return true }

// grouped joins neighbouring rows, the shortest first, until every control is
// near.
func grouped(rows [][]spot) []spot {
	for farthest(rows) > mostMarks && len(rows) > 1 {
		at := 0
		for i := range len(rows) - 1 {
			if len(rows[i])+len(rows[i+1]) < len(rows[at])+len(rows[at+1]) {
				at = i
			}
		}
		joined := append(append([]spot(nil), rows[at]...), rows[at+1]...)
		rows = append(append(append([][]spot(nil), rows[:at]...), joined), rows[at+2:]...)
	}
	if farthest(rows) > mostMarks {
		rows = evenly(rows)
	}
	out := make([]spot, len(rows))
	for i, r := range rows {
		out[i] = group(r)
	}
	return out
}

// farthest is how many marks away the control is that is reached last.
func farthest(rows [][]spot) int {
	most := 0
	for i, r := range rows {
		n := i + 1
		if len(r) > 1 {
			n += len(r)
		}
		most = max(most, n)
	}
	return most
}

// evenly makes as many groups as each has controls.
func evenly(rows [][]spot) [][]spot {
	var all []spot
	for _, r := range rows {
		all = append(all, r...)
	}
	return parted(all, int(math.Ceil(math.Sqrt(float64(len(all))))), anywhere)
}

// blocksOf are groups of groups, for screens with very many controls.
func blocksOf(rows [][]spot, n int) []spot {
	blocks := int(math.Ceil(float64(n) / 16))
	var out []spot
	var now [][]spot
	count := 0
	for _, r := range rows {
		now = append(now, r)
		count += len(r)
		if count*blocks >= n*(len(out)+1) {
			g := grouped(now)
			out = append(out, group(g))
			now = nil
		}
	}
	return out
}

// group is a spot round others; one alone stays what it is.
func group(parts []spot) spot {
	if len(parts) == 1 {
		return parts[0]
	}
	g := spot{sub: parts, box: parts[0].box}
	for _, p := range parts[1:] {
		g.box = joined(g.box, p.box)
	}
	g.name = fmt.Sprintf("%s: %d controls", g.called(), g.count())
	return g
}

// groupOf is the name of the group a control belongs to: its own, or for a
// choice what stands before the colon.
func groupOf(n *describe.Node) string {
	if before, _, ok := strings.Cut(n.Name, ": "); n.Group == "" && ok && n.Role == describe.Choice {
		return before
	}
	return n.Group
}

// mostNames is how many names a group is called by.
const mostNames = 3

// called are the names of the groups it holds, where they are few and every
// control has one; else the first control and the last.
func (s spot) called() string {
	var names []string
	all := s.controls(nil)
	for _, c := range all {
		if !slices.Contains(names, c.of) {
			names = append(names, c.of)
		}
	}
	if slices.Contains(names, "") || len(names) > mostNames {
		return all[0].name + " to " + all[len(all)-1].name
	}
	return strings.Join(names, ", ")
}

// controls adds the controls of a spot.
func (s spot) controls(to []spot) []spot {
	if s.sub == nil {
		return append(to, s)
	}
	for _, p := range s.sub {
		to = p.controls(to)
	}
	return to
}

// count is the number of controls in a spot.
func (s spot) count() int { return len(s.controls(nil)) }

func joined(a, b describe.Rect) describe.Rect {
	x, y := math.Min(a.X, b.X), math.Min(a.Y, b.Y)
	return describe.Rect{X: x, Y: y, W: math.Max(a.X+a.W, b.X+b.W) - x, H: math.Max(a.Y+a.H, b.Y+b.H) - y}
}
