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
