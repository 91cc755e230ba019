package pdf

import "cuesta/scenes/draw"

// Ornament paints a list as Draw does, as content that readers pass over, such
// as the number of a page, whatever element is open.
func (d *Document) Ornament(l *draw.List, m draw.Affine) {
	open := d.open
	d.open = open[:1]
	d.Draw(l, m)
	d.open = open
}
