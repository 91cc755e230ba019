package scenes

import (
	"testing"

	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// The first frames of a window do without the magnifiers; a picture that stands
// alone has them at once.
func TestMagnifiersComeAfterTheFirstFrames(t *testing.T) {
	b, err := NewBench(BenchOptions{Seed: 2})
	if err != nil {
		t.Fatal(err)
	}
	items := func(live bool) int {
		var l draw.List
		l.Live = live
		b.Picture(&l)
		n := 0
		for _, m := range l.Meshes {
			n += len(m.Indices)
		}
		return n
	}
	f := input.Frame{W: 1280, H: 720, Scale: 1}
	b.Update(f)
	if live, still := items(true), items(false); live >= still {
		t.Errorf("the first frame of a window has %d corners, a picture %d; want fewer", live, still)
	}
	for range late {
		b.Update(f)
	}
	if live, still := items(true), items(false); live != still {
		t.Errorf("frame %d of a window has %d corners, a picture %d; want the same", late+1, live, still)
	}
}
