package describe_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cuesta/scenes/describe"
)

func tree(focus describe.ID, nodes ...describe.Node) *describe.Tree {
	return &describe.Tree{Root: describe.Node{Name: "Screen", Children: nodes}, Focus: focus}
}

// acting is a screen on which something is being done.
func acting(nodes ...describe.Node) *describe.Tree {
	t := tree(0, nodes...)
	t.Acting = true
	return t
}

// done is a notice of what has been done.
func done(words string) describe.Node {
	return describe.Node{ID: 30, Role: describe.Status, Name: words, Again: 1}
}

func TestSay(t *testing.T) {
	tests := []struct {
		node describe.Node
		want string
	}{
		{describe.Node{Role: describe.Button, Name: "Record", Keys: "Enter"}, "Record, button. Keys: Enter."},
		{describe.Node{Role: describe.Button, Name: "Undo", Disabled: true}, "Undo, button, not to be had now."},
		{describe.Node{Role: describe.Toggle, Name: "Water line", On: true}, "Water line, switch, on."},
		{describe.Node{Role: describe.Toggle, Name: "Water line"}, "Water line, switch, off."},
		{describe.Node{Role: describe.Choice, Name: "Steps of 1°", On: true, Keys: "S"}, "Steps of 1°, choice, chosen. Keys: S."},
		{describe.Node{Role: describe.Choice, Name: "Steps of 10°"}, "Steps of 10°, choice, not chosen."},
		{describe.Node{Role: describe.Field, Name: "Notebook"}, "Notebook, field, empty."},
		{describe.Node{Role: describe.Field, Name: "Notebook", Value: "035/30"}, "Notebook, field: 035/30."},
		{describe.Node{Role: describe.Image, Name: "Round level", Value: "touching the ring"}, "Round level: touching the ring."},
		{describe.Node{Role: describe.Image, Name: "Slab", Value: "It slopes. It is wet."}, "Slab. It slopes. It is wet."},
		{describe.Node{Role: describe.Heading, Name: "Settings"}, "Settings."},
		{describe.Node{Role: describe.Label}, ""},
	}
	for _, tt := range tests {
		if got := tt.node.Say(); got != tt.want {
			t.Errorf("%+v: %q, want %q", tt.node, got, tt.want)
		}
	}
}

func TestKeyWords(t *testing.T) {
	tests := []struct{ keys, want string }{
		{"Enter", "Enter"},
		{"← →", "left arrow and right arrow"},
		{"[ ]", "left bracket and right bracket"},
		{"← → ↑ ↓", "arrow keys"},
		{", .", "comma and full stop"},
		{"Ctrl Z", "Control Z"},
		{"Page Up", "Page Up"},
		{"← → swing, ↑ ↓ roll", "left arrow and right arrow swing, up arrow and down arrow roll"},
		{", and . turn the ring", "comma and full stop turn the ring"},
		{"arrows, when it has the focus", "arrows, when it has the focus"},
		{"", ""},
	}
	for _, tt := range tests {
		if got := describe.KeyWords(tt.keys); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.keys, got, tt.want)
		}
	}
}

