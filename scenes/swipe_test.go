package scenes

import (
	"testing"

	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
)

// A finger that goes to the left leads on and to the right back, as the buttons
// do, with motion or without; a short one, one that goes down, and a mouse do
// not.
func TestASwipeTurnsTheStep(t *testing.T) {
	for _, calm := range []bool{false, true} {
		l, err := NewLecture(lesson.Shipped()[0], LectureOptions{Settings: Settings{Calm: calm}})
		if err != nil {
			t.Fatal(err)
		}
		frame := func(kind input.PointerKind, x, y float64, touch bool) {
			l.Update(input.Frame{W: 390, H: 844, Scale: 1, Ticks: 2, Pointers: []input.Pointer{{Kind: kind, X: x, Y: y, Touch: touch}}})
		}
		at := func() (int, bool) { return l.play.At(), l.play.Busy() || l.play.Open() }
		swipe := func(dx, dy float64, touch bool) {
			r := l.screen.lay.Scene
			x, y := r.X+r.W/2, r.Y+r.H/2
			frame(input.PointerDown, x, y, touch)
			frame(input.PointerMove, x+dx/2, y+dy/2, touch)
			frame(input.PointerUp, x+dx, y+dy, touch)
		}
		frame(input.PointerMove, 0, 0, true)
		for range 12 { // what moves is ended and answers are shown before the step is left
			if n, _ := at(); n > 0 {
				break
			}
			swipe(-120, 10, true)
		}
		if n, _ := at(); n != 1 {
			t.Fatalf("calm %v: swiped to the left, at step %d, want 1", calm, n)
		}
		for _, not := range []struct {
			dx, dy float64
			touch  bool
		}{{-20, 0, true}, {-80, 80, true}, {120, 0, false}} {
			was, open := at()
			swipe(not.dx, not.dy, not.touch)
			if n, now := at(); n != was || now != open {
				t.Errorf("calm %v: %+v leads from step %d to %d", calm, not, was, n)
			}
		}
		swipe(120, -10, true)
		if n, _ := at(); n != 0 {
			t.Errorf("calm %v: swiped to the right, at step %d, want 0", calm, n)
		}
	}
}
