package gradebook_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/grade"
	"cuesta/quiz/gradebook"
	"cuesta/scenes/draw/pdf"
)

// markup is what a page is made of, read by the XML reader of the standard
// library with the void elements of HTML closed.
type markup struct {
	elements map[string]int
	ids      map[string]bool
	links    []string
	lang     string
	levels   []int // of the headings, in order
	svgs     int
	named    int // pictures with a role and a name
	trouble  []string
}

func read(t *testing.T, text string) markup {
	t.Helper()
	m := markup{elements: map[string]int{}, ids: map[string]bool{}}
	d := xml.NewDecoder(strings.NewReader(strings.TrimPrefix(text, "<!DOCTYPE html>")))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return m
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		if e, ok := tok.(xml.StartElement); ok {
			m.take(e)
		}
	}
}

func (m *markup) take(e xml.StartElement) {
	name := e.Name.Local
	m.elements[name]++
	at := map[string]string{}
	for _, a := range e.Attr {
		at[a.Name.Local] = a.Value
		if strings.HasPrefix(a.Name.Local, "on") {
			m.trouble = append(m.trouble, name+" has "+a.Name.Local)
		}
	}
	if id := at["id"]; id != "" {
		if m.ids[id] {
			m.trouble = append(m.trouble, "id "+id+" stands twice")
		}
		m.ids[id] = true
	}
	switch {
	case name == "html":
		m.lang = at["lang"]
	case name == "a":
		m.links = append(m.links, at["href"])
	case len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6':
		m.levels = append(m.levels, int(name[1]-'0'))
	case name == "svg":
		m.svgs++
		if at["role"] == "img" && at["aria-labelledby"] != "" {
			m.named++
		}
	case name == "th" && at["scope"] == "":
		m.trouble = append(m.trouble, "a heading of a table has no scope")
	}
}

// plain checks what every page must hold to.
func (m markup) plain(t *testing.T) {
	t.Helper()
	if m.lang != "en-GB" {
		t.Errorf("the language is %q", m.lang)
	}
	for _, e := range []string{"script", "iframe", "link", "img", "object", "form"} {
		if m.elements[e] > 0 {
			t.Errorf("it has %d %s", m.elements[e], e)
		}
	}
	if m.elements["h1"] != 1 || m.elements["main"] != 1 || m.elements["title"] < 1 {
		t.Errorf("%d h1, %d main, %d title", m.elements["h1"], m.elements["main"], m.elements["title"])
	}
	last := 0
	for _, l := range m.levels {
		if l > last+1 {
			t.Errorf("a heading of level %d follows one of level %d", l, last)
		}
		last = l
	}
	for _, s := range m.trouble {
		t.Error(s)
	}
	for _, l := range m.links {
		if to, ok := strings.CutPrefix(l, "#"); ok && !m.ids[to] {
			t.Errorf("the link %s leads nowhere", l)
		}
	}
	if m.svgs != m.named {
		t.Errorf("%d of %d pictures have a role and a name", m.named, m.svgs)
	}
}

func TestFeedbackIsPlainAndAccessible(t *testing.T) {
	_, all := class(t, 6)
	for _, g := range all {
		text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteFeedback(b, g) })
		m := read(t, text)
		m.plain(t)
		if m.svgs != 2 {
			t.Errorf("%d pictures, want those of two dials", m.svgs)
		}
		for _, it := range g.Items {
			if !strings.Contains(text, it.Item.Key()) {
				t.Errorf("the right answer %s is not there", it.Item.Key())
			}
		}
		for _, r := range g.Remarks {
			if strings.Contains(text, r.Kind.String()) {
				t.Errorf("a remark for the instructor stands on the page: %v", r)
			}
		}
	}
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteFeedback(b, all[1]) })
	if strings.Contains(text, "<script") || !strings.Contains(text, "&lt;script&gt;") {
		t.Error("the name is not escaped")
	}
}

func TestFeedbackSaysHowItWent(t *testing.T) {
	_, all := class(t, 3)
	g := all[0]
	g.Items[2].Answered, g.Items[2].Points = false, 0
	g.Items[3].Hints, g.Items[3].Cost = 2, 0.5
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteFeedback(b, g) })
	for _, want := range []string{"Not answered", "2 hints took off 0.5 points.", "the pass mark is 60", "never data for design"} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q", want)
		}
	}
}

func TestReportIsPlainAndAccessible(t *testing.T) {
	rep, _ := class(t, 12)
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteReport(b, rep, "feedback") })
	m := read(t, text)
	m.plain(t)
	if m.svgs != 5 {
		t.Errorf("%d pictures, want five", m.svgs)
	}
	for _, want := range []string{
		"Refused", "x&lt;y.submission.json", "it is cut off", "Missing", "Handed in more than once", "KR-20",
		"Difficulty p", "Point-biserial", "Other end", "asin(tan τ / tan d)", "equal-area", `href="feedback/tf01.html"`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q", want)
		}
	}
	if again := page(t, func(b *bytes.Buffer) error { return gradebook.WriteReport(b, rep, "feedback") }); again != text {
		t.Error("the same class gives another report")
	}
}

