package scenes

import (
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
)

// lattice is a tree of controls in boxes of 40 by 20, at so many pixels.
func lattice(at map[describe.ID][2]float64, order ...describe.ID) *describe.Tree {
	var t describe.Tree
	t.Root.Bounds = describe.Rect{W: 1000, H: 1000}
	for _, id := range order {
		t.Root.Children = append(t.Root.Children, describe.Node{ID: id, Focusable: true,
			Bounds: describe.Rect{X: at[id][0], Y: at[id][1], W: 40, H: 20}})
	}
	return &t
}

func TestArrowsGoByRowsAndColumns(t *testing.T) {
	// Two columns whose rows do not meet, and a wide row below both.
	columns := lattice(map[describe.ID][2]float64{1: {0, 0}, 2: {0, 26}, 3: {0, 64}, 11: {100, 0}, 12: {100, 38}, 13: {100, 74}, 21: {0, 110}, 22: {300, 110}},
		1, 2, 3, 11, 12, 13, 21, 22)
	for _, c := range []struct {
		from describe.ID
		key  input.Key
		want describe.ID
	}{
		{1, input.Down, 2}, {2, input.Down, 3}, {3, input.Down, 21}, {3, input.Up, 2}, {2, input.Up, 1},
		{11, input.Down, 12}, {12, input.Up, 11}, {1, input.Right, 11}, {11, input.Left, 1}, {21, input.Right, 22},
		{22, input.Up, 13}, {1, input.Left, 1}, {1, input.Up, 1}, {21, input.Down, 21}, {22, input.Right, 22},
	} {
		if got, ok := toward(columns, draw.Rect{W: 1000, H: 1000}, c.from, c.key); got != c.want || ok != (c.from != c.want) {
			t.Errorf("from %d by %v: %d, %v, want %d", c.from, c.key, got, ok, c.want)
		}
	}
}

// In the settings a row is gone along with left and right, and up and down go
// from row to row: none is left out.
func TestDownGoesThroughAllSettings(t *testing.T) {
	for _, size := range windows {
		for _, text := range textSizes {
			b := mustBench(t)
			b.Choose(Settings{Text: text})
			d := drive{size[0], size[1], b}
			d.wait()
			d.key(input.F2)
			b.focus = idSetNotation
			d.wait()
			d.key(input.Right)
			if b.focus != idSetNotation+1 && b.screen.tree.Find(idSetNotation).Bounds.Y == b.screen.tree.Find(idSetNotation+1).Bounds.Y {
				t.Errorf("%v, text %v: right from the first choice goes to %d", size, text, b.focus)
			}
			d.key(input.Left)
			if b.focus != idSetNotation {
				t.Errorf("%v, text %v: left from the second choice goes to %d", size, text, b.focus)
			}
			seen := map[describe.ID]bool{}
			for range 60 {
				for _, o := range b.set.options() {
					seen[o.first] = seen[o.first] || b.focus >= o.first && int(b.focus) < int(o.first)+len(o.words)
				}
				d.key(input.Down)
			}
			for _, o := range b.set.options() {
				if !seen[o.first] {
					t.Errorf("%v, text %v: down leaves %s out", size, text, o.name)
				}
			}
		}
	}
}

