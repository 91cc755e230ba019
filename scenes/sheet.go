package scenes

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"cuesta/quiz"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

func (b *Bench) choose(id describe.ID) { b.Choose(b.set.with(id)) }

func (b *Bench) open(p panel) {
	b.over = b.over.opened(b.panel, p, b.focus)
	b.panel, b.page, b.keys = p, 0, keyList{}
	switch p {
	case noPanel:
		b.focus = idInstrument
	case settingsPanel:
		b.focus = idSetNotation + describe.ID(b.set.Notation)
	case helpPanel, whyPanel, controlsPanel, keypadPanel, keysPanel:
		b.focus = idClosePanel
	}
}

// shut closes the panel, and goes back to what it was opened over.
func (b *Bench) shut() {
	over := b.over
	if b.open(over.panel); over.panel != noPanel {
		b.focus = over.focus
	}
}

// beneath is the panel that another was opened over, and what had the focus
// there. The zero value is none.
type beneath struct {
	panel panel
	focus describe.ID
}

// opened is what lies beneath a panel that opens while now is open: help leads
// back to the settings.
func (u beneath) opened(now, p panel, focus describe.ID) beneath {
	switch {
	case p == helpPanel && now == helpPanel:
		return u
	case p == helpPanel && now == settingsPanel:
		return beneath{now, focus}
	}
	return beneath{}
}

// back is where the way back leads, in words; scene is what the panels lie over.
func (u beneath) back(scene string) string {
	if u.panel == settingsPanel {
		return "the settings"
	}
	return scene
}

// pressPanel moves among the choices, and makes them.
func (b *Bench) pressPanel(p input.Press) {
	switch p.Key {
	case input.Enter, input.Space:
		b.act(b.focus)
	case input.Left, input.Right, input.Up, input.Down:
		b.arrow(p.Key)
	}
}

// arrow moves the focus in a panel. Below its last row the next page begins.
func (b *Bench) arrow(k input.Key) {
	lines := 0
	if b.panel == helpPanel {
		lines = b.lines
	}
	t, turns := &b.screen.tree, false
	b.keyed = true
	if b.focus, turns = inPanel(t, b.screen.zones[sheetZone].rect, b.focus, k, lines); turns {
		b.page++
		b.focus = idClosePanel
		b.screen.build(b)
		b.focus = firstInPanel(t)
	}
}

// sheet is the panel in place of the rock.
func (m *maker) sheet() {
	if m.s.told {
		m.pages("Notice", m.paragraph(widget{id: idNotice, role: describe.Status, name: m.b.notice}, m.b.notice))
		return
	}
	switch m.b.panel {
	case noPanel:
		return
	case settingsPanel:
		m.pages("Settings", m.settings())
	case helpPanel:
		rows := m.helpLines()
		m.b.lines = len(rows)
		m.open(leaf{name: "Help", about: linesOf(len(rows))}, m.help(rows))
	case keysPanel:
		m.pages("Keys", m.keyRows(m.b.keys, m.b.set, m.sheetWidth()))
	case controlsPanel:
		m.pages(m.controlsName(), m.controls())
	case whyPanel:
		m.pages(cmp.Or(m.why, "Why"), m.wholeVerdict())
	case keypadPanel:
		m.writing()
	}
}

// block is a row of a panel; its widgets count from its own upper left corner.
type block struct {
	parts []widget
	h     float64
	close bool // the next block follows without a gap
	keep  bool // the next block stands on the same page
}

func (b *block) add(w widget) {
	b.parts = append(b.parts, w)
	b.h = max(b.h, w.rect.Y+w.rect.H)
}

// leaf is a panel of pages: where it lies, which page is open, what it is
// called and where its Back goes.
type leaf struct {
	rect draw.Rect
	page int
	name string
	back string

	about string      // said behind the name
	now   describe.ID // what has the focus
}

// pages opens a panel over the rock.
func (m *maker) pages(name string, blocks []block) { m.open(leaf{name: name}, blocks) }

