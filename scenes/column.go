package scenes

import (
	"math"
	"slices"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
)

// column is the panel of the insets, the notebook and the two buttons.
func (m *maker) column() {
	m.bands()
	m.captions()
	y := m.lay.Notes
	if m.lay.Round.R != 0 {
		y = m.notebook()
	}
	m.report(y)
	m.buttons()
}

// bands are the parts of the column that may be drawn on their own: the
// insets move, the notebook stands still.
func (m *maker) bands() {
	c := m.lay.Column
	bottom := math.Floor(m.lay.Notes) - 1
	s := m.s
	s.bands = s.bands[:0]
	if m.lay.Round.R == 0 {
		bottom = c.Y
	}
	up, down := &s.zones[magnifierZone], &s.zones[columnZone]
	up.ground, down.ground = panelGround, panelGround
	up.rect = draw.Rect{X: c.X, Y: c.Y, W: c.W, H: bottom - c.Y}
	down.rect = draw.Rect{X: c.X, Y: bottom, W: c.W, H: c.Y + c.H - bottom}
	if m.lay.Round.R == 0 {
		s.bands = append(s.bands, c)
		return
	}
	if m.lay.TwoCaps {
		s.bands = append(s.bands, up.rect, down.rect)
		return
	}
	lower, upper := m.lay.Round.Y+m.lay.Round.R, m.lay.Dial.Y-m.lay.Dial.R
	mid := math.Floor(lower + .75*(upper-lower)) // the shadow falls downwards
	s.bands = append(s.bands,
		draw.Rect{X: c.X, Y: c.Y, W: c.W, H: mid - c.Y},
		draw.Rect{X: c.X, Y: mid, W: c.W, H: bottom - mid},
		down.rect)
}

// captions stand beside or under the insets.
func (m *maker) captions() {
	if m.lay.Round.R == 0 {
		return
	}
	if m.lay.Lone {
		return
	}
	if m.b.phase == measuring {
		m.lenses()
		defer func() { m.about(m.readOut()) }()
	}
	a, d := m.insetNames()
	hinged := m.lay.Hinge.R != 0
	switch {
	case m.lay.TwoCaps && hinged:
		m.under(idRound, a, m.lay.Round, m.lay.Inner.W/3)
		m.under(idHinge, m.hingeName(), m.lay.Hinge, m.lay.Inner.W/3)
		m.under(idDial, d, m.lay.Dial, m.lay.Inner.W/3)
		return
	case m.lay.TwoCaps:
		m.under(idRound, a, m.lay.Round, m.lay.Inner.W/2)
		m.under(idDial, d, m.lay.Dial, m.lay.Inner.W/2)
		return
	case hinged:
		m.under(idRound, a, m.lay.Round, m.lay.Inner.W/2)
		m.under(idHinge, m.hingeName(), m.lay.Hinge, m.lay.Inner.W/2)
	default:
		m.beside(a)
	}
	u, t, c := m.lay.Unit, m.lay.Text, m.lay.Dial
	size := noteSize * t
	y := c.Y + c.R + 8*u
	name := widget{text: d[0], look: plain, size: size, bold: true, leading: 22 * t}
	note := widget{text: d[1], look: plain, size: size, soft: true, leading: 22 * t}
	nw, tw := m.width(name), m.width(note)
	x := c.X - (nw+8*u+tw)/2
	name.rect = draw.Rect{X: x, Y: y, W: nw, H: 22 * t}
	note.rect = draw.Rect{X: x + nw + 8*u, Y: y, W: tw, H: 22 * t}
	m.add(magnifierZone, name)
	m.add(magnifierZone, note)
	m.add(magnifierZone, insetNode(idDial, d, c))
}

// readOut is the way to have scale and level in words: what stands about the
// magnifiers can be pressed.
func (m *maker) readOut() widget {
	return widget{id: idReadOut, role: describe.Button, name: "Say what scale and level show", text: "Say", keys: m.b.set.keysFor(keymap.ReadOut)}
}

// about lays a control round the magnifiers and their captions.
func (m *maker) about(w widget) {
	z := &m.zones[magnifierZone]
	r := m.lay.Inner
	right, low := r.X+r.W, r.Y
	for _, in := range z.widgets {
		r.X, right, low = min(r.X, in.rect.X), max(right, in.rect.X+in.rect.W), max(low, in.rect.Y+in.rect.H)
	}
	r.W, r.H = right-r.X, low-r.Y
	w.look, w.text, w.focus, w.rect = lens, "", true, r
	z.widgets = slices.Insert(z.widgets, 0, w)
}

func insetNode(id describe.ID, words [2]string, c circle) widget {
	return widget{id: id, role: describe.Image, name: words[0], value: words[1], look: hidden, rect: c.box()}
}

