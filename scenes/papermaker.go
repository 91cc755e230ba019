package scenes

import (
	"fmt"
	"strings"

	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
)

// pageMaker lays a question out: in two columns where there is room, the
// figure beside the question, and otherwise in one, over the whole window.
type pageMaker struct {
	sketch
	p      *Paper
	s      *paperScreen
	single bool
	beside bool          // but the figure, which has a column of its own
	mute   bool          // how to answer is not shown, where it would take a page of its own
	rows   [][]stripItem // at the foot
	lines  []string      // of the bar
	flow   draw.Rect     // where question and answer go
	pages  [][]block     // of the flow
	foot   []block       // field and keys, where they stay below the flow
	over   bool          // or in place of it
}

func (m *pageMaker) make() {
	m.measure()
	m.s.lay, m.s.beside = m.lay, m.beside
	m.clear()
	m.s.room = draw.Rect{}
	switch {
	case m.lay.TooTiny:
		m.tooTiny()
	case m.p.large:
		m.enlarged()
	case m.single && (m.p.review || m.p.more):
		m.panel(draw.Rect{W: m.lay.W, H: m.lay.H})
	default:
		m.strip()
		m.bar()
		if !m.single || m.beside {
			m.sheet()
		}
		m.question()
	}
	m.describe()
	m.bakeAll(m.p.focus)
	m.paint()
}

func (m *pageMaker) measure() {
	f := frameOf{W: m.p.frame.W, H: m.p.frame.H, Scale: m.p.frame.Scale, Text: m.p.set.Text.Factor(), BarLines: 1, StripRows: 1, ButtonRows: 1, Judged: true, Form: true}
	m.lay = layOut(f)
	if m.lay.TooTiny {
		return
	}
	if m.lay.Phone || m.lay.Tight {
		m.alone(draw.Rect{W: m.lay.W, H: m.lay.H})
		return
	}
	for range 2 {
		m.rows, m.lines = m.wrap(m.items(), m.lay.Strip.W-2*m.lay.pad()), m.barLines()
		f.StripRows, f.BarLines, f.ButtonRows = max(1, len(m.rows)), m.lined(), m.buttonRows()
		m.lay = layOut(f)
	}
	if left := min(m.lay.H, .46*m.lay.W); m.figure() != nil && m.lay.Scene.H < lowScene*m.lay.Unit && m.lay.W-left > 430*m.lay.Text {
		m.lay.Tight, m.beside = true, true
		m.lay.Scene = draw.Rect{W: left, H: m.lay.H}
		m.alone(draw.Rect{X: left, W: m.lay.W - left, H: m.lay.H})
		return
	}
	if _, ok := m.large(); !ok && m.figure() == nil || m.lay.Scene.H < 200*m.lay.Unit {
		m.lay.Tight = m.lay.Scene.H < lowScene*m.lay.Unit
		m.alone(draw.Rect{W: m.lay.W, H: m.lay.H})
	}
}

// lowScene is the height, in units, below which a figure over the controls is
// smaller than one beside them.
const lowScene = 300

// alone lays everything out in one column. What leads through the form then
// stands at the foot, beside the button that keeps the answer.
func (m *pageMaker) alone(in draw.Rect) {
	l := &m.lay
	m.single = true
	pad := l.pad()
	m.rows = m.footRows(in.W - 2*pad)
	foot := float64(len(m.rows))*(m.controlHeight()+8*l.Unit) + 10*l.Unit
	l.Bar = draw.Rect{X: in.X, Y: in.H, W: in.W}
	m.lines = nil
	if !l.Tight {
		m.lines = m.barLines()
		bar := l.barHeight(frameOf{BarLines: m.lined()})
		l.Bar = draw.Rect{X: in.X, Y: in.H - bar, W: in.W, H: bar}
	}
	l.Strip = draw.Rect{X: in.X, Y: l.Bar.Y - foot, W: in.W, H: foot}
	l.Column = draw.Rect{X: in.X, W: in.W, H: l.Strip.Y}
	wide := min(in.W-2*pad, 760*l.Text)
	l.Inner = draw.Rect{X: in.X + pad, Y: 12 * l.Unit, W: wide, H: l.Column.H - 20*l.Unit}
	l.Buttons = l.Inner.Y + l.Inner.H + 8*l.Unit
	l.Sheet = draw.Rect{W: l.W, H: l.H}
}

