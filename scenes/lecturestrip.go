package scenes

import (
	"cmp"
	"fmt"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
)

// items are the controls of the presenter, or in live play those that move the
// instrument.
func (m *lectureMaker) items() []stripItem {
	if m.t.play.IsLive() && m.t.hand != nil {
		return m.liveItems()
	}
	t, set := m.t, m.t.set
	next := "Next step"
	switch {
	case t.play.Busy():
		next = "Next: to the end of this step"
	case t.play.Open():
		next = "Next: reveal the answer"
	case t.play.At()+1 == t.play.Len():
		next = "Next step: this is the last one"
	}
	ws := []widget{
		{id: idNext, name: next, text: "Next", keys: set.keysFor(keymap.NextStep) + ", Space or →"},
		{id: idBack, name: "Step back", text: "Back", keys: set.keysFor(keymap.LastStep) + " or ←", disabled: t.play.At() == 0},
		{id: idRestart, name: "Begin again, answers hidden", text: "Again", keys: "Home"},
		{id: idAnswer, name: "Reveal the answer", text: "Reveal", keys: set.keysFor(keymap.Reveal), disabled: !t.play.Open()},
		{id: idLive, name: "Play with the instrument", text: "Play", keys: t.liveKeys()},
		{id: idMagnify, role: describe.Toggle, name: "Magnify a place", text: "Magnify", on: t.magnify, keys: set.keysFor(keymap.Magnify)},
		{id: idPointer, role: describe.Toggle, name: "Pointer", text: "Pointer", on: t.pointer, keys: set.keysFor(keymap.Pointer)},
	}
	if t.magnify || t.pointer {
		ws = append(ws, widget{id: idAnotherPlace, name: "Another place", text: "Place", keys: ""})
	}
	ws = append(ws,
		widget{id: idBlank, role: describe.Toggle, name: "Blank screen", text: "Blank", keys: set.keysFor(keymap.Blank)},
		widget{id: idSettings, name: "Settings", text: "Settings", keys: set.keysFor(keymap.Settings)},
		widget{id: idLectureKeys, name: "Keys of a lecture", text: "Keys", keys: set.keysFor(keymap.Help) + " or ?"})
	if t.leave != nil {
		ws = append(ws, widget{id: idHall, name: "Menu: lectures, forms and more", text: "Menu", keys: set.keysFor(keymap.Menu)})
	}
	groups := map[describe.ID]string{idMagnify: "Picture", idPointer: "Picture", idAnotherPlace: "Picture", idBlank: "Picture",
		idSettings: "Settings and menu", idLectureKeys: "Settings and menu", idHall: "Settings and menu"}
	var out []stripItem
	for _, w := range ws {
		w.group = cmp.Or(groups[w.id], "Lesson")
		out = append(out, m.control(w))
	}
	return out
}

// control is a button, or a switch that can be on.
func (m *lectureMaker) control(w widget) stripItem {
	if w.role == describe.Toggle {
		return m.choice([]widget{w})
	}
	it := m.button(w)
	it.parts[0].disabled = w.disabled
	return it
}

// liveItems are the controls of the bench that move the instrument, and the way
// back.
func (m *lectureMaker) liveItems() []stripItem {
	bench := maker{sketch: m.sketch, b: m.t.hand}
	out := []stripItem{m.button(widget{id: idReturn, name: "Back to the lesson as it stood", text: "Return", keys: "Escape"})}
	out = append(append(out, bench.knobs()...), bench.switches()...)
	return append(out, m.control(widget{id: idMagnify, role: describe.Toggle, name: "Magnify a place", text: "Magnify", on: m.t.magnify, keys: m.t.set.keysFor(keymap.Magnify)}))
}

// hint is what the bench says of the instrument in live play; the room has the
// line of the step instead.
func (m *lectureMaker) hint() {
	if m.t.hand == nil || !m.t.hand.ofInstrument() {
		return
	}
	say, keys := m.t.hand.line(m.t.hand.nextHint())
	m.add(stripZone, widget{id: idHint, role: describe.Status, name: say, keys: keys, look: hidden, rect: m.lay.Scene})
}

