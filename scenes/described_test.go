package scenes

import (
	"fmt"
	"strings"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/lesson"
)

// someStations are every state of every scene in someShapes, and the lessons.
func someStations(t *testing.T, look func(t *testing.T, s still)) {
	for _, at := range someShapes {
		t.Run(fmt.Sprintf("%vx%v at %v", at.w, at.h, at.text), func(t *testing.T) {
			t.Parallel()
			for _, s := range stills(t, at) {
				look(t, s)
			}
		})
	}
	t.Run("lectures", func(t *testing.T) {
		t.Parallel()
		for _, s := range lectureWalk.once(func(look func(station)) { lectureStations(t, 1280, 720, Settings{}, look) }) {
			look(t, s)
		}
	})
}

// hallStations are the hall with its doors and its settings.
func hallStations(w, h float64, set Settings, look func(station)) {
	none := func() (Scene, error) { return nil, nil }
	hall := NewHall(HallOptions{Settings: set, Doors: []Door{
		{Group: Practice, Title: "The bench", Words: "A slab and an instrument.", Open: none},
		{Group: Lectures, Title: "Strike and dip", Words: "What they are.", Open: none},
		{Group: Practice, Title: "Open a form", Words: "From a file.", Wants: WantForm},
	}})
	d := drive{w, h, hall}
	d.wait()
	for i := range 12 {
		look(station{fmt.Sprintf("hall, page %d", i+1), hall})
		if hall.Description().Find(idPanelMore) == nil {
			return
		}
		d.act(idPanelMore)
	}
}

// lectureStations are the steps of the lessons that come with the program, at
// their end and revealed.
func lectureStations(t *testing.T, w, h float64, set Settings, look func(station)) {
	t.Helper()
	for _, l := range lesson.Shipped() {
		s, err := NewLecture(l, LectureOptions{Settings: set})
		if err != nil {
			t.Fatal(err)
		}
		d := drive{w, h, s}
		d.wait()
		for i := range l.Steps {
			look(station{fmt.Sprintf("%s, step %d", l.Name, i+1), s})
			s.play.Finish()
			if _, err := s.play.Next(); err != nil {
				t.Fatal(err)
			}
			s.begun()
			d.wait()
		}
	}
}

func pressable(w widget) bool {
	switch w.look {
	case filled, outlined, chip, key, quiet, lens:
		return true
	case box:
		return w.focus
	}
	return false
}

// role is the one that a look stands for.
func (w widget) suits(r describe.Role) bool {
	switch w.look {
	case chip:
		return r == describe.Toggle || r == describe.Choice || r == describe.Button
	case filled, outlined, key, quiet, lens:
		return r == describe.Button || r == describe.Toggle || r == describe.Image
	case box:
		return r == describe.Field
	}
	return true
}

// whole are the nodes that are no widget: the picture itself, and what is
// drawn over it by others than the zones.
func whole(screen describe.Rect, n *describe.Node) bool {
	return n.Role == describe.Image || n.Bounds.W >= .9*screen.W
}

// What can be pressed is described, with a name, a fitting role and its place;
// and what can have the focus is drawn.
func TestControlsAndDescriptionAgree(t *testing.T) {
	someStations(t, func(t *testing.T, s still) {
		drawn := map[describe.ID]bool{}
		for _, z := range s.zones {
			for _, w := range z.widgets {
				if !pressable(w) {
					continue
				}
				drawn[w.id] = true
				n := s.tree.Find(w.id)
				switch {
				case n == nil:
					t.Errorf("%s: %q is drawn as a control and not described", s.name, w.text)
				case n.Name == "":
					t.Errorf("%s: control %q has no name", s.name, w.text)
				case !n.Focusable:
					t.Errorf("%s: control %q cannot have the focus", s.name, n.Name)
				case !w.suits(n.Role):
					t.Errorf("%s: control %q has role %v", s.name, n.Name, n.Role)
				case n.Bounds != describe.Rect(w.rect):
					t.Errorf("%s: %q is described at %.0f and drawn at %.0f", s.name, n.Name, n.Bounds, w.rect)
				}
			}
		}
		for _, n := range s.tree.Order() {
			if !drawn[n.ID] && !whole(s.tree.Root.Bounds, n) && n.Role != describe.Line {
				t.Errorf("%s: %q can have the focus and is not drawn", s.name, n.Name)
			}
		}
	})
}

func TestDescriptionsAreWhole(t *testing.T) {
	someStations(t, func(t *testing.T, s still) {
		r := s.tree.Root.Bounds
		ids, names := map[describe.ID]bool{}, map[string]bool{}
		headings := 0
		visit(&s.tree.Root, func(n *describe.Node) {
			if n.ID != 0 && ids[n.ID] {
				t.Errorf("%s: two nodes have the ID %d: %q", s.name, n.ID, n.Name)
			}
			ids[n.ID] = true
			if n.Role == describe.Heading {
				headings++
			}
			if n.Name == "" {
				t.Errorf("%s: node %d has no name", s.name, n.ID)
			}
			if !n.Focusable {
				return
			}
			if names[n.Name] {
				t.Errorf("%s: two controls are called %q", s.name, n.Name)
			}
			names[n.Name] = true
			b := n.Bounds
			if b.W <= 0 || b.X < -1 || b.Y < -1 || b.X+b.W > r.W+1 || b.Y+b.H > r.H+1 {
				t.Errorf("%s: %q at %.0f leaves the screen", s.name, n.Name, b)
			}
		})
		if headings == 0 || s.tree.Root.Name == "" {
			t.Errorf("%s: no heading, or no name of the screen", s.name)
		}
	})
}

// A target is 24 px either way (WCAG 2.2, 2.5.8), and 44 on a phone, where a
// finger presses it (2.5.5).
func TestTargetsAreLargeEnough(t *testing.T) {
	someStations(t, func(t *testing.T, s still) {
		least := 24.0
		if s.lay.Phone {
			least = 44
		}
		for _, n := range s.tree.Order() {
			if n.Role == describe.Line { // there is nothing to press
				continue
			}
			least := least
			if s.lab && n.ID >= idPadKey && n.ID < idStudent {
				least = 24 // a keypad of all letters and figures; ids can be chosen from a list too
			}
			if n.Bounds.W < least-.01 || n.Bounds.H < least-.01 {
				t.Errorf("%s: %q is %.0f by %.0f px, want %.0f", s.name, n.Name, n.Bounds.W, n.Bounds.H, least)
			}
		}
	})
}

// Every word on the screen is in the description too: in the name, value or
// keys of a node.
func TestEveryWordIsDescribed(t *testing.T) {
	someStations(t, func(t *testing.T, s still) {
		var words []string
		visit(&s.tree.Root, func(n *describe.Node) {
			words = append(words, n.Name+" "+n.Value+" "+n.Keys)
		})
		words = append(words, s.told...) // of the two magnifiers the spoken words tell more than their captions
		all := strings.ToLower(strings.Join(words, " | "))
		for _, z := range s.zones {
			for _, w := range z.widgets {
				text := strings.ToLower(strings.ReplaceAll(w.text, "\n", " "))
				if w.id != 0 || w.look == hidden || strings.Contains(all, text) {
					continue
				}
				t.Errorf("%s: %q is on the screen and not described", s.name, w.text)
			}
		}
	})
}
