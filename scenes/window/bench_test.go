package window

import (
	"image"
	"testing"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/orient"
	"cuesta/scenes"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/input"
)

// The whole bench looks the same in the window as in memory, at first and
// after it has moved on under a painter that paints only what has changed.
func TestTheBenchLooksTheSameInMemory(t *testing.T) {
	const w, h = 960, 640
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := scenes.NewBench(scenes.BenchOptions{Plane: &p, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	screen := ebiten.NewImage(w, h)
	defer screen.Deallocate()
	var l draw.List
	window, memory := NewPainter(), raster.New()
	for step := range 4 {
		f := input.Frame{W: w, H: h, Scale: 1, Ticks: 8}
		if step == 1 {
			f.Presses = []input.Press{{Key: input.Right}}
		}
		b.Update(f)
		l.Reset(w, h)
		b.Picture(&l)
		window.Paint(screen, &l)
		want := image.NewRGBA(image.Rect(0, 0, w, h))
		memory.Paint(want, &l)
		// Pixels on the edge of a triangle may fall to either side.
		if n, mean := far(read(screen), want.Pix, 12), meanApart(read(screen), want.Pix); n > 40 || mean > .2 {
			t.Errorf("step %d: %d values differ by more than 12, mean difference %.3f; want at most 40 and 0.2", step, n, mean)
		}
	}
}

// far counts the values that differ by more than tol.
func far(a, b []uint8, tol int) int {
	n := 0
	for i := range a {
		if d := int(a[i]) - int(b[i]); d > tol || d < -tol {
			n++
		}
	}
	return n
}

func meanApart(a, b []uint8) float64 {
	_, mean := apart(a, b)
	return mean
}
