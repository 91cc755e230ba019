package scenes

import (
	"fmt"
	"math"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/inset"
	"cuesta/scenes/lesson"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// lectureScreen is a lecture as it stands on the screen: layout, words and baked
// text. It is made anew when its key changes.
type lectureScreen struct {
	w, h, scale float64
	key         lectureKey
	made        bool
	lay         lectureLayout
	text        float64 // factor of the type: as asked for, or what finds room
	tree        describe.Tree
	zones       [zoneCount]zone
}

// lectureKey is all that words and controls depend on.
type lectureKey struct {
	w, h, scale  float64
	set          Settings
	at           int
	line, answer string
	notice       string
	notices      int
	hint         hint
	homing       homing
	state        stepState
	live, open   bool
	blank        bool
	magnify      bool
	pointer      bool
	controls     bool
	leaves       bool
	panel        panel
	page         int
	focus        describe.ID
	keyed        bool
	step         Step
	shown        [lesson.Things]bool
	seat         sim.Seat
	round, tube  inset.State
	dial         inset.State
	reading      int
	wrote        string
}

func (s *lectureScreen) resize(in input.Frame) { s.w, s.h, s.scale = in.W, in.H, in.Scale }

func (s *lectureScreen) keyOf(t *Lecture) lectureKey {
	k := lectureKey{
		w: s.w, h: s.h, scale: s.scale, set: t.set, at: t.play.At(), line: t.play.Line(), answer: t.play.Answer(),
		notice: t.notice, notices: t.notices, state: t.state(), live: t.play.IsLive(), open: t.play.Open(), blank: t.blank,
		magnify: t.magnify, pointer: t.pointer, controls: t.controls(), leaves: t.leave != nil, panel: t.panel, page: t.page,
		focus: t.focus, keyed: t.keyed, seat: t.obs.Seat,
		round: inset.RoundState(t.obs.Round), tube: inset.TubeState(t.obs.Tube), dial: inset.DialState(t.obs.Dial),
	}
	if t.hand != nil {
		k.step, k.hint, k.homing = t.hand.step, t.hand.nextHint(), t.hand.homing()
	}
	for x := range lesson.Things {
		k.shown[x] = t.shows(x)
	}
	if k.shown[lesson.Reading] {
		k.reading = t.reading()
	}
	if w, ok := t.play.Written(); ok && k.shown[lesson.Student] {
		k.wrote = w.Text + w.Outcome
	}
	return k
}

// reading is the number that the scale shows.
func (t *Lecture) reading() int {
	if t.obs.Seat == sim.OnSide {
		return t.obs.Arc.Degree()
	}
	return t.obs.Dial.Degree()
}

// controls says whether the row of controls is drawn: while the pointer moves,
// once the keyboard has gone to it, in live play, and where a mark goes over the
// controls.
func (t *Lecture) controls() bool {
	return t.idle < hideAfter || t.keyed || t.set.Scan != ScanOff || t.screen.h >= t.screen.w
}

// build makes layout, controls and description for the state of the lecture.
func (s *lectureScreen) build(t *Lecture) {
	k := s.keyOf(t)
	if s.made && k == s.key {
		return
	}
	s.key, s.made = k, true
	m := lectureMaker{t: t, s: s, sketch: sketch{th: theme.Of(t.set.Theme), zones: &s.zones}}
	m.make()
}

// lectureMaker lays the words and controls of a lecture out.
type lectureMaker struct {
	sketch
	t    *Lecture
	s    *lectureScreen
	rows [][]stripItem
	card []widget // what the student wrote, from its own upper left corner
	line []string
	ans  []string
}

func (m *lectureMaker) make() {
	m.measure()
	m.clear()
	switch {
	case m.lay.TooTiny:
		m.tiny()
	case m.t.panel != noPanel:
		m.panel()
	default:
		m.title()
		m.counter()
		m.bar()
		m.column()
		m.strip()
		m.hint()
	}
	m.describe()
	m.bakeAll(m.marked())
}

// marked is the control that shows the focus.
func (m *lectureMaker) marked() describe.ID {
	if m.t.keyed {
		return m.t.focus
	}
	return idNone
}

// typeSize is a size at 1920×1080 in device pixels, larger where large text is
// asked for.
func (m *lectureMaker) typeSize(x float64) float64 {
	return x * m.s.lay.Type * m.s.text
}

func (m *lectureMaker) tiny() {
	size := 15 * max(m.s.scale, 1)
	const s = "This window is too small for a lecture. Make it larger; nothing is lost."
	z := &m.s.zones[barZone]
	z.rect, z.ground = draw.Rect{W: m.s.w, H: m.s.h}, barGround
	m.add(barZone, widget{id: idLectureLine, role: describe.Status, name: s, look: plain, size: size, leading: 1.3 * size,
		text: joinLines(draw.Wrap(draw.Regular, size, max(20, m.s.w-20), s)), rect: draw.Rect{X: 10, Y: 10, W: m.s.w - 20, H: m.s.h - 20}})
}

// over is the ground of words that lie over the picture.
func (m *lectureMaker) over() ground {
	if m.t.magnify || m.t.eye.to.Close > 0 {
		return plateGround
	}
	return noGround
}

// titleLines is the name of the lesson in rows beside the number of the step.
func (m *lectureMaker) titleLines() (lines []string, wide float64) {
	size := m.typeSize(lectureTitle)
	w := m.s.w
	if !m.lay.Phone {
		w = m.lay.Scene.W
	}
	wide = max(w-2*m.s.lay.Margin-m.counterWide(), 4*size)
	return draw.Wrap(draw.Bold, size, wide, m.t.play.Lesson().Title), wide
}

// titleTall is the height of the row of the title where it has one of its own.
func (m *lectureMaker) titleTall() float64 {
	lines, _ := m.titleLines()
	title := 1.25 * m.typeSize(lectureTitle) * float64(len(lines))
	return math.Ceil(max(title, 2.6*m.typeSize(lectureType)) + 1.2*m.s.lay.Margin)
}

// title is the name of the lesson, and a notice below it.
func (m *lectureMaker) title() {
	size, mar := m.typeSize(lectureTitle), m.s.lay.Margin
	name := m.t.play.Lesson().Title
	lines, wide := m.titleLines()
	y := mar * .8
	w := widget{id: idLectureTitle, role: describe.Heading, name: name, text: joinLines(lines), look: plain, size: size, bold: true, leading: 1.25 * size}
	w.rect = draw.Rect{X: mar, Y: y, H: 1.25 * size * float64(len(lines))}
	w.rect.W = m.width(w)
	m.add(titleZone, w)
	right, bottom := w.rect.X+w.rect.W, y+w.rect.H
	if m.t.notice != "" {
		size = m.typeSize(lectureType)
		n := widget{id: idNotice, role: describe.Status, name: m.t.notice, again: m.t.notices, look: plain, size: size, leading: 1.25 * size}
		rows := draw.Wrap(draw.Regular, size, wide, m.t.notice)
		n.text = joinLines(rows)
		n.rect = draw.Rect{X: mar, Y: bottom + .2*size, H: 1.25 * size * float64(len(rows))}
		n.rect.W = m.width(n)
		m.add(titleZone, n)
		right, bottom = max(right, n.rect.X+n.rect.W), n.rect.Y+n.rect.H
	}
	z := &m.s.zones[titleZone]
	z.ground, z.rect = m.over(), snap(draw.Rect{X: mar / 2, Y: mar * .4, W: right - mar/2 + mar/2, H: bottom})
	if m.apart() {
		z.ground = tableTop
		z.rect = snap(draw.Rect{W: m.lay.Title.W, H: max(m.lay.Title.H, bottom+4*m.lay.Unit)})
	}
}

// bar is the one line, and the answer below it.
func (m *lectureMaker) bar() {
	size := m.typeSize(lectureLine)
	lead := lectureLead * size
	rows := float64(len(m.line) + len(m.ans))
	r := m.lay.Bar
	if need := math.Ceil(rows*lead + 18*m.s.lay.Type); need > r.H {
		r.Y, r.H = r.Y+r.H-need, need
	}
	z := &m.s.zones[barZone]
	z.rect, z.ground = r, tableGround
	y := r.Y + (r.H-rows*lead)/2
	p := m.t.play
	w := widget{id: idLectureLine, role: describe.Status, name: m.t.stepWords(), value: p.Line(), text: joinLines(m.line), look: plain, size: size, leading: lead,
		rect: draw.Rect{X: m.s.lay.Margin, Y: y, W: r.W - 2*m.s.lay.Margin, H: lead * float64(len(m.line))}}
	if p.IsLive() {
		w.keys = "Escape brings the step back as it stood"
	}
	m.add(barZone, w)
	if p.Answer() != "" {
		y += w.rect.H
		m.add(barZone, widget{id: idLectureAnswer, role: describe.Status, name: p.Answer(), text: joinLines(m.ans), look: plain, bold: true, size: size, leading: lead,
			rect: draw.Rect{X: w.rect.X, Y: y, W: w.rect.W, H: lead * float64(len(m.ans))}})
	}
}

// column holds the captions and what the student wrote.
func (m *lectureMaker) column() {
	c := m.lay.Column
	if c.W == 0 {
		return
	}
	z := &m.s.zones[columnZone]
	z.rect, z.ground = snap(c), panelGround
	for _, w := range m.card {
		w.rect.X += m.s.lay.Card.X
		w.rect.Y += m.s.lay.Card.Y
		m.add(columnZone, w)
	}
	first, second := m.captions()
	m.caption(m.lay.Round, first, "")
	figure := ""
	if m.t.shows(lesson.Reading) {
		figure = fmt.Sprintf("%03d°", m.t.reading())
		if m.t.obs.Seat == sim.OnSide {
			figure = fmt.Sprintf("%d°", m.t.reading())
		}
	}
	m.caption(m.lay.Dial, second, figure)
	if r := m.s.lay.Curve; r.W > 0 {
		m.add(columnZone, widget{id: idLectureCurve, role: describe.Label, name: "Strike error against dip", look: hidden, rect: r})
	}
}

// captions are the names of the magnifiers and what they show in words.
func (m *lectureMaker) captions() (first, second widget) {
	o := m.t.obs
	first = widget{id: idLectureLevel, text: "Round level", value: inset.RoundState(o.Round).Words()}
	second = widget{id: idLectureScale, text: "Dial, north end", value: inset.DialState(o.Dial).Words()}
	if o.Seat == sim.OnSide {
		first.text, first.value = "Tube level", inset.TubeState(o.Tube).Words()
		second.text, second.value = "Arc, outer scale", "in degrees"
	}
	first.role, first.name, second.role, second.name = describe.Label, first.text, describe.Label, second.text
	if m.t.hand != nil { // they are then told as at the bench
		a, b := (&maker{b: m.t.hand}).insetNames()
		first.id, first.role, first.name, first.value = idRound, describe.Image, a[0], a[1]
		second.id, second.role, second.name, second.value = idDial, describe.Image, b[0], b[1]
	}
	return first, second
}

// caption stands under a magnifier; the figure, once it is shown, under that.
func (m *lectureMaker) caption(c circle, w widget, figure string) {
	if c.R == 0 {
		return
	}
	size := m.typeSize(lectureType)
	w.look, w.bold, w.size, w.leading, w.align = plain, true, size, 1.25*size, draw.AlignCentre
	w.rect = draw.Rect{X: c.X - 1.3*c.R, Y: c.Y + c.R + 10*m.s.lay.Type, W: 2.6 * c.R, H: 1.25 * size}
	if in := m.lay.Inner; !m.lay.Phone {
		w.rect.X, w.rect.W = in.X, in.W
	}
	if figure != "" {
		w.value = figure
	}
	m.add(columnZone, w)
	if figure != "" {
		big := m.typeSize(lectureReading)
		m.add(columnZone, widget{text: figure, look: plain, bold: true, size: big, leading: 1.2 * big, align: draw.AlignCentre,
			rect: draw.Rect{X: w.rect.X, Y: w.rect.Y + w.rect.H, W: w.rect.W, H: 1.2 * big}})
	}
}

// describe gathers what is on the screen in reading order.
func (m *lectureMaker) describe() {
	t, root := &m.s.tree, describe.Node{Role: describe.Group, Name: "Lecture", Bounds: describe.Rect{W: m.s.w, H: m.s.h}}
	switch {
	case m.t.blank:
		root.Children = []describe.Node{{
			ID: idBlank, Role: describe.Toggle, Name: "Blank screen", On: true, Focusable: true, Bounds: root.Bounds,
			Keys: m.t.set.keysFor(0),
		}}
		root.Children[0].Keys = "any key"
	default:
		for _, z := range []zoneName{sheetZone, titleZone, barZone, menuZone, columnZone, stripZone} {
			if z == columnZone && m.t.panel == noPanel && !m.lay.TooTiny {
				root.Children = append(root.Children, m.seen())
			}
			for _, w := range m.s.zones[z].widgets {
				if w.id != 0 || w.focus {
					root.Children = append(root.Children, w.node())
				}
			}
		}
	}
	t.Root = root
	if n := t.Find(m.t.focus); n == nil || !n.Focusable || n.Disabled {
		m.t.focus = idNone
		if m.t.keyed {
			m.t.focus = m.first()
		}
		m.s.key.focus = m.t.focus
	}
	t.Focus = m.t.focus
	if m.t.blank {
		t.Focus = idBlank
	}
}

func (m *lectureMaker) first() describe.ID {
	if o := m.s.tree.Order(); len(o) > 0 {
		return o[0].ID
	}
	return idNone
}

// seen is what is on the table, in words that the description fills in.
func (m *lectureMaker) seen() describe.Node {
	r := m.lay.Scene
	n := describe.Node{ID: idInstrument, Role: describe.Image, Name: "On the screen", Bounds: describe.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H}}
	if m.t.play.IsLive() {
		return instrumentNode(m.t.set, r)
	}
	return n
}