func (m *pageMaker) tooTiny() {
	u := m.lay.Unit
	s := "This window is too small for the form. Make it larger; every answer is kept."
	z := &m.zones[sheetZone]
	z.rect, z.ground = draw.Rect{W: m.p.frame.W, H: m.p.frame.H}, panelGround
	m.add(sheetZone, widget{id: idHint, role: describe.Status, name: s, look: plain, size: 15 * u, leading: 20 * u,
		text: joinLines(draw.Wrap(draw.Regular, 15*u, max(m.p.frame.W-24*u, 40), s)), rect: draw.Rect{X: 12 * u, Y: 12 * u, W: m.p.frame.W, H: m.p.frame.H}})
}

// ways lead from question to question.
func (m *pageMaker) ways() []stripItem {
	return []stripItem{
		m.button(widget{id: idBackward, name: "Back to the question before", text: "Back", keys: m.p.set.keysFor(keymap.LastItem)}),
		m.button(widget{id: idForward, name: "Next question", text: "Next", keys: m.p.set.keysFor(keymap.NextItem)}),
	}
}

// others are the controls of the form that are wanted now and then.
func (m *pageMaker) others() []stripItem {
	flag := widget{id: idFlag, role: describe.Toggle, name: "Flag this question, to come back to it", text: "Flag", on: m.p.sit.Flagged(m.p.at)}
	out := []stripItem{
		m.choice([]widget{flag}),
		m.choice([]widget{{id: idOverview, role: describe.Toggle, name: "Overview of all questions", text: "Overview", on: m.p.review}}),
	}
	if m.p.done == "" {
		out = append(out, m.button(widget{id: idUndo, name: "Undo: take the last answer back", text: "Undo", keys: "Ctrl Z"}),
			m.button(m.finish()))
	} else {
		out = append(out, m.button(m.saveAgain()))
	}
	if m.p.leave != nil {
		out = append(out, m.button(widget{id: idHall, name: "Menu: lectures, forms and more", text: "Menu", keys: m.p.set.keysFor(keymap.Menu)}))
	}
	return out
}

func (m *pageMaker) items() []stripItem { return append(m.ways(), m.others()...) }

// footRows are the rows at the foot of a single column: the answer's buttons,
// the ways on and back, and the way to the other controls.
func (m *pageMaker) footRows(wide float64) [][]stripItem {
	more := m.button(widget{id: idMore, name: "All controls", text: "All"})
	ways := append(m.ways(), more)
	var answer []stripItem
	for _, w := range m.buttonWidgets() {
		w.rect.W, w.rect.H = m.width(w)+28*m.lay.Unit, m.controlHeight()
		answer = append(answer, stripItem{[]widget{w}, w.rect.W})
	}
	if all := append(answer[:len(answer):len(answer)], ways...); len(m.wrap(all, wide)) == 1 {
		return [][]stripItem{all}
	}
	if len(m.wrap(answer, wide)) > 1 {
		answer = answer[:1] // the hint is among all controls
	}
	rows := [][]stripItem{m.stretched(answer, wide)}
	if len(m.wrap(ways, wide)) > 1 {
		ways[2].parts[0].text = "…"
		ways[2].parts[0].rect.W = m.width(ways[2].parts[0]) + 24*m.lay.Unit
	}
	return append(rows, ways)
}

// stretched lets buttons fill a row.
func (m *pageMaker) stretched(items []stripItem, wide float64) []stripItem {
	each := (wide - float64(len(items)-1)*m.itemGap()) / float64(len(items))
	for i := range items {
		if items[i].width > each {
			return items
		}
	}
	for i := range items {
		items[i].width, items[i].parts[0].rect.W = each, each
	}
	return items
}

func (m *pageMaker) strip() {
	z := &m.zones[stripZone]
	z.rect, z.ground = m.lay.Strip, tableGround
	m.putRows(m.rows)
}

func (m *pageMaker) line() string {
	switch {
	case m.p.done != "":
		return m.p.done
	case m.p.asked:
		return m.p.said
	case m.p.review:
		return m.p.overviewed()
	case m.p.fresh && m.p.said != "":
		return m.p.said
	case m.p.fresh:
		return m.ask()
	case m.p.sit.Left(m.p.at) == 0:
		return spentLine
	case m.p.atBench():
		return benchLine
	case m.p.sit.Given(m.p.at) != "":
		return keptLine
	}
	return m.ask()
}

// ask is how the answer is given.
func (m *pageMaker) ask() string {
	by := m.p.manner.by
	keep := by("Enter", "Keep answer")
	switch {
	case m.p.chooses():
		return by("Press the letter of your choice, then Enter to keep it.", "Tap your choice; that keeps it.") + m.enlarges()
	case m.p.item().Ask().Kind == item.AskSymbol:
		return by("Turn the symbol with ↑ ↓, its dip with Shift ↑ ↓, or type strike and dip", "Write strike and dip; the symbol turns with them") + "; " + keep + " keeps it."
	}
	return by("Type", "Write") + " the answer; " + keep + " keeps it." + m.enlarges()
}

