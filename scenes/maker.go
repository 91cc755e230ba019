package scenes

import (
	"fmt"
	"math"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/inset"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// Sizes of type at unit 1 (the smallest is 15).
const (
	titleSize  = 22
	stepSize   = 16
	buttonSize = 16
	noteSize   = 15
	fieldSize  = 26
	barSize    = 17
)

// maker lays the controls of the bench out, one zone after another.
type maker struct {
	sketch
	b    *Bench
	s    *screen
	rows [][]stripItem // of the strip
	few  bool          // there is room for a few controls only; the others are in a panel
	line []string      // of the bar
	hint string        // the keys that go with it

	unmarked bool   // the marks of the verdict find no room in the column
	why      string // the name of the way to what of it finds none
	piled    bool   // the buttons stand one below the other after the answer, however small the window
	blind    bool   // the keypad covers the notebook
	above    bool   // the echo takes the place of the line: there is no room under the field
	told     bool   // a notice is told in the place of a panel
	terse    bool   // the line is told in few words
}

func (m *maker) make() {
	m.measure()
	m.s.lay, m.s.told = m.lay, m.told
	m.clear()
	if m.lay.TooTiny {
		m.tooTiny()
	} else {
		m.title()
		m.menu()
		m.enlarge()
		m.s.lay = m.lay
		m.strip()
		m.bar()
		m.column()
		m.sheet()
	}
	m.describe()
	m.bakeAll(m.b.focus)
}

// measure lays out. What rock and insets have at the usual size of text is what
// they may count on at a larger one.
func (m *maker) measure() {
	f := frameOf{W: m.s.w, H: m.s.h, Scale: m.s.scale, Text: m.b.set.Text.Factor(),
		BarLines: 1, StripRows: 1, ButtonRows: 1, Judged: m.b.phase != measuring, Hinged: m.b.obs.Seat == sim.OnLid,
		Large: m.b.magnified() != noMagnifier}
	if f.Text > 1 {
		f.Usual = m.usual(f)
	}
	m.fit(f)
}

// usual is what rock and inset have at the usual size of text. It is kept, since
// what is written and shown does not change it.
func (m *maker) usual(f frameOf) share {
	k, u := m.s.key, &m.s.usual
	k = screenKey{w: k.w, h: k.h, scale: k.scale, set: k.set, phase: k.phase, seat: k.seat, notice: k.notice, number: k.number, manner: k.manner}
	if u.key == k {
		return u.share
	}
	f.Text, f.Large = 1, false
	plain := maker{b: m.b, s: m.s, sketch: sketch{zones: &u.zones}}
	plain.fit(f)
	u.key, u.share = k, share{plain.lay.Scene.H, 2 * plain.lay.Dial.R}
	return u.share
}

// fit finds how many rows the controls and the line need, and lays out.
func (m *maker) fit(f frameOf) {
	m.lay = layOut(f)
	if m.lay.TooTiny {
		return
	}
	m.told = m.b.notice != "" && (m.lay.Tight || (m.apart() || m.lay.Low) && len(draw.Wrap(draw.Regular, noteSize*m.lay.Text, m.placeWide(), m.b.notice)) > 2)
	m.terse = m.lay.Tight || m.lay.Low && m.lay.Text > m.lay.Unit && m.mostLines() > 1
	m.piled = m.b.phase != measuring && !m.abreast() // what may come next is to stay in sight
	f.Header, f.ButtonRows, f.BarLines = m.headerHeight(), m.buttonRows(), m.mostLines()
	if m.fitStrip(&f); m.piled && !m.holdsVerdict() {
		m.piled = false
		f.ButtonRows = m.buttonRows()
		m.fitStrip(&f)
	}
	m.above = m.aboveAll()
	m.line, m.hint = m.barLines()
	if len(m.line) > f.BarLines {
		f.BarLines = len(m.line)
		m.lay = layOut(f)
	}
}

// aboveAll says that the echo takes the place of the line: there is no room for
// it, and it is what is looked at.
func (m *maker) aboveAll() bool {
	return m.b.phase != judged && (m.b.panel == noPanel || m.b.panel == keypadPanel) && !m.echoFits() &&
		(m.b.phase == shown || m.b.panel == keypadPanel || m.b.focus == idNotebook)
}

// mostLines is how many lines the longest hint takes, so that nothing moves
// when one follows another.
func (m *maker) mostLines() int {
	say := m.b.levelWords
	if m.terse {
		say = m.b.briefLevel
	}
	most := max(1, len(m.hintLines(say(hintRubbing, homing{1, 1}))), len(m.hintLines(say(hintArm, homing{tilt: 1}))))
	for h := range hints {
		switch h {
		case hintRubbing, hintLevel, hintLid, hintArm: // as long as what brings the bubble home now
			continue
		}
		most = max(most, len(m.hintLines(m.hintWords(h))))
	}
	return most
}

// short says that there is no height for the menu over the rock: it then stands
// under More.
func (m *maker) short() bool {
	return m.lay.Lone || m.lay.Strip.H == 0 || (m.apart() || m.lay.Low) && m.lay.Scene.H < 300*m.lay.Unit
}

// pad is the margin of the title, the strip and the bar.
func (l layout) pad() float64 {
	if l.Phone || l.W < 1024*l.Unit {
		return 16 * l.Unit
	}
	return 32 * l.Unit
}

func (m *maker) tooTiny() {
	s := fmt.Sprintf("This window is too small for the bench. Make it at least %d by %d; nothing is lost.", minWide, minTall)
	u := m.lay.Unit
	size := 15 * u
	lines := draw.Wrap(draw.Regular, size, max(m.s.w-24*u, 40), s)
	z := &m.s.zones[barZone]
	z.rect, z.ground = draw.Rect{W: m.s.w, H: m.s.h}, panelGround
	m.add(barZone, widget{id: idHint, role: describe.Status, name: s, text: joinLines(lines), look: plain,
		rect: draw.Rect{X: 12 * u, Y: 12 * u, W: m.s.w - 24*u, H: m.s.h - 24*u}, size: size, leading: 1.35 * size})
}

func joinLines(lines []string) string {
	out := ""
	for i, s := range lines {
		if i > 0 {
			out += "\n"
		}
		out += s
	}
	return out
}

// menuWidgets are the controls of the eye, and the ways to the panels.
func (m *maker) menuWidgets() []widget {
	closer := "Closer"
	if m.b.view.close {
		closer = "Farther"
	}
	ws := []widget{
		{id: idViewLeft, name: "View from further left", text: "‹"},
		{id: idView, name: "View", value: m.viewWords(), text: "View", keys: m.b.set.keysFor(keymap.SwingLess, keymap.SwingMore, keymap.Lift, keymap.Lower) + " when it has the focus"},
		{id: idViewRight, name: "View from further right", text: "›"},
		{id: idViewCloser, name: closer, text: closer, keys: m.b.set.keysFor(keymap.Closer)},
		{id: idSettings, name: "Settings", text: "Settings", keys: m.b.set.keysFor(keymap.Settings)},
		{id: idHelp, name: "Help", text: "Help", keys: m.b.set.keysFor(keymap.Help)},
	}
	if m.b.leave != nil {
		ws = append(ws, widget{id: idHall, name: "Menu: lectures, forms and more", text: "Menu", keys: m.b.set.keysFor(keymap.Menu)})
	}
	return ws
}

// overRock is the ground of words that lie over the rock: none over the bare
// table, a plate where the close view brings stone under them.
func (m *maker) overRock() ground {
	if m.b.view.close {
		return plateGround
	}
	return noGround
}

// menu is the quiet row at the upper right of the rock.
func (m *maker) menu() {
	u := m.lay.Unit
	size := noteSize * m.lay.Text
	ws := append(m.smaller(), m.menuWidgets()...)
	h := max(32*u, 1.7*size)
	pad := 10 * u
	if m.lay.Phone || m.lay.W < 1024*u {
		pad = 7 * u
	}
	total := 0.0
	for i := range ws {
		w := &ws[i]
		w.role, w.group, w.look, w.size, w.align, w.focus = describe.Button, "View and menu", quiet, size, draw.AlignCentre, true
		w.rect.W, w.rect.H = max(m.width(*w)+2*pad, 24*u), h
		total += w.rect.W
	}
	r := m.lay.Scene
	x, y := r.X+r.W-total-8*u, r.Y+12*u
	title := m.s.zones[titleZone].rect
	m.few = m.few || m.short() || x < r.X || m.lay.Low && x < title.X+title.W
	if m.few {
		m.more()
		return
	}
	for _, w := range ws {
		w.rect.X, w.rect.Y = x, y
		w.soft = true
		m.add(menuZone, w)
		x += w.rect.W
	}
	m.s.zones[menuZone].ground = m.overRock()
	m.s.zones[menuZone].rect = snap(draw.Rect{X: r.X + r.W - total - 14*u, Y: r.Y + 6*u, W: total + 14*u, H: h + 12*u})
}

// stacks says that the way back from a large magnifier stands under More, where
// the place is wide or holds the title, and not beside it.
func (m *maker) stacks() bool {
	return m.lay.Title.H == 0 || m.lay.Scene.W > m.lay.Scene.H+100*m.lay.Text
}

// more is the way to all that finds no room, in the corner of the rock.
func (m *maker) more() {
	u, r := m.lay.Unit, m.lay.Scene
	all := widget{id: idMore, name: "All controls", text: "All controls"}
	if m.b.magnified() != noMagnifier || m.button(all).width > .3*r.W {
		all.text = "All"
	}
	right, y := r.X+r.W-12*u, r.Y+10*u
	left, low, stacked := right, y, m.stacks()
	for _, w := range append([]widget{all}, m.smaller()...) {
		w = m.button(w).parts[0]
		w.rect.X, w.rect.Y = right-w.rect.W, y
		left, low = min(left, w.rect.X), max(low, y+w.rect.H)
		if stacked {
			y = low + 8*u
		} else {
			right = w.rect.X - 8*u
		}
		m.add(menuZone, w)
	}
	z := &m.s.zones[menuZone]
	z.ground, z.rect = noGround, snap(grow(draw.Rect{X: left, Y: r.Y + 10*u, W: r.X + r.W - 12*u - left, H: low - r.Y - 10*u}, 6*u))
}

func (m *maker) viewWords() string {
	return fmt.Sprintf("from %s, %.0f° above the horizontal", compass(m.b.view.base.Azimuth.Add(m.b.view.turn)), (m.b.view.base.Elevation + m.b.view.lift).Degrees())
}

func snap(r draw.Rect) draw.Rect {
	x, y := math.Floor(r.X), math.Floor(r.Y)
	return draw.Rect{X: x, Y: y, W: math.Ceil(r.X + r.W - x), H: math.Ceil(r.Y + r.H - y)}
}

// bar is the one line that says what to do next.
func (m *maker) bar() {
	r, size := m.lay.Bar, barSize*m.lay.Text
	z := &m.s.zones[barZone]
	z.rect, z.ground = r, barGround
	lead := 1.3 * size
	say, keys := m.b.line(m.b.nextHint())
	h := lead * float64(len(m.line))
	id := idHint
	if m.above {
		m.add(barZone, widget{id: idHint, role: describe.Status, name: say, keys: keys, look: hidden, rect: r})
		id, say, keys = idEcho, m.echo(), ""
	}
	m.add(barZone, widget{id: id, role: describe.Status, name: say, keys: keys, text: joinLines(m.line), look: plain, size: size, leading: lead,
		rect: draw.Rect{X: m.lay.pad(), Y: r.Y + (r.H-h)/2, W: r.W - 2*m.lay.pad(), H: h}})
	if m.hint != "" {
		m.add(barZone, widget{text: m.hint, look: plain, soft: true, size: size, leading: lead, align: draw.AlignRight,
			rect: draw.Rect{X: m.lay.pad(), Y: r.Y + (r.H-lead)/2, W: r.W - m.lay.pad() - 24*m.lay.Unit, H: lead}})
	}
}

// barLines wraps the line; the keys stand beside it only where there is room.
func (m *maker) barLines() (lines []string, keys string) {
	_, keys = m.b.line(m.b.nextHint())
	say := m.hintWords(m.b.nextHint())
	if m.above {
		say, keys = m.echo(), ""
	}
	size, w := barSize*m.lay.Text, m.lay.Bar.W-2*m.lay.pad()
	if lines = m.hintLines(say); m.above && m.lay.Tight && m.b.strikeWritten {
		lines = m.hintLines(firstSentence(say))
	}
	used := draw.Measure(draw.Regular, size, say, 0) + draw.Measure(draw.Regular, size, keys, 0) + 32*m.lay.Unit
	if keys == "" || len(lines) > 1 || used > w+8*m.lay.Unit {
		keys = ""
	}
	return lines, keys
}

// hintWords is a hint as it stands in the bar.
func (m *maker) hintWords(h hint) string {
	if m.terse {
		return m.b.brief(h)
	}
	say, _ := m.b.line(h)
	return say
}

func (m *maker) hintLines(say string) []string {
	return draw.Wrap(draw.Regular, barSize*m.lay.Text, m.lay.Bar.W-2*m.lay.pad(), say)
}

// describe gathers what is on the screen in reading order.
func (m *maker) describe() {
	t := &m.s.tree
	name := "Bench"
	var kids []describe.Node
	for _, z := range []zoneName{sheetZone, titleZone, stripZone, magnifierZone, columnZone, barZone, menuZone} {
		if z == stripZone && !m.lay.TooTiny && !m.hides(m.lay.Scene) {
			kids = append(kids, m.instrument())
		}
		if m.s.covers(m.b.panel, z) {
			continue
		}
		for _, w := range m.s.zones[z].widgets {
			if w.id != 0 || w.focus {
				kids = append(kids, w.node())
			}
		}
	}
	t.Root = describe.Node{Role: describe.Group, Name: name, Bounds: describe.Rect{W: m.s.w, H: m.s.h}, Children: kids}
	if n := t.Find(m.b.focus); n == nil || !n.Focusable || n.Disabled {
		m.b.focus = m.firstFocus()
		m.s.key.focus = m.b.focus
	}
	t.Focus = m.b.focus
}

// hides says whether a panel lies over a place.
func (m *maker) hides(r draw.Rect) bool {
	return (m.b.panel != noPanel || m.s.told) && meets(m.lay.Sheet, r)
}

func (m *maker) firstFocus() describe.ID {
	if o := m.s.tree.Order(); len(o) > 0 {
		return o[0].ID
	}
	return idNone
}

// instrument is the thing on the rock, in words.
func (m *maker) instrument() describe.Node { return instrumentNode(m.b.set, m.lay.Scene) }

// instrumentNode is an instrument that keys move, in words that tellInstrument
// fills in.
func instrumentNode(set Settings, r draw.Rect) describe.Node {
	return describe.Node{
		ID: idInstrument, Role: describe.Image, Name: "Instrument on the slab", Keys: set.keysFor(keymap.SwingLess, keymap.SwingMore, keymap.Lift, keymap.Lower),
		Focusable: true, Bounds: describe.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H},
	}
}

// insetNames are the captions of the two magnifiers.
func (m *maker) insetNames() (first, second [2]string) {
	o := m.b.obs
	switch o.Seat {
	case sim.OnBack:
		return sensorNames(o.Sensor)
	case sim.OnSide:
		return [2]string{"Tube level", inset.TubeState(o.Tube).Words()}, [2]string{"Degree arc", "outer scale, in degrees"}
	case sim.OnEdge, sim.OnLid:
	}
	return [2]string{"Round level", inset.RoundState(o.Round).Words()}, [2]string{"Dial", m.needleWords()}
}

func (m *maker) needleWords() string {
	switch {
	case m.b.obs.Dial.State == sim.NeedleLocked:
		return "needle locked"
	case m.b.obs.Dial.State == sim.NeedleRubbing:
		return "needle rubs on the glass"
	case m.b.obs.Dial.Resting:
		return "north end, at rest"
	default:
		return "north end, swinging"
	}
}
