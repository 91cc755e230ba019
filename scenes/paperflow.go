package scenes

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
)

// sheet is the left part of two columns: title and figure, a question without
// a figure in large type, or all questions.
func (m *pageMaker) sheet() {
	z := &m.zones[sheetZone]
	z.rect = draw.Rect{W: m.lay.Scene.W, H: m.lay.Scene.Y + m.lay.Scene.H}
	z.ground = tableTop
	if m.p.review {
		m.panel(z.rect)
		return
	}
	y := 4 * m.lay.Unit
	if !m.beside { // with a column of its own it has all the height
		y = m.title()
	}
	if m.figure() != nil {
		side := m.lay.pad()
		m.hang(sheetZone, draw.Rect{X: side, Y: y + 8*m.lay.Unit, W: z.rect.W - 2*side, H: z.rect.H - y - 24*m.lay.Unit})
		return
	}
	ws, _ := m.large()
	for _, w := range ws {
		m.add(sheetZone, w)
	}
}

// title is the name of the form, and the time that is left.
func (m *pageMaker) title() float64 {
	y := m.titleTop()
	for _, b := range unrepeated(m.titleBlocks(m.lay.Scene.W - 2*m.lay.pad())) {
		for _, w := range b.parts {
			w.rect.X += m.lay.pad()
			w.rect.Y += y
			m.add(sheetZone, w)
		}
		y += b.h + 2*m.lay.Unit
	}
	return y
}

func (m *pageMaker) titleTop() float64 { return 20 * m.lay.Unit }

func (m *pageMaker) titleBlocks(wide float64) []block {
	out := m.wrapped(idTitle, describe.Heading, m.p.sit.Title(), titleSize, true, wide)
	if left, _ := m.p.sit.Remaining(); left != "" {
		out = append(out, m.wrapped(idLeft, describe.Label, left, noteSize, false, wide)...)
	}
	return out
}

// wrapped is a text, a line a block, so that it may go on over pages. Each
// page begins with a line that is described with the whole text.
func (m *sketch) wrapped(id describe.ID, role describe.Role, words string, size float64, bold bool, wide float64) []block {
	size *= m.lay.Text
	f := draw.Regular
	if bold {
		f = draw.Bold
	}
	lead := 1.35 * size
	var out []block
	for _, s := range draw.Wrap(f, size, wide, words) {
		b := block{close: true}
		b.add(widget{id: id, role: role, name: words, text: s, look: plain, size: size, bold: bold, leading: lead, rect: draw.Rect{W: wide, H: lead}})
		out = append(out, b)
	}
	return out
}

// large is a question without a figure, in large type where the figure would
// be, and its choices; it says whether they fit.
func (m *pageMaker) large() (ws []widget, ok bool) {
	u, t := m.lay.Unit, m.lay.Text
	top := m.titleTop()
	wide := m.lay.Scene.W - 2*m.lay.pad()
	for _, b := range m.titleBlocks(wide) {
		top += b.h + 2*u
	}
	room := m.lay.Scene.Y + m.lay.Scene.H - top - 24*u
	wide = min(wide, 640*t)
	for _, size := range []float64{28, 24, 20, stepSize} {
		w := widget{id: idPrompt, role: describe.Label, name: m.p.item().Prompt(), look: plain, size: size * t, leading: 1.45 * size * t}
		lines := draw.Wrap(draw.Regular, w.size, wide, w.name)
		w.text = joinLines(lines)
		w.rect = draw.Rect{X: m.lay.pad(), W: wide, H: w.leading * float64(len(lines))}
		choices := m.choices(wide, max(noteSize*t, .8*w.size))
		h := w.rect.H + 12*u
		for _, b := range choices {
			h += b.h + m.gapAfter(b)
		}
		if h > room {
			continue
		}
		w.rect.Y = top + (room-h)*.4
		ws = append(ws, w)
		y := w.rect.Y + w.rect.H + 12*u
		for _, b := range choices {
			for _, c := range b.parts {
				c.rect.X += m.lay.pad()
				c.rect.Y += y
				ws = append(ws, c)
			}
			y += b.h + m.gapAfter(b)
		}
		return ws, true
	}
	return nil, false
}

