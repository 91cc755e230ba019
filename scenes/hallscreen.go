package scenes

import (
	"slices"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/session"
	"cuesta/scenes/stage"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// The controls of the hall, beside those of the settings.
const (
	idGoOn describe.ID = 390
	idDoor describe.ID = 400 // as many as there are doors
)

// hallScreen is the hall as it stands on the screen.
type hallScreen struct {
	key   hallKey
	made  bool
	lay   layout
	tree  describe.Tree
	zones [zoneCount]zone
	show  draw.Rect // of the rock, or empty
}

type hallKey struct {
	w, h, scale float64
	set         Settings
	focus       describe.ID
	page        int
	said, title string
	inside      bool
	manner      manner
	listing     bool
	keys        keyList
}

func (s *hallScreen) build(h *Hall) {
	k := hallKey{h.frame.W, h.frame.H, h.frame.Scale, h.Settings(), h.focus, h.page, h.said, h.title, h.inside != nil, mannerOf(h.frame.Touch), h.listing, h.keys}
	if s.made && k == s.key {
		return
	}
	s.key, s.made = k, true
	m := hallMaker{h: h, s: s, sketch: sketch{th: theme.Of(k.set.Theme), zones: &s.zones}}
	m.make()
}

func (s *hallScreen) picture(h *Hall, l *draw.List) {
	l.Reset(h.frame.W, h.frame.H)
	for _, z := range [...]zoneName{sheetZone, barZone} {
		zone := &s.zones[z]
		if zone.texture.W > 0 {
			l.Region(zone.rect)
			l.Sprite(&zone.texture, zone.rect.X, zone.rect.Y, 1, 1)
		}
	}
	if s.show.W > 0 {
		h.vitrine.draw(l, s.show, s.lay.Unit, s.key.set, h.age)
	}
}

// hallMaker lays the hall out.
type hallMaker struct {
	sketch
	h     *Hall
	s     *hallScreen
	terse bool // the doors show their names only; their words stay in the description
}

func (m *hallMaker) make() {
	set := m.s.key.set
	f := frameOf{W: m.s.key.w, H: m.s.key.h, Scale: m.s.key.scale, Text: set.Text.Factor(), BarLines: 1, StripRows: 1, ButtonRows: 1}
	m.lay = layOut(f)
	m.clear()
	m.s.show = draw.Rect{}
	if m.lay.TooTiny {
		m.tooTiny()
	} else {
		f.BarLines = len(m.barLines())
		m.lay = layOut(f)
		m.contents()
		m.bar()
	}
	m.s.lay = m.lay
	m.describe()
	m.bakeAll(m.h.focus)
}

// contents are the doors, or the list of keys.
func (m *hallMaker) contents() {
	if m.h.listing {
		m.list()
		return
	}
	m.doors()
}

func (m *hallMaker) tooTiny() {
	u := m.lay.Unit
	s := "This window is too small. Make it larger; nothing is lost."
	z := &m.zones[sheetZone]
	z.rect, z.ground = draw.Rect{W: m.s.key.w, H: m.s.key.h}, panelGround
	m.add(sheetZone, widget{id: idHint, role: describe.Status, name: s, look: plain, size: 15 * u, leading: 20 * u,
		text: joinLines(draw.Wrap(draw.Regular, 15*u, max(m.s.key.w-24*u, 40), s)), rect: draw.Rect{X: 12 * u, Y: 12 * u, W: m.s.key.w - 24*u, H: m.s.key.h - 24*u}})
}

// line says what to do next, or what went wrong.
func (m *hallMaker) line() string {
	by := m.s.key.manner.by
	switch {
	case m.h.listing:
		return m.h.keys.line()
	case m.h.said != "":
		return m.h.said
	case m.lay.Phone || m.big():
		return by("Choose, and press Enter.", "Tap what you choose.")
	case m.h.inside != nil:
		return by("Choose with the arrow keys and Enter, or by pointer; Escape", "Tap what you choose; Go on") + " goes back to where you were."
	default:
		return by("Choose with the arrow keys and Enter, or by pointer", "Tap what you choose") + ". A simulated reading is never data for design."
	}
}

// big says that there is room for what is needed only.
func (m *hallMaker) big() bool { return m.lay.Text > 1.3*m.lay.Unit || m.lay.H < 600*m.lay.Unit }

func (m *hallMaker) barLines() []string {
	return draw.Wrap(draw.Regular, barSize*m.lay.Text, m.lay.W-2*m.lay.pad(), m.line())
}

func (m *hallMaker) bar() {
	r := draw.Rect{Y: m.lay.Bar.Y, W: m.lay.W, H: m.lay.Bar.H}
	z := &m.zones[barZone]
	z.rect, z.ground = r, barGround
	lines, size := m.barLines(), barSize*m.lay.Text
	lead := 22 * m.lay.Text
	h := lead * float64(len(lines))
	m.add(barZone, widget{id: idHint, role: describe.Status, name: m.line(), text: joinLines(lines), look: plain, size: size, leading: lead,
		rect: draw.Rect{X: m.lay.pad(), Y: r.Y + (r.H-h)/2, W: r.W - 2*m.lay.pad(), H: h}})
}

// hallDoor is a door as it is laid out.
type hallDoor struct {
	id    describe.ID
	group string
	title string
	words string
}

func (m *hallMaker) all() []hallDoor {
	var out []hallDoor
	if m.h.inside != nil {
		out = append(out, hallDoor{idGoOn, "Where you were", "Go on", m.h.title})
	}
	for i, d := range m.h.doors {
		out = append(out, hallDoor{idDoor + describe.ID(i), d.Group, d.Title, d.Words})
	}
	return out
}

// doors places name, groups and doors, and the choices of text and colours
// below them. What does not fit goes on the next page.
func (m *hallMaker) doors() {
	u, t := m.lay.Unit, m.lay.Text
	z := &m.zones[sheetZone]
	z.ground, z.rect = tableTop, draw.Rect{W: m.lay.W, H: m.lay.Bar.Y}
	pad := m.lay.pad()
	y := m.heading(pad)
	wide := m.lay.W - 2*pad
	cols := 1
	if wide >= 580*t {
		cols = 2
	}
	if m.lay.W >= 1024*u && !m.big() {
		m.s.show = snap(draw.Rect{X: m.lay.W * .6, Y: 0, W: m.lay.W * .4, H: z.rect.H})
		z.rect.W = m.s.show.X
		wide = m.s.show.X - pad - 8*u
	}
	gap := 24 * u
	colW := (wide - gap*float64(cols-1)) / float64(cols)
	chips := m.chips(wide)
	bottom := z.rect.H - 12*u
	apart := !m.lay.Phone && !m.big() // the choices stand below all doors
	if apart {
		bottom -= chips.h + 8*u
	}
	flow := func() [][][]block { return m.flow(m.blocks(colW, !apart), bottom-y, cols) }
	pages := flow()
	if m.terse = len(pages) > 1; m.terse {
		pages = flow()
	}
	at := pageOf(columned(pages), m.h.page, m.h.focus) % len(pages)
	m.h.page, m.s.key.page = at, at
	for c, col := range pages[at] {
		m.place(col, pad+float64(c)*(colW+gap), y)
	}
	if len(pages) > 1 {
		more := m.styled(widget{id: idPanelMore}, outlined)
		more.name, more.text = nextPage(at, len(pages))
		more.rect.W = m.width(more) + 24*u
		more.rect.X, more.rect.Y = pad+wide-more.rect.W, 8*u
		m.add(sheetZone, more)
	}
	if apart {
		m.place([]block{chips}, pad, z.rect.H-chips.h-12*u)
	}
}

// heading is the name of the program and what it is for.
func (m *hallMaker) heading(x float64) float64 {
	u, t := m.lay.Unit, m.lay.Text
	size, y := 34*t, 22*u
	switch {
	case m.big():
		size, y = 20*t, 10*u
	case m.lay.Phone:
		size, y = 26*t, 12*u
	}
	w := widget{id: idTitle, role: describe.Heading, name: "cuesta", text: "cuesta", look: plain, size: size, bold: true, leading: 1.25 * size}
	w.rect = draw.Rect{X: x, Y: y, W: m.width(w), H: 1.25 * size}
	m.add(sheetZone, w)
	y = max(y+1.25*size, 8*u+m.controlHeight())
	if !m.lay.Phone && !m.big() {
		s := "Measuring the strike and dip of rock surfaces"
		p := widget{id: idPanelText, role: describe.Label, name: s, text: s, look: plain, soft: true, size: barSize * t, leading: 24 * t,
			rect: draw.Rect{X: x, Y: y, H: 24 * t}}
		p.rect.W = m.width(p)
		m.add(sheetZone, p)
		y += 24 * t
	}
	return y + 12*u
}

// options are the settings that every screen shares.
func (m *hallMaker) options() []option {
	var out []option
	for _, o := range m.s.key.set.options() {
		if o.first == idSetText || o.first == idSetTheme || o.first == idSetScan && m.s.key.set.Scan != ScanOff {
			out = append(out, o)
		}
	}
	return out
}

// chips are the choices of text and colours, which every screen shares.
func (m *hallMaker) chips(wide float64) block {
	var b block
	y := 0.0
	for _, o := range m.options() {
		row := m.optionRow(o, wide)
		for _, w := range row.parts {
			w.rect.Y += y
			b.add(w)
		}
		y += row.h + 6*m.lay.Unit
	}
	return b
}

// hallBlock is a row of the hall. The first row of a group has the group's name
// above it; so has the first of a column.
type hallBlock struct {
	group string
	make  func(first bool) block
}

// blocks are the doors, and the choices below them where they do not stand
// apart.
func (m *hallMaker) blocks(w float64, choices bool) []hallBlock {
	var out []hallBlock
	for _, d := range m.all() {
		out = append(out, hallBlock{d.group, func(first bool) block { return m.door(d, w, first) }})
	}
	if choices {
		for _, o := range m.options() {
			out = append(out, hallBlock{"", func(bool) block { return m.optionRow(o, w) }})
		}
	}
	return out
}

// flow fills columns of a height, and pages of columns. The lectures begin a
// column of their own.
func (m *hallMaker) flow(rows []hallBlock, h float64, cols int) [][][]block {
	pages := [][][]block{{nil}}
	y, group := 0.0, ""
	for _, r := range rows {
		b := r.make(r.group != group)
		page := &pages[len(pages)-1]
		if y > 0 && (y+b.h > h || cols > 1 && len(*page) == 1 && r.group != group && r.group == Lectures) {
			b = r.make(true)
			if len(*page) == cols {
				pages = append(pages, nil)
				page = &pages[len(pages)-1]
			}
			*page = append(*page, nil)
			y = 0
		}
		col := &(*page)[len(*page)-1]
		*col = append(*col, b)
		y += b.h + m.doorGap()
		group = r.group
	}
	return pages
}

// columned are pages with their columns one after the other.
func columned(pages [][][]block) [][]block {
	out := make([][]block, len(pages))
	for i, cols := range pages {
		out[i] = slices.Concat(cols...)
	}
	return out
}

func (m *hallMaker) doorGap() float64 { return 6 * m.lay.Unit }

// door is one door, below the name of its group where it is the first.
func (m *hallMaker) door(d hallDoor, w float64, first bool) block {
	u, t := m.lay.Unit, m.lay.Text
	var b block
	y := 0.0
	if first {
		y = 6 * u
		b.add(widget{id: 0, text: d.group, look: plain, size: noteSize * t, soft: true, leading: 22 * t, rect: draw.Rect{Y: y, W: w, H: 22 * t}})
		y += 24 * t
	}
	lines := draw.Wrap(draw.Regular, noteSize*t, w-28*u, d.words)
	if d.words == "" || m.terse && d.id != idGoOn {
		lines = nil
	}
	names := draw.Wrap(draw.Bold, buttonSize*t, w-28*u, d.title)
	nh := 22 * t * float64(len(names))
	inner := nh + 19*t*float64(len(lines))
	h := max(44*u, inner+10*u)
	b.add(widget{id: d.id, role: describe.Button, group: d.group, name: d.title, value: d.group + ". " + d.words, look: outlined, focus: true, rect: draw.Rect{Y: y, W: w, H: h}})
	top := y + (h-inner)/2
	b.add(widget{text: joinLines(names), look: plain, size: buttonSize * t, bold: true, leading: 22 * t, rect: draw.Rect{X: 14 * u, Y: top, W: w - 28*u, H: nh}})
	if len(lines) > 0 {
		b.add(widget{text: joinLines(lines), look: plain, size: noteSize * t, soft: true, leading: 19 * t,
			rect: draw.Rect{X: 14 * u, Y: top + nh, W: w - 28*u, H: 19 * t * float64(len(lines))}})
	}
	return b
}

// place adds blocks one below the other.
func (m *hallMaker) place(bs []block, x, y float64) {
	for _, b := range bs {
		for _, w := range b.parts {
			w.rect.X += x
			w.rect.Y += y
			m.add(sheetZone, w)
		}
		y += b.h + m.doorGap()
	}
}

func (m *hallMaker) describe() {
	var kids []describe.Node
	for _, z := range [...]zoneName{sheetZone, barZone} {
		for _, w := range m.zones[z].widgets {
			if w.id != 0 || w.focus {
				kids = append(kids, w.node())
			}
		}
	}
	t := &m.s.tree
	t.Root = describe.Node{Role: describe.Group, Name: "Hall", Bounds: describe.Rect{W: m.s.key.w, H: m.s.key.h}, Children: kids}
	if n := t.Find(m.h.focus); n == nil || !n.Focusable || n.Disabled {
		m.h.focus = m.h.firstDoor()
		m.s.key.focus = m.h.focus
	}
	t.Focus = m.h.focus
}

// vitrine is the rock that stands beside the doors, for its beauty alone.
type vitrine struct {
	stage *stage.Stage
	ses   *session.Session
}

// late is how many frames a screen stands before what takes long to paint, the
// rock beside the doors or the magnifiers: nobody is to wait for it.
const late = 2

func (v *vitrine) draw(l *draw.List, r draw.Rect, unit float64, set Settings, age int) {
	if age <= late || !v.made() {
		l.Region(r)
		return
	}
	w := v.ses.World()
	v.stage.Draw(l, stage.Params{Rect: r, Unit: unit, TextScale: 1, Theme: theme.Of(set.Theme), Plane: v.ses.Truth(),
		Pose: w.Pose(), Observation: w.Observe(), Camera: stage.DefaultCamera(v.ses.Truth(), w.Pose()),
		Reveal: stage.Overlays{Water: true, Strike: true, Progress: 1}, MuteNeedle: true, RockSeed: v.ses.Seed()})
}

// made sets the instrument level on a bed that strikes 035 and dips 30.
func (v *vitrine) made() bool {
	if v.ses != nil {
		return true
	}
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	s, err := session.New(session.Options{Plane: &p, Seed: 1})
	if err != nil {
		return false
	}
	v.ses, v.stage = s, stage.New()
	turn := func(k sim.Kind, a orient.Angle) {
		if err := s.Do(sim.Command{Kind: k, Angle: a}); err != nil {
			panic("scenes: the instrument in the hall does not stand: " + err.Error())
		}
	}
	turn(sim.Swing, -s.World().Pose().Swing)
	f := s.World().Observe().Frame
	turn(sim.Roll, -orient.Atan2(-f.Right.Z, f.Out.Z))
	s.Advance(10 * sim.TicksPerSecond)
	return true
}