func TestAnEmptyClassHasAReportToo(t *testing.T) {
	rep := grade.NewClass(nil).Report()
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteReport(b, rep, "") })
	m := read(t, text)
	m.plain(t)
	if m.svgs != 0 || !strings.Contains(text, "Submissions marked") {
		t.Errorf("%d pictures of nobody", m.svgs)
	}
	if err := gradebook.PrintReport(io.Discard, rep, pdf.A4); err != nil {
		t.Error(err)
	}
}

// printed runs a tool of poppler, an independent reader of PDF, on a report.
func printed(t *testing.T, tool, file string, args ...string) string {
	t.Helper()
	out, err := exec.Command(tool, append(args, file)...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s (poppler-utils): %v\n%s", tool, err, out)
	}
	return string(out)
}

// textOf is the text of a PDF as pdftotext of poppler finds it, in one line.
func textOf(t *testing.T, file string) string {
	t.Helper()
	out, err := exec.Command("pdftotext", file, "-").CombinedOutput()
	if err != nil {
		t.Fatalf("pdftotext (poppler-utils): %v\n%s", err, out)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

func TestThePrintedReport(t *testing.T) {
	rep, _ := class(t, 12)
	for _, sheet := range []struct {
		size pdf.Size
		said string
	}{{pdf.A4, "595.28 x 841.89 pts (A4)"}, {pdf.Letter, "612 x 792 pts (letter)"}} {
		text := page(t, func(b *bytes.Buffer) error { return gradebook.PrintReport(b, rep, sheet.size) })
		if again := page(t, func(b *bytes.Buffer) error { return gradebook.PrintReport(b, rep, sheet.size) }); again != text {
			t.Error("the same class gives other bytes")
		}
		file := filepath.Join(t.TempDir(), "report.pdf")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		info := printed(t, "pdfinfo", file)
		for _, want := range []string{"Class report: Ostby Fell <first> day", "Tagged:          yes", sheet.said} {
			if !strings.Contains(info, want) {
				t.Errorf("pdfinfo does not say %q:\n%s", want, info)
			}
		}
		tree := printed(t, "pdfinfo", file, "-struct")
		for _, want := range []string{"Document", "H1", "H2", "Figure", "Table", "TR", "TH", "TD"} {
			if !strings.Contains(tree, want) {
				t.Errorf("the structure has no %q", want)
			}
		}
		words := textOf(t, file)
		for _, want := range []string{"KR-20", "tf01", "Other end", "true dip", "page 1", "x<y.submission.json", "asin(tan τ / tan d)"} {
			if !strings.Contains(words, want) {
				t.Errorf("pdftotext does not find %q", want)
			}
		}
		for _, line := range strings.Split(printed(t, "pdffonts", file), "\n")[2:] {
			if f := strings.Fields(line); len(f) > 4 && f[len(f)-5] != "yes" {
				t.Errorf("a font is not embedded: %s", line)
			}
		}
	}
}

func TestALargeClassIsSummedUp(t *testing.T) {
	rep, _ := class(t, 3)
	one := rep.Results[0]
	for i := range 3000 {
		one.ID, one.Name = fmt.Sprintf("s%04d", i), "Somebody"
		rep.Results = append(rep.Results, one)
		rep.Refused = append(rep.Refused, grade.Refusal{Source: fmt.Sprint(i), Reason: "it is cut off"})
	}
	rep.Analysis = grade.Analyse(rep.Blueprint, rep.Results)
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteReport(b, rep, "feedback") })
	if len(text) > 3<<20 {
		t.Errorf("the report has %d MB", len(text)>>20)
	}
	for _, want := range []string{"the table of grades lists every student", "the table of grades has them all", "one in 7 is drawn"} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not say %q", want)
		}
	}
}

// A name in letters that the print has none for is cut short there, without a
// box, and the print says where it stands whole.
func TestThePrintHasNoBoxes(t *testing.T) {
	const unprinted = "王小明שירה"
	rep, _ := class(t, 6)
	rep.Results[0].Name, rep.Results[2].Name = "王小明", "Ann שירה"
	rep.Missing[0].Name = "小明 王"
	text := printText(t, rep)
	if strings.ContainsAny(text, unprinted+"\uFFFD") {
		t.Errorf("got signs without letters in %q", text)
	}
	for _, want := range []string{rep.Results[0].ID + " …", "Ann …", "… (" + rep.Missing[0].ID + ")", "Where … stands, this print has no letters"} {
		if !strings.Contains(text, want) {
			t.Errorf("pdftotext does not find %q in %q", want, text)
		}
	}
	html := page(t, func(b *bytes.Buffer) error { return gradebook.WriteReport(b, rep, "") })
	if !strings.Contains(html, "王小明") || !strings.Contains(html, "Ann שירה") {
		t.Error("the page has not the whole names")
	}
	rep, _ = class(t, 6)
	if text := printText(t, rep); strings.Contains(text, "has no letters") {
		t.Error("the print speaks of letters where none are missing")
	}
}

// printText is the text of the print of a report.
func printText(t *testing.T, rep grade.Report) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "report.pdf")
	text := page(t, func(b *bytes.Buffer) error { return gradebook.PrintReport(b, rep, pdf.A4) })
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return textOf(t, file)
}