// question is what is asked, where the answer goes and what helps, in as many
// pages as that takes.
func (m *pageMaker) question() {
	z := &m.zones[columnZone]
	z.rect, z.ground = m.lay.Column, panelGround
	if m.single {
		z.ground = tableTop
	}
	m.part()
	if n := len(m.pages); n > 1 && m.lay.Tight && m.line() == m.ask() {
		m.mute = true
		if m.part(); len(m.pages) == n {
			m.mute = false
			m.part()
		}
	}
	if m.mute {
		m.add(columnZone, widget{id: idHint, role: describe.Status, name: m.line(), look: hidden, rect: m.lay.Inner})
	}
	m.follow()
	y := m.flow.Y
	put := func(b block) {
		for _, w := range b.parts {
			w.rect.X += m.flow.X
			w.rect.Y += y
			if w.id == idFigure {
				m.hang(columnZone, w.rect)
				continue
			}
			m.add(columnZone, w)
		}
		y += b.h + m.gapAfter(b)
	}
	if m.over {
		m.add(columnZone, widget{id: idSteps, role: describe.Heading, name: m.p.name(m.p.at), look: hidden, rect: m.lay.Inner})
	} else {
		put(m.headRow(len(m.pages)))
		for _, b := range unrepeated(m.pages[m.p.page]) {
			put(b)
		}
	}
	y = m.flow.Y + m.flow.H
	for _, b := range unrepeated(m.foot) {
		put(b)
	}
	if !m.single {
		m.buttons()
	}
}

// part puts the flow on its pages.
func (m *pageMaker) part() {
	in := m.lay.Inner
	m.flow = draw.Rect{X: in.X, Y: in.Y, W: in.W, H: m.lay.Buttons - 8*m.lay.Unit - in.Y}
	m.foot, m.over = nil, false
	blocks := m.blocks(0)
	m.pages = m.paginate(blocks, m.flow.H-m.headRow(1).h)
	if m.writes() && (m.flows() || len(m.pages) > 1) {
		m.setFoot()
		blocks = m.blocks(0)
		m.pages = m.paginate(blocks, m.flow.H-m.headRow(1).h)
	}
	if m.flows() {
		blocks = m.withFigure()
	}
	if len(m.pages) > 1 {
		m.pages = m.paginate(blocks, m.flow.H-m.headRow(2).h-m.gapAfter(block{}))
	}
}

// flows says that the figure stands in the flow of the question.
func (m *pageMaker) flows() bool { return m.single && !m.beside && m.figure() != nil }

// writes says that the keypad is open. Where the question goes over several
// pages, or would be turned away from it, the field and its keys stay below.
func (m *pageMaker) writes() bool {
	return m.p.pad && m.p.open() && !m.p.chooses()
}

// footWays are what field and keys may go without to find room below the flow,
// what is missed least first: the name of the field, keys in a grid, and the word
// for the way up, which then stands in the flow.
var footWays = [...]struct{ nameless, flat, wordless bool }{
	{},
	{nameless: true},
	{flat: true},
	{flat: true, nameless: true},
	{wordless: true},
	{wordless: true, nameless: true},
	{wordless: true, flat: true},
	{wordless: true, flat: true, nameless: true},
}