func (m *maker) beside(a [2]string) {
	u, t, c, in := m.lay.Unit, m.lay.Text, m.lay.Round, m.lay.Inner
	x := c.X + c.R + 16*u
	if m.lay.W < 1024*u {
		x = c.X + c.R + 12*u
	}
	w := in.X + in.W - x
	lines := draw.Wrap(draw.Regular, noteSize*t, w, a[1])
	h := 22*t + 20*t*float64(len(lines))
	y := c.Y - h/2
	m.add(magnifierZone, widget{text: a[0], look: plain, size: buttonSize * t, bold: true, leading: 22 * t,
		rect: draw.Rect{X: x, Y: y, W: w, H: 22 * t}})
	m.add(magnifierZone, widget{text: joinLines(lines), look: plain, size: noteSize * t, soft: true, leading: 20 * t,
		rect: draw.Rect{X: x, Y: y + 22*t + 2*u, W: w, H: 20 * t * float64(len(lines))}})
	m.add(magnifierZone, insetNode(idRound, a, c))
}

// under is a caption below an inset: its name and its state.
func (m *maker) under(id describe.ID, words [2]string, c circle, w float64) {
	t := m.lay.Text
	size := noteSize * t
	y := c.Y + c.R + 6*m.lay.Unit
	r := draw.Rect{X: c.X - w/2, Y: y, W: w, H: 21 * t}
	if m.lay.Caps == 0 {
		m.add(magnifierZone, insetNode(id, words, c))
		return
	}
	m.add(magnifierZone, widget{text: words[0], look: plain, size: size, bold: true, leading: 21 * t, align: draw.AlignCentre, rect: r})
	m.add(magnifierZone, insetNode(id, words, c))
	if m.lay.Caps < 2 {
		return
	}
	lines := draw.Wrap(draw.Regular, size, w-12*m.lay.Unit, words[1])
	lines = lines[:min(len(lines), m.lay.Caps-1)]
	r.Y += 21 * t
	r.H *= float64(len(lines))
	m.add(magnifierZone, widget{text: joinLines(lines), look: plain, size: size, soft: true, leading: 21 * t, align: draw.AlignCentre, rect: r})
}

// notebook is the label and the field; it returns where the echo begins.
func (m *maker) notebook() float64 {
	u, t, in, y := m.lay.Unit, m.lay.Text, m.lay.Inner, m.fieldTop()
	if !m.lay.Bare {
		m.notebookName()
	}
	h := m.lay.fieldHeight()
	caret := -1
	if m.b.caretOn() {
		caret = m.b.caret
	}
	m.add(columnZone, widget{id: idNotebook, role: describe.Field, name: "Notebook, " + m.form(), value: m.b.text,
		text: m.b.text, look: box, size: fieldSize * t, caret: caret, focus: m.b.phase == measuring, keys: m.b.set.keysFor(keymap.Notebook),
		rect: draw.Rect{X: in.X, Y: y, W: in.W - m.keypadWidth(), H: h}})
	if m.b.phase == measuring {
		pad := m.styled(widget{id: idKeypad, role: describe.Button, name: "Write with buttons, 123", text: "123"}, outlined)
		pad.size, pad.rect = noteSize*t, draw.Rect{X: in.X + in.W - m.keypadWidth() + 8*u, Y: y, W: m.keypadWidth() - 8*u, H: h}
		m.add(columnZone, pad)
	}
	return y + h + 8*u
}

// notebookName is the row over the field: its name, and how a note goes.
func (m *maker) notebookName() {
	t, in := m.lay.Text, m.lay.Inner
	name := widget{text: "Notebook", look: plain, size: noteSize * t, bold: true, leading: 22 * t,
		rect: draw.Rect{X: in.X, Y: m.lay.Notes, W: in.W, H: 22 * t}}
	form := name
	form.text, form.bold, form.soft, form.align = m.form(), false, true, draw.AlignRight
	if m.width(name)+m.width(form)+12*t > in.W {
		form.align = draw.AlignLeft
		m.add(columnZone, form)
		return
	}
	m.add(columnZone, name)
	m.add(columnZone, form)
}

// keypadWidth is the room of the button that opens the keypad.
func (m *maker) keypadWidth() float64 {
	if m.b.phase != measuring {
		return 0
	}
	return 8*m.lay.Unit + max(44*m.lay.Unit, 36*m.lay.Text)
}

// form is how the notation in use goes.
func (m *maker) form() string {
	switch m.b.set.Notation {
	case orient.Quadrant:
		return "quadrant strike, dip"
	case orient.DirectionDip:
		return "dip direction / dip"
	default:
		return "strike / dip"
	}
}

// report is what stands under the field: how the note is understood while it
// is written, the verdict after it.
func (m *maker) report(y float64) {
	switch m.b.phase {
	case judged:
		m.verdict(y)
	case shown, measuring:
		switch {
		case m.above:
		case m.echoFits():
			m.para(idEcho, y, m.echo(), false)
		default:
			m.add(columnZone, widget{id: idEcho, role: describe.Status, name: m.echo(), look: hidden, rect: m.lay.Inner})
		}
	}
}