// Each step is a screen and what is to be said after it.
func TestHerald(t *testing.T) {
	title := describe.Node{ID: 1, Role: describe.Heading, Name: "Bedding"}
	swing := describe.Node{ID: 2, Role: describe.Button, Name: "Swing", Focusable: true}
	note := func(v string) describe.Node {
		return describe.Node{ID: 3, Role: describe.Field, Name: "Notebook", Value: v, Focusable: true}
	}
	water := func(on bool) describe.Node {
		return describe.Node{ID: 4, Role: describe.Toggle, Name: "Water", On: on, Focusable: true}
	}
	status := func(s string) describe.Node { return describe.Node{ID: 5, Role: describe.Status, Name: s} }
	level := func(s string) describe.Node {
		return describe.Node{ID: 8, Role: describe.Image, Name: "Level", Value: s}
	}
	second := describe.Node{ID: 1, Role: describe.Heading, Name: "Joint"}
	slab := func(s string) describe.Node {
		return describe.Node{ID: 6, Role: describe.Image, Name: "Slab", Value: s, Focusable: true}
	}
	line := func(id describe.ID) describe.Node {
		return describe.Node{ID: id, Role: describe.Line, Name: fmt.Sprint("Line ", id), Focusable: true}
	}
	off := swing
	off.Disabled = true
	type step struct {
		pass int
		tree *describe.Tree
		want string // sentences parted by |
	}
	tests := []struct {
		name  string
		steps []step
	}{
		{"a new screen, then nothing new", []step{
			{0, tree(2, title, swing, status("Bring the bubble in.")), "Bedding.|Swing, button.|Bring the bubble in."},
			{9, tree(2, title, swing, status("Bring the bubble in.")), ""},
		}},
		{"the focus moves", []step{
			{0, tree(2, swing, note("")), "Swing, button."},
			{1, tree(3, swing, note("")), "Notebook, field, empty."},
			{1, tree(2, swing, note("")), "Swing, button."},
		}},
		{"a status is told without the focus", []step{
			{0, tree(2, swing), "Swing, button."},
			{1, tree(2, swing, status("Right.")), "Right."},
			{1, tree(2, swing, status("Wrong.")), "Wrong."},
			{1, tree(2, swing), ""},
			{1, tree(2, swing, status("Wrong.")), "Wrong."},
			{1, tree(2, swing, status("")), ""},
		}},
		{"other keys for the same", []step{
			{0, tree(0, describe.Node{ID: 5, Role: describe.Status, Name: "Level it.", Keys: "← rolls"}), "Level it.|Keys: left arrow rolls."},
			{1, tree(0, describe.Node{ID: 5, Role: describe.Status, Name: "Level it.", Keys: "→ rolls"}), "Keys: right arrow rolls."},
			{1, tree(0, describe.Node{ID: 5, Role: describe.Status, Name: "Level it."}), ""},
		}},
		{"the same words once more", []step{
			{0, tree(0, status("It goes no further.")), "It goes no further."},
			{1, tree(0, describe.Node{ID: 5, Role: describe.Status, Name: "It goes no further.", Again: 1}), "It goes no further."},
			{1, tree(0, describe.Node{ID: 5, Role: describe.Status, Name: "It goes no further.", Again: 1}), ""},
		}},
		{"a field is written", []step{
			{0, tree(3, note("")), "Notebook, field, empty."},
			{1, tree(3, note("0")), "0."},
			{1, tree(3, note("03")), "03."},
			{1, tree(3, note("")), "Empty."},
		}},
		{"a field that has not the focus", []step{
			{0, tree(2, swing, note("")), "Swing, button."},
			{1, tree(2, swing, note("0")), ""},
		}},
		{"a switch is thrown", []step{
			{0, tree(4, water(false)), "Water, switch, off."},
			{1, tree(4, water(true)), "On."},
			{1, tree(4, water(false)), "Off."},
		}},
		{"a control is withheld", []step{
			{0, tree(2, swing), "Swing, button."},
			{1, tree(2, off), "Not to be had now."},
		}},
		{"a picture that rests", []step{
			{0, tree(0, level("left")), "Level: left."},
			{1, tree(0, level("right")), ""},
			{35, tree(0, level("right")), ""},
			{1, tree(0, level("right")), "Level: right."},
			{999, tree(0, level("right")), ""},
		}},
		{"a picture that never rests is told now and then", []step{
			{0, tree(0, level("a")), "Level: a."},
			{100, tree(0, level("b")), ""},
			{100, tree(0, level("c")), ""},
			{100, tree(0, level("d")), "Level: d."},
			{30, tree(0, level("e")), ""},
		}},
		{"a picture that goes to and fro and comes back", []step{
			{0, tree(0, level("a")), "Level: a."},
			{10, tree(0, level("b")), ""},
			{10, tree(0, level("a")), ""},
			{500, tree(0, level("a")), ""},
		}},
		{"what is done is told before what has come of it", []step{
			{0, acting(level("left")), "Level: left."},
			{40, acting(level("right")), ""},
			{40, acting(level("right")), ""},
			{1, acting(status("Roll it left."), level("right")), ""},
			{1, acting(status("Roll it."), describe.Node{ID: 9, Role: describe.Status, Name: "No sound.", Again: 1}, level("right")), "No sound."},
			{1, tree(0, status("Rolled. Read it."), level("right")), "Rolled.|Read it.|Level: right."},
			{1, acting(status("Rolled. Roll it left."), level("wall")), ""},
			{300, acting(status("Rolled. Roll it left."), level("wall")), "Level: wall."},
		}},
		{"of whole sentences those that are new", []step{
			{0, tree(0, level("It slopes. The bubble is left.")), "It slopes.|The bubble is left."},
			{1, tree(0, level("It slopes. The bubble is 0.25 right.")), ""},
			{40, tree(0, level("It slopes. The bubble is 0.25 right.")), "The bubble is 0.25 right."},
		}},
		{"a sentence once in a call", []step{
			{0, tree(6, describe.Node{ID: 6, Role: describe.Image, Name: "Slab", Value: "It slopes.", Focusable: true}, status("It slopes.")), "Slab.|It slopes."},
		}},
		{"a picture that is told with the focus is not told again", []step{
			{0, tree(2, title, swing, slab("It slopes.")), "Bedding.|Swing, button.|It slopes."},
			{9, tree(6, second, swing, slab("It is steep. The bubble is left.")), "Joint.|Slab.|It is steep.|The bubble is left."},
			{99, tree(6, second, swing, slab("It is steep. The bubble is left.")), ""},
			{9, tree(6, second, swing, slab("It is steep. The bubble is right.")), ""},
			{36, tree(6, second, swing, slab("It is steep. The bubble is right.")), "The bubble is right."},
		}},
		{"a picture that holds what another has told", []step{
			{0, tree(0, slab("The bubble is left."), level("The bubble is left.")), "The bubble is left."},
			{9, tree(6, slab("The bubble is right. It swings."), level("The bubble is right.")), "Slab.|The bubble is right.|It swings."},
			{99, tree(6, slab("The bubble is right. It swings."), level("The bubble is right.")), ""},
			{9, tree(6, slab("The bubble is left. It rests."), level("The bubble is left.")), ""},
			{36, tree(6, slab("The bubble is left. It rests."), level("The bubble is left.")), "The bubble is left.|It rests."},
		}},
		{"another screen of the same controls", []step{
			{0, tree(2, title, swing), "Bedding.|Swing, button."},
			{1, tree(2, describe.Node{ID: 1, Role: describe.Heading, Name: "Settings"}, swing, describe.Node{ID: 9, Role: describe.Label, Name: "Text size"}), "Settings.|Text size.|Swing, button."},
		}},
		{"a screen that is come back to", []step{
			{0, tree(6, title, describe.Node{ID: 7, Role: describe.Label, Name: "A place"}, slab("It slopes. It is dry."), status("Look."), status("Listen.")),
				"Bedding.|A place.|Slab.|It slopes.|It is dry.|Look.|Listen."},
			{9, tree(2, describe.Node{ID: 1, Role: describe.Heading, Name: "Help"}, swing, status("Choose.")), "Help.|Swing, button.|Choose."},
			{9, tree(6, title, describe.Node{ID: 7, Role: describe.Label, Name: "A place"}, slab("It slopes. It is wet."), status("Look."), status("Listen.")),
				"Bedding.|Slab."},
			{40, tree(6, title, describe.Node{ID: 7, Role: describe.Label, Name: "A place"}, slab("It slopes. It is wet."), status("Look."), status("Listen.")),
				"It is wet."},
			{9, tree(0, describe.Node{ID: 1, Role: describe.Heading, Name: "Help"}, status("Choose.")), "Help.|Choose."},
			{9, tree(0, title, slab("It slopes. It is wet."), status("Look."), status("Listen.")), "Bedding.|Look."},
		}},
		{"what was done is over when one comes back", []step{
			{0, tree(0, title, done("Swung 1°."), status("Look.")), "Bedding.|Swung 1°.|Look."},
			{9, tree(0, describe.Node{ID: 1, Role: describe.Heading, Name: "Help"}, status("Choose.")), "Help.|Choose."},
			{9, tree(0, title, done("Swung 1°."), status("Look.")), "Bedding.|Look."},
		}},
		{"the lines of a text are told as they are gone through", []step{
			{0, tree(2, title, swing, line(20), line(21)), "Bedding.|Swing, button."},
			{1, tree(20, title, swing, line(20), line(21)), "Line 20."},
			{1, tree(21, title, swing, line(20), line(21)), "Line 21."},
		}},
		{"a label that ticks away", []step{
			{0, tree(0, describe.Node{ID: 7, Role: describe.Label, Name: "9 minutes left"}), "9 minutes left."},
			{999, tree(0, describe.Node{ID: 7, Role: describe.Label, Name: "8 minutes left"}), ""},
		}},
		{"arrows in a text are said in words", []step{
			{0, tree(0, status("← →: swing; ↑ rolls")), "left and right arrow: swing; up arrow rolls."},
		}},
		{"the focus is lost and found", []step{
			{0, tree(2, swing), "Swing, button."},
			{1, tree(0, swing), ""},
			{1, tree(2, swing), "Swing, button."},
		}},
	}
	for _, tt := range tests {
		var h describe.Herald
		for i, s := range tt.steps {
			h.Pass(s.pass)
			if got := strings.Join(h.Hear(s.tree), "|"); got != s.want {
				t.Errorf("%s, step %d: %q, want %q", tt.name, i+1, got, s.want)
			}
		}
	}
}

