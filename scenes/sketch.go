package scenes

import (
	"math"
	"slices"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// sketch is what every screen is laid out with: a palette, a layout and zones
// to fill with widgets.
type sketch struct {
	th    *theme.Theme
	lay   layout
	focus describe.ID
	zones *[zoneCount]zone

	flat    bool // keys follow each other, as many as a row holds
	upright bool // steppers have their names above, which takes less width
}

func (m *sketch) add(z zoneName, w widget) { m.zones[z].widgets = append(m.zones[z].widgets, w) }

func (m *sketch) width(w widget) float64 {
	most := 0.0
	for _, s := range splitLines(w.text) {
		most = max(most, draw.Measure(w.font(), w.size, s, 0))
	}
	return math.Ceil(most)
}

// clear empties the zones for the next layout.
func (m *sketch) clear() {
	for i := range m.zones {
		z := &m.zones[i]
		z.widgets, z.rect = z.widgets[:0], draw.Rect{}
	}
}

// bakeAll draws every zone in which something has changed; focus is the
// control that has the keyboard.
func (m *sketch) bakeAll(focus describe.ID) {
	m.focus = focus
	for i := range m.zones {
		m.bake(&m.zones[i])
	}
}

// bake draws a zone's widgets into its texture, when any of them has changed.
func (m *sketch) bake(z *zone) {
	now := baked{rect: z.rect, ground: z.ground, th: m.th, u: m.lay.Unit, focused: m.focusIn(z)}
	if was := z.baked; now.equal(was) && slices.Equal(z.widgets, was.widgets) {
		return
	}
	now.widgets = append(z.baked.widgets[:0], z.widgets...)
	z.baked = now
	z.texture.W, z.texture.H = int(z.rect.W), int(z.rect.H)
	z.texture.Version++
	z.texture.List = &z.list
	z.texture.Under = draw.Affine{A: 1, D: 1, E: -z.rect.X, F: -z.rect.Y}
	z.list.Reset(z.rect.W, z.rect.H)
	if z.texture.W == 0 || z.texture.H == 0 {
		return
	}
	m.lay0(z)
	k := inked{l: &z.list, th: m.th, u: m.lay.Unit, focused: now.focused}
	for _, w := range z.widgets {
		k.widget(w)
	}
}

// focusIn is the control of the zone that has the focus, if one has.
func (m *sketch) focusIn(z *zone) describe.ID {
	for _, w := range z.widgets {
		if w.id != 0 && w.id == m.focus {
			return w.id
		}
	}
	return 0
}

// lay0 draws the ground of a zone and the hairline that parts it off.
func (m *sketch) lay0(z *zone) {
	l, r, th := &z.list, z.rect, m.th
	hair := max(1, math.Round(m.lay.Unit))
	switch z.ground {
	case panelGround:
		l.Fill(draw.Box(r), th.Panel)
		if m.lay.Phone && r.Y == m.lay.Column.Y {
			l.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: hair}), th.Line)
		} else if !m.lay.Phone {
			l.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: hair, H: r.H}), th.Line)
		}
	case barGround:
		l.Fill(draw.Box(r), th.Bar)
	case tableGround:
		l.Fill(draw.Box(r), th.Bar)
		l.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: hair}), th.Line)
	case tableTop:
		l.Fill(draw.Box(r), th.BgTop)
	case plateGround:
		inner := grow(r, -2*m.lay.Unit)
		l.Fill(draw.RoundBox(inner, 4*m.lay.Unit), th.Panel)
		l.Stroke(draw.RoundBox(grow(inner, -hair/2), 4*m.lay.Unit), draw.Stroke{Width: hair, Color: th.Line})
	case sheetGround:
		l.Fill(draw.Box(r), th.Panel)
		l.Stroke(draw.Box(grow(r, -hair/2)), draw.Stroke{Width: hair, Color: th.Line})
	}
}

func (a baked) equal(b baked) bool {
	return a.rect == b.rect && a.ground == b.ground && a.th == b.th && a.u == b.u && a.focused == b.focused
}

func (m *sketch) styled(w widget, l look) widget {
	w.look, w.size, w.focus = l, stepSize*m.lay.Text, true
	w.align, w.bold = draw.AlignCentre, w.on
	if w.role == 0 {
		w.role = describe.Button
	}
	w.rect.H = m.controlHeight()
	return w
}

func (m *sketch) controlHeight() float64 { return max(44*m.lay.control(), 1.5*stepSize*m.lay.Text) }

func (m *sketch) button(w widget) stripItem {
	w = m.styled(w, outlined)
	w.rect.W = max(m.width(w)+m.buttonPad(), m.leastTarget())
	return stripItem{[]widget{w}, w.rect.W}
}

