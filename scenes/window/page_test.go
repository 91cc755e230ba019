package window

import (
	"encoding/json"
	"hash/maphash"
	"reflect"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// The names of keys are those of the W3C's "UI Events KeyboardEvent key
// Values".
func TestStrokesOnPage(t *testing.T) {
	tests := []struct {
		name string
		key  string
		mods input.Mods
		want input.Press
		ok   bool
	}{
		{"an arrow", "ArrowLeft", input.Shift, input.Press{Key: input.Left, Mods: input.Shift}, true},
		{"the space bar is a key", " ", 0, input.Press{Key: input.Space}, true},
		{"a digit", "3", 0, input.Press{Rune: '3'}, true},
		{"a capital", "N", input.Shift, input.Press{Rune: 'N', Mods: input.Shift}, true},
		{"with Control", "Z", input.Ctrl | input.Shift, input.Press{Rune: 'z', Mods: input.Ctrl | input.Shift}, true},
		{"a letter with Alt", "T", input.Alt, input.Press{Rune: 't', Mods: input.Alt}, true},
		{"the third level is meant as it is", "@", input.Alt, input.Press{Rune: '@'}, true},
		{"a letter with an accent", "é", 0, input.Press{Rune: 'é'}, true},
		{"a key that is only held", "Shift", input.Shift, input.Press{}, false},
		{"a dead key", "Dead", 0, input.Press{}, false},
		{"nothing", "", 0, input.Press{}, false},
	}
	for _, tt := range tests {
		got, ok := strokeOnPage(pageEvent{Key: tt.key, Mods: uint8(tt.mods)})
		if got != tt.want || ok != tt.ok {
			t.Errorf("%s: got %+v, %v; want %+v, %v", tt.name, got, ok, tt.want, tt.ok)
		}
	}
}

func TestEveryNamedKeyIsReachedOnThePage(t *testing.T) {
	got := map[input.Key]bool{}
	for _, k := range pageKeys {
		got[k] = true
	}
	for k := input.Left; k <= input.F12; k++ {
		if !got[k] {
			t.Errorf("no key of the page gives %d", k)
		}
	}
}

// However many strokes come in one frame, each counts; repeats of a held key
// are bounded, so that a slow frame does not run away.
func TestNoTapIsLostInASlowFrame(t *testing.T) {
	var events []pageEvent
	for range 20 {
		events = append(events, pageEvent{Do: "key", Key: "ArrowRight"})
	}
	for range 30 {
		events = append(events, pageEvent{Do: "key", Key: "ArrowRight", Repeat: true})
	}
	for range 20 {
		events = append(events, pageEvent{Do: "pointer", Kind: "down"}, pageEvent{Do: "pointer", Kind: "up"})
	}
	var in pageInput
	in.take(events, 1)
	if len(in.presses) != 20+mostRepeatsOnPage || len(in.pointers) != 40 {
		t.Errorf("%d strokes and %d pointer events, want %d and 40", len(in.presses), len(in.pointers), 20+mostRepeatsOnPage)
	}
	if n := in.take([]pageEvent{{Do: "pointer", Kind: "move"}, {Do: "pointer", Kind: "up"}}, 1); n != 1 {
		t.Errorf("%d events counted, want 1: moves come in every frame and are not", n)
	}
	in.take(nil, 1)
	if len(in.presses)+len(in.pointers)+len(in.acts) != 0 {
		t.Error("something is left for the next frame")
	}
}

// Acts keep their place among the strokes, and pointers count device pixels.
func TestEventsKeepTheirOrder(t *testing.T) {
	var events []pageEvent
	const text = `[{"Do":"act","Kind":"focus","ID":7},{"Do":"key","Key":"Enter","Mods":0,"Repeat":false},
		{"Do":"act","Kind":"write","ID":8,"Text":"035/30"},{"Do":"pointer","Kind":"down","X":10,"Y":20.5,"Touch":true},
		{"Do":"act","Kind":"dance","ID":9},{"Do":"pointer","Kind":"hover"}]`
	if err := json.Unmarshal([]byte(text), &events); err != nil {
		t.Fatal(err)
	}
	var in pageInput
	in.take(events, 2)
	acts := []input.Act{{Kind: input.Focus, ID: 7}, {Kind: input.Write, ID: 8, Text: "035/30", After: 1}}
	pointers := []input.Pointer{{Kind: input.PointerDown, X: 20, Y: 41, Touch: true}}
	if !reflect.DeepEqual(in.acts, acts) || !reflect.DeepEqual(in.pointers, pointers) || len(in.presses) != 1 {
		t.Errorf("got %+v, %+v and %d strokes; want %+v, %+v and 1", in.acts, in.pointers, len(in.presses), acts, pointers)
	}
}

func screenInWords() *describe.Tree {
	return &describe.Tree{Focus: 2, Root: describe.Node{Name: "Bench", Children: []describe.Node{
		{ID: 1, Role: describe.Status, Name: "Level the plate"},
		{ID: 2, Role: describe.Choice, Name: "Text: 100 %", Focusable: true, On: true, Bounds: describe.Rect{X: 30, Y: 10, W: 88, H: 44}},
		{ID: 3, Role: describe.Field, Name: "Dip", Writes: describe.Decimals},
	}}}
}

func TestTheMirrorHoldsWhatTheDescriptionSays(t *testing.T) {
	text, err := mirrorOf(screenInWords(), 5, []string{"Hello."}, 2)
	if err != nil {
		t.Fatal(err)
	}
	const want = `{"seen":5,"focus":2,"say":["Hello."],"root":{"role":"group","name":"Bench","box":[0,0,0,0],"parts":[` +
		`{"id":1,"role":"status","name":"Level the plate","box":[0,0,0,0]},` +
		`{"id":2,"role":"choice","name":"Text: 100 %","can":true,"on":true,"box":[15,5,44,22]},` +
		`{"id":3,"role":"field","name":"Dip","writes":"decimal","box":[0,0,0,0]}]}}`
	if string(text) != want {
		t.Errorf("got  %s\nwant %s", text, want)
	}
}

func TestEveryRoleHasAName(t *testing.T) {
	seen := map[string]describe.Role{}
	for r := describe.Group; r <= describe.Status; r++ {
		name := roleOnPage(r)
		if other, twice := seen[name]; twice {
			t.Errorf("roles %d and %d are both %q", other, r, name)
		}
		seen[name] = r
	}
}

func TestTheMarkChangesWithTheScreen(t *testing.T) {
	changes := map[string]func(*describe.Tree){
		"focus":    func(t *describe.Tree) { t.Focus = 1 },
		"name":     func(t *describe.Tree) { t.Root.Children[0].Name = "Level it" },
		"value":    func(t *describe.Tree) { t.Root.Children[1].Value = "x" },
		"keys":     func(t *describe.Tree) { t.Root.Children[1].Keys = "T" },
		"on":       func(t *describe.Tree) { t.Root.Children[1].On = false },
		"disabled": func(t *describe.Tree) { t.Root.Children[1].Disabled = true },
		"place":    func(t *describe.Tree) { t.Root.Children[1].Bounds.Y = 11 },
		"writes":   func(t *describe.Tree) { t.Root.Children[2].Writes = describe.AnySigns },
		"fewer":    func(t *describe.Tree) { t.Root.Children = t.Root.Children[:1] },
	}
	var h maphash.Hash
	was := markOf(&h, screenInWords())
	if again := markOf(&h, screenInWords()); again != was {
		t.Error("the mark of the same screen differs")
	}
	for name, change := range changes {
		tree := screenInWords()
		change(tree)
		if markOf(&h, tree) == was {
			t.Errorf("%s: the mark stays the same", name)
		}
	}
}
