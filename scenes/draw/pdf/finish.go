package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"

	"cuesta/scenes/draw"
)

func digest(b []byte) string {
	s := sha256.Sum256(b)
	return strings.ToUpper(hex.EncodeToString(s[:16]))
}

// finish adds the structure tree and what belongs to it.
func (d *Document) finish(raw []byte) ([]byte, error) {
	f, err := takeApart(raw)
	if err != nil {
		return nil, err
	}
	tree, parents := f.add(), f.add()
	d.number(f, d.root)
	d.write(f, d.root, tree)
	f.set(tree, "<</Type /StructTreeRoot /K [%d 0 R] /ParentTree %d 0 R /ParentTreeNextKey %d>>", d.root.object, parents, len(d.pages))
	f.set(parents, "<</Nums [%s]>>", d.owners())
	if err := d.squeeze(f); err != nil {
		return nil, err
	}
	for i := range d.pages {
		if err := f.extend(pageObject(i), fmt.Sprintf("/StructParents %d /Tabs /S", i)); err != nil {
			return nil, err
		}
	}
	err = f.extend(f.root, fmt.Sprintf(
		"/MarkInfo <</Marked true>> /StructTreeRoot %d 0 R /ViewerPreferences <</DisplayDocTitle true>>", tree))
	if err != nil {
		return nil, err
	}
	if err := d.outline(f); err != nil {
		return nil, err
	}
	d.nameFonts(f)
	f.sortImages()
	return f.bytes(), nil
}

// squeeze compresses the contents of the pages, all with one compressor: the
// library makes one for each, which costs more than the rest of the page.
func (d *Document) squeeze(f *file) error {
	var packed bytes.Buffer
	z, err := zlib.NewWriterLevel(&packed, zlib.BestSpeed)
	if err != nil {
		return err
	}
	for i := range d.pages {
		n := pageObject(i) + 1
		content, err := f.stream(n)
		if err != nil {
			return err
		}
		packed.Reset()
		z.Reset(&packed)
		if _, err := z.Write(content); err != nil {
			return err
		}
		if err := z.Close(); err != nil {
			return err
		}
		f.set(n, "<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream", packed.Len(), packed.Bytes())
	}
	return nil
}

// pageObject is the number of the object of page i, counted from 0: the library
// writes each page and its content first of all, from number 3.
func pageObject(i int) int { return 3 + 2*i }

// number gives every element its object, outer ones first.
func (d *Document) number(f *file, e *element) {
	e.object = f.add()
	for _, k := range e.kids {
		if k.element != nil {
			d.number(f, k.element)
		}
	}
}

// write sets the objects of an element and of all inside it.
func (d *Document) write(f *file, e *element, parent int) {
	first := -1
	var kids []string
	for _, k := range e.kids {
		switch {
		case k.element != nil:
			kids = append(kids, fmt.Sprintf("%d 0 R", k.element.object))
			d.write(f, k.element, e.object)
			continue
		case first < 0:
			first = k.page
			fallthrough
		case k.page == first:
			kids = append(kids, fmt.Sprint(k.mark))
		default:
			kids = append(kids, fmt.Sprintf("<</Type /MCR /Pg %d 0 R /MCID %d>>", pageObject(k.page), k.mark))
		}
	}
	more := ""
	if first >= 0 {
		more = fmt.Sprintf(" /Pg %d 0 R", pageObject(first))
	}
	if e.alt != "" {
		more += " /Alt " + textString(e.alt)
	}
	f.set(e.object, "<</Type /StructElem /S /%s /P %d 0 R%s%s /K [%s]>>",
		roleNames[e.role], parent, more, d.attributes(e), strings.Join(kids, " "))
}

// attributes are what some roles need: where a figure stands, what a head cell
// heads.
func (d *Document) attributes(e *element) string {
	switch e.role {
	case Figure:
		if e.box == (draw.Rect{}) {
			return ""
		}
		h := d.options.Sheet.H
		return fmt.Sprintf(" /A <</O /Layout /Placement /Block /BBox [%.2f %.2f %.2f %.2f]>>",
			e.box.X, h-e.box.Y-e.box.H, e.box.X+e.box.W, h-e.box.Y)
	case HeadCell:
		return " /A <</O /Table /Scope /Column>>"
	case SideCell:
		return " /A <</O /Table /Scope /Row>>"
	case Whole, Section, Heading1, Heading2, Heading3, Paragraph, Table, Row, Cell, Bullets, Bullet, BulletBody, Note:
	}
	return ""
}

// owners is the parent tree: for each page, the element of each run of content.
func (d *Document) owners() string {
	var b strings.Builder
	for i, p := range d.pages {
		fmt.Fprintf(&b, "%d [", i)
		for _, e := range p.owners {
			fmt.Fprintf(&b, "%d 0 R ", e.object)
		}
		b.WriteString("]\n")
	}
	return b.String()
}

// textString writes a text as UTF-16 with its mark, in hexadecimal.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteString(">")
	return b.String()
}

// postScript are the true names of the fonts.
var postScript = [...]string{
	draw.RegularFace: "AtkinsonHyperlegible-Regular", draw.BoldFace: "AtkinsonHyperlegible-Bold", draw.FallbackFace: "DejaVuSans",
}

// nameFonts gives the embedded fonts their names, with the six letters that
// mark a subset (ISO 32000-1, 9.6.4), taken from the signs it has.
func (d *Document) nameFonts(f *file) {
	for face, k := range d.fonts {
		if k.signs == nil {
			continue
		}
		from := []byte("/utf8" + families[face])
		to := []byte("/" + subsetTag(k.signs) + "+" + postScript[face])
		for n, body := range f.objects {
			if bytes.HasPrefix(body, []byte("<</Type /Font")) {
				f.objects[n] = bytes.ReplaceAll(body, from, to)
			}
		}
	}
}

func subsetTag(signs map[rune]bool) string {
	all := make([]rune, 0, len(signs))
	for r := range signs {
		all = append(all, r)
	}
	slices.Sort(all)
	sum := sha256.Sum256([]byte(string(all)))
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag)
}
