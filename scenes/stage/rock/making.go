package rock

import "image"

// Making is a stone that is made bit by bit, so that each bit fits into one
// frame.
type Making struct {
	stone   *Stone
	palette Palette
	top     *Top
	sides   [4]*face
	part    int // 0 is the top, then the sides as in Sides
	row     int // the next of the part
}

// Make begins to make the top and the sides of a stone at px pixels per
// centimetre.
func (s *Stone) Make(px float64, p Palette) *Making {
	m := &Making{stone: s, palette: p, top: newTop(px)}
	for _, side := range Sides {
		m.sides[side] = newFace(side, px)
	}
	return m
}

// Go makes rows until it has made at least so many pixels or none are left,
// and says whether all have been made.
func (m *Making) Go(pixels int) (done bool) {
	for pixels > 0 && m.part <= len(Sides) {
		if m.part == 0 {
			m.top.row(m.stone, m.row, &m.palette)
			pixels -= m.top.W
			m.next(m.top.H)
			continue
		}
		f := m.sides[Sides[m.part-1]]
		f.row(m.stone, m.row, &m.palette)
		pixels -= f.w
		m.next(f.h)
	}
	return m.part > len(Sides)
}

// next goes on to the next row, or to the next part after the last one.
func (m *Making) next(rows int) {
	if m.row++; m.row == rows {
		m.part, m.row = m.part+1, 0
	}
}

// Top is the bedding surface.
func (m *Making) Top() *Top { return m.top }

// PaintSide paints a side as Stone.PaintSide does.
func (m *Making) PaintSide(side Side, img *image.RGBA, y0 int) {
	m.sides[side].paint(m.palette.Flat, img, y0)
}