// setFoot puts field and keys below the flow, or where there is no room for both
// in its place.
func (m *pageMaker) setFoot() {
	a := m.p.item().Ask()
	least := m.headRow(2).h + 4*1.35*stepSize*m.lay.Text
	for _, left := range [...]float64{least, 0} {
		for _, way := range footWays {
			m.flat = way.flat
			m.foot = m.field(a, m.lay.Inner.W, a.WayUp && !way.wordless)
			if way.nameless {
				m.foot = withoutName(m.foot)
			}
			if h := m.tallOf(m.foot); h+left <= m.flow.H {
				m.flow.H, m.over = m.flow.H-h, left == 0
				return
			}
		}
	}
	low := 1.3 * fieldSize * m.lay.Text
	for i := range m.foot[0].parts {
		m.foot[0].parts[i].rect.H = low
	}
	m.foot[0].h = low
	m.over, m.flow.H = true, 0
}

// withoutName leaves out the lines above a field.
func withoutName(bs []block) []block {
	for len(bs) > 1 && bs[0].parts[0].id != idNotebook {
		bs = bs[1:]
	}
	return bs
}

func (m *sketch) tallOf(bs []block) float64 {
	h := 0.0
	for _, b := range bs {
		h += b.h + m.gapAfter(b)
	}
	return h
}

// follow turns to the page of what has just come up, or of the control that has
// the focus, when the focus has moved.
func (m *pageMaker) follow() {
	p := m.p
	p.page %= len(m.pages)
	to := p.turnTo
	if p.focus != p.followed {
		to = p.focus
	}
	if p.said != p.told && p.said != "" {
		to = idEcho
	}
	p.followed, p.told, p.turnTo = p.focus, p.said, 0
	for i, page := range m.pages {
		for _, b := range page {
			for _, w := range b.parts {
				if to != 0 && w.id == to {
					p.page = i
				}
			}
		}
	}
}

// unrepeated leaves the name of a text to its first line on the page.
func unrepeated(page []block) []block {
	seen := map[string]bool{}
	out := make([]block, len(page))
	for i, b := range page {
		out[i] = b
		out[i].parts = append([]widget(nil), b.parts...)
		for j := range out[i].parts {
			w := &out[i].parts[j]
			if w.look != plain || w.id == 0 {
				continue
			}
			if seen[w.name] {
				w.id, w.focus = 0, false
			}
			seen[w.name] = true
		}
	}
	return out
}

// headRow is the row at the top: which question, and the way to its next part.
func (m *pageMaker) headRow(pages int) block {
	t := m.lay.Text
	words := m.p.name(m.p.at)
	var b block
	w := widget{id: idSteps, role: describe.Heading, name: words, text: words, look: plain, bold: true, size: 20 * t, leading: 27 * t}
	wide := m.lay.Inner.W
	if pages > 1 {
		more := m.styled(widget{id: idPanelMore}, outlined)
		more.name, more.text = nextOf("part", m.p.page%pages, pages)
		more.size = noteSize * t
		more.rect.W, more.rect.H = m.width(more)+24*m.lay.Unit, m.rowHeight()
		more.rect.X = wide - more.rect.W
		wide = more.rect.X - 8*m.lay.Unit
		b.add(more)
	}
	if m.width(w) > wide {
		w.text = fmt.Sprintf("%d of %d", m.p.at+1, m.p.sit.Count())
	}
	w.rect = draw.Rect{W: wide, H: w.leading}
	w.rect.Y = max(0, (b.h-w.leading)/2)
	b.add(w)
	return b
}

