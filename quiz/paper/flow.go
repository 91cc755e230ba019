package paper

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// ornament is the role of what readers pass over.
const ornament = pdf.Whole

// node is a piece of a page: its role in the structure, what is drawn, and the
// pieces inside it. It stands at a place in its block.
type node struct {
	role pdf.Role
	alt  string
	at   draw.Point
	list *draw.List
	kids []node
}

// block is what may not be torn apart by the end of a page.
type block struct {
	height float64
	nodes  []node
}

// section is a run of blocks on pages of its own, with its running feet.
type section struct {
	name   string // in the outline of the document
	blocks []block
	left   string // of the foot
	middle string
	even   bool // pages are filled evenly, not one after the other
}

// placed is a block on its page.
type placed struct {
	block
	y float64
}

// The margins of a page, in points.
const (
	marginX    = 54.0
	marginTop  = 48.0
	marginFoot = 62.0
	footRise   = 34.0 // of the foot from the lower edge
	blockGap   = 17.0
)

// pages fills pages with blocks. A block higher than a page, which no item is,
// gets a page to itself.
func (s section) pages(sheet pdf.Size) [][]placed {
	if s.even {
		return s.evenly(sheet.H - marginFoot - marginTop)
	}
	var out [][]placed
	room := sheet.H - marginFoot
	y := room + 1
	for _, b := range s.blocks {
		if len(out) == 0 || y+b.height > room {
			out, y = append(out, nil), marginTop
		}
		n := len(out) - 1
		out[n] = append(out[n], placed{b, y})
		y += b.height + blockGap
	}
	return out
}

// paint writes a section to pages of its own.
func (s section) paint(d *pdf.Document, size setting) {
	pages := s.pages(d.Sheet())
	d.Open(pdf.Section, "")
	for i, p := range pages {
		d.Page()
		if i == 0 && s.name != "" {
			d.Bookmark(s.name)
		}
		s.foot(d, size, i+1, len(pages))
		for _, b := range p {
			for _, n := range b.nodes {
				n.paint(d, draw.Point{X: marginX, Y: b.y})
			}
		}
	}
	d.Shut()
}

func (n node) paint(d *pdf.Document, o draw.Point) {
	p := draw.Point{X: o.X + n.at.X, Y: o.Y + n.at.Y}
	m := draw.Affine{A: 1, D: 1, E: p.X, F: p.Y}
	if n.role == ornament {
		d.Ornament(n.list, m)
		return
	}
	d.Open(n.role, n.alt)
	if n.list != nil {
		d.Draw(n.list, m)
	}
	for _, k := range n.kids {
		k.paint(d, p)
	}
	d.Shut()
}

// foot is the line at the lower edge of a page.
func (s section) foot(d *pdf.Document, size setting, page, of int) {
	l := &draw.List{}
	y := d.Sheet().H - footRise
	rule(l, marginX, y-13, size.column(), .5)
	put := func(t *draw.List, x float64) {
		l.Append(t, draw.Affine{A: 1, D: 1, E: marginX + x, F: y - t.Texts[0].At.Y})
	}
	left := line(s.left, draw.Bold, sizeSmall, draw.AlignLeft, ink)
	right := line(pageOf(page, of), draw.Regular, sizeSmall, draw.AlignLeft, ink)
	w := size.column()
	room := w - left.W - right.W - 40
	middle := fitted(s.middle, draw.Regular, sizeSmall, room, ink)
	put(left, 0)
	put(right, w-right.W)
	put(middle, max(left.W+20, min((w-middle.W)/2, w-right.W-20-middle.W)))
	d.Ornament(l, draw.Identity)
}
