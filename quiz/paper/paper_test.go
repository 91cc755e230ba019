package paper

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// blueprint has one item of every kind.
func blueprint(t testing.TB) form.Blueprint {
	b, err := form.ReadBlueprint(strings.NewReader(form.Example()))
	if err != nil {
		t.Fatal(err)
	}
	like := b.Parts[len(b.Parts)-1]
	b.Parts = nil
	for i, k := range item.Kinds() {
		p := like
		p.Kind, p.Count, p.Points = k.Name(), 1, float64(1+i%3)
		b.Parts = append(b.Parts, p)
	}
	return b
}

// dealt are forms by the size of the class, so that tests share them.
var dealt = map[int][]form.Form{}

func deal(t testing.TB, roster []form.Student) []form.Form {
	if f := dealt[len(roster)]; f != nil {
		return f
	}
	d, err := form.Deal(blueprint(t), roster, form.Options{Seed: 11})
	if err != nil {
		t.Fatal(err)
	}
	dealt[len(roster)] = d.Forms
	return d.Forms
}

// tarnFell is an invented class, with names that are hard to print.
var tarnFell = []form.Student{
	{ID: "tf-01", Name: "Ailbe Thornwick", ExtraTime: 1},
	{ID: "tf-02", Name: `=Íñigo "Õ" Ståhlbäck-Łużycki (née Ostby) of the far end of the class list`, ExtraTime: 1.5},
	{ID: "tf-03", Name: "名前 \U0001F9ED \u200Fשם", ExtraTime: 1},
}

func mustSet(t testing.TB, set func([]form.Form, Sheet) ([]byte, error), forms []form.Form, s Sheet) []byte {
	t.Helper()
	out, err := set(forms, s)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// poppler runs one of its tools, which are no kin of the library that wrote the
// file; go run ./cmd/dev test installs them (package poppler-utils).
func poppler(t *testing.T, tool string, file []byte, args ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	var complaints bytes.Buffer
	c := exec.Command(tool, append(args, path)...)
	if tool == "pdftotext" {
		c.Args = append(c.Args, "-")
	}
	c.Stderr = &complaints
	out, err := c.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("%s: %v\n%s\n(it comes with the package poppler-utils; go run ./cmd/dev test installs it)", tool, err, complaints.String())
	}
	return string(out)
}

func words(s string) string { return strings.Join(strings.Fields(s), " ") }

func TestForms(t *testing.T) {
	forms := deal(t, tarnFell)
	for _, c := range []struct {
		sheet Sheet
		size  string
	}{
		{A4, "595.28 x 841.89 pts (A4)"}, {Letter, "612 x 792 pts (letter)"},
	} {
		file := mustSet(t, Forms, forms, c.sheet)
		info := poppler(t, "pdfinfo", file)
		for _, want := range []string{c.size, "Tagged:          yes", "Title:           Tarn Fell field school, first quiz: Paper forms", "JavaScript:      no"} {
			if !strings.Contains(info, want) {
				t.Errorf("pdfinfo does not say %q:\n%s", want, info)
			}
		}
		for _, want := range []string{"/Lang (en-GB)", "/DisplayDocTitle true", "/Marked true"} {
			if !bytes.Contains(file, []byte(want)) {
				t.Errorf("the file lacks %s", want)
			}
		}
		pages := strings.Split(strings.TrimSuffix(poppler(t, "pdftotext", file, "-layout"), "\f"), "\f")
		checkPages(t, pages, forms)
		checkQuestions(t, words(poppler(t, "pdftotext", file)), forms)
		checkAlternatives(t, file, forms)
	}
}

var footer = regexp.MustCompile(`Form ([A-Z]{3}-[A-Z]{3}-[A-Z]{3})\b.* page (\d+) of (\d+)`)