// evened wraps controls into as few rows as hold them, of much the same width.
func (m *lectureMaker) evened(items []stripItem, w float64) [][]stripItem {
	best := m.wrap(items, w)
	for n := len(best); w > 0; {
		w -= m.controlHeight() / 4
		rows := m.wrap(items, w)
		if len(rows) > n || m.rowWide(rows[0]) > w {
			break
		}
		best = rows
	}
	return best
}

// rowsTall is the height of the rows of controls.
func (m *lectureMaker) rowsTall() float64 {
	return float64(len(m.rows))*(m.controlHeight()+8*m.lay.Unit) + 12*m.lay.Unit
}

// strip places the controls over the lower part of the picture; an upright page
// has a place of its own for them.
func (m *lectureMaker) strip() {
	r, u := m.lay.Scene, m.lay.Unit
	h := m.rowsTall()
	at := draw.Rect{X: r.X + m.s.lay.Margin, Y: r.Y + r.H - h - 10*u, W: r.W - 2*m.s.lay.Margin, H: h}
	if top := m.s.zones[barZone].rect.Y; at.Y+h > top-10*u {
		at.Y = top - 10*u - h
	}
	z := &m.s.zones[stripZone]
	z.ground = plateGround
	if m.s.lay.Seated {
		at, z.ground = m.lay.Strip, tableGround
	}
	wide := 0.0
	for _, row := range m.rows {
		wide = max(wide, m.rowWide(row))
	}
	at.X += max(0, (at.W-wide-20*u)/2)
	at.W = min(at.W, wide+20*u)
	if m.s.lay.Seated {
		at.X, at.W = m.lay.Strip.X, m.lay.Strip.W
	}
	z.rect = snap(at)
	m.lay.Strip = at
	y := at.Y + 10*u
	for _, row := range m.rows {
		x := at.X + (at.W-m.rowWide(row))/2
		for _, it := range row {
			for _, w := range it.parts {
				w.rect.X += x
				w.rect.Y = y
				m.add(stripZone, w)
			}
			x += it.width + m.itemGap()
		}
		y += m.controlHeight() + 8*u
	}
}

func (m *lectureMaker) rowWide(row []stripItem) float64 {
	w := -m.itemGap()
	for _, it := range row {
		w += it.width + m.itemGap()
	}
	return w
}

// panel is the settings or the keys, in place of the picture.
func (m *lectureMaker) panel() {
	name, about, blocks := "Settings", "", m.settingRows()
	if m.t.panel == helpPanel {
		name, blocks = "Keys of a lecture", m.keyRows()
		m.t.lines = len(blocks)
		about = linesOf(len(blocks))
	}
	z := &m.s.zones[sheetZone]
	z.ground, z.rect = sheetGround, m.lay.Sheet
	r, u, mar := m.lay.Sheet, m.lay.Unit, m.s.lay.Margin
	top := r.Y + mar + m.controlHeight() + 12*u
	pages := m.paginate(blocks, r.Y+r.H-8*u-top)
	m.t.page = pageOf(pages, m.t.page, m.t.focus)
	m.s.key.page = m.t.page
	m.panelHead(name, about, len(pages))
	for _, b := range pages[m.t.page%len(pages)] {
		for _, w := range b.parts {
			w.rect.X += r.X + mar
			w.rect.Y += top
			m.add(sheetZone, w)
		}
		top += b.h + m.gapAfter(b)
	}
}