// enlarges says how the figure is enlarged.
func (m *pageMaker) enlarges() string {
	if m.figure() == nil || m.beside || m.p.manner == byKey {
		return ""
	}
	return " A tap on the figure enlarges it."
}

// lined is the room for the line: what is told of a question has as many lines
// as the longest of it, so that nothing moves.
func (m *pageMaker) lined() int {
	n := len(m.wrappedLine(m.line()))
	if m.p.review && m.p.done == "" {
		return max(n, len(m.wrappedLine(m.p.overviewed())), len(m.wrappedLine(m.p.asks())))
	}
	if !m.p.review {
		for _, s := range [...]string{m.ask(), m.p.chosen("A"), keptLine, spentLine, benchLine} {
			n = max(n, len(m.wrappedLine(s)))
		}
	}
	return n
}

const (
	keptLine  = "Kept. Go on to the next question, or change the answer while attempts are left."
	spentLine = "No attempt is left: go on to the next question. Undo takes the last answer back."
	benchLine = "Measure the slab at the bench; what you record there is your answer."
)

func (m *pageMaker) barLines() []string { return m.wrappedLine(m.line()) }

func (m *pageMaker) wrappedLine(s string) []string {
	return draw.Wrap(draw.Regular, barSize*m.lay.Text, m.lay.Bar.W-2*m.lay.pad(), s)
}

func (m *pageMaker) bar() {
	if len(m.lines) == 0 {
		return
	}
	r, size := m.lay.Bar, barSize*m.lay.Text
	z := &m.zones[barZone]
	z.rect, z.ground = r, barGround
	h := 1.3 * size * float64(len(m.lines))
	m.add(barZone, widget{id: idHint, role: describe.Status, name: m.line(), text: joinLines(m.lines), look: plain, size: size, leading: 1.3 * size,
		rect: draw.Rect{X: m.lay.pad(), Y: r.Y + (r.H-h)/2, W: r.W - 2*m.lay.pad(), H: h}})
}

// buttonWidgets are the filled button, which keeps the answer, and the hint.
// What cannot be used now keeps its place and says why.
func (m *pageMaker) buttonWidgets() []widget {
	first, second := "Keep answer", "Hint"
	if m.p.atBench() {
		first = "Go to the bench"
	}
	_, more, cost := m.p.sit.Hints(m.p.at)
	if cost > 0 {
		second = fmt.Sprintf("Hint (−%.0f %%)", 100*cost)
	}
	closed := ""
	switch {
	case m.p.done != "":
		closed = "handed in"
	case m.p.sit.Left(m.p.at) == 0 && !m.p.fresh:
		closed = "no attempt left"
	}
	why, noHint := closed, closed
	if m.p.fresh && m.p.note.String() == m.p.sit.Given(m.p.at) {
		why = "kept"
	}
	if closed == "" && !more {
		noHint = "no more hints"
	}
	mk := func(id describe.ID, s string, l look, why string) widget {
		return widget{id: id, role: describe.Button, name: s, value: why, text: s, look: l, size: noteSize * m.lay.Text, bold: true, align: draw.AlignCentre,
			focus: true, disabled: why != ""}
	}
	return []widget{mk(idPrimary, first, filled, why), mk(idSecondary, second, outlined, noHint)}
}

// buttonRows is 1 where the buttons fit side by side.
func (m *pageMaker) buttonRows() int {
	ws := m.buttonWidgets()
	for _, w := range ws {
		if m.width(w)+12*m.lay.Unit > (m.lay.Inner.W-12*m.lay.Unit)/2 {
			return len(ws)
		}
	}
	return 1
}

// buttons stand at the foot of the column.
func (m *pageMaker) buttons() {
	u, in := m.lay.Unit, m.lay.Inner
	h, gap := 44*m.lay.control(), 12*u
	ws := m.buttonWidgets()
	rows := m.buttonRows()
	for i, b := range ws {
		w := (in.W - gap) / 2
		if len(ws) == 1 {
			w = min(in.W, max(w, m.width(b)+28*u))
		}
		b.rect = draw.Rect{X: in.X + float64(i)*(w+gap), Y: m.lay.Buttons, W: w, H: h}
		if rows > 1 {
			b.rect = draw.Rect{X: in.X, Y: m.lay.Buttons + float64(i)*(h+8*u), W: in.W, H: h}
		}
		m.add(columnZone, b)
	}
}

