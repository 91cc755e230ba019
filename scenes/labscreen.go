package scenes

import (
	"cuesta/quiz/lab"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
	"cuesta/scenes/theme"
)

// labScreen is a station screen as it stands.
type labScreen struct {
	key   labKey
	made  bool
	lay   layout
	tree  describe.Tree
	zones [zoneCount]zone
}

type labKey struct {
	w, h, scale       float64
	set               Settings
	step              labStep
	text, said        string
	caret, page, turn int
	caretOn, pad      bool
	guest             bool
	focus             describe.ID
}

func (s *labScreen) build(l *Lab) {
	f := l.frame
	k := labKey{
		w: f.W, h: f.H, scale: f.Scale, set: l.set, step: l.step(), text: l.note.String(), said: l.said, caret: l.note.caret,
		page: l.page, turn: l.turn, caretOn: l.caretOn(), pad: l.pad, guest: l.leave != nil, focus: l.focus,
	}
	if s.made && k == s.key {
		return
	}
	s.key, s.made = k, true
	m := labMaker{l: l, s: s, sketch: sketch{th: theme.Of(l.set.Theme), zones: &s.zones}}
	m.make()
}

func (l *Lab) caretOn() bool {
	return l.focus == idNotebook && (l.set.Calm || l.blink < caretTicks)
}

func (s *labScreen) picture(l *Lab, to *draw.List) {
	to.Reset(l.frame.W, l.frame.H)
	for _, z := range [...]zoneName{sheetZone, stripZone, barZone, columnZone} {
		zone := &s.zones[z]
		if zone.texture.W > 0 {
			to.Region(zone.rect)
			to.Sprite(&zone.texture, zone.rect.X, zone.rect.Y, 1, 1)
		}
	}
}

// labMaker lays a station screen out.
type labMaker struct {
	sketch
	l *Lab
	s *labScreen
}

func (m *labMaker) make() {
	k := m.s.key
	f := frameOf{W: k.w, H: k.h, Scale: k.scale, Text: k.set.Text.Factor(), BarLines: 1, StripRows: 1, ButtonRows: 1, Judged: true, Form: true}
	m.lay = layOut(f)
	m.clear()
	if m.lay.TooTiny {
		m.tooTiny()
	} else {
		for range 2 {
			f.StripRows = 0
			if m.stripped() {
				f.StripRows = max(1, len(m.wrap(m.items(), m.lay.Strip.W-2*m.lay.pad())))
			}
			f.BarLines = len(m.barLines())
			m.lay = layOut(f)
		}
		m.sheet()
		m.strip()
		m.bar()
		m.column()
	}
	m.s.lay = m.lay
	m.describe()
	m.bakeAll(m.l.focus)
}

func (m *labMaker) tooTiny() {
	u := m.lay.Unit
	s := "This window is too small. Make it larger; every reading is kept."
	z := &m.zones[sheetZone]
	z.rect, z.ground = draw.Rect{W: m.s.key.w, H: m.s.key.h}, panelGround
	m.add(sheetZone, widget{id: idHint, role: describe.Status, name: s, look: plain, size: 15 * u, leading: 20 * u,
		text: joinLines(draw.Wrap(draw.Regular, 15*u, max(m.s.key.w-24*u, 40), s)), rect: draw.Rect{X: 12 * u, Y: 12 * u, W: m.s.key.w - 24*u, H: m.s.key.h - 24*u}})
}

// items are the controls that lead on.
func (m *labMaker) items() []stripItem {
	var out []stripItem
	if m.s.key.step != askWho {
		next := "Next student"
		if m.scant() {
			next = "Next"
		}
		out = append(out, m.button(widget{id: idForward, name: "Next student: you have finished here", text: next, keys: m.l.set.keysFor(keymap.NextItem)}))
		if !m.l.fixed && m.s.key.step == askReading {
			out = append(out, m.button(widget{id: idOverview, name: "Stations: go to another", text: "Stations"}))
		}
		out = append(out, m.button(widget{id: idUndo, name: "Undo: take your last reading back", text: "Undo", keys: "Ctrl Z"}))
	}
	if m.s.key.guest {
		out = append(out, m.button(widget{id: idHall, name: "Menu: lectures, forms and more", text: "Menu", keys: m.l.set.keysFor(keymap.Menu)}))
	}
	return out
}

func (m *labMaker) strip() {
	z := &m.zones[stripZone]
	z.rect, z.ground = m.lay.Strip, tableGround
	if !m.stripped() {
		return
	}
	m.putRows(m.wrap(m.items(), m.lay.Strip.W-2*m.lay.pad()))
}

// scant says that there is little room, in a small window or in large type.
func (m *labMaker) scant() bool {
	return m.lay.Tight || m.lay.Text > 1.3*m.lay.Unit || m.lay.H < 420*m.lay.Unit
}

// stripped says that what leads on stands in the strip. Where there is little
// room it stands in the column, which is empty before a reading is written; and
// while keys are open they alone are there.
func (m *labMaker) stripped() bool {
	return !m.scant() || !m.l.pad && (m.lay.Phone || m.s.key.step != askWho && !m.tiny())
}

// tiny says that there is hardly any room: a small window in large type.
func (m *labMaker) tiny() bool {
	return m.lay.H < 420*m.lay.Unit && m.lay.Text > 1.3*m.lay.Unit
}

// line says what to do next; before a student comes, what to take care of.
func (m *labMaker) line() string {
	switch m.s.key.step {
	case askWhere:
		return "Choose the station you stand at, or write its name."
	case askReading:
		if m.scant() {
			return "Write what you read; Enter keeps it."
		}
		return "Write what you read; Enter keeps it. Seat the instrument anew before you read again."
	}
	switch {
	case !m.l.room.Lab().Cautions:
		return "Write your id, and press Enter."
	case m.scant():
		return "Two people lift a slab; closed shoes."
	}
	return lab.Care
}

func (m *labMaker) barLines() []string {
	return draw.Wrap(draw.Regular, barSize*m.lay.Text, m.lay.Bar.W-2*m.lay.pad(), m.line())
}

func (m *labMaker) bar() {
	r, size := m.lay.Bar, barSize*m.lay.Text
	z := &m.zones[barZone]
	z.rect, z.ground = r, barGround
	lines := m.barLines()
	h := 1.3 * size * float64(len(lines))
	m.add(barZone, widget{id: idHint, role: describe.Status, name: m.line(), text: joinLines(lines), look: plain, size: size, leading: 1.3 * size,
		rect: draw.Rect{X: m.lay.pad(), Y: r.Y + (r.H-h)/2, W: r.W - 2*m.lay.pad(), H: h}})
}

func (m *labMaker) describe() {
	var kids []describe.Node
	for _, z := range [...]zoneName{sheetZone, columnZone, stripZone, barZone} {
		for _, w := range m.zones[z].widgets {
			if w.id != 0 || w.focus {
				kids = append(kids, w.node())
			}
		}
	}
	t := &m.s.tree
	t.Root = describe.Node{Role: describe.Group, Name: "Lab", Bounds: describe.Rect{W: m.s.key.w, H: m.s.key.h}, Children: kids}
	if n := t.Find(m.l.focus); n == nil || !n.Focusable || n.Disabled {
		if o := t.Order(); len(o) > 0 {
			m.l.focus = o[0].ID
		}
		m.s.key.focus = m.l.focus
	}
	t.Focus = m.l.focus
}