// echo is how the note is understood, or what came out where there is no
// verdict.
func (m *maker) echo() string {
	if m.b.phase == shown {
		return "Not graded: the answer was shown. " + m.b.truth()
	}
	return m.b.echo
}

// echoFits says whether the echo finds room under the field.
func (m *maker) echoFits() bool {
	y := m.lay.Notes
	if m.lay.Round.R != 0 {
		y = m.fieldTop() + m.lay.fieldHeight() + 8*m.lay.Unit
	}
	return m.echo() == "" || m.fits(y, m.echo())
}

// fieldTop is where the field begins, under its name where there is room for
// that.
func (m *maker) fieldTop() float64 {
	if m.lay.Bare {
		return m.lay.Notes
	}
	return m.lay.Notes + 24*m.lay.Text + 2*m.lay.Unit
}

func (b *Bench) truth() string {
	return "The true plane is " + orient.Format(b.ses.Truth(), b.set.Notation) + "."
}

// para adds a paragraph and returns where the next begins.
func (m *maker) para(id describe.ID, y float64, s string, bold bool) float64 {
	if s == "" {
		return y
	}
	t, in := m.lay.Text, m.lay.Inner
	size := noteSize * t
	f := draw.Regular
	if bold {
		f = draw.Bold
	}
	lines := draw.Wrap(f, size, in.W, s)
	h := 21 * t * float64(len(lines))
	m.add(columnZone, widget{id: id, role: describe.Status, name: s, text: joinLines(lines), look: plain, size: size, bold: bold,
		leading: 21 * t, rect: draw.Rect{X: in.X, Y: y, W: in.W, H: h}})
	return y + h + 6*m.lay.Unit
}

// buttonWidgets are the filled button and the outlined one.
func (m *maker) buttonWidgets() [2]widget {
	first, second := "Next plane", "Show answer"
	if m.b.exam != nil {
		second = "Back to form"
	}
	switch {
	case m.b.phase == measuring && m.b.primaryRecords():
		first = "Record"
	case m.b.phase == measuring:
		first = "Go on to dip"
	case m.b.phase == judged && !m.b.verdict.Right:
		second = "Measure again"
	case m.b.reveal.Any():
		second = "Hide answer"
	}
	mk := func(id describe.ID, s string, l look) widget {
		size := buttonSize * m.lay.Text
		if m.lay.W < 1024*m.lay.Unit {
			size = noteSize * m.lay.Text
		}
		return widget{id: id, role: describe.Button, name: s, text: s, look: l, size: size,
			bold: true, align: draw.AlignCentre, focus: true}
	}
	a := mk(idPrimary, first, filled)
	a.keys = "Enter"
	return [2]widget{a, mk(idSecondary, second, outlined)}
}

// buttonRows is 1 where both buttons fit side by side, or where there is room
// for the first only.
func (m *maker) buttonRows() int {
	if m.abreast() || m.alone() {
		return 1
	}
	return 2
}

// alone says that there is room for the first button only; the other is among
// the controls.
func (m *maker) alone() bool {
	if m.b.phase != measuring && m.abreast() {
		return false
	}
	return (m.lay.Tight || m.lay.Low && !m.abreast()) && !m.piled
}

// holdsVerdict says that there is room for the verdict in a word, and for the way
// to all of it.
func (m *maker) holdsVerdict() bool {
	return m.lay.Inner.Y+1.3*20*m.lay.Text+m.controlHeight()+18*m.lay.Unit <= m.lay.Buttons
}

// abreast says that the buttons fit side by side, whatever they say while the
// task goes on.
func (m *maker) abreast() bool {
	words := []string{"Go on to dip", "Record", m.buttonWidgets()[1].text}
	if m.b.phase != measuring {
		words = []string{"Next plane", "Measure again", "Show answer"}
	}
	w := m.buttonWidgets()[0]
	for _, w.text = range words {
		if m.width(w)+12*m.lay.Unit > (m.lay.Inner.W-m.buttonGap())/2 {
			return false
		}
	}
	return true
}

func (m *maker) buttonGap() float64 {
	if m.lay.W < 1024*m.lay.Unit {
		return 8 * m.lay.Unit
	}
	return 12 * m.lay.Unit
}

func (m *maker) buttons() {
	u, in := m.lay.Unit, m.lay.Inner
	h := 44 * m.lay.control()
	gap := m.buttonGap()
	w := (in.W - gap) / 2
	rows := m.buttonRows()
	for i, b := range m.buttonWidgets() {
		if m.alone() {
			if i == 0 {
				b.rect = draw.Rect{X: in.X, Y: m.lay.Buttons, W: in.W, H: h}
				m.add(columnZone, b)
			}
			continue
		}
		b.rect = draw.Rect{X: in.X + float64(i)*(w+gap), Y: m.lay.Buttons, W: w, H: h}
		if rows == 2 {
			b.rect = draw.Rect{X: in.X, Y: m.lay.Buttons + float64(i)*(h+8*u), W: in.W, H: h}
		}
		m.add(columnZone, b)
	}
}