// Whatever the size of the text, the choice just made stays in sight and keeps
// the focus.
func TestTheRowJustUsedStaysInSight(t *testing.T) {
	hall := func() Scene {
		none := func() (Scene, error) { return nil, nil }
		var doors []Door
		for range 12 {
			doors = append(doors, Door{Group: Practice, Title: "The bench", Words: "A slab and an instrument.", Open: none})
		}
		return NewHall(HallOptions{Doors: doors})
	}
	lecture := func() Scene {
		l, err := NewLecture(lesson.Shipped()[0], LectureOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for name, scene := range map[string]func() Scene{"bench": func() Scene { return mustBench(t) }, "hall": hall, "lecture": lecture} {
		for _, size := range windows {
			d := drive{size[0], size[1], scene()}
			d.wait()
			d.key(input.F2)
			for range 60 { // to the sizes of text, wherever they stand
				if d.s.Description().Focus >= idSetText && d.s.Description().Focus < idSetText+4 {
					break
				}
				d.key(input.Down)
			}
			for _, at := range []describe.ID{3, 0, 2, 3, 1} {
				if d.s.Description().Find(idSetText+at) == nil {
					t.Fatalf("%s, %v: no choice of text beside the one just made", name, size)
				}
				d.act(idSetText + at)
				if n := d.s.Description().Find(idSetText + at); n == nil || d.s.Description().Focus != n.ID {
					t.Errorf("%s, %v: text of choice %d, and its row is out of sight or has lost the focus", name, size, at)
				}
			}
		}
	}
}

// rowOf is a row of choices in the manner of lattice, side by side from x, one
// of them in force or none.
func rowOf(t *describe.Tree, group string, first describe.ID, x, y float64, many, on int) {
	for i := range many {
		t.Root.Children = append(t.Root.Children, describe.Node{ID: first + describe.ID(i), Role: describe.Choice, Group: group,
			Name: group + ": " + string(rune('a'+i)), Focusable: true, On: i == on, Bounds: describe.Rect{X: x + 50*float64(i), Y: y, W: 40, H: 20}})
	}
}

// Common practice for one of several buttons: coming to them one stands on the
// one in force.
func TestArrowsStandOnTheChoiceInForce(t *testing.T) {
	tree := lattice(map[describe.ID][2]float64{1: {150, 0}, 2: {100, 180}}, 1, 2)
	rowOf(tree, "Text", 10, 0, 30, 4, 0)
	rowOf(tree, "Colours", 20, 0, 60, 4, 3)
	rowOf(tree, "Empty", 30, 0, 90, 4, -1)
	rowOf(tree, "Folded", 40, 0, 120, 3, -1) // over two lines, the one in force in the second
	rowOf(tree, "Folded", 43, 0, 150, 3, 1)
	for _, c := range []struct {
		from describe.ID
		key  input.Key
		want describe.ID
	}{
		{1, input.Down, 10}, {10, input.Down, 23}, {23, input.Up, 10}, {12, input.Down, 23}, {20, input.Up, 10},
		{10, input.Right, 11}, {11, input.Right, 12}, {23, input.Left, 22}, {22, input.Left, 21},
		{21, input.Down, 31}, {23, input.Down, 33}, // none in force: the nearest
		{31, input.Down, 44}, {40, input.Down, 43}, {44, input.Up, 41}, {45, input.Up, 42}, {44, input.Down, 2},
		{2, input.Up, 44}, {41, input.Up, 31}, {31, input.Up, 23},
	} {
		if got, ok := toward(tree, draw.Rect{W: 1000, H: 1000}, c.from, c.key); got != c.want || !ok {
			t.Errorf("from %d by %v: %d, %v, want %d", c.from, c.key, got, ok, c.want)
		}
	}
}

// chosen is a set of settings in which no row has its first choice in force.
func chosen() Settings {
	return Settings{Notation: 1, Declination: 2, Dips: 3, Method: 1, Text: Text125, Theme: 1, Calm: true,
		Sound: SoundMiddle, Speech: true, Scan: ScanOff, Pace: PaceQuick, Quiet: true}
}

// settingsScenes are the screens that have settings.
func settingsScenes(t *testing.T) map[string]Scene {
	l, err := NewLecture(lesson.Shipped()[0], LectureOptions{})
	if err != nil {
		t.Fatal(err)
	}
	h, _ := testHall(HallOptions{})
	return map[string]Scene{"bench": mustBench(t), "lecture": l, "hall": h}
}

// offers are the choices on the screen, all or those in force only.
func offers(tree *describe.Tree, inForce bool) []*describe.Node {
	var out []*describe.Node
	for _, n := range tree.Order() {
		if n.Role == describe.Choice && n.ID >= idSetNotation && n.ID < idSetKeys && (n.On || !inForce) {
			out = append(out, n)
		}
	}
	return out
}

// The settings open on the first row's choice in force, and down from there
// every row is come to at its choice in force, over all pages.
func TestTheSettingsAreGoneThroughByWhatIsInForce(t *testing.T) {
	for _, size := range windows {
		for name, s := range settingsScenes(t) {
			d := drive{size[0], size[1], s}
			s.(Chooser).Choose(chosen())
			d.wait()
			d.key(input.F2)
			first := offers(s.Description(), true)
			if len(first) == 0 || s.Description().Focus != first[0].ID {
				t.Errorf("%s, %v: the settings open at %d", name, size, s.Description().Focus)
				continue
			}
			last, rows := "", 0
			for range 40 {
				n := s.Description().Find(s.Description().Focus)
				if n.Role == describe.Choice && n.ID >= idSetNotation && n.ID < idSetKeys && n.Group != last {
					if last, rows = n.Group, rows+1; !n.On {
						t.Errorf("%s, %v: down comes to %q, which is not in force", name, size, n.Name)
					}
				}
				d.key(input.Down)
			}
			if rows < 2 {
				t.Errorf("%s, %v: down came to %d rows", name, size, rows)
			}
		}
	}
}

// Help that was opened over the settings leads back to them, to what had the
// focus there, and from there to where they were opened.
func TestHelpOverTheSettingsLeadsBackToThem(t *testing.T) {
	for _, name := range []string{"bench", "lecture"} {
		for _, again := range []input.Key{input.Escape, input.Enter} { // Enter presses the way back
			s := settingsScenes(t)[name]
			d := drive{1280, 720, s}
			d.wait()
			d.key(input.F2)
			d.key(input.Down)
			was := s.Description().Focus
			d.key(input.F1)
			if n := s.Description().Find(idClosePanel); n == nil || n.Name != "Back to the settings" {
				t.Errorf("%s: help over the settings has the way back %v", name, n)
			}
			d.key(again)
			if len(offers(s.Description(), false)) == 0 || s.Description().Focus != was {
				t.Errorf("%s, %v: help leads to %d, want the settings at %d", name, again, s.Description().Focus, was)
			}
			d.key(input.Escape)
			if len(offers(s.Description(), false)) != 0 {
				t.Errorf("%s: Escape does not close the settings", name)
			}
			d.key(input.F1)
			d.key(input.Escape)
			if len(offers(s.Description(), false)) != 0 {
				t.Errorf("%s: help by itself leads to the settings", name)
			}
		}
	}
}