// open opens a panel over the rock, on the page where the focus is.
func (m *maker) open(f leaf, blocks []block) {
	f.rect, f.page, f.now, f.back = m.lay.Sheet, m.b.page, m.b.focus, "Back to "+m.b.over.back("the bench")
	m.b.page = m.leaf(f, blocks)
	m.s.key.page = m.b.page
}

// leaf lays blocks out below the name of a panel; what does not fit goes on
// the next page. It returns the page that is open, which is where what has the
// focus stands.
func (m *sketch) leaf(f leaf, blocks []block) (page int) {
	u, r := m.lay.Unit, f.rect
	z := &m.zones[sheetZone]
	z.ground, z.rect = sheetGround, r
	top := r.Y + 12*u + m.headHeight(f) + 12*u
	pages := m.paginate(blocks, r.Y+r.H-8*u-top)
	f.page = pageOf(pages, f.page, f.now)
	m.sheetHead(f, len(pages))
	y := top
	for _, b := range unrepeated(pages[f.page%len(pages)]) {
		for _, w := range b.parts {
			w.rect.X += r.X + m.lay.pad()
			w.rect.Y += y
			m.add(sheetZone, w)
		}
		y += b.h + m.gapAfter(b)
	}
	return f.page
}

// paginate puts blocks on as many pages as they need, each of a height. A
// block that is higher than a page is parted between its rows.
func (m *sketch) paginate(blocks []block, room float64) [][]block {
	page := make([][]block, 1)
	y := 0.0
	for len(blocks) > 0 {
		b := blocks[0]
		blocks = blocks[1:]
		at := len(page) - 1
		need, last := b.h, b
		for i := 0; last.keep && i < len(blocks); i++ {
			need += m.gapAfter(last) + blocks[i].h
			last = blocks[i]
		}
		if y+need > room && len(page[at]) > 0 {
			page, y, at = append(page, nil), 0, at+1
		}
		if rest, ok := b.part(room); ok {
			blocks = append([]block{rest}, blocks...)
		}
		page[at] = append(page[at], b)
		y += b.h + m.gapAfter(b)
	}
	return page
}

// part cuts the rows off that go beyond a height, and says whether there were
// any. The first row always stays.
func (b *block) part(room float64) (rest block, ok bool) {
	if b.h <= room {
		return rest, false
	}
	top := math.Inf(1)
	for _, w := range b.parts {
		if w.rect.Y > 0 && w.rect.Y+w.rect.H > room {
			top = min(top, w.rect.Y)
		}
	}
	if math.IsInf(top, 1) {
		return rest, false
	}
	all := b.parts
	*b = block{close: b.close}
	rest.close = b.close
	for _, w := range all {
		if w.rect.Y < top {
			b.add(w)
			continue
		}
		w.rect.Y -= top
		rest.add(w)
	}
	return rest, true
}

func (m *sketch) gapAfter(b block) float64 {
	if b.close {
		return 0
	}
	return m.blockGap()
}

func (m *sketch) blockGap() float64 { return 7 * m.lay.Unit }

// narrow says that names stand above what belongs to them, not beside it.
func (m *maker) narrow() bool { return m.lay.Sheet.W < 420*m.lay.Text }

// panelHead is the row at the top of a panel: its name, and the ways on and back.
func (m *sketch) panelHead(f leaf, pages int) (title, more, back widget) {
	t := m.lay.Text
	name := f.name
	if pages > 1 {
		name = fmt.Sprintf("%s %d/%d", name, f.page%pages+1, pages)
	}
	title = widget{id: idPanelTitle, role: describe.Heading, name: name, value: f.about, text: name, look: plain, size: titleSize * t, bold: true, leading: 30 * t}
	title.rect.W, title.rect.H = m.width(title), title.leading
	more = m.styled(widget{id: idPanelMore}, outlined)
	more.name, more.text = nextPage(f.page%pages, pages)
	back = m.styled(widget{id: idClosePanel, name: f.back, text: "Back", keys: "Escape"}, outlined)
	more.rect.W, back.rect.W = m.width(more)+28*m.lay.Unit, m.width(back)+28*m.lay.Unit
	return title, more, back
}

