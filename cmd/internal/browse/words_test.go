package browse

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

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
	return after[len(after)-1]
}

// A browser without WebGL is told what it lacks and offered the bench in words,
// where a measurement is finished by what is said.
func TestWithoutWebGLTheBenchSpeaks(t *testing.T) {
	// The browser's own switches against WebGL make another browser necessary;
	// a page cannot tell this from them.
	tab := stranger(t, browser, desk, `HTMLCanvasElement.prototype.getContext = () => null;`)
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
