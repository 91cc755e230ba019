package scenes

import (
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// steady is a bench whose eye goes round while the needle swings.
func steady(t testing.TB) func() {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := NewBench(BenchOptions{Seed: 1, Plane: &p})
	if err != nil {
		t.Fatal(err)
	}
	var l draw.List
	frame := input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 2, Pointers: []input.Pointer{{X: 100, Y: 200}}}
	b.Update(frame)
	b.drag = drag{on: true, x: 100, y: 200}
	n := 0
	return func() {
		n++
		frame.Pointers[0].X += float64(1 - n/30%2*2)
		b.Update(frame)
		b.Picture(&l)
	}
}

func TestASteadyFrameAllocatesAlmostNothing(t *testing.T) {
	f := steady(t)
	for range 100 {
		f()
	}
	if got := testing.AllocsPerRun(200, f); got > 4 {
		t.Errorf("got %v allocations a frame, want at most 4", got)
	}
}

func BenchmarkFrame(b *testing.B) {
	f := steady(b)
	b.ReportAllocs()
	for b.Loop() {
		f()
	}
}
