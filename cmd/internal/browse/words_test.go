package browse

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"cuesta/quiz/item"
	"cuesta/scenes/lesson"
	"cuesta/scenes/spoken/ear"
)

// talker types lines on the page of the bench in words and reads the replies
// in its log.
type talker struct {
	t   *testing.T
	tab *Tab
}

func (w talker) replies() []string {
	w.t.Helper()
	var out []string
	inside := false
	for _, n := range tree(w.t, w.tab) {
		switch {
		case n.Role == "log":
			inside = true
		case n.Role == "form" || n.Role == "LabelText":
			inside = false
		case inside && n.Role == "StaticText":
			out = append(out, n.Name)
		}
	}
	return out
}

func (w talker) say(line string) string {
	w.t.Helper()
	before := len(w.replies())
	if err := w.tab.Keys(line + kb.Enter); err != nil {
		w.t.Fatal(err)
	}
	var after []string
	_, err := w.tab.Until("a reply to "+line, func(Tree) bool {
		after = w.replies()
		return len(after) >= before+2
	})
	if err != nil {
		w.t.Fatal(err)
	}
	return strings.Join(after[before+1:], "\n")
}

// A browser without WebGL is told what it lacks and offered the bench in words,
// where a measurement is finished by what is said.
func TestWithoutWebGLTheBenchSpeaks(t *testing.T) {
	t.Parallel()
	plain := must[*Browser](t)(Start(NoGraphics))
	t.Cleanup(func() { plain.Close() })
	tab := stranger(t, plain, desk)
	if err := tab.Go(site.URL("bench&plane=035/30&seed=3")); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("failed"); err != nil {
		t.Fatal(err)
	}
	now := tree(t, tab)
	if !now.Says("WebGL") {
		t.Errorf("it is not said what is lacking:\n%s", now)
	}
	if err := tab.Press(must[Node](t)(now.Find("button", "The bench in words"))); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("words"); err != nil {
		t.Fatal(err)
	}
	w := talker{t, tab}
	got, err := ear.Measure(strings.Join(w.replies(), "\n"), w.say)
	if err != nil {
		t.Fatal(err)
	}
	if told := w.say(fmt.Sprintf("note %03d/%02d", got.Strike, got.Dip)); !strings.Contains(told, "Right: strike and dip") {
		t.Errorf("read %+v, told %q", got, told)
	}
}

// inWords is the page in words.
func inWords(t *testing.T, fragment string, before ...string) talker {
	t.Helper()
	tab := stranger(t, browser, small, before...)
	if err := errors.Join(tab.Go(site.URL(fragment)), tab.Ready("words")); err != nil {
		t.Fatal(err)
	}
	return talker{t, tab}
}

// A form is opened from its file, answered line by line and handed in on the page
// in words; the page is loaded again in the middle. What is saved is marked in
// full.
func TestAFormInWords(t *testing.T) {
	t.Parallel()
	f, path := aForm(t)
	w := inWords(t, "words", saves)
	if first := strings.Join(w.replies(), "\n"); !strings.Contains(first, "form opens a form") {
		t.Errorf("it is not said how a form is opened: %s", first)
	}
	if got := w.say("form tf01.json"); !strings.Contains(got, "form stands alone") {
		t.Errorf("a form by the name of its file: %q", got)
	}
	if err := w.tab.Keys("form" + kb.Enter); err != nil { // what asks for the file lies over the log
		t.Fatal(err)
	}
	choose(t, w.tab, path)
	answer := func(i int) {
		t.Helper()
		it := must[item.Item](t)(f.Item(i))
		if got := w.say("answer " + strings.ReplaceAll(it.Key(), "°", "")); !strings.HasPrefix(got, "Kept.") {
			t.Fatalf("item %d: %s", i+1, got)
		}
	}
	if _, err := w.tab.Until("the form", func(now Tree) bool { return now.Says("Item 1 of 2") }); err != nil {
		t.Fatal(err)
	}
	answer(0)
	w.say("next")
	if err := errors.Join(w.tab.Reload(), w.tab.Ready("words")); err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(w.replies(), "\n"); !strings.Contains(got, "Going on where you stopped: 1 of 2 items answered.") {
		t.Errorf("loaded again it says %q", got)
	}
	if got := w.say("bench"); !strings.Contains(got, "Your form is kept; form opens it again.") {
		t.Errorf("left for the bench it says %q", got)
	}
	opened := func() {
		if got := w.say("form"); !strings.Contains(got, "Going on where you stopped: 1 of 2 items answered.") {
			t.Errorf("opened again it says %q", got)
		}
	}
	opened()
	if got := w.say("lesson " + lesson.Shipped()[0].Name); !strings.HasPrefix(got, "Your form is kept; form opens it again.") || !strings.Contains(got, "1 of ") {
		t.Errorf("left for a lesson it says %q", got)
	}
	if got := w.say("quit"); !strings.Contains(got, "Your form is kept; form opens it again.") {
		t.Errorf("after the lesson it says %q", got)
	}
	opened()
	answer(1)
	if got := w.say("finish"); !strings.Contains(got, "Handed in: tf01.submission.json") {
		t.Errorf("handed in it says %q", got)
	}
	full(t, saved(t, w.tab))
}

// A lesson is given to its end on the page in words.
func TestALessonInWords(t *testing.T) {
	t.Parallel()
	w := inWords(t, "words")
	l := lesson.Shipped()[0]
	if list := w.say("lesson"); !strings.Contains(list, l.Name+": "+l.Title) {
		t.Errorf("the lessons are not listed: %s", list)
	}
	if got := w.say("lesson nowhere"); !strings.Contains(got, `Read "nowhere"`) {
		t.Errorf("a lesson that there is not: %s", got)
	}
	got := w.say("lesson " + l.Name)
	for i, step := range l.Steps {
		if i > 0 {
			got = w.say("")
		}
		for _, want := range []string{fmt.Sprintf("%d of %d. ", i+1, len(l.Steps)), step.Say, step.Ask} {
			if !strings.Contains(got, want) {
				t.Errorf("step %d: %q is not in %q", i+1, want, got)
			}
		}
		if step.Answer != "" && !strings.Contains(w.say("reveal"), step.Answer) {
			t.Errorf("step %d: the answer %q is not told", i+1, step.Answer)
		}
	}
	if got := w.say("quit"); !strings.Contains(got, "The bench in words") {
		t.Errorf("the lesson does not lead back to the bench: %s", got)
	}
}