// blocks are the parts of the flow, with tall px for the figure.
func (m *pageMaker) blocks(tall float64) []block {
	wide := m.lay.Inner.W
	var out []block
	gap := func() {
		if n := len(out); n > 0 {
			out[n-1].close = false
		}
	}
	text := func(id describe.ID, role describe.Role, s string, size float64) {
		out = append(out, m.wrapped(id, role, s, size, false, wide)...)
		gap()
	}
	tells := m.p.said != "" && !m.p.fresh && !m.p.asked
	first := m.lay.Tight || m.p.said == m.p.left // what comes from another question goes before this one
	if tells && first {
		text(idEcho, describe.Status, m.p.said, noteSize)
	}
	spent := m.lay.Tight && m.line() == spentLine
	if spent {
		text(idHint, describe.Status, spentLine, noteSize)
	}
	it := m.p.item()
	out = append(out, m.soft(m.wrapped(idWorth, describe.Label, m.worth(), noteSize, false, wide))...)
	gap()
	if m.single || m.figure() != nil {
		text(idPrompt, describe.Label, it.Prompt(), stepSize)
		if tall > 0 {
			var b block
			b.add(widget{id: idFigure, look: hidden, rect: draw.Rect{W: wide, H: tall}})
			out = append(out, b)
		}
		out = append(out, m.choices(wide, noteSize*m.lay.Text)...)
	}
	if !m.p.atBench() && !m.p.chooses() && m.foot == nil {
		out = append(out, m.field(it.Ask(), wide, true)...)
	} else if m.foot != nil && !m.worded(m.foot) {
		out = append(out, m.inRows(m.word(it.Ask()), wide)...)
	}
	taken, _, _ := m.p.sit.Hints(m.p.at)
	for i, h := range taken {
		out = append(out, m.soft(m.wrapped(idHintTaken+describe.ID(i), describe.Label, "Hint: "+h, noteSize, false, wide))...)
		gap()
	}
	if tells && !first {
		text(idEcho, describe.Status, m.p.said, noteSize)
	}
	if m.lay.Tight && !m.mute && !spent && m.line() != m.p.said {
		text(idHint, describe.Status, m.line(), noteSize)
	}
	return out
}

func (m *pageMaker) soft(bs []block) []block {
	for i := range bs {
		for j := range bs[i].parts {
			bs[i].parts[j].soft = true
		}
	}
	return bs
}

// withFigure makes the flow with its figure as large as leaves all on one
// page, or else of a fair size, and the pages.
func (m *pageMaker) withFigure() []block {
	room := m.flow.H - m.headRow(1).h - m.gapAfter(block{})
	wide := min(m.lay.Inner.W, 420*m.lay.Unit)
	ratio := figure.Of(m.shown(), 100, m.th).H / 100
	sizes := []float64{1, .85, .7, .6, .5}
	if m.isTable() {
		wide, sizes = min(m.lay.Inner.W, 360*m.lay.Text), sizes[:1] // what is to be read grows with the text
	}
	for _, k := range sizes {
		if h := k * wide * ratio; h >= 120*m.lay.Unit || m.isTable() {
			blocks := m.blocks(h)
			if m.pages = m.paginate(blocks, room); len(m.pages) == 1 {
				return blocks
			}
		}
	}
	again := m.flow.H - m.headRow(2).h - m.gapAfter(block{})
	blocks := m.blocks(min(wide*ratio, again))
	m.pages = m.paginate(blocks, again)
	return blocks
}

// name is what a question is called.
func (p *Paper) name(i int) string {
	return fmt.Sprintf("Question %d of %d", i+1, p.sit.Count())
}

func (m *pageMaker) worth() string {
	s := m.p.item().Kind().Title() + ", " + form.Points(m.p.sit.Points(m.p.at))
	switch n := m.p.sit.Left(m.p.at); {
	case m.p.done != "":
		s += ", handed in"
	case m.p.fresh:
		s += ", kept"
	case n == 0:
		s += ", no attempt left"
	case n == 1:
		s += ", one attempt left"
	case n < 20:
		s += fmt.Sprintf(", %d attempts left", n)
	}
	return s
}

