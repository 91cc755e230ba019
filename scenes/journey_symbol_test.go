package scenes_test

import (
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/sitting"
	"cuesta/scenes"
)

const symbolBlueprint = `title = "Tarn Fell field school: map symbols"
[[item]]
kind = "read-symbol"
count = 8
[[item]]
kind = "draw-symbol"
count = 8
`

// TestMapSymbolsByEveryHand answers map symbols, overturned beds among them, by
// keyboard and by switches, and has them graded.
func TestMapSymbolsByEveryHand(t *testing.T) {
	b, err := form.ReadBlueprint(strings.NewReader(symbolBlueprint))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "tf01", Name: "Ada Moss"}}, form.Options{Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	for _, way := range journeys {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			j, err := sitting.Open(filepath.Join(t.TempDir(), "tf01.journal"), d.Forms[0], "")
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { j.Close() })
			desk := scenes.NewDesk(j, func() string { return "" }, nil)
			p := scenes.NewPaper(desk, way.set)
			r := enter(t, scenes.NewSwitched(p))
			h := way.hand(r)
			overturned := map[string]int{}
			for i := range j.Len() {
				answer(t, r, h, j.Item(i))
				if strings.HasSuffix(j.Item(i).Key(), "overturned") {
					overturned[j.Item(i).Kind().Name()]++
				}
				if i+1 < j.Len() {
					h.press("Next question", 1)
				}
			}
			if len(overturned) != 2 {
				t.Fatalf("overturned beds: %v; want some of both kinds", overturned)
			}
			g, err := grade.Submission(j.Submission(), nil)
			if err != nil {
				t.Fatal(err)
			}
			if g.Points != g.Of {
				t.Errorf("%v of %v points", g.Points, g.Of)
			}
		})
	}
}