// panel is what opens over the left part, or over everything: all questions,
// or all controls.
func (m *pageMaker) panel(r draw.Rect) {
	l := leaf{rect: r, page: m.p.page, name: "Controls", back: "Back to the question"}
	blocks := m.controls()
	if m.p.review {
		l.name, blocks = "Overview", m.overview(r.W-2*m.lay.pad())
		if m.single {
			blocks = append(m.farewell(r.W-2*m.lay.pad()), blocks...)
		}
	}
	l.now, m.p.turnTo = m.p.turnTo, 0
	m.p.page = m.leaf(l, blocks)
}

// farewell stands over the overview where nothing else is on the screen: what
// has come of it, and the way to hand the form in.
func (m *pageMaker) farewell(wide float64) []block {
	id, say := idHint, m.line()
	if m.p.said != "" {
		id, say = idEcho, m.p.said
	}
	out := m.wrapped(id, describe.Status, say, noteSize, false, wide)
	out[len(out)-1].close = false
	w := m.button(m.finish()).parts[0]
	if m.p.done != "" {
		w = m.button(m.saveAgain()).parts[0]
	}
	var b block
	b.add(w)
	return append(out, b)
}

func (m *pageMaker) finish() widget {
	return widget{id: idFinish, name: "Hand in the form", text: "Hand in"}
}

func (m *pageMaker) saveAgain() widget {
	return widget{id: idSaveAgain, name: "Save again what was handed in", text: "Save again"}
}

// controls are all that finds no room at the foot of a single column.
func (m *pageMaker) controls() []block {
	wide := m.lay.W - 2*m.lay.pad()
	out := m.wrapped(idTitle, describe.Heading, m.p.sit.Title(), 18, true, wide)
	if left, _ := m.p.sit.Remaining(); left != "" {
		out = append(out, m.wrapped(idLeft, describe.Label, left, noteSize, false, wide)...)
	}
	out[len(out)-1].close = false
	items := m.others()
	if ws := m.buttonWidgets(); len(ws) > 1 {
		items = append(items, m.button(ws[1]))
	}
	for _, row := range m.wrap(items, wide) {
		var b block
		x := 0.0
		for _, it := range row {
			for _, w := range it.parts {
				w.rect.X += x
				b.add(w)
			}
			x += it.width + m.itemGap()
		}
		out = append(out, b)
	}
	return out
}

// overview is a chip for each question: answered, open or flagged, in words.
func (m *pageMaker) overview(wide float64) []block {
	u, t := m.lay.Unit, m.lay.Text
	var ws []widget
	for i := range m.p.sit.Count() {
		w := m.styled(widget{id: idQuestion + describe.ID(i), text: m.mark(i), on: i == m.p.at}, chip)
		w.name = fmt.Sprintf("Question %s", strings.ReplaceAll(w.text, "\n", ", "))
		bold := w
		bold.bold = true
		w.rect.W, w.rect.H = m.width(bold)+24*u, max(44*u, 1.5*stepSize*t)
		if w.rect.W > wide {
			w = m.folded(w, wide)
		}
		ws = append(ws, w)
	}
	return m.inRows(ws, wide)
}

func (m *pageMaker) mark(i int) string {
	s := fmt.Sprint(i + 1)
	if g := m.p.sit.Given(i); g != "" {
		s += ": " + g
	} else {
		s += " open"
	}
	if text := m.p.draft(i); text != "" {
		s += ", " + text + " not kept yet"
	}
	if m.p.sit.Flagged(i) {
		s += ", flagged"
	}
	return s
}

func (m *pageMaker) describe() {
	var kids []describe.Node
	for _, z := range [...]zoneName{columnZone, sheetZone, stripZone, barZone} {
		for _, w := range m.zones[z].widgets {
			if w.id != 0 || w.focus {
				kids = append(kids, w.node())
			}
		}
		if r := m.s.room; z == columnZone && r.W > 0 {
			kids = append(kids, describe.Node{ID: idFigure, Role: describe.Image, Name: "Figure", Value: m.p.item().Alt(), Bounds: describe.Rect(r)})
		}
	}
	t := &m.s.tree
	t.Root = describe.Node{Role: describe.Group, Name: "Form", Bounds: describe.Rect{W: m.p.frame.W, H: m.p.frame.H}, Children: kids}
	if n := t.Find(m.p.focus); n == nil || !n.Focusable || n.Disabled {
		if o := t.Order(); len(o) > 0 {
			m.p.focus = o[0].ID
		}
		m.p.followed = m.p.focus
	}
	t.Focus = m.p.focus
}