// choices are a button each, with its letter.
func (m *pageMaker) choices(wide, size float64) []block {
	u := m.lay.Unit
	var out []block
	for i, c := range m.p.item().Ask().Choices {
		letter := string(rune('A' + i))
		w := m.styled(widget{id: idChoice + describe.ID(i), role: describe.Choice, name: letter + ": " + c, on: strings.EqualFold(m.p.note.String(), letter)}, chip)
		w.disabled = !m.p.open()
		w.size, w.align, w.leading = size, draw.AlignLeft, 1.3*size
		lines := draw.Wrap(draw.Bold, w.size, wide-24*u, letter+"  "+c)
		w.text = joinLines(lines)
		w.pad = 12 * u
		w.rect = draw.Rect{W: wide, H: max(m.leastTarget(), w.leading*float64(len(lines))+16*u)}
		var b block
		b.add(w)
		b.keep = w.on && m.tellsAtChoice()
		if out = append(out, b); b.keep {
			out = append(out, together(m.wrapped(idEcho, describe.Status, m.p.said, noteSize, false, wide))...)
		}
	}
	return out
}

// tellsAtChoice says that there is no bar to tell that a choice is kept: the
// choice itself tells it.
func (m *pageMaker) tellsAtChoice() bool { return m.lay.Tight && m.p.fresh && m.p.said != "" }

// together are blocks that stay on one page.
func together(bs []block) []block {
	for i := range bs {
		bs[i].keep = i+1 < len(bs)
	}
	bs[len(bs)-1].close = false
	return bs
}

// leastTarget is the least height of what can be pressed.
func (m *sketch) leastTarget() float64 {
	if m.lay.Phone {
		return 44 * m.lay.Unit
	}
	return 24 * m.lay.Unit
}

// overturned is the one word that an answer may hold.
const overturned = "overturned"

// word is the switch that writes the word where the question asks for it, or
// nothing.
func (m *pageMaker) word(a item.Ask) []widget {
	if !a.WayUp {
		return nil
	}
	w := m.styled(widget{id: idWayUp, role: describe.Toggle, name: describe.Capital(overturned) + ", written behind the plane", text: overturned, on: m.p.note.has(overturned)}, chip)
	w.disabled, w.bold = !m.p.open(), false // the room it takes stays the same
	w.rect.W, w.rect.H = m.width(w)+24*m.lay.Unit, max(44*m.lay.Unit, 1.5*w.size)
	return []widget{w}
}

func (m *pageMaker) worded(bs []block) bool {
	for _, b := range bs {
		for _, w := range b.parts {
			if w.id == idWayUp {
				return true
			}
		}
	}
	return false
}

// field is where the answer is written, under what it is, with the keypad while
// that is open, and the word where there is one.
func (m *pageMaker) field(a item.Ask, wide float64, worded bool) []block {
	u, t := m.lay.Unit, m.lay.Text
	name := a.Label
	if name == "" {
		name = "Answer"
	}
	words := describe.Capital(name)
	if a.Unit != "" {
		words += ", in " + a.Unit
	}
	out := m.wrapped(idFieldName, describe.Label, words, noteSize, true, wide)
	for i := range out {
		out[i].keep = true
	}
	out[len(out)-1].close = false // the mark of the focus needs room
	side := max(44*u, 36*t)
	caret := -1
	if m.p.caretOn() {
		caret = m.p.note.caret
	}
	var b block
	signs := describe.AnySigns
	if a.Kind == item.AskNumber {
		signs = describe.Decimals
	}
	b.add(widget{id: idNotebook, role: describe.Field, writes: signs, name: words, value: m.p.note.String(), text: m.p.note.String(),
		look: box, size: fieldSize * t, caret: caret, focus: m.p.open(), disabled: !m.p.open(), rect: draw.Rect{W: wide - 8*u - side, H: m.lay.fieldHeight()}})
	pad := m.styled(widget{id: idKeypad, role: describe.Toggle, name: "Write with buttons, 123", text: "123", on: m.p.pad}, chip)
	pad.size, pad.disabled = noteSize*t, !m.p.open()
	pad.rect = draw.Rect{X: wide - side, W: side, H: m.lay.fieldHeight()}
	b.add(pad)
	out = append(out, b)
	var word []widget
	if worded {
		word = m.word(a)
	}
	if m.p.pad && m.p.open() {
		return append(out, m.keypad(wide, word...)...)
	}
	return append(out, m.inRows(word, wide)...)
}