func (m *lectureMaker) panelHead(name, about string, pages int) {
	r, mar, size := m.lay.Sheet, m.s.lay.Margin, m.typeSize(lectureTitle)
	if pages > 1 {
		name = fmt.Sprintf("%s %d/%d", name, m.t.page%pages+1, pages)
	}
	h := m.controlHeight()
	w := widget{id: idPanelTitle, role: describe.Heading, name: name, value: about, text: name, look: plain, size: size, bold: true, leading: h}
	w.rect = draw.Rect{X: r.X + mar, Y: r.Y + mar, W: m.width(w), H: h}
	m.add(sheetZone, w)
	x := r.X + r.W - mar
	put := func(w widget) {
		b := m.button(w).parts[0]
		x -= b.rect.W
		b.rect.X, b.rect.Y = x, r.Y+mar
		x -= 10 * m.lay.Unit
		m.add(sheetZone, b)
	}
	put(widget{id: idClosePanel, name: "Back to " + m.t.over.back("the lecture"), text: "Close", keys: "Escape"})
	if about != "" {
		m.add(sheetZone, widget{id: idHint, role: describe.Status, name: "The arrow keys go from line to line.", look: hidden, rect: w.rect})
	}
	if pages > 1 {
		next, words := nextPage(m.t.page%pages, pages)
		put(widget{id: idPanelMore, name: next, text: words})
	}
}

// settingRows are the settings that matter on a projector.
func (m *lectureMaker) settingRows() []block {
	var out []block
	for _, o := range m.t.set.options() {
		switch o.first {
		case idSetText, idSetTheme, idSetMotion, idSetSound, idSetSpeech, idSetScan, idSetPace, idSetLetters:
			out = append(out, m.optionRow(o, m.lay.Sheet.W-2*m.s.lay.Margin))
		}
	}
	return out
}

// keyRows say which key does what, also those a clicker sends.
func (m *lectureMaker) keyRows() []block {
	set := m.t.set
	rows := [][2]string{
		{"Space, →, " + set.keysFor(keymap.NextStep), "on: ends what moves, reveals an answer, next step"},
		{"←, " + set.keysFor(keymap.LastStep), "back to the step before, as it ended"},
		{set.keysFor(keymap.Reveal), "reveals the answer"},
		{set.keysFor(keymap.Blank) + " or .", "blanks the screen; any key brings it back"},
		{set.keysFor(keymap.Magnify), "magnifies a place: mouse or arrows move it"},
		{set.keysFor(keymap.Pointer), "shows a pointer: mouse or arrows move it"},
		{m.t.liveKeys(), "lets you play with the instrument"},
		{"arrows, [ ], T, F, S, Space", "in play: swing, roll, lean, turn, flip, step, tap"},
		{"Escape", "takes back the last of these; ends play"},
		{"Home", "begins again for the next class: answers are hidden, the student measures anew"},
		{"Tab", "shows the controls and goes through them"},
		{set.keysFor(keymap.Help) + " or ?", "this list"},
		{set.keysFor(keymap.Settings), "settings"},
		{set.keysFor(keymap.Keys), "the keys, which can all be changed"},
		{set.keysFor(keymap.Menu), "menu: the other lectures and more"},
		{"F11", fillsWords},
	}
	size, wide := m.typeSize(lectureType), m.lay.Sheet.W-2*m.s.lay.Margin
	var out []block
	for i, r := range rows {
		var b block
		key := widget{text: r[0], look: plain, bold: true, size: size, leading: 1.25 * size}
		x := 15 * size
		if wide < 34*size {
			x = 0
		}
		lines := draw.Wrap(draw.Regular, size, wide-x, r[1])
		key.rect = draw.Rect{W: m.width(key), H: 1.25 * size}
		b.add(key)
		y := 0.0
		if x == 0 {
			y = 1.25 * size
		}
		b.add(widget{id: idHelpLine + describe.ID(i), role: describe.Line, group: "Lines", focus: true, name: r[0] + ": " + r[1], text: joinLines(lines), look: plain, size: size, leading: 1.25 * size,
			rect: draw.Rect{X: x, Y: y, W: wide - x, H: 1.25 * size * float64(len(lines))}})
		out = append(out, b)
	}
	return out
}
