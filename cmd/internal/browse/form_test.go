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

// A form is opened, answered and handed in by the accessibility tree alone, and
// what is saved is a submission that is marked in full.
func TestAFormIsTakenAndSaved(t *testing.T) {
	f, path := aForm(t)
	tab := visit(t, desk, "form", saves)
	file, err := tab.named("Drop the file here")
	if err != nil {
		t.Fatal(err)
	}
	_, err = chromedp.Call(tab.ctx, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, BackendNodeID: file.backend})
	if err != nil {
		t.Fatal(err)
	}
	h := byTree{tab}
	for i := range f.Items {
		it, err := f.Item(i)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := tab.named("Keep answer"); err != nil {
			t.Fatal(err)
		}
		if err := h.write(strings.ReplaceAll(it.Key(), "°", "")); err != nil {
			t.Fatal(err)
		}
		settled(t, tab)
		if err := h.press("Keep answer", 1); err != nil {
			t.Fatal(err)
		}
		settled(t, tab)
		if i == 0 {
			if err := h.press("Next question", 1); err != nil {
				t.Fatal(err)
			}
			settled(t, tab)
		}
	}
	for range 2 { // asked, then sure
		if err := h.press("Hand the form in", 1); err != nil {
			t.Fatal(err)
		}
		settled(t, tab)
	}
	var text string
	err = Await("the submission", 20*time.Second, func() (bool, error) {
		var err error
		text, err = Value[string](tab, `window.saved.length ? window.saved[0] : ""`)
		return text != "", err
	})
	if err != nil {
		t.Fatal(err, tree(t, tab))
	}
	s, err := form.DecodeSubmission(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	g, err := grade.Submission(s, nil)
	if err != nil {
		t.Fatal(err)
	}
	if g.Points != g.Of {
		t.Errorf("%v of %v points", g.Points, g.Of)
	}
}
