package paper

import (
	"bytes"
	"testing"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"cuesta/assets"
	"cuesta/quiz/form"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// BenchmarkPrint prints the forms of a class of thirty, and in turn sets the
// text of the same pages alone with the PDF library. It reports the pages a
// second of the first, and how many of the second there are for each of them.
func BenchmarkPrint(b *testing.B) {
	forms := deal(b, Versions(30))
	texts := textOf(b, forms)
	var whole, bare time.Duration
	for b.Loop() {
		start := time.Now()
		if _, err := Forms(forms, A4); err != nil {
			b.Fatal(err)
		}
		whole += time.Since(start)
		start = time.Now()
		textAlone(b, texts)
		bare += time.Since(start)
	}
	pages := float64(len(texts) * b.N)
	b.ReportMetric(pages/whole.Seconds(), "pages/s")
	b.ReportMetric(bare.Seconds()/whole.Seconds(), "of-text-alone")
}

// textOf is the text of each page with its place on it.
func textOf(b *testing.B, forms []form.Form) [][]draw.Text {
	s := settingOf(A4)
	var out [][]draw.Text
	for _, f := range forms {
		q, err := sheetFormOf(f)
		if err != nil {
			b.Fatal(err)
		}
		for _, page := range s.section(q).pages(s.sheet) {
			l := &draw.List{}
			for _, blk := range page {
				for _, n := range blk.nodes {
					gather(l, n, draw.Point{X: marginX, Y: blk.y})
				}
			}
			out = append(out, l.Texts)
		}
	}
	return out
}

func gather(l *draw.List, n node, o draw.Point) {
	p := draw.Point{X: o.X + n.at.X, Y: o.Y + n.at.Y}
	if n.list != nil {
		l.Append(n.list, draw.Affine{A: 1, D: 1, E: p.X, F: p.Y})
	}
	for _, k := range n.kids {
		gather(l, k, p)
	}
}

// textAlone sets the pages as the library does by itself: no figures, no
// kerning, no structure.
func textAlone(b *testing.B, pages [][]draw.Text) {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: pdf.A4.W, Ht: pdf.A4.H}})
	f.AddUTF8FontFromBytes("reading", "", bytes.Clone(assets.Regular))
	f.AddUTF8FontFromBytes("reading", "B", bytes.Clone(assets.Bold))
	for _, p := range pages {
		f.AddPage()
		for _, t := range p {
			style := ""
			if t.Font == draw.Bold {
				style = "B"
			}
			f.SetFont("reading", style, t.Size)
			f.Text(t.At.X, t.At.Y, t.S)
		}
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		b.Fatal(err)
	}
}
