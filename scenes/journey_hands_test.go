package scenes_test

import (
	"strings"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

// keyboard is a hand on the keyboard: it presses the key that the description
// tells, or goes there with Tab and presses Enter.
type keyboard struct{ *room }

func (k keyboard) press(name string, times int) {
	k.t.Helper()
	n := k.named(name)
	if n == nil {
		k.t.Fatalf("no control %q in\n%s", name, k.controls())
	}
	if s, err := keymap.ParseStroke(n.Keys); err == nil && n.Keys != "" {
		k.byKey(n.ID, s, times)
		return
	}
	k.goTo(n.ID)
	for range times {
		k.room.press(input.Press{Key: input.Enter})
	}
}

func (k keyboard) byKey(id describe.ID, s keymap.Stroke, times int) {
	k.t.Helper()
	p := input.Press{Key: s.Key, Rune: s.Rune}
	if at := k.tree().Find(k.tree().Focus); at != nil && at.ID != id && (at.Role == describe.Field || s.Key == input.Space) {
		k.room.press(input.Press{Key: input.Escape}) // out of a field, or off a control that the key would press
	}
	for range times {
		k.room.press(p)
	}
	for range 3 { // a key may go round through several choices
		if n := k.tree().Find(id); n == nil || n.Role != describe.Choice || n.On {
			return
		}
		k.room.press(p)
	}
	k.t.Fatalf("%v does not choose control %d", s, id)
}

// goTo moves the focus with Tab.
func (k keyboard) goTo(id describe.ID) {
	k.t.Helper()
	for range len(k.tree().Order()) + 1 {
		if k.tree().Focus == id {
			return
		}
		k.room.press(input.Press{Key: input.Tab})
	}
	k.t.Fatalf("Tab does not reach control %d in\n%s", id, k.controls())
}

func (k keyboard) write(text string) {
	for _, r := range text {
		p := input.Press{Rune: r}
		if r == ' ' {
			p = input.Press{Key: input.Space}
		}
		k.room.press(p)
	}
}

func (r *room) controls() string {
	var out []string
	for _, n := range r.tree().Order() {
		out = append(out, n.Name+" ["+n.Keys+"]")
	}
	return strings.Join(out, "\n")
}

// oneSwitch is a hand on one switch, or on two. It knows what has the mark from
// the description's focus.
type oneSwitch struct {
	*room
	two  bool
	stay int // ticks for which the mark stays
}

// theSwitch is what the switch sends.
var theSwitch = input.Press{Key: input.Enter}

// move brings the mark to the next place: by waiting, or by the other switch.
func (s oneSwitch) move() {
	if s.two {
		s.room.press(input.Press{Key: input.Space})
		return
	}
	s.frame(input.Frame{Ticks: s.stay / 2})
}

func (s oneSwitch) press(name string, times int) {
	s.t.Helper()
	if s.named(name) == nil {
		s.t.Fatalf("no control %q in\n%s", name, s.controls())
	}
	entered := map[string]bool{}
	for range 400 {
		want := s.named(name)
		at := s.tree().Find(s.tree().Focus)
		switch {
		case at == nil || want == nil:
		case at.ID == want.ID:
			for range times {
				s.room.press(theSwitch)
			}
			return
		case at.Role == describe.Group && holds(at.Bounds, want.Bounds) && !entered[at.Name]:
			entered[at.Name] = true
			s.room.press(theSwitch)
			continue
		}
		s.move()
	}
	s.t.Fatalf("the mark does not come to %q", name)
}

func holds(a, b describe.Rect) bool {
	return b.X >= a.X-.5 && b.Y >= a.Y-.5 && b.X+b.W <= a.X+a.W+.5 && b.Y+b.H <= a.Y+a.H+.5
}

// write uses the buttons beside the field, and the switch of the one word.
func (s oneSwitch) write(text string) {
	s.t.Helper()
	if before, ok := strings.CutSuffix(text, " overturned"); ok {
		s.press("Overturned", 1)
		text = before
	}
	if text == "horizontal" {
		text = "000/00"
	}
	s.press("Write with buttons", 1)
	for _, r := range text {
		name := string(r)
		switch r {
		case '/':
			name = "Slash"
		case '.':
			name = "Point"
		case ' ':
			name = "space"
		}
		s.press(name, 1)
	}
	if s.named("Back to the bench") != nil {
		s.press("Back to the bench", 1)
		return
	}
	s.press("Write with buttons", 1)
}

var (
	_ hand = keyboard{}
	_ hand = oneSwitch{}
)