// stacked says that the name of a panel stands above its buttons.
func (m *sketch) stacked(f leaf) bool {
	title, more, back := m.panelHead(leaf{name: f.name, back: f.back}, 10)
	return title.rect.W+more.rect.W+back.rect.W+30*m.lay.Unit > f.rect.W-2*m.lay.pad()
}

func (m *sketch) headHeight(f leaf) float64 {
	h := max(28*m.lay.Text, m.controlHeight())
	if m.stacked(f) {
		h += 30 * m.lay.Text
	}
	return h
}

func (m *sketch) sheetHead(f leaf, pages int) {
	u, r := m.lay.Unit, f.rect
	title, more, back := m.panelHead(f, pages)
	title.rect.X, title.rect.Y = r.X+m.lay.pad(), r.Y+12*u
	y := title.rect.Y
	if m.stacked(f) {
		y += title.rect.H
	} else {
		title.leading = max(28*m.lay.Text, m.controlHeight())
		title.rect.H = title.leading
	}
	m.add(sheetZone, title)
	x := r.X + r.W - m.lay.pad()
	back.rect.X, back.rect.Y = x-back.rect.W, y
	if pages > 1 {
		more.rect.X, more.rect.Y = back.rect.X-10*u-more.rect.W, y
		m.add(sheetZone, more)
	}
	m.add(sheetZone, back)
}

func (m *maker) sheetWidth() float64 { return m.lay.Sheet.W - 2*m.lay.pad() }

// settings are rows of choices.
func (m *maker) settings() []block {
	var out []block
	for _, o := range m.b.set.options() {
		out = append(out, m.choices(o))
	}
	out = append(out, m.keysRow())
	return append(out, m.helpLine(widget{id: idPanelText, role: describe.Label, name: "So far: " + m.b.soFar(), text: "So far", bold: true}, m.b.soFar(), namesWide*m.lay.Text)...)
}

// soFar is what the student has done up to now, in words.
func (b *Bench) soFar() string {
	var parts []string
	for c := range quiz.Classes {
		s := b.tally.Classes[c]
		if s.Total == 0 {
			continue
		}
		parts = append(parts, fmt.Sprintf("%s dips %d of %d right", quiz.DipClass(c), s.Right, s.Total))
	}
	if len(parts) == 0 {
		return "no plane recorded yet"
	}
	words := strings.Join(parts, ", ")
	if f := b.tally.Focus(); len(f) > 0 {
		words += "; most often: " + strings.ReplaceAll(f[0].String(), "-", " ")
	}
	return words + "."
}

func (m *maker) choices(o option) block { return m.optionRow(o, m.sheetWidth()) }

// namesWide is the width of the names of settings before their choices.
const namesWide = 130.0

// optionRow is the name of a setting with its choices, in rows no wider than
// wide.
func (m *sketch) optionRow(o option, wide float64) block {
	u, t := m.lay.Unit, m.lay.Text
	h := m.rowHeight()
	name := widget{text: o.name, look: plain, size: noteSize * t, bold: true, leading: h, rect: draw.Rect{H: h}}
	name.rect.W = m.width(name)
	x0, y := namesWide*t, 0.0
	if wide < 620*t {
		x0, y = 0, h
	}
	var b block
	b.add(name)
	x := x0
	for i, s := range o.words {
		c := m.styled(widget{id: o.first + describe.ID(i), role: describe.Choice, group: o.name, name: o.name + ": " + s, text: s, on: i == o.at}, chip)
		c.size = noteSize * t
		bold := c
		bold.bold = true
		w := max(m.width(bold)+20*u, m.leastTarget())
		if x > x0 && x+w > wide {
			x, y = x0, y+h+6*u
		}
		c.rect = draw.Rect{X: x, Y: y, W: w, H: h}
		if w > wide-x0 {
			c = m.folded(c, wide-x0)
			y += c.rect.H - h
		}
		b.add(c)
		x += w + 8*u
	}
	return b
}

