package pdf

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/scenes/draw"
)

// sample is a page with something of everything.
func sample() *draw.List {
	l := &draw.List{W: 400, H: 300}
	ink := draw.Color{R: 29, G: 38, B: 41, A: 255}
	l.FillWith(draw.Fill{Path: draw.RoundBox(draw.Rect{X: 10, Y: 10, W: 180, H: 100}, 12), Color: draw.Color{R: 240, G: 200, B: 120, A: 255},
		Gradient: draw.Gradient{Kind: draw.Linear, A: draw.Point{X: 10}, B: draw.Point{X: 190}, To: draw.Color{R: 20, G: 90, B: 120, A: 255}}})
	l.FillWith(draw.Fill{Path: draw.Circle(260, 60, 45), Color: draw.Color{R: 255, G: 255, B: 255, A: 255},
		Gradient: draw.Gradient{Kind: draw.Radial, A: draw.Point{X: 245, Y: 45}, B: draw.Point{X: 305, Y: 45}, To: draw.Color{R: 120, G: 140, B: 60, A: 255}}})
	l.Fill(draw.Circle(200, 80, 40), draw.Color{R: 200, A: 90})
	l.Stroke(draw.Circle(260, 60, 45), draw.Stroke{Width: 3, Color: ink, Dash: []float64{8, 4}, Cap: draw.RoundCap})
	l.Text(draw.Text{S: "Strike 035°, dip 30° → 125/30 ±2′", At: draw.Point{X: 200, Y: 150}, Size: 18, Font: draw.Bold, Color: ink, Align: draw.AlignCentre})
	l.Text(draw.Text{S: "AVATAR To Yes, kerned text", At: draw.Point{X: 20, Y: 180}, Size: 16, Color: ink})
	l.Text(draw.Text{S: "turned", At: draw.Point{X: 40, Y: 280}, Size: 16, Color: ink, Rotate: -math.Pi / 4, Track: 0.1})
	l.Region(draw.Rect{X: 100, Y: 200, W: 200, H: 60})
	l.Fill(draw.Circle(200, 260, 60), draw.Color{G: 120, B: 90, A: 120})
	return l
}

func document(t testing.TB) []byte {
	d := New(Options{Sheet: A4, Title: "Strike & dip — Übung (1)", Subject: "Test", Lang: "en-GB"})
	for range 2 {
		d.Page()
		d.Bookmark("Strike & dip — Übung")
		d.Draw(sample(), draw.Affine{A: .2, D: .2, E: 450, F: 20})
		d.Open(Section, "")
		d.In(Figure, "A sample of shapes and words", sample(), draw.Affine{A: 1.2, D: 1.2, E: 50, F: 60})
		d.Open(Table, "")
		d.Open(Row, "")
		var l draw.List
		l.Text(draw.Text{S: "cell of a table", At: draw.Point{X: 50, Y: 500}, Size: 11, Color: draw.Color{A: 255}})
		d.In(HeadCell, "", &l, draw.Identity)
		d.Shut()
		d.Shut()
		d.Shut()
	}
	out, err := d.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestSameBytes(t *testing.T) {
	if !bytes.Equal(document(t), document(t)) {
		t.Error("the same calls gave different bytes")
	}
}

// reader runs one of the tools of poppler, a PDF reader that is no kin of the
// library that wrote the file.
func reader(t *testing.T, tool string, file []byte, args ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	var complaints bytes.Buffer
	for i, a := range args {
		if a == "FILE" {
			args[i] = path
		}
	}
	c := exec.Command(tool, args...)
	c.Stderr = &complaints
	out, err := c.Output()
	if err != nil || complaints.Len() > 0 {
		t.Fatalf("%s: %v\n%s\n(the tool comes with the package poppler-utils; go run ./cmd/dev test installs it)", tool, err, complaints.String())
	}
	return string(out)
}

func TestReadByAnother(t *testing.T) {
	file := document(t)
	info := reader(t, "pdfinfo", file, "FILE")
	for _, want := range []string{
		"Title:           Strike & dip — Übung (1)\n", "Tagged:          yes\n", "Pages:           2\n",
		"595.28 x 841.89 pts (A4)", "PDF version:     1.7\n",
	} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo does not say %q:\n%s", want, info)
		}
	}
	text := reader(t, "pdftotext", file, "-layout", "FILE", "-")
	for _, want := range []string{"Strike 035°, dip 30° → 125/30 ±2′", "AVATAR To Yes, kerned text", "cell of a table"} {
		if !strings.Contains(text, want) {
			t.Errorf("pdftotext does not find %q:\n%s", want, text)
		}
	}
	if got := bytes.Count(file, []byte("/Title "+textString("Strike & dip — Übung")+" /Parent")); got != 2 {
		t.Errorf("%d bookmarks, want 2", got)
	}
	fonts := reader(t, "pdffonts", file, "FILE")
	for _, want := range []string{"+AtkinsonHyperlegible-Regular", "+AtkinsonHyperlegible-Bold", "+DejaVuSans"} {
		if !strings.Contains(fonts, want) {
			t.Errorf("pdffonts does not list %q:\n%s", want, fonts)
		}
	}
	for _, line := range strings.Split(strings.TrimSpace(fonts), "\n")[2:] {
		if !strings.Contains(line, "yes yes yes") { // embedded, a subset, with Unicode
			t.Errorf("a font is not embedded as a subset that can be read: %s", line)
		}
	}
	tree := reader(t, "pdfinfo", file, "-struct-text", "FILE")
	for _, want := range []string{"Document", "Sect", "Figure:", "Table", "TR", "TH", "cell of a table"} {
		if !strings.Contains(tree, want) {
			t.Errorf("the structure tree lacks %q:\n%s", want, tree)
		}
	}
	if !strings.Contains(tree, `"A sample of shapes and words"`) && !bytes.Contains(file, []byte(textString("A sample of shapes and words"))) {
		t.Errorf("the figure has no words in its stead:\n%s", tree)
	}
}

func TestTakeApartRefuses(t *testing.T) {
	good := document(t)
	for _, c := range []struct {
		name string
		raw  []byte
	}{
		{"nothing", nil},
		{"no end", good[:len(good)-8]},
		{"a table elsewhere", append(bytes.Clone(good[:bytes.LastIndex(good, []byte("startxref"))]), "startxref\n99999999\n%%EOF\n"...)},
		{"no table", []byte("%PDF\nstartxref\n0\n%%EOF\n")},
	} {
		if _, err := takeApart(c.raw); err == nil {
			t.Errorf("%s was taken apart", c.name)
		}
	}
}

func TestUnbalanced(t *testing.T) {
	for name, f := range map[string]func(*Document){
		"Shut without Open": func(d *Document) { d.Page(); d.Shut() },
		"Draw without Page": func(d *Document) { d.Draw(sample(), draw.Identity) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s did not panic", name)
				}
			}()
			f(New(Options{Sheet: Letter}))
		}()
	}
}
