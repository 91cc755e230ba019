package scenes_test

import (
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
	"cuesta/scenes"
	"cuesta/scenes/describe"
)

const aBlueprint = `title = "Tarn Fell field school: first quiz"
[[item]]
kind = "read-dial"
[[item]]
kind = "convert-notation"
[[item]]
kind = "diagnose-mistake"
[[item]]
kind = "measure-slab"
[[item]]
kind = "draw-symbol"
[[item]]
kind = "apparent-dip"
`

// aForm is a form on the desk, and what is handed in.
func aForm(t *testing.T) (*sitting.Journal, *scenes.Paper, *form.Submission) {
	t.Helper()
	b, err := form.ReadBlueprint(strings.NewReader(aBlueprint))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "tf01", Name: "Ada Moss"}}, form.Options{Seed: 8})
	if err != nil {
		t.Fatal(err)
	}
	j, err := sitting.Open(filepath.Join(t.TempDir(), "tf01.journal"), d.Forms[0], "")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { j.Close() })
	var handed form.Submission
	desk := scenes.NewDesk(j, func() string { return "" }, func(s form.Submission) (scenes.Handed, error) {
		handed = s
		return scenes.Handed{File: "tf01.submission.json", Where: "at forms/tf01.submission.json"}, nil
	})
	return j, scenes.NewPaper(desk, scenes.Settings{}), &handed
}

// answer gives the answer to the question on the screen; a slab is measured.
func answer(t *testing.T, r *room, h hand, it item.Item) {
	t.Helper()
	switch a := it.Ask(); {
	case r.named("Go to the bench") != nil:
		h.press("Go to the bench", 1)
		m := &measurer{room: r, hand: h, step: "Steps of 1°"}
		m.measure()
	case a.Kind == item.AskChoice:
		h.press(string(rune('A'+a.Right))+": ", 1)
	default:
		h.write(strings.ReplaceAll(it.Key(), "°", "")) // which nobody needs to write
		h.press("Keep answer", 1)
	}
}

// TestAFormByEveryHand takes a form and hands it in. What the student knows is
// the key; the slab is measured from the description.
func TestAFormByEveryHand(t *testing.T) {
	for _, way := range journeys {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			j, p, handed := aForm(t)
			p.Choose(way.set)
			r := enter(t, scenes.NewSwitched(p))
			h := way.hand(r)
			for i := range j.Len() {
				answer(t, r, h, j.Item(i))
				if _, ok := j.Written(i); !ok {
					t.Fatalf("question %d has no answer; told %q", i+1, r.told(describe.Status))
				}
				if i+1 < j.Len() {
					h.press("Next question", 1)
				}
			}
			h.press("Hand in the form", 1)
			if j.Finished() {
				t.Error("one press hands the form in; want to be asked first")
			}
			h.press("Hand in the form", 1)
			if !j.Finished() || !strings.Contains(r.told(describe.Status), "Handed in") {
				t.Fatalf("not handed in: %q", r.told(describe.Status))
			}
			if want := "lies at forms/tf01.submission.json. Send tf01.submission.json to your teacher."; !strings.Contains(r.told(describe.Status), want) {
				t.Errorf("told %q, want what is next: %q", r.told(describe.Status), want)
			}
			g, err := grade.Submission(*handed, nil)
			if err != nil {
				t.Fatal(err)
			}
			if g.Points != g.Of {
				t.Errorf("%v of %v points", g.Points, g.Of)
			}
			t.Logf("%d presses", r.presses)
			if r.presses > 2*way.most {
				t.Errorf("%d presses, want at most %d", r.presses, 2*way.most)
			}
		})
	}
}