// folded is a chip whose words go over several lines.
func (m *sketch) folded(c widget, wide float64) widget {
	lines := draw.Wrap(draw.Bold, c.size, wide-20*m.lay.Unit, c.text)
	c.text, c.leading = joinLines(lines), 1.35*c.size
	c.rect.W, c.rect.H = wide, max(c.rect.H, c.leading*float64(len(lines))+.4*c.size)
	return c
}

// rowHeight is the height of the smaller controls of a panel; fingers need
// more on a phone.
func (m *sketch) rowHeight() float64 {
	if m.lay.Phone {
		return max(44*m.lay.Unit, 1.5*noteSize*m.lay.Text)
	}
	return max(36*m.lay.Unit, 1.5*noteSize*m.lay.Text)
}

// controlsName is the name of the panel of all controls: the title, where that
// finds no room on the bench.
func (m *maker) controlsName() string {
	if m.untitled() {
		return m.titleWords(titleSize * m.lay.Text)
	}
	return "All controls"
}

// controls are all that the strip and the menu hold where there is room.
func (m *maker) controls() []block {
	m.upright = false
	items := m.items()
	if m.alone() {
		items = append(items, m.button(m.buttonWidgets()[1]))
	}
	if m.lay.Lone { // what is large stands in its place
		items = append(items, m.button(m.readOut()))
	}
	menu := m.menuWidgets()
	view := stripItem{}
	for i, w := range menu {
		w.role = describe.Button
		it := m.button(w)
		if i > 2 { // the first three turn the eye, and stay together
			items = append(items, it)
			continue
		}
		it.parts[0].rect.X = view.width
		view.parts, view.width = append(view.parts, it.parts[0]), view.width+it.width+4*m.lay.Unit
		if i == 2 {
			items = append(items, view)
		}
	}
	var out []block
	for _, row := range m.wrap(items, m.sheetWidth()) {
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

// wholeVerdict is all of the verdict: its cause, the marks where they are not
// beside it, what is wrong, and what to do next.
func (m *maker) wholeVerdict() []block {
	cause, advice := m.b.reasons()
	text := widget{id: idPanelText, role: describe.Label, name: m.b.verdict.Said}
	stands := text
	stands.bold, stands.barred, stands.pad = true, true, 14*m.lay.Unit
	out := m.paragraph(stands, cause)
	if m.lay.Tight || m.lay.Phone || m.unmarked {
		out = append(out, m.markBlocks()...)
	}
	if outcome := m.b.outcome(); outcome != cause && outcome != advice {
		out = append(out, m.paragraph(text, outcome)...)
	}
	return append(out, m.paragraph(text, advice)...)
}

// markBlocks are the marks, a row each; where what and how find no room beside
// each other, one below the other.
func (m *maker) markBlocks() []block {
	var out []block
	wide := min(m.sheetWidth(), 420*m.lay.Text)
	for i, r := range m.marks() {
		var b block
		mark := m.mark(i, r, wide)
		if m.width(mark[0])+m.width(mark[1])+8*m.lay.Text > wide {
			mark[1].rect.Y += mark[0].rect.H
		}
		b.add(mark[0])
		b.add(mark[1])
		b.close = true
		out = append(out, b)
	}
	out[len(out)-1].close = false
	return out
}

// paragraph is a text line by line, so that it may go on over pages; every line
// is part of the widget w.
func (m *maker) paragraph(w widget, words string) []block {
	if words == "" {
		return nil
	}
	w.look, w.size, w.leading = plain, noteSize*m.lay.Text, 21*m.lay.Text
	var out []block
	for _, s := range draw.Wrap(w.font(), w.size, min(m.sheetWidth(), 600*m.lay.Text)-w.pad, words) {
		w.text, w.rect = s, draw.Rect{W: m.sheetWidth(), H: w.leading}
		b := block{close: true}
		b.add(w)
		out = append(out, b)
	}
	out[len(out)-1].close = false
	return out
}
