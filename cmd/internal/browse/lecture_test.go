package browse

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"cuesta/scenes/lesson"
)

// A lesson is given from its first step to its last by keyboard alone, and by
// the accessibility tree alone.
func TestALessonToItsEnd(t *testing.T) {
	t.Parallel()
	l := lesson.Shipped()[0]
	for _, way := range []struct {
		name string
		next func(*Tab) error
	}{
		{"by keyboard", func(tab *Tab) error { return tab.Keys(kb.PageDown) }},
		{"by accessibility tree", func(tab *Tab) error { return byTree{tab}.press("Next", 1) }},
	} {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			tab := visit(t, small, "lecture="+l.Name, quick)
			for i, step := range l.Steps {
				at := fmt.Sprintf("Step %d of %d", i+1, len(l.Steps))
				now := settled(t, tab)
				for range 4 { // to end what moves, to reveal, to go on
					if strings.Contains(told(now), at) {
						break
					}
					if err := way.next(tab); err != nil {
						t.Fatal(err)
					}
					now = settled(t, tab)
				}
				if !strings.Contains(told(now), at) {
					t.Fatalf("not at %q:\n%s", at, now)
				}
				for _, want := range []string{step.Say, step.Ask} {
					if !now.Says(want) {
						t.Errorf("%s does not say %q:\n%s", at, want, now)
					}
				}
			}
		})
	}
}
