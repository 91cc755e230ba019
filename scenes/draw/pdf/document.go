package pdf

import (
	"bytes"
	"fmt"
	"regexp"
	"time"

	"codeberg.org/go-fonts/dejavu/dejavusans"
	"codeberg.org/go-pdf/fpdf"

	"cuesta/assets"
	"cuesta/scenes/draw"
)

// The usual sheets, in points.
var (
	A4     = Size{W: 210 * 72 / 25.4, H: 297 * 72 / 25.4} // ISO 216
	Letter = Size{W: 8.5 * 72, H: 11 * 72}                // ANSI/ASME Y14.1, size A
)

// Size is the size of a sheet in points.
type Size struct{ W, H float64 }

// Options are what a document says of itself. Title and Lang should be set:
// readers show the one and speak in the other.
type Options struct {
	Sheet   Size
	Title   string
	Subject string
	Author  string
	Lang    string    // RFC 5646: "en-GB"
	Made    time.Time // written into the file; the zero value is the first day of 2000
}

// Document is a file in the making. Make one with New; it serves one goroutine.
type Document struct {
	options Options
	f       *fpdf.Fpdf
	fonts   [3]font
	content []byte // of the page, not yet handed on
	marks   []bookmark
	pages   []page
	root    *element
	open    []*element // from the root inwards
	err     error
	faded   bool // the opacity of the page is not whole
}

// font is an embedded face: its name in content streams, and the signs used.
type font struct {
	name  string
	signs map[rune]bool
}

// page knows which element each run of its content belongs to.
type page struct{ owners []*element }

// New begins a document without pages.
func New(o Options) *Document {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: o.Sheet.W, Ht: o.Sheet.H}})
	if o.Made.IsZero() {
		o.Made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	f.SetCatalogSort(true)
	f.SetCompression(false) // see squeeze
	f.SetCreationDate(o.Made)
	f.SetModificationDate(o.Made)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetTitle(o.Title, true)
	f.SetSubject(o.Subject, true)
	f.SetAuthor(o.Author, true)
	f.SetCreator("cuesta", true)
	f.SetLang(o.Lang)
	root := &element{role: Whole}
	return &Document{options: o, f: f, root: root, open: []*element{root}}
}

// Sheet is the size of the pages.
func (d *Document) Sheet() Size { return d.options.Sheet }

// Pages is the number of pages so far.
func (d *Document) Pages() int { return len(d.pages) }

// Page begins a page. Elements that are open go on there.
func (d *Document) Page() {
	d.flush()
	d.f.AddPage()
	d.pages = append(d.pages, page{})
	d.faded = false
}

// bookmark is an entry of the outline.
type bookmark struct {
	text string
	page int
}

// Bookmark lists the page in the outline that readers show beside the text.
func (d *Document) Bookmark(text string) {
	d.marks = append(d.marks, bookmark{text, len(d.pages) - 1})
}

// flush hands the content of the page to the library.
func (d *Document) flush() {
	if len(d.content) > 0 {
		d.f.RawWriteStr(string(d.content))
		d.content = d.content[:0]
	}
}

// embedded is a font, made known to the library when it is first used.
func (d *Document) embedded(face draw.Face) *font {
	k := &d.fonts[face]
	if k.signs == nil {
		k.signs = map[rune]bool{}
		d.f.AddUTF8FontFromBytes(families[face], "", faceBytes(face))
		k.name = d.nameOf(families[face])
	}
	return k
}

// families are the fonts by their PostScript names, without the hyphen, which
// the library does not take.
var families = [...]string{
	draw.RegularFace: "atkinsonregular", draw.BoldFace: "atkinsonbold", draw.FallbackFace: "dejavusans",
}

// faceBytes is a copy of a font file: the library writes to what it is given.
func faceBytes(face draw.Face) []byte {
	return bytes.Clone([...][]byte{draw.RegularFace: assets.Regular, draw.BoldFace: assets.Bold, draw.FallbackFace: dejavusans.TTF}[face])
}

var fontOperator = regexp.MustCompile(`BT /(\S+) [0-9.]+ Tf ET`)

// nameOf learns the name of a font in content streams from a template that
// selects it and is never drawn.
func (d *Document) nameOf(family string) string {
	t := d.f.CreateTemplate(func(t *fpdf.Tpl) { t.SetFont(family, "", 12) })
	m := fontOperator.FindSubmatch(t.Bytes())
	if m == nil {
		d.fail(fmt.Errorf("the font %s could not be selected", family))
		return ""
	}
	return string(m[1])
}

// keepSigns tells the library which signs of each font are used, by writing
// them to a template that is never drawn.
func (d *Document) keepSigns() {
	for face, k := range d.fonts {
		if len(k.signs) == 0 {
			continue
		}
		var all []rune
		for r := range k.signs {
			all = append(all, r)
		}
		d.f.CreateTemplate(func(t *fpdf.Tpl) {
			t.SetFont(families[face], "", 12)
			t.Text(0, 0, string(all))
		})
	}
}

func (d *Document) fail(err error) {
	if d.err == nil {
		d.err = fmt.Errorf("pdf: %w", err)
	}
}

// Bytes ends the document and returns the file. Elements still open are shut.
func (d *Document) Bytes() ([]byte, error) {
	d.flush()
	d.keepSigns()
	var out bytes.Buffer
	if err := d.f.Output(&out); err != nil {
		d.fail(err)
	}
	if d.err != nil {
		return nil, d.err
	}
	return d.finish(out.Bytes())
}