// checkPages: each page but the empty ones says whose form it is and which page
// of how many, in order; each form begins on the front of a leaf.
func checkPages(t *testing.T, pages []string, forms []form.Form) {
	t.Helper()
	n, page, of := -1, 0, 0
	for i, text := range pages {
		if words(text) == "This page is empty." {
			if page != of {
				t.Errorf("page %d is empty within a form", i+1)
			}
			continue
		}
		m := footer.FindStringSubmatch(words(text))
		if m == nil {
			t.Errorf("page %d has no code and number:\n%s", i+1, text)
			continue
		}
		if page == of {
			n, page = n+1, 0
			fmt.Sscan(m[3], &of)
			if i%2 != 0 {
				t.Errorf("form %d begins on the back of a leaf", n+1)
			}
		}
		page++
		if n >= len(forms) || m[1] != forms[n].Code || m[2] != fmt.Sprint(page) || m[3] != fmt.Sprint(of) {
			t.Errorf("page %d says form %s, page %s of %s; want %d of %d", i+1, m[1], m[2], m[3], page, of)
		}
	}
	if n != len(forms)-1 || page != of {
		t.Errorf("%d forms were printed, want %d", n+1, len(forms))
	}
}

// checkQuestions: the words of each question are there as text, with its
// choices, the cautions, and the names that the fonts can write.
func checkQuestions(t *testing.T, text string, forms []form.Form) {
	t.Helper()
	for _, f := range forms {
		q, err := sheetFormOf(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range q.questions {
			for _, want := range append([]string{one.item.Kind().Title(), one.prompt()}, one.item.Ask().Choices...) {
				if !strings.Contains(text, words(want)) {
					t.Errorf("form %s, question %d: %q is not printed", f.Code, one.number, want)
				}
			}
		}
	}
	for _, want := range append([]string{"Ailbe Thornwick (tf-01)", "=Íñigo \"Õ\" Ståhlbäck-Łużycki"}, cautions...) {
		if !strings.Contains(text, words(want)) {
			t.Errorf("%q is not printed", want)
		}
	}
}

// checkAlternatives: every figure carries its words.
func checkAlternatives(t *testing.T, file []byte, forms []form.Form) {
	t.Helper()
	for _, f := range forms {
		q, _ := sheetFormOf(f)
		for _, one := range q.questions {
			_, table := one.item.Figure().(item.TableFigure)
			if alt := one.item.Alt(); alt != "" && one.item.Figure() != nil && !table && !bytes.Contains(file, []byte("/Alt "+utf16Hex(alt))) {
				t.Errorf("question %d: the figure lacks the words %q", one.number, alt)
			}
		}
	}
}

func utf16Hex(s string) string {
	out := "<FEFF"
	for _, u := range utf16.Encode([]rune(s)) {
		out += fmt.Sprintf("%04X", u)
	}
	return out + ">"
}

// TestStructure: the tree has sections, headings, figures, tables with heads
// and lists, as another reader sees it.
func TestStructure(t *testing.T) {
	tree := poppler(t, "pdfinfo", mustSet(t, Forms, deal(t, tarnFell[:1]), A4), "-struct-text")
	for _, want := range []string{"Document", "Sect", "H1", "H2", "Figure", "Table", "TR", "TH", "TD", "L (block)", "LI", "LBody"} {
		if !strings.Contains(tree, "  "+want) && !strings.HasPrefix(tree, want) {
			t.Errorf("the tree has no %s:\n%s", want, tree)
		}
	}
	if strings.Contains(tree, "page 1 of") {
		t.Error("the number of the page is read aloud in the middle of the text")
	}
}

// TestFontsAreEmbedded: every font is a subset inside the file, with the table
// that turns its signs into Unicode.
func TestFontsAreEmbedded(t *testing.T) {
	for name, set := range sets {
		list := strings.Split(strings.TrimSpace(poppler(t, "pdffonts", mustSet(t, set, deal(t, tarnFell), A4))), "\n")
		if len(list) < 4 {
			t.Fatalf("%s: no fonts: %v", name, list)
		}
		for _, line := range list[2:] {
			if !strings.Contains(line, "yes yes yes") {
				t.Errorf("%s: %s", name, line)
			}
		}
	}
}

var sets = map[string]func([]form.Form, Sheet) ([]byte, error){"forms": Forms, "key": Key, "marking": Marking}

func TestSameBytes(t *testing.T) {
	for name, set := range sets {
		forms := deal(t, tarnFell)
		if a, b := mustSet(t, set, forms, Letter), mustSet(t, set, forms, Letter); !bytes.Equal(a, b) {
			t.Errorf("%s: the same forms gave different bytes", name)
		}
	}
}

func TestKey(t *testing.T) {
	forms := deal(t, tarnFell)
	file := mustSet(t, Key, forms, A4)
	text := words(poppler(t, "pdftotext", file))
	for _, f := range forms {
		if !strings.Contains(text, "Form "+f.Code) {
			t.Errorf("the key lacks form %s", f.Code)
		}
		q, err := sheetFormOf(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range q.questions {
			symbol := utf16Hex("The map symbol of " + one.item.Key())
			if one.item.Ask().Kind == item.AskSymbol && !bytes.Contains(file, []byte(symbol)) {
				t.Errorf("form %s, question %d: the symbol to draw is not in the key", f.Code, one.number)
			}
			if !one.atBench() && !strings.Contains(text, words(one.item.Key())) {
				t.Errorf("form %s, question %d: the key lacks %q", f.Code, one.number, one.item.Key())
			}
		}
	}
	if !strings.Contains(text, "measure each station before the class") {
		t.Error("the key does not say that real slabs have planes of their own")
	}
}

// TestKeyLetters: the letter in the key is that of the choice on the sheet.
func TestKeyLetters(t *testing.T) {
	for _, f := range deal(t, tarnFell) {
		q, _ := sheetFormOf(f)
		for _, one := range q.questions {
			ask := one.item.Ask()
			if ask.Kind != item.AskChoice {
				continue
			}
			letter, _, _ := strings.Cut(one.right(), ":")
			if m := one.item.Mark(letter, item.Evidence{}); !m.Right {
				t.Errorf("%s: the letter %s is marked wrong: %s", one.item.Kind().Name(), letter, m.Said)
			}
		}
	}
}

func TestMarking(t *testing.T) {
	forms := deal(t, Versions(30))
	text := words(poppler(t, "pdftotext", mustSet(t, Marking, forms, A4)))
	for i, f := range forms {
		if !strings.Contains(text, f.Code) || !strings.Contains(text, fmt.Sprint("version ", i+1)) {
			t.Errorf("the sheet lacks form %s", f.Code)
		}
	}
}

// TestEveryItemFitsAPage: no question is cut off, whatever is dealt.
func TestEveryItemFitsAPage(t *testing.T) {
	for _, sheet := range []Sheet{A4, Letter} {
		s := settingOf(sheet)
		room := s.room()
		for _, f := range deal(t, Versions(12)) {
			q, err := sheetFormOf(f)
			if err != nil {
				t.Fatal(err)
			}
			for i, b := range s.section(q).blocks {
				if b.height > room {
					t.Errorf("sheet %d: block %d is %.0f pt high, the page has %.0f", sheet, i, b.height, room)
				}
			}
		}
	}
}

// TestLongTables: a table longer than a page is cut into several, each with its
// head, and no row is lost.
func TestLongTables(t *testing.T) {
	cols := []column{{head: "No.", width: .2}, {head: "Words", width: .8}}
	var rows [][]string
	for i := range 100 {
		rows = append(rows, []string{fmt.Sprint(i), strings.Repeat("more words ", 1+i%40)})
	}
	next := 0
	tables := gridTables(cols, rows, 300, 20, 400)
	for _, a := range tables {
		if a.height > 400 {
			t.Errorf("a table is %v high", a.height)
		}
		kids := a.nodes[len(a.nodes)-1].kids
		if got := kids[0].kids[0].list.Texts[0].S; got != "No." {
			t.Errorf("a table begins with %q", got)
		}
		for _, r := range kids[1:] {
			if got := r.kids[0].list.Texts[0].S; got != fmt.Sprint(next) {
				t.Errorf("row %q, want %d", got, next)
			}
			next++
		}
	}
	if next != 100 || len(tables) > 25 {
		t.Errorf("%d rows in %d tables, want all 100 in about 20", next, len(tables))
	}
}

// TestCautions: sheets that send people to slabs carry the cautions, even where
// the blueprint leaves them out.
func TestCautions(t *testing.T) {
	b := blueprint(t)
	b.Cautions = false
	with, without := b, b
	with.Parts, without.Parts = b.Parts[:2], b.Parts[1:2]
	for _, c := range []struct {
		b    form.Blueprint
		want bool
	}{{with, true}, {without, false}} {
		d, err := form.Deal(c.b, Versions(1), form.Options{})
		if err != nil {
			t.Fatal(err)
		}
		text := words(poppler(t, "pdftotext", mustSet(t, Forms, d.Forms, A4)))
		if got := strings.Contains(text, "Take care"); got != c.want {
			t.Errorf("cautions printed: %t, want %t", got, c.want)
		}
	}
}

func TestNothingToPrint(t *testing.T) {
	for name, set := range sets {
		if _, err := set([]form.Form{{}}, A4); !errors.Is(err, ErrNothing) {
			t.Errorf("%s: an empty form gave %v", name, err)
		}
	}
	var none []form.Form
	if _, err := Marking(none, A4); err != nil {
		t.Errorf("no forms at all: %v", err)
	}
}

// TestPageBreaks: blocks stay whole and in order, and a page is filled before
// the next begins.
func TestPageBreaks(t *testing.T) {
	s := section{}
	for _, h := range []float64{300, 300, 300, 731, 10, 2000, 5} {
		s.blocks = append(s.blocks, block{height: h})
	}
	var got []string
	for _, p := range s.pages(pdf.A4) {
		line := ""
		for _, b := range p {
			line += fmt.Sprintf("%.0f@%.0f ", b.height, b.y)
		}
		got = append(got, strings.TrimSpace(line))
	}
	want := []string{"300@48 300@365", "300@48", "731@48", "10@48", "2000@48", "5@48"}
	if strings.Join(got, "; ") != strings.Join(want, "; ") {
		t.Errorf("pages %q, want %q", got, want)
	}
}

// TestEvenPages: a form takes as few pages as it can, and no page is left nearly
// empty where a neighbour could spare a question.
func TestEvenPages(t *testing.T) {
	room := pdf.A4.H - marginTop - marginFoot
	for _, c := range []struct {
		heights []float64
		want    []int // blocks on each page
	}{
		{[]float64{90, 110, 250, 280, 340, 360, 110, 110, 110, 130}, []int{3, 2, 2, 3}},
		{[]float64{300, 300, 20}, []int{3}},
		{[]float64{300, 300, 300}, []int{2, 1}},
		{[]float64{300, 200, 100, 90, 80}, []int{2, 3}},
		{[]float64{800, 10}, []int{1, 1}},
		{nil, nil},
	} {
		s, greedy := section{even: true}, section{}
		for _, h := range c.heights {
			s.blocks, greedy.blocks = append(s.blocks, block{height: h}), append(greedy.blocks, block{height: h})
		}
		pages := s.pages(pdf.A4)
		var got []int
		next := 0
		for _, p := range pages {
			got = append(got, len(p))
			y := marginTop
			for i, b := range p {
				if b.height != c.heights[next] || i > 0 && (b.y < y+blockGap-1e-9 || b.y > y+2*blockGap+1e-9) || i == 0 && b.y != marginTop {
					t.Errorf("%v: block %d of height %v stands at %v, %v below the last", c.heights, next, b.height, b.y, b.y-y)
				}
				y = b.y + b.height
				next++
			}
			if len(p) > 1 && y > marginTop+room+1e-9 {
				t.Errorf("%v: a page ends at %v, want at most %v", c.heights, y, marginTop+room)
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) || len(pages) > len(greedy.pages(pdf.A4)) {
			t.Errorf("%v: got %v blocks a page, want %v", c.heights, got, c.want)
		}
	}
}

// TestHeadsOfTheMarkingSheet: the number of a question and what it is worth take
// two lines, however many columns there are.
func TestHeadsOfTheMarkingSheet(t *testing.T) {
	s := settingOf(A4)
	for n := 1; n <= mostColumns; n++ {
		cols := markingColumns(questionsWorth(n, 0.25), "Sum\n112.75")
		sum := 0.0
		for i, c := range cols {
			sum += c.width
			width := c.width * s.column()
			if lines := draw.Wrap(draw.Bold, sizeText-1, width-2*min(cellPad, width*.06), c.head); len(lines) != 1+strings.Count(c.head, "\n") {
				t.Errorf("%d questions: the head of column %d is %q", n, i+1, lines)
			}
		}
		if sum < 0.999 || sum > 1.001 {
			t.Errorf("%d questions: the columns take %.3f of the width", n, sum)
		}
	}
}

func questionsWorth(n int, points float64) []question {
	out := make([]question, n)
	for i := range out {
		out[i] = question{number: 90 + i, points: points}
	}
	return out
}
