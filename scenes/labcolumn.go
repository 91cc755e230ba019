package scenes

import (
	"strings"

	"cuesta/quiz/lab"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// verdictBeside says that what came of a reading can be set larger in the
// column, under the field, than in the sheet.
func (m *labMaker) verdictBeside(words []passage) bool {
	last := words[len(words)-1]
	if last.text == "" || m.l.pad || !m.stripped() {
		return false
	}
	shrink, _ := m.fit(words, m.top(), m.zones[sheetZone].rect.H-8*m.lay.Unit)
	return m.besideSize(last) > max(last.least, last.size*shrink)
}

// besideSize is the largest type in which a paragraph fits under the field; 0
// where none does.
func (m *labMaker) besideSize(p passage) float64 {
	room := m.lay.Buttons - 8*m.lay.Unit - m.underField()
	for size := p.size; size >= p.least; size *= .92 {
		if m.heightOf(p.text, size) <= room {
			return size
		}
	}
	return 0
}

// underField is where the room under the field begins.
func (m *labMaker) underField() float64 {
	u, t, in := m.lay.Unit, m.lay.Text, m.lay.Inner
	y := in.Y
	if m.headed() {
		y += 1.35*stepSize*t*float64(len(draw.Wrap(draw.Bold, stepSize*t, in.W, draw.Printed(m.heading())))) + 4*u
	}
	return y + 1.35*noteSize*t*float64(len(draw.Wrap(draw.Regular, noteSize*t, in.W, m.shortLabel()))) + 6*u + m.lay.fieldHeight() + 8*u
}

// headed says that the column has a heading of its own.
func (m *labMaker) headed() bool {
	return !m.scant() && !(m.lay.Phone && m.s.key.step == askWho)
}

// heading is the name of the lab, or who writes.
func (m *labMaker) heading() string {
	if m.s.key.step == askWho {
		return m.l.room.Lab().Title
	}
	return lab.Who(m.l.student())
}

// label is what is written in the field.
func (m *labMaker) label() string {
	switch {
	case m.s.key.step == askWhere:
		return "Station"
	case m.s.key.step == askReading:
		return "Reading, as " + m.l.room.Item(0).Ask().Label
	case len(m.l.room.Roster()) > 0:
		return "Your id or name"
	}
	return "Your id"
}

// shortLabel is the label as it is drawn; without a heading it says who writes.
func (m *labMaker) shortLabel() string {
	switch {
	case m.scant() && m.s.key.step == askReading:
		return "Reading of " + m.l.student().ID
	case m.scant() && m.s.key.step == askWhere:
		return "Station, " + m.l.student().ID
	}
	return m.label()
}

// column is the right part: who writes, where it is written, what keeps it.
func (m *labMaker) column() {
	u, t, in := m.lay.Unit, m.lay.Text, m.lay.Inner
	z := &m.zones[columnZone]
	z.rect, z.ground = m.lay.Column, panelGround
	y := in.Y
	if m.headed() {
		y = m.under(widget{id: idSteps, role: describe.Label, bold: true, size: stepSize * t}, y, m.heading())
	}
	y = m.field(m.label(), y+2*u)
	m.below(y)
	name := "Keep reading"
	if m.s.key.step != askReading {
		name = "Go on"
	}
	m.add(columnZone, widget{id: idPrimary, role: describe.Button, name: name, text: name, keys: "Enter", look: filled, size: noteSize * t, bold: true,
		align: draw.AlignCentre, focus: true, rect: draw.Rect{X: in.X, Y: m.lay.Buttons, W: in.W, H: 44 * m.lay.control()}})
}

// leadBelow puts what leads on into the column, where the strip is empty.
func (m *labMaker) leadBelow(y float64) float64 {
	if m.stripped() {
		return y
	}
	var ws []widget
	for _, it := range m.items() {
		for _, w := range it.parts {
			w.rect.W = it.width
			ws = append(ws, w)
		}
	}
	rows := m.inRows(ws, m.lay.Inner.W)
	if m.tiny() {
		rows = m.inRows(m.closeKeys(rows, 1.1*stepSize*m.lay.Unit), m.lay.Inner.W)
	}
	m.place(rows, columnZone, m.lay.Inner.X, y)
	return y + m.rowsHeight(rows)
}

// below is what stands under the field: the keypad, what came of a reading, or
// the cautions.
func (m *labMaker) below(y float64) {
	if keys, at := m.keys(); keys != nil {
		if at == columnZone {
			m.place(keys, columnZone, m.lay.Inner.X, y)
		}
		return
	}
	switch m.s.key.step {
	case askWho:
		y = m.leadBelow(y)
		for _, p := range m.cautions() {
			if size := noteSize * m.lay.Text; len(m.l.room.Roster()) > 0 && y+8*m.lay.Unit+m.heightOf(p.text, size) <= m.lay.Buttons-8*m.lay.Unit {
				m.under(widget{id: p.id, role: p.role, soft: true, size: size}, y+8*m.lay.Unit, p.text)
			}
		}
	case askReading:
		y = m.leadBelow(y)
		if words := m.words(); m.verdictBeside(words) {
			last := words[len(words)-1]
			m.under(widget{id: last.id, role: last.role, size: m.besideSize(last)}, y, last.text)
		}
	case askWhere:
		m.leadBelow(y)
	}
}

// under adds a paragraph to the column and returns where the next begins.
func (m *labMaker) under(w widget, y float64, s string) float64 {
	w.look, w.name, w.leading = plain, s, 1.35*w.size
	lines := m.wrapped(w.font(), w.size, m.lay.Inner.W, draw.Printed(s))
	w.text, w.name = joinLines(lines), strings.ReplaceAll(s, "\n", " ")
	w.rect = draw.Rect{X: m.lay.Inner.X, Y: y, W: m.lay.Inner.W, H: w.leading * float64(len(lines))}
	m.add(columnZone, w)
	return y + w.rect.H + 4*m.lay.Unit
}

// field is where the id or the reading is written, with the keypad beside it.
func (m *labMaker) field(label string, y float64) float64 {
	u, t, in := m.lay.Unit, m.lay.Text, m.lay.Inner
	y = m.under(widget{id: idLeft, role: describe.Label, size: noteSize * t}, y, m.shortLabel())
	side, caret := max(44*u, 36*t), -1
	if m.l.caretOn() {
		caret = m.l.note.caret
	}
	w := widget{id: idNotebook, role: describe.Field, name: label, value: m.l.note.String(), text: m.l.note.String(),
		look: box, size: fieldSize * t, caret: caret, focus: true, rect: draw.Rect{X: in.X, Y: y, W: in.W - 8*u - side, H: m.lay.fieldHeight()}}
	if need, room := draw.Measure(draw.Regular, w.size, w.text, fieldTrack), w.rect.W-32*u; need > room {
		w.size *= room / need
	}
	m.add(columnZone, w)
	pad := m.styled(widget{id: idKeypad, role: describe.Toggle, name: "Write with buttons, 123", text: "123", on: m.l.pad}, chip)
	pad.size = noteSize * t
	pad.rect = draw.Rect{X: in.X + in.W - side, Y: y, W: side, H: m.lay.fieldHeight()}
	m.add(columnZone, pad)
	return y + m.lay.fieldHeight() + 8*u
}

// heightOf is the height of a paragraph in the column.
func (m *labMaker) heightOf(text string, size float64) float64 {
	return 1.35 * size * float64(len(m.wrapped(draw.Regular, size, m.lay.Inner.W, text)))
}

// keys are the rows of the keypad while it is open, and where they stand: in
// the column if they fit, close together if they must, else in the sheet.
func (m *labMaker) keys() ([]block, zoneName) {
	if !m.l.pad {
		return nil, zoneCount
	}
	room := m.lay.Buttons - 6*m.lay.Unit - m.underField()
	in := m.lay.Inner.W
	rows := m.keypad(in)
	if m.s.key.step != askReading {
		rows = m.inRows(m.idKeys(), in)
	}
	if m.rowsHeight(rows) <= room {
		return rows, columnZone
	}
	for size := stepSize * m.lay.Text; ; size *= .85 {
		least := size <= stepSize*m.lay.Unit
		keys := m.closeKeys(rows, size)
		if close := m.inRows(keys, in); m.rowsHeight(close) <= room {
			return close, columnZone
		}
		sheet := m.inRows(keys, m.lay.Scene.W-2*m.lay.pad())
		if m.top()+40*m.lay.Unit+m.rowsHeight(sheet) <= m.lay.Scene.Y+m.lay.Scene.H || least {
			return sheet, sheetZone
		}
	}
}

func (m *labMaker) rowsHeight(rows []block) float64 {
	h := 0.0
	for _, b := range rows {
		h += b.h + 6*m.lay.Unit
	}
	return h
}

// idKeys are the keys of ids.
func (m *labMaker) idKeys() []widget {
	u := m.lay.Unit
	var keys []widget
	for n, s := range idSigns {
		w := m.styled(widget{id: idPadKey + describe.ID(n), name: padName(s), text: s}, outlined)
		w.rect.W, w.rect.H = max(44*u, m.width(w)+14*u), max(44*u, 1.4*w.size)
		keys = append(keys, w)
	}
	return keys
}

// closeKeys are the keys of rows with signs of a size, each as small as it may
// be: those of ids are many.
func (m *labMaker) closeKeys(rows []block, size float64) []widget {
	u := m.lay.Unit
	side := 44 * u
	switch {
	case m.s.key.step != askReading && m.l.pad:
		side = 30 * u
	case m.tiny():
		side = 40 * u
	}
	var keys []widget
	for _, b := range rows {
		for _, w := range b.parts {
			w.size = size
			w.rect = draw.Rect{W: max(side, m.width(w)+14*u), H: max(side, 1.4*w.size)}
			keys = append(keys, w)
		}
	}
	return keys
}

// place puts rows one below the other.
func (m *labMaker) place(rows []block, z zoneName, x, y float64) {
	for _, b := range rows {
		for _, w := range b.parts {
			w.rect.X += x
			w.rect.Y += y
			m.add(z, w)
		}
		y += b.h + 6*m.lay.Unit
	}
}
