package scenes

import (
	"fmt"
	"math"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/keymap"
	"cuesta/scenes/theme"
)

// paperScreen is a form as it stands on the screen.
type paperScreen struct {
	key     paperKey
	made    bool
	lay     layout
	tree    describe.Tree
	zones   [zoneCount]zone
	figure  draw.Texture
	figured figureKey
	top     float64 // where the room of the figure begins
}

type paperKey struct {
	w, h, scale float64
	set         Settings
	at, caret   int
	text, said  string
	given       string
	caretOn     bool
	review, pad bool
	done        string
	focus       describe.ID
	hints       int
	flagged     bool
	left        int
	remaining   string
}

// figureKey is what the figure was last painted for.
type figureKey struct {
	at    int
	w, h  float64
	th    theme.Name
	plane orient.Plane
}

func (s *paperScreen) keyOf(p *Paper) paperKey {
	taken, _, _ := p.sit.Hints(p.at)
	words, _ := p.sit.Remaining()
	return paperKey{
		w: p.frame.W, h: p.frame.H, scale: p.frame.Scale, set: p.set, at: p.at, caret: p.note.caret,
		text: p.note.String(), said: p.said, given: p.sit.Given(p.at), caretOn: p.caretOn(), review: p.review, pad: p.pad, done: p.done,
		focus: p.focus, hints: len(taken), flagged: p.sit.Flagged(p.at), left: p.sit.Left(p.at), remaining: words,
	}
}

func (p *Paper) caretOn() bool {
	return p.focus == idNotebook && p.open() && (p.set.Calm || p.blink < caretTicks)
}

func (s *paperScreen) build(p *Paper) {
	k := s.keyOf(p)
	if s.made && k == s.key {
		return
	}
	s.key, s.made = k, true
	m := pageMaker{p: p, s: s, sketch: sketch{th: theme.Of(p.set.Theme), zones: &s.zones}}
	m.make()
}

func (s *paperScreen) picture(p *Paper, l *draw.List) {
	l.Reset(p.frame.W, p.frame.H)
	for _, z := range [...]zoneName{sheetZone, stripZone, barZone, columnZone} {
		zone := &s.zones[z]
		if zone.texture.W == 0 {
			continue
		}
		l.Region(zone.rect)
		l.Sprite(&zone.texture, zone.rect.X, zone.rect.Y, 1, 1)
		if z == sheetZone && !p.review && s.figure.W > 0 {
			x := zone.rect.X + math.Round((zone.rect.W-float64(s.figure.W))/2)
			y := math.Round(s.top + (zone.rect.Y+zone.rect.H-s.top-float64(s.figure.H))/2)
			l.Sprite(&s.figure, x, y, 1, 1)
		}
	}
}

// pageMaker lays a question out.
type pageMaker struct {
	sketch
	p *Paper
	s *paperScreen
}