// buttonPad is the room beside the word of a button, both sides together.
func (m *sketch) buttonPad() float64 {
	if m.lay.Phone {
		return 16 * m.lay.Unit
	}
	return 24 * m.lay.Unit
}

// choice are chips side by side.
func (m *sketch) choice(ws []widget) stripItem {
	var it stripItem
	for _, w := range ws {
		if w.role == 0 {
			w.role = describe.Choice
		}
		w = m.styled(w, chip)
		wide := w
		wide.bold = true
		w.rect.X, w.rect.W = it.width, max(m.width(wide)+20*m.lay.Unit, m.leastTarget())
		it.width += w.rect.W + 4*m.lay.Unit
		it.parts = append(it.parts, w)
	}
	it.width -= 4 * m.lay.Unit
	return it
}

// stepper is a name between a less and a more.
func (m *sketch) stepper(name string, less, more widget) stripItem {
	less.group, more.group = name, name
	h := m.controlHeight()
	less.text, more.text = "−", "+"
	a, z := m.styled(less, key), m.styled(more, key)
	c := m.styled(widget{text: name}, caption)
	c.focus = false
	a.rect.W, z.rect.W = max(.92*h, m.leastTarget()), max(.92*h, m.leastTarget())
	if m.lay.Tight || m.upright {
		a.rect.W, z.rect.W = max(44*m.lay.Unit, .7*h), max(44*m.lay.Unit, .7*h)
	}
	if m.upright {
		return m.raised(a, c, z)
	}
	c.rect.W = m.width(c) + 16*m.lay.Unit
	c.rect.X = a.rect.W
	z.rect.X = c.rect.X + c.rect.W
	return stripItem{[]widget{a, c, z}, z.rect.X + z.rect.W}
}

// raised is a stepper whose name stands above its halves.
func (m *sketch) raised(less, name, more widget) stripItem {
	name.rect.H = math.Ceil(1.4 * name.size)
	wide := max(m.width(name)+4*m.lay.Unit, less.rect.W+more.rect.W)
	less.rect.W, more.rect.W = wide/2, wide/2
	name.rect.W, more.rect.X = wide, wide/2
	less.rect.Y, more.rect.Y = name.rect.H, name.rect.H
	return stripItem{[]widget{less, name, more}, wide}
}

// tall is the height of an item.
func (it stripItem) tall() float64 {
	h := 0.0
	for _, w := range it.parts {
		h = max(h, w.rect.Y+w.rect.H)
	}
	return h
}

// tallest is the height of a row.
func tallest(row []stripItem) float64 {
	h := 0.0
	for _, it := range row {
		h = max(h, it.tall())
	}
	return h
}

// stripTall is the height of a strip of rows.
func (m *sketch) stripTall(rows [][]stripItem) float64 {
	h := 10 * m.lay.Unit
	for _, row := range rows {
		h += tallest(row) + 8*m.lay.Unit
	}
	return h
}

// packed puts each item in the first row, no wider than w, that has room.
func (m *sketch) packed(items []stripItem, w float64) [][]stripItem {
	var rows [][]stripItem
	var used []float64
next:
	for _, it := range items {
		for i := range rows {
			if used[i]+m.itemGap()+it.width <= w {
				rows[i], used[i] = append(rows[i], it), used[i]+m.itemGap()+it.width
				continue next
			}
		}
		rows, used = append(rows, []stripItem{it}), append(used, it.width)
	}
	return rows
}

// wrap breaks the items into rows no wider than w.
func (m *sketch) wrap(items []stripItem, w float64) [][]stripItem {
	gap := m.itemGap()
	var rows [][]stripItem
	x := 0.0
	for _, it := range items {
		if len(rows) == 0 || x+it.width > w {
			rows = append(rows, nil)
			x = 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], it)
		x += it.width + gap
	}
	return rows
}

func (m *sketch) itemGap() float64 {
	if m.lay.W < 1024*m.lay.Unit {
		return 8 * m.lay.Unit
	}
	return 14 * m.lay.Unit
}

// putRows places rows of controls in the strip.
func (m *sketch) putRows(rows [][]stripItem) {
	y := m.lay.Strip.Y + 10*m.lay.Unit
	for _, row := range rows {
		x, h := m.lay.Strip.X+m.lay.pad(), tallest(row)
		for _, it := range row {
			for _, w := range it.parts {
				w.rect.X += x
				w.rect.Y += y + h - it.tall()
				m.add(stripZone, w)
			}
			x += it.width + m.itemGap()
		}
		y += h + 8*m.lay.Unit
	}
}
