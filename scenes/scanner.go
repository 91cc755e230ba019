package scenes

import (
	"slices"

	"cuesta/scenes/describe"
)

// scanner is the mark of scanning: it goes from group to group, and from
// control to control in a group that was pressed, for ever. Nothing times out;
// the mark comes round again.
type scanner struct {
	seen    []seen
	heading string
	root    []spot
	path    []int // the place of the mark, a number for each level
	ticks   int   // for which it has stood there
	rounds  int   // through the group
	fresh   bool  // a screen has just appeared: the first mark stays twice as long
	pressed bool  // the control has been pressed and can be pressed again at once
}

// seen is what the groups depend on.
type seen struct {
	id   describe.ID
	box  describe.Rect
	name string
}

// meet takes the screen as it is now. On a new screen the mark starts again;
// where only some controls have changed it stays, if it can.
func (s *scanner) meet(t *describe.Tree) {
	now := make([]seen, 0, len(s.seen))
	for _, n := range t.Order() {
		now = append(now, seen{n.ID, n.Bounds, n.Name})
	}
	heading := headingOf(t)
	if heading == s.heading && slices.Equal(now, s.seen) {
		return
	}
	was, before := s.at(), s.path
	again := heading != s.heading || s.root == nil
	s.seen, s.heading, s.root = now, heading, spotsOf(t)
	if s.path = find(s.root, was.id, nil); s.path == nil && was.sub != nil && len(before) == 1 {
		s.path = []int{min(before[0], max(len(s.root)-1, 0))}
	}
	if again || s.path == nil {
		s.restart()
	}
}

// restart puts the mark on the first group of a screen.
func (s *scanner) restart() {
	s.path, s.ticks, s.rounds, s.fresh, s.pressed = []int{0}, 0, 0, true, false
}

// find is the way to a control, or nil.
func find(spots []spot, id describe.ID, way []int) []int {
	if id == 0 {
		return nil
	}
	for i, p := range spots {
		here := append(slices.Clone(way), i)
		if p.id == id {
			return here
		}
		if found := find(p.sub, id, here); found != nil {
			return found
		}
	}
	return nil
}

// level is the list of spots the mark is in.
func (s *scanner) level() []spot {
	list := s.root
	for _, i := range s.path[:max(len(s.path)-1, 0)] {
		list = list[i].sub
	}
	return list
}

// at is the spot with the mark; the zero spot where there is nothing to press.
func (s *scanner) at() spot {
	list := s.level()
	if len(s.path) == 0 || s.path[len(s.path)-1] >= len(list) {
		return spot{}
	}
	return list[s.path[len(s.path)-1]]
}

// press goes into the group with the mark, or returns the control to press.
func (s *scanner) press() (id describe.ID, ok bool) {
	p := s.at()
	s.ticks, s.fresh = 0, false
	switch {
	case p.sub != nil:
		s.path, s.rounds = append(s.path, 0), 0
		return 0, false
	case p.id == 0:
		return 0, false
	}
	s.pressed = true
	return p.id, true
}

// next moves the mark on. From the end of a group it goes out of it: at once
// where out is set, else after going through it twice.
func (s *scanner) next(out bool) {
	s.ticks, s.fresh, s.pressed = 0, false, false
	last := len(s.path) - 1
	if last < 0 {
		return
	}
	if s.path[last]++; s.path[last] < len(s.level()) {
		return
	}
	s.path[last] = 0
	s.rounds++
	if last > 0 && (out || s.rounds == 2) {
		s.path, s.rounds = s.path[:last], 0
	}
}

// pass lets time pass in scanning by itself; stay is how long the mark stays.
// After a press the mark stays once more and then goes back to the groups.
func (s *scanner) pass(ticks, stay int) {
	if s.ticks += ticks; s.ticks < stay || s.fresh && s.ticks < 2*stay {
		return
	}
	if s.pressed && len(s.path) > 1 {
		s.path, s.rounds, s.ticks, s.pressed = s.path[:1], 0, 0, false
		return
	}
	s.next(false)
}