func (m *pageMaker) make() {
	m.measure()
	m.s.lay = m.lay
	m.clear()
	if m.lay.TooTiny {
		m.tooTiny()
	} else {
		m.sheet()
		m.strip()
		m.bar()
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
	for range 2 {
		f.StripRows = max(1, len(m.wrap(m.items(), m.lay.Strip.W-2*m.lay.pad())))
		f.BarLines = len(m.barLines())
		m.lay = layOut(f)
	}
}

func (m *pageMaker) tooTiny() {
	u := m.lay.Unit
	s := "This window is too small for the form. Make it larger; every answer is kept."
	z := &m.zones[sheetZone]
	z.rect, z.ground = draw.Rect{W: m.p.frame.W, H: m.p.frame.H}, panelGround
	m.add(sheetZone, widget{id: idHint, role: describe.Status, name: s, look: plain, size: 15 * u, leading: 20 * u,
		text: joinLines(draw.Wrap(draw.Regular, 15*u, max(m.p.frame.W-24*u, 40), s)), rect: draw.Rect{X: 12 * u, Y: 12 * u, W: m.p.frame.W, H: m.p.frame.H}})
}

// items are the controls that lead through the form.
func (m *pageMaker) items() []stripItem {
	flag := widget{id: idFlag, role: describe.Toggle, name: "Flag this question, to come back to it", text: "Flag", on: m.p.sit.Flagged(m.p.at)}
	out := []stripItem{
		m.button(widget{id: idBackward, name: "Previous question", text: "Back", keys: m.p.set.keysFor(keymap.LastItem)}),
		m.button(widget{id: idForward, name: "Next question", text: "Next", keys: m.p.set.keysFor(keymap.NextItem)}),
		m.choice([]widget{flag}),
		m.choice([]widget{{id: idOverview, role: describe.Toggle, name: "All questions", text: "Overview", on: m.p.review}}),
	}
	if m.p.done == "" {
		out = append(out, m.button(widget{id: idUndo, name: "Take the last answer back", text: "Undo", keys: "Ctrl Z"}),
			m.button(widget{id: idFinish, name: "Hand the form in", text: "Hand in"}))
	}
	if m.p.leave != nil {
		out = append(out, m.button(widget{id: idHall, name: "Menu: lectures, forms and more", text: "Menu", keys: m.p.set.keysFor(keymap.Menu)}))
	}
	return out
}

func (m *pageMaker) strip() {
	z := &m.zones[stripZone]
	z.rect, z.ground = m.lay.Strip, tableGround
	m.putRows(m.wrap(m.items(), m.lay.Strip.W-2*m.lay.pad()))
}

func (m *pageMaker) line() string {
	switch {
	case m.p.done != "":
		return m.p.done
	case m.p.review:
		return fmt.Sprintf("%d of %d answered. Go to a question, or hand the form in.", m.answered(), m.p.sit.Count())
	case m.p.sit.Left(m.p.at) == 0:
		return "No attempt is left for this question: go on to the next."
	case m.p.atBench():
		return "Measure the slab at the bench; what you record there is your answer."
	case m.p.sit.Given(m.p.at) != "":
		return "Kept. Go on to the next question, or change the answer while attempts are left."
	case m.p.chooses():
		return "Press the letter of your choice, then Enter to keep it."
	case m.p.item().Ask().Kind == item.AskSymbol:
		return "Turn the symbol with ↑ ↓, its dip with Shift ↑ ↓, or type strike and dip; Enter keeps it."
	default:
		return "Type the answer; Enter keeps it."
	}
}

func (m *pageMaker) answered() int {
	n := 0
	for i := range m.p.sit.Count() {
		if m.p.sit.Given(i) != "" {
			n++
		}
	}
	return n
}

func (m *pageMaker) barLines() []string {
	return draw.Wrap(draw.Regular, barSize*m.lay.Text, m.lay.Bar.W-2*m.lay.pad(), m.line())
}

func (m *pageMaker) bar() {
	r, size := m.lay.Bar, barSize*m.lay.Text
	z := &m.zones[barZone]
	z.rect, z.ground = r, barGround
	lines := m.barLines()
	h := 1.3 * size * float64(len(lines))
	m.add(barZone, widget{id: idHint, role: describe.Status, name: m.line(), text: joinLines(lines), look: plain, size: size, leading: 1.3 * size,
		rect: draw.Rect{X: m.lay.pad(), Y: r.Y + (r.H-h)/2, W: r.W - 2*m.lay.pad(), H: h}})
}

// sheet is the left part: title and figure, or all questions.
func (m *pageMaker) sheet() {
	u, t := m.lay.Unit, m.lay.Text
	z := &m.zones[sheetZone]
	z.rect = draw.Rect{W: m.lay.Scene.W, H: m.lay.Scene.Y + m.lay.Scene.H}
	z.ground = tableTop
	w := widget{id: idTitle, role: describe.Heading, name: m.p.sit.Title(), look: plain, size: titleSize * t, bold: true, leading: 1.3 * titleSize * t}
	lines := draw.Wrap(draw.Bold, w.size, z.rect.W-2*m.lay.pad(), m.p.sit.Title())
	w.text = joinLines(lines)
	w.rect = draw.Rect{X: m.lay.pad(), Y: 20 * u, W: z.rect.W - 2*m.lay.pad(), H: w.leading * float64(len(lines))}
	m.add(sheetZone, w)
	y := w.rect.Y + w.rect.H + 6*u
	if left, _ := m.p.sit.Remaining(); left != "" {
		m.add(sheetZone, widget{id: idLeft, role: describe.Label, name: left, text: left, look: plain, soft: true, size: noteSize * t, leading: 22 * t,
			rect: draw.Rect{X: m.lay.pad(), Y: y, W: w.rect.W, H: 22 * t}})
		y += 26 * t
	}
	switch {
	case m.p.review:
		m.overview(y + 10*u)
	case m.p.item().Figure() == nil:
		m.large(y)
	case m.crowded():
		y = m.promptAbove(y + 6*u)
	}
	m.s.top = y
}

// crowded says that the question does not fit in the column beside its figure.
func (m *pageMaker) crowded() bool {
	t, in := m.lay.Text, m.lay.Inner
	lines := draw.Wrap(draw.Regular, stepSize*t, in.W, m.p.item().Prompt())
	h := 80*t + 1.35*stepSize*t*float64(len(lines)) + m.choicesHeight(in.W, noteSize*t)
	if !m.p.chooses() {
		h += 30*t + m.lay.fieldHeight()
	}
	taken, _, _ := m.p.sit.Hints(m.p.at)
	for _, s := range taken {
		h += 21 * t * float64(1+len(draw.Wrap(draw.Regular, noteSize*t, in.W, s)))
	}
	return in.Y+h+40*t > m.lay.Buttons
}

// promptAbove puts the question above its figure.
func (m *pageMaker) promptAbove(y float64) float64 {
	t := m.lay.Text
	w := widget{id: idPrompt, role: describe.Label, name: m.p.item().Prompt(), look: plain, size: stepSize * t, leading: 1.35 * stepSize * t}
	wide := m.lay.Scene.W - 2*m.lay.pad()
	room := m.zones[sheetZone].rect.H - y - 8*m.lay.Unit
	if m.p.item().Figure() != nil {
		room *= .62
	}
	for {
		lines := draw.Wrap(draw.Regular, w.size, wide, w.name)
		w.text, w.leading = joinLines(lines), 1.35*w.size
		w.rect = draw.Rect{X: m.lay.pad(), Y: y, W: wide, H: w.leading * float64(len(lines))}
		if w.rect.H <= room || w.size <= noteSize*m.lay.Unit {
			break
		}
		w.size = max(noteSize*m.lay.Unit, .94*w.size)
	}
	m.add(sheetZone, w)
	return y + w.rect.H
}

// large is a question without a figure, in large type where the figure would
// be; smaller where it would not fit.
func (m *pageMaker) large(y float64) {
	z, t := m.zones[sheetZone].rect, m.lay.Text
	w := widget{id: idPrompt, role: describe.Label, name: m.p.item().Prompt(), look: plain}
	wide := min(z.W-2*m.lay.pad(), 640*t)
	below := 0.0
	for _, size := range []float64{28, 24, 20, stepSize} {
		w.size, w.leading = size*t, 1.45*size*t
		lines := draw.Wrap(draw.Regular, w.size, wide, w.name)
		w.text = joinLines(lines)
		w.rect = draw.Rect{X: m.lay.pad(), W: wide, H: w.leading * float64(len(lines))}
		below = m.choicesHeight(wide, .8*w.size) + 12*m.lay.Unit
		if m.choicesBeside() {
			below = 0
		}
		if w.rect.H+below <= z.H-y-24*m.lay.Unit {
			break
		}
	}
	w.rect.Y = max(y, y+(z.H-y-w.rect.H-below)*.4)
	m.add(sheetZone, w)
	if !m.choicesBeside() {
		m.choices(sheetZone, w.rect.X, w.rect.Y+w.rect.H+12*m.lay.Unit, wide, .8*w.size)
	}
}

// choicesBeside says that the choices of a question without a figure stand in
// the column, since large type leaves no room for them under the question.
func (m *pageMaker) choicesBeside() bool { return m.lay.Text > 1.3*m.lay.Unit }

// overview is a chip for each question: answered, open or flagged, in words.
func (m *pageMaker) overview(y float64) {
	u, t := m.lay.Unit, m.lay.Text
	x0, right := m.lay.pad(), m.lay.Scene.W-m.lay.pad()
	x, h := x0, max(44*u, 1.5*stepSize*t)
	for i := range m.p.sit.Count() {
		w := m.styled(widget{id: idQuestion + describe.ID(i), text: m.mark(i), on: i == m.p.at}, chip)
		w.name = fmt.Sprintf("Question %s", strings.ReplaceAll(w.text, "\n", ", "))
		wide := w
		wide.bold = true
		w.rect = draw.Rect{X: x, Y: y, W: m.width(wide) + 24*u, H: h}
		if x > x0 && x+w.rect.W > right {
			x, y = x0, y+h+8*u
			w.rect.X, w.rect.Y = x, y
		}
		m.add(sheetZone, w)
		x += w.rect.W + 8*u
	}
}

func (m *pageMaker) mark(i int) string {
	s := fmt.Sprint(i + 1)
	if g := m.p.sit.Given(i); g != "" {
		s += ": " + g
	} else {
		s += " open"
	}
	if m.p.sit.Flagged(i) {
		s += ", flagged"
	}
	return s
}

// question is the column: what is asked, where the answer goes, what helps.
func (m *pageMaker) question() {
	u, t, in := m.lay.Unit, m.lay.Text, m.lay.Inner
	z := &m.zones[columnZone]
	z.rect, z.ground = m.lay.Column, panelGround
	it, p := m.p.item(), m.p
	y := m.text(widget{id: idSteps, role: describe.Heading, bold: true, size: 20 * t}, in.Y, p.name(p.at))
	y = m.text(widget{role: describe.Label, soft: true, size: noteSize * t}, y, m.worth())
	if it.Figure() != nil && !m.crowded() || m.p.review {
		y = m.text(widget{id: idPrompt, role: describe.Label, size: stepSize * t}, y+6*u, it.Prompt())
	}
	if (it.Figure() != nil || m.choicesBeside()) && !p.review {
		size := noteSize * t
		for m.choicesHeight(in.W, size) > m.lay.Buttons-y-30*t && size > noteSize*u {
			size = max(noteSize*u, .94*size)
		}
		y = m.choices(columnZone, in.X, y+4*u, in.W, size)
	}
	if !p.atBench() && !p.chooses() {
		y = m.field(it.Ask(), y+6*u)
	}
	taken, _, _ := p.sit.Hints(p.at)
	for _, h := range taken {
		y = m.text(widget{role: describe.Label, soft: true, size: noteSize * t}, y+2*u, "Hint: "+h)
	}
	if p.said != "" {
		m.text(widget{id: idEcho, role: describe.Status, size: noteSize * t}, y+4*u, p.said)
	}
	m.buttons()
}

// name is what a question is called.
func (p *Paper) name(i int) string {
	return fmt.Sprintf("Question %d of %d", i+1, p.sit.Count())
}

func (m *pageMaker) worth() string {
	s := m.p.item().Kind().Title() + fmt.Sprintf(", %.3g points", m.p.sit.Points(m.p.at))
	switch n := m.p.sit.Left(m.p.at); {
	case m.p.done != "":
	case n == 1:
		s += ", one attempt left"
	case n < 20:
		s += fmt.Sprintf(", %d attempts left", n)
	}
	return s
}

// text adds a paragraph to the column and returns where the next begins.
func (m *pageMaker) text(w widget, y float64, s string) float64 {
	w.look, w.name = plain, s
	w.leading = 1.35 * w.size
	lines := draw.Wrap(w.font(), w.size, m.lay.Inner.W, s)
	w.text = joinLines(lines)
	w.rect = draw.Rect{X: m.lay.Inner.X, Y: y, W: m.lay.Inner.W, H: w.leading * float64(len(lines))}
	if w.id == 0 && w.role == describe.Label {
		w.id = idPanelText
	}
	m.add(columnZone, w)
	return y + w.rect.H + 4*m.lay.Unit
}

// choices are a button each, with its letter.
func (m *pageMaker) choices(z zoneName, x, y, wide, size float64) float64 {
	u := m.lay.Unit
	for i, c := range m.p.item().Ask().Choices {
		letter := string(rune('A' + i))
		w := m.styled(widget{id: idChoice + describe.ID(i), role: describe.Choice, name: letter + ": " + c, on: strings.EqualFold(m.p.note.String(), letter)}, chip)
		w.disabled = !m.p.open()
		w.size, w.align, w.leading = size, draw.AlignLeft, 1.3*size
		lines := draw.Wrap(draw.Bold, w.size, wide-24*u, letter+"  "+c)
		w.text = joinLines(lines)
		w.pad = 12 * u
		w.rect = draw.Rect{X: x, Y: y, W: wide, H: w.leading*float64(len(lines)) + 16*u}
		m.add(z, w)
		y += w.rect.H + 6*u
	}
	return y
}

// choicesHeight is the room choices need.
func (m *pageMaker) choicesHeight(wide, size float64) float64 {
	h := 0.0
	for i, c := range m.p.item().Ask().Choices {
		lines := draw.Wrap(draw.Bold, size, wide-24*m.lay.Unit, string(rune('A'+i))+"  "+c)
		h += 1.3*size*float64(len(lines)) + 22*m.lay.Unit
	}
	return h
}

func (m *pageMaker) field(a item.Ask, y float64) float64 {
	u, t, in := m.lay.Unit, m.lay.Text, m.lay.Inner
	name := a.Label
	if name == "" {
		name = "Answer"
	}
	unit := a.Unit
	words := upperFirst(name)
	if unit != "" {
		words += ", in " + unit
	}
	y = m.text(widget{role: describe.Label, bold: true, size: noteSize * t}, y, words)
	side := max(44*u, 36*t)
	caret := -1
	if m.p.caretOn() {
		caret = m.p.note.caret
	}
	m.add(columnZone, widget{id: idNotebook, role: describe.Field, name: words, value: m.p.note.String(), text: m.p.note.String(),
		look: box, size: fieldSize * t, caret: caret, focus: m.p.open(), rect: draw.Rect{X: in.X, Y: y, W: in.W - 8*u - side, H: m.lay.fieldHeight()}})
	pad := m.styled(widget{id: idKeypad, role: describe.Toggle, name: "Write with buttons", text: "123", on: m.p.pad}, chip)
	pad.size, pad.disabled = noteSize*t, !m.p.open()
	pad.rect = draw.Rect{X: in.X + in.W - side, Y: y, W: side, H: m.lay.fieldHeight()}
	m.add(columnZone, pad)
	y += m.lay.fieldHeight() + 8*u
	if m.p.pad && m.p.open() {
		y = m.padBelow(y)
	}
	return y
}

// padBelow puts the keypad under the field, as far as there is room.
func (m *pageMaker) padBelow(y float64) float64 {
	for _, b := range m.keypad(m.lay.Inner.W) {
		if y+b.h > m.lay.Buttons-8*m.lay.Unit {
			break
		}
		for _, w := range b.parts {
			w.rect.X += m.lay.Inner.X
			w.rect.Y += y
			m.add(columnZone, w)
		}
		y += b.h + 6*m.lay.Unit
	}
	return y
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	return strings.ToUpper(string(r[0])) + string(r[1:])
}

// buttons are the filled one, which keeps the answer, and the hint.
func (m *pageMaker) buttons() {
	u, in := m.lay.Unit, m.lay.Inner
	first, second := "Keep answer", "Hint"
	if m.p.atBench() {
		first = "Go to the bench"
	}
	_, more, cost := m.p.sit.Hints(m.p.at)
	if more && cost > 0 {
		second = fmt.Sprintf("Hint (−%.0f %%)", 100*cost)
	}
	closed := m.p.done != "" || m.p.sit.Left(m.p.at) == 0
	h, gap := 44*m.lay.control(), 12*u
	w := (in.W - gap) / 2
	mk := func(id describe.ID, s string, l look, x float64, off bool) widget {
		return widget{id: id, role: describe.Button, name: s, text: s, look: l, size: noteSize * m.lay.Text, bold: true, align: draw.AlignCentre,
			focus: true, disabled: off, rect: draw.Rect{X: x, Y: m.lay.Buttons, W: w, H: h}}
	}
	m.add(columnZone, mk(idPrimary, first, filled, in.X, closed))
	if more && !closed {
		m.add(columnZone, mk(idSecondary, second, outlined, in.X+w+gap, false))
	}
}

func (m *pageMaker) describe() {
	var kids []describe.Node
	for _, z := range [...]zoneName{columnZone, sheetZone, stripZone, barZone} {
		for _, w := range m.zones[z].widgets {
			if w.id != 0 || w.focus {
				kids = append(kids, w.node())
			}
		}
		if z == columnZone && !m.lay.TooTiny && m.p.item().Figure() != nil {
			r := m.lay.Scene
			kids = append(kids, describe.Node{ID: idFigure, Role: describe.Image, Name: "Figure", Value: m.p.item().Alt(), Bounds: describe.Rect(r)})
		}
	}
	t := &m.s.tree
	t.Root = describe.Node{Role: describe.Group, Name: "Form", Bounds: describe.Rect{W: m.p.frame.W, H: m.p.frame.H}, Children: kids}
	if n := t.Find(m.p.focus); n == nil || !n.Focusable || n.Disabled {
		if o := t.Order(); len(o) > 0 {
			m.p.focus = o[0].ID
		}
		m.s.key.focus = m.p.focus
	}
	t.Focus = m.p.focus
}

// paint makes the figure of the question, when it is another one.
func (m *pageMaker) paint() {
	f := m.shown()
	if f == nil || m.lay.TooTiny {
		m.s.figure.W = 0
		return
	}
	k := figureKey{at: m.p.at, w: m.lay.Scene.W, h: m.lay.Scene.H - m.s.top, th: m.p.set.Theme}
	if mf, ok := f.(item.MapFigure); ok {
		k.plane = mf.Plane
	}
	if k == m.s.figured && m.s.figure.W > 0 {
		return
	}
	m.s.figured = k
	room := m.zones[sheetZone].rect.H - m.s.top - 32*m.lay.Unit
	side := math.Floor(min(m.lay.Scene.W-2*m.lay.pad(), room))
	l := figure.Of(f, side, m.th)
	if l.H > room {
		l = figure.Of(f, math.Floor(side*room/l.H), m.th)
	}
	m.s.figure.W, m.s.figure.H = int(math.Ceil(l.W)), int(math.Ceil(l.H))
	m.s.figure.List = l
	m.s.figure.Version++
}

// shown is the figure of the question; a symbol that is being drawn shows as
// it stands.
func (m *pageMaker) shown() item.Figure {
	it := m.p.item()
	if it.Ask().Kind == item.AskSymbol {
		if e, err := orient.Parse(m.p.note.String(), m.p.sit.Notation()); err == nil {
			return item.MapFigure{Plane: e.Plane}
		}
	}
	return it.Figure()
}
