package pdf

import "cuesta/scenes/draw"

// Role is what an element of the structure tree is: a standard structure type
// of ISO 32000-1, 14.8.4.
type Role uint8

// The roles. Whole is the document itself and never opened.
const (
	Whole Role = iota
	Section
	Heading1
	Heading2
	Heading3
	Paragraph
	Figure
	Table
	Row
	HeadCell // of a column
	SideCell // heads a row
	Cell
	Bullets
	Bullet
	BulletBody // what stands in a Bullet
	Note
)

var roleNames = [...]string{
	Whole: "Document", Section: "Sect", Heading1: "H1", Heading2: "H2", Heading3: "H3", Paragraph: "P", Figure: "Figure",
	Table: "Table", Row: "TR", HeadCell: "TH", SideCell: "TH", Cell: "TD", Bullets: "L", Bullet: "LI", BulletBody: "LBody", Note: "Note",
}

// element is a node of the structure tree.
type element struct {
	role   Role
	alt    string
	parent *element
	kids   []kid
	box    draw.Rect // of a figure, on its page
	object int       // its number in the file
}

// kid is a child element, or a run of content of a page.
type kid struct {
	element *element
	page    int
	mark    int
}

// Open begins an element inside the innermost open one. Alt says in words what
// the content shows; figures need it.
func (d *Document) Open(r Role, alt string) {
	in := d.open[len(d.open)-1]
	e := &element{role: r, alt: alt, parent: in}
	in.kids = append(in.kids, kid{element: e})
	d.open = append(d.open, e)
}

// Shut ends the innermost element. It panics when none is open.
func (d *Document) Shut() {
	if len(d.open) == 1 {
		panic("pdf: Shut without Open")
	}
	d.open = d.open[:len(d.open)-1]
}

// In draws within an element of its own.
func (d *Document) In(r Role, alt string, l *draw.List, m draw.Affine) {
	d.Open(r, alt)
	d.Draw(l, m)
	d.Shut()
}

// Ornament draws what readers pass over, such as rules and page numbers,
// whatever element is open.
func (d *Document) Ornament(l *draw.List, m draw.Affine) {
	open := d.open
	d.open = open[:1]
	d.Draw(l, m)
	d.open = open
}

// begin starts a run of marked content for the innermost element, or one of
// ornament when none is open.
func (d *Document) begin(box draw.Rect) {
	e := d.open[len(d.open)-1]
	if e == d.root {
		d.put("/Artifact BMC\n")
		return
	}
	n := len(d.pages) - 1
	p := &d.pages[n]
	e.kids = append(e.kids, kid{page: n, mark: len(p.owners)})
	if e.role == Figure {
		e.box = box
	}
	d.put("/" + roleNames[e.role] + " <</MCID ")
	d.int(len(p.owners))
	d.put(">> BDC\n")
	p.owners = append(p.owners, e)
}
