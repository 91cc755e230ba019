package scenes

import (
	"fmt"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
)

// wrongAt is a bench in a window that has judged an answer from the other end
// and too steep.
func wrongAt(t *testing.T, size [2]float64, text TextSize) (*Bench, drive) {
	t.Helper()
	plane := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := NewBench(BenchOptions{Seed: 7, Plane: &plane})
	if err != nil {
		t.Fatal(err)
	}
	b.Choose(Settings{Text: text})
	d := drive{size[0], size[1], b}
	d.wait()
	d.write("215/48")
	b.record()
	d.wait()
	return b, d
}

// drawnAt is the height at which a text is drawn beside the rock, and false
// where it is not.
func drawnAt(b *Bench, words string) (y float64, ok bool) {
	for _, w := range b.screen.zones[columnZone].widgets {
		if w.look != hidden && strings.Contains(strings.ReplaceAll(w.text, "\n", " "), words) {
			return w.rect.Y, true
		}
	}
	return 0, false
}

// Why comes first, by how much second, what to do next last; and why is never
// left out for the others.
func TestAVerdictSaysWhyFirst(t *testing.T) {
	for _, size := range append(windows, [2]float64{640, 480}) {
		for _, text := range textSizes {
			b, _ := wrongAt(t, size, text)
			cause, advice := b.reasons()
			if !strings.HasPrefix(cause, "Either ") || !strings.HasPrefix(advice, "Lay the right hand") {
				t.Fatalf("cause %q, advice %q", cause, advice)
			}
			why, caused := drawnAt(b, cause)
			much, marked := drawnAt(b, "Right-hand end")
			next, advised := drawnAt(b, advice)
			where := fmt.Sprintf("%v, text %v", size, text)
			switch {
			case size == windows[0] && text < Text200 && !(caused && marked && advised):
				t.Errorf("%s: cause, figures and advice are drawn: %v, %v, %v", where, caused, marked, advised)
			case advised && !caused || caused && marked && why > much || advised && marked && much > next:
				t.Errorf("%s: cause at %.0f, figures at %.0f, advice at %.0f", where, why, much, next)
			case !advised && b.Description().Find(idWhy) == nil:
				t.Errorf("%s: the advice is not to be had", where)
			}
			said := b.Description().Find(idVerdict).Name
			if i, j := strings.Index(said, cause), strings.Index(said, advice); i < 0 || j < i {
				t.Errorf("%s: said is %q", where, said)
			}
		}
	}
}

// What may come next after a verdict stands in sight. The lowest window holds one
// button beside the verdict in larger text; the other is then among the controls.
func TestWhatComesNextStaysInSight(t *testing.T) {
	for _, size := range append(windows, [2]float64{640, 480}) {
		for _, text := range textSizes {
			b, _ := wrongAt(t, size, text)
			for _, id := range []describe.ID{idPrimary, idSecondary} {
				if low := size == windows[4] && text > Text100; b.Description().Find(id) == nil && !low {
					t.Errorf("%v, text %v: control %d is out of sight", size, text, id)
				}
			}
		}
	}
}
