package browse

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/gradebook"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
)

// longWord has nowhere to break.
var longWord = strings.Repeat("Felsenmeer", 9)

// reported is a folder with the report on a class as index.html and a page of
// feedback, with names that nobody could break.
func reported(t *testing.T) string {
	t.Helper()
	b, err := form.ReadBlueprint(strings.NewReader(form.Example()))
	if err != nil {
		t.Fatal(err)
	}
	b.Title, b.Place = longWord, longWord
	var roster []form.Student
	for i := range 8 {
		roster = append(roster, form.Student{ID: fmt.Sprintf("tf%02d%s", i, strings.Repeat("x", 40)), Name: longWord, ExtraTime: 1})
	}
	d, err := form.Deal(b, roster, form.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	class, dir := grade.NewClass(roster), t.TempDir()
	for i, f := range d.Forms[1:] {
		w, err := learner.Learner{Manner: learner.Mistaken, Mistake: mistake.Kind(i)}.Sit(f, uint64(i))
		if err != nil {
			t.Fatal(err)
		}
		g, err := grade.Submission(w.Submission, nil)
		if err != nil {
			t.Fatal(err)
		}
		class.Add(grade.Outcome{Source: f.Student.ID + form.SubmissionEnding, Graded: g})
		filled(t, filepath.Join(dir, "feedback.html"), func(to *bytes.Buffer) error { return gradebook.WriteFeedback(to, g) })
	}
	filled(t, filepath.Join(dir, "index.html"), func(to *bytes.Buffer) error { return gradebook.WriteReport(to, class.Report(), "") })
	return dir
}

func filled(t *testing.T, path string, fill func(*bytes.Buffer) error) {
	t.Helper()
	var text bytes.Buffer
	if err := fill(&text); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, text.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

// What a teacher opens on a phone is read by scrolling down: no page is wider
// than the screen, words of text stand within it, and only tables of figures and
// pictures scroll in boxes of their own (WCAG 2.2, 1.4.10 Reflow, at 320 pixels).
func TestReportsFitTheScreen(t *testing.T) {
	t.Parallel()
	served, err := Serve(reported(t))
	if err != nil {
		t.Fatal(err)
	}
	defer served.Close()
	for _, s := range []Screen{{W: 320, H: 640, Touch: true}, phone, desk} {
		for _, name := range []string{"index.html", "feedback.html"} {
			tab := stranger(t, browser, s)
			if err := tab.Go(strings.TrimSuffix(served.URL(""), "/") + "/" + name); err != nil {
				t.Fatal(err)
			}
			wide, err := Value[float64](tab, "document.documentElement.scrollWidth - document.documentElement.clientWidth")
			if err != nil || wide > 0 {
				t.Errorf("%s at %d pixels: %v too wide (%v)", name, s.W, wide, err)
			}
			// Text that a reader would have to scroll sideways for.
			out, err := Value[string](tab, `[...document.querySelectorAll(".stack td, .stack th, p, h1, h2, h3, dd, figcaption")].
				filter(e => e.getClientRects().length && e.getBoundingClientRect().right > document.documentElement.clientWidth + .5).
				map(e => e.textContent.trim().slice(0, 40)).slice(0, 5).join("; ")`)
			if err != nil || out != "" {
				t.Errorf("%s at %d pixels: beyond the screen: %s (%v)", name, s.W, out, err)
			}
		}
	}
}
