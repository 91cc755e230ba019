package scenes

import (
	"slices"
	"sync"
	"testing"

	"cuesta/scenes/describe"
)

// still is a station as it stood when it was looked at: what was drawn in it and
// how that was described. It stays when the scene goes on.
type still struct {
	name  string
	tree  describe.Tree
	zones []*zone
	lay   layout
	lab   bool     // the screen of a station with a real slab
	told  []string // of the magnifiers of a bench
}

func (s station) still() still {
	zones, lay := zonesOf(s.scene)
	out := still{name: s.name, tree: *s.scene.Description(), zones: slices.Clone(zones), lay: lay}
	out.tree.Root.Children = copied(out.tree.Root.Children)
	for i, z := range zones {
		out.zones[i] = &zone{rect: z.rect, widgets: slices.Clone(z.widgets)}
	}
	switch s := s.scene.(type) {
	case *Bench:
		first, second := (&maker{b: s}).insetNames()
		out.told = []string{first[1], second[1], (&maker{b: s}).hingeName()[1]}
	case *Lab:
		out.lab = true
	}
	return out
}

func copied(nodes []describe.Node) []describe.Node {
	out := slices.Clone(nodes)
	for i := range out {
		out[i].Children = copied(out[i].Children)
	}
	return out
}

// shape is a window and the size of its text.
type shape struct {
	w, h float64
	text TextSize
}

// walk is a way through many stations, which is gone once.
type walk struct {
	sync.Mutex
	seen []still
}

// someShapes are a usual window and small ones.
var someShapes = [...]shape{
	{1280, 720, Text100}, {1280, 720, Text200},
	{390, 844, Text100}, {390, 844, Text200},
	{640, 360, Text100}, {640, 360, Text200},
}

// walks are the ways that several tests look at: one in each of someShapes.
var walks [len(someShapes)]walk

// lectureWalk is the way through the lessons.
var lectureWalk walk

// once returns what is seen on the way; gone goes it.
func (w *walk) once(gone func(look func(station))) []still {
	w.Lock()
	defer w.Unlock()
	if w.seen == nil {
		var seen []still
		gone(func(s station) { seen = append(seen, s.still()) })
		w.seen = seen
	}
	return w.seen
}

// stills are all stations in a window.
func stills(t *testing.T, at shape) []still {
	t.Helper()
	w := new(walk)
	if i := slices.Index(someShapes[:], at); i >= 0 {
		w = &walks[i]
	}
	return w.once(func(look func(station)) {
		set := Settings{Text: at.text}
		benchStations(t, at.w, at.h, set, look)
		labStations(t, at.w, at.h, set, look)
		paperStations(t, at.w, at.h, set, look)
		hallStations(at.w, at.h, set, look)
	})
}