// The same screens give the same sentences, and a screen that stays is never
// told again.
func TestHeraldIsDeterministic(t *testing.T) {
	hear := func() (out []string) {
		var h describe.Herald
		for i := range 400 {
			h.Pass(2)
			level := describe.Node{ID: 6, Role: describe.Image, Name: "Level", Value: fmt.Sprint("state ", i/7)}
			out = append(out, h.Hear(tree(0, level))...)
		}
		return out
	}
	a, b := hear(), hear()
	if !slices.Equal(a, b) {
		t.Errorf("two hearings differ: %q and %q", a, b)
	}
	// 800 ticks of a picture that changes every 14: one sentence at first and
	// then at most one in 300 ticks.
	if len(a) < 2 || len(a) > 1+800/300 {
		t.Errorf("%d sentences of a restless picture, want 2 or 3: %q", len(a), a)
	}
}

func ExampleHerald() {
	var h describe.Herald
	screen := &describe.Tree{Focus: 2, Root: describe.Node{Children: []describe.Node{
		{ID: 1, Role: describe.Heading, Name: "Bedding, station 1"},
		{ID: 2, Role: describe.Button, Name: "Record", Keys: "Enter", Focusable: true},
		{ID: 3, Role: describe.Status, Name: "Type the reading first: such as 035/30."},
	}}}
	for _, s := range h.Hear(screen) {
		fmt.Println(s)
	}
	screen.Root.Children[2].Name = "The reading is complete: record it."
	fmt.Println(h.Hear(screen))
	// Output:
	// Bedding, station 1.
	// Record, button.
	// Keys: Enter.
	// Type the reading first: such as 035/30.
	// [The reading is complete: record it.]
}
