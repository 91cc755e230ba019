package browse

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/chromedp"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
)

// saves keeps what the page hands to the browser's downloads.
const saves = `(() => {
  window.saved = [];
  const make = URL.createObjectURL;
  URL.createObjectURL = blob => { blob.text().then(t => window.saved.push(t)); return make.call(URL, blob); };
})();`

// aForm is a form of two questions, and the file it stands in.
func aForm(t *testing.T) (form.Form, string) {
	t.Helper()
	b, err := form.ReadBlueprint(strings.NewReader("title = \"Tarn Fell field school: first quiz\"\n[[item]]\nkind = \"read-dial\"\n[[item]]\nkind = \"convert-notation\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "tf01", Name: "Ada Moss"}}, form.Options{Seed: 8})
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	path := filepath.Join(t.TempDir(), "tf01"+form.FormEnding)
	if err := d.Forms[0].Encode(&text); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, text.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return d.Forms[0], path
}

// choose gives the file that the page asks for: it has the keyboard for that, and
// what follows is the dialogue of the system.
func choose(t *testing.T, tab *Tab, path string) {
	t.Helper()
	file := must[Node](t)(tab.named("Drop the file here"))
	if f, ok := tree(t, tab).Focused(); !ok || f.Name != file.Name {
		t.Errorf("%s has the keyboard, want %s", f, file)
	}
	_, err := chromedp.Call(tab.ctx, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, BackendNodeID: file.backend})
	if err != nil {
		t.Fatal(err)
	}
}

// bring gives a form, and waits for its first question.
func bring(t *testing.T, tab *Tab, path string) {
	t.Helper()
	choose(t, tab, path)
	must[Node](t)(tab.named("Keep answer"))
}

// student answers a form on the page.
type student struct {
	*testing.T
	*Tab
	hand
	form form.Form
}

func (s student) do(name string) {
	s.Helper()
	if err := s.hand.press(name, 1); err != nil {
		s.Fatal(err)
	}
	settled(s.T, s.Tab)
}

// answer keeps the right answer to the question that is shown.
func (s student) answer(i int) {
	s.Helper()
	it := must[item.Item](s.T)(s.form.Item(i))
	if err := s.hand.write(strings.ReplaceAll(it.Key(), "°", "")); err != nil {
		s.Fatal(err)
	}
	settled(s.T, s.Tab)
	s.do("Keep answer")
}

// handIn hands the form in, and is what the page saved then.
func (s student) handIn() form.Submission {
	s.Helper()
	s.do("Hand in the form")
	s.do("Hand in the form") // asked, then sure
	return saved(s.T, s.Tab)
}

// saved is the submission that the page has saved as a file.
func saved(t *testing.T, tab *Tab) form.Submission {
	t.Helper()
	var text string
	err := Await("the submission", 20*time.Second, func() (bool, error) {
		var err error
		text, err = Value[string](tab, `window.saved.length ? window.saved[0] : ""`)
		return text != "", err
	})
	if err != nil {
		t.Fatal(err, tree(t, tab))
	}
	return must[form.Submission](t)(form.DecodeSubmission(strings.NewReader(text)))
}

// full says where a submission is not marked in full.
func full(t *testing.T, s form.Submission) {
	t.Helper()
	g, err := grade.Submission(s, nil)
	if err != nil {
		t.Fatal(err)
	}
	if g.Points != g.Of {
		t.Errorf("%v of %v points for %v", g.Points, g.Of, s.Answers)
	}
}

// A form is opened from its file, answered and handed in, by keyboard alone and
// by the accessibility tree alone; what is saved is a submission that is marked
// in full. In the middle the page is loaded again: what was kept is there, and
// so is the question one was at.
func TestAFormIsTakenAndSaved(t *testing.T) {
	t.Parallel()
	for _, way := range ways {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			f, path := aForm(t)
			tab := visit(t, desk, "form", saves)
			bring(t, tab, path)
			s := student{t, tab, way.hand(tab), f}
			s.answer(0)
			s.do("Next question")
			again(t, tab)
			if now := settled(t, tab); !now.Says("Question 2 of 2") {
				t.Errorf("not at the second question:\n%s", now)
			}
			s.answer(1)
			full(t, s.handIn())
		})
	}
}

// again loads the page again.
func again(t *testing.T, tab *Tab) {
	t.Helper()
	if err := tab.Reload(); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("ready"); err != nil {
		t.Fatal(err, tab.Problems())
	}
}
