package scenes_test

import (
	"fmt"
	"strings"
	"testing"

	"cuesta/scenes"
	"cuesta/scenes/describe"
	"cuesta/scenes/lesson"
)

// TestEveryLessonByEveryHand gives the five lessons from the first step to the
// last by keyboard, one switch and two: each line of the file is told on the
// screen when its step stands there, and the instrument is played with once.
func TestEveryLessonByEveryHand(t *testing.T) {
	for _, way := range journeys {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			for _, l := range lesson.Shipped() {
				t.Run(l.Name, func(t *testing.T) { give(t, l, way) })
			}
		})
	}
}

func give(t *testing.T, l lesson.Lesson, way journey) {
	s, err := scenes.NewLecture(l, scenes.LectureOptions{Settings: way.set})
	if err != nil {
		t.Fatal(err)
	}
	r := enter(t, scenes.NewSwitched(s))
	h := way.hand(r)
	for i, step := range l.Steps {
		if want := fmt.Sprintf("Step %d of %d", i+1, len(l.Steps)); !strings.Contains(r.everything(), want) {
			t.Fatalf("want %q; told\n%s", want, r.everything())
		}
		for _, want := range []string{step.Say, step.Ask} {
			if !strings.Contains(r.everything(), want) {
				t.Errorf("step %d does not tell %q", i+1, want)
			}
		}
		if i == len(l.Steps)/2 {
			play(r, h)
		}
		for range 4 { // to end what moves, to reveal, to go on
			if i+1 < len(l.Steps) && strings.Contains(r.everything(), fmt.Sprintf("Step %d of", i+1)) {
				h.press("Next", 1)
			}
		}
	}
	t.Logf("%d steps, %d presses", len(l.Steps), r.presses)
	if most := 8 * len(l.Steps); r.presses > most {
		t.Errorf("%d presses, want at most %d", r.presses, most)
	}
}

// play takes the instrument, swings it and gives it back.
func play(r *room, h hand) {
	r.t.Helper()
	h.press("Play with", 1)
	h.press("Swing clockwise", 2)
	h.press("Back to the lesson", 1)
}

// everything is all that is told.
func (r *room) everything() string {
	var out []string
	for role := describe.Group; role <= describe.Status; role++ {
		out = append(out, r.told(role))
	}
	return strings.Join(out, "\n")
}
