package scenes

import (
	"fmt"
	"strings"

	"cuesta/quiz/item"
	"cuesta/quiz/lab"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// passage is a paragraph of the sheet.
type passage struct {
	id    describe.ID
	role  describe.Role
	text  string
	size  float64
	least float64 // in which it is still set where there is little room
	bold  bool
	soft  bool
	spare bool // left out of the picture where there is no room; it stays in the description
}

// sheet is the left part: what is asked, and what came of it.
func (m *labMaker) sheet() {
	z := &m.zones[sheetZone]
	z.rect, z.ground = draw.Rect{W: m.lay.Scene.W, H: m.lay.Scene.Y + m.lay.Scene.H}, tableTop
	words := m.words()
	if keys, at := m.keys(); at == sheetZone {
		y := m.top()
		if y+40*m.lay.Unit+m.rowsHeight(keys) <= z.rect.H {
			y = m.passages(words[:1], y, y+40*m.lay.Unit)
		} else {
			words[0].spare = true
			m.passages(words[:1], y, 0)
		}
		m.place(keys, sheetZone, m.lay.pad(), y)
		return
	}
	if m.s.key.step == askReading && m.verdictBeside(words) {
		words = words[:len(words)-1]
	}
	bottom := z.rect.H - 8*m.lay.Unit
	if m.s.key.step != askReading {
		bottom -= 92 * m.lay.Unit // a row of choices, and the way to the next page
	}
	y := m.passages(words, m.top(), bottom)
	switch m.s.key.step {
	case askWho:
		m.chips(m.students(), y, stepSize)
	case askWhere:
		m.chips(m.stations(), y, 26)
	case askReading:
	}
}

// top is where the sheet begins.
func (m *labMaker) top() float64 {
	if m.lay.Tight {
		return 8 * m.lay.Unit
	}
	return 16 * m.lay.Unit
}

// words are the paragraphs of the sheet; the last at a station is what came of
// the reading.
func (m *labMaker) words() []passage {
	t, least := m.lay.Text, noteSize*m.lay.Unit
	head := func(s string, size float64) passage {
		return passage{id: idTitle, role: describe.Heading, text: s, size: size * t, least: 20 * m.lay.Unit, bold: true}
	}
	said := passage{id: idVerdict, role: describe.Status, text: m.l.said, size: 18 * t, least: least}
	switch m.s.key.step {
	case askWho:
		out := []passage{head("Who reads?", 30), said}
		switch {
		case len(m.l.room.Roster()) == 0:
			out = append(out, m.cautions()...)
		case len(m.l.found()) == 0:
			out = append(out, passage{id: idPanelText, role: describe.Label, text: "Nobody on the roster is written like this.", size: stepSize * t, least: least})
		}
		return out
	case askWhere:
		return []passage{head("Which station?", 30), said}
	case askReading:
	}
	i, _ := m.l.room.Station()
	it := m.l.room.Item(i)
	out := []passage{head("Station "+it.Station().Name, 56), {id: idPrompt, role: describe.Label, text: promptOf(it), size: stepSize * t, least: least, spare: true}}
	if rs := m.l.room.Readings(i); len(rs) > 0 {
		out = append(out, passage{id: idPanelText, role: describe.Label, text: "Your readings here: " + strings.Join(rs, "; "), size: stepSize * t, least: least, soft: true, spare: true})
	}
	return append(out, said)
}

// promptOf is what is asked at a station, whose name stands above it.
func promptOf(it item.AtStation) string {
	return describe.Capital(strings.TrimLeft(strings.TrimPrefix(it.Prompt(), "Station "+it.Station().Name), "., "))
}

// cautions are the usual ones, where there is room; the shortest stands in the
// bar in any case.
func (m *labMaker) cautions() []passage {
	if !m.l.room.Lab().Cautions {
		return nil
	}
	text := strings.Join(lab.Cautions, " ")
	return []passage{{id: idNotice, role: describe.Label, text: text, size: stepSize * m.lay.Text, least: noteSize * m.lay.Unit, soft: true, spare: true}}
}

// passages sets paragraphs one below the other and returns where they end.
// Where there is little room they are set smaller, then without what can be
// spared; of a last one that is still too long a page is shown at a time.
func (m *labMaker) passages(ps []passage, y, bottom float64) float64 {
	shrink, bare := m.fit(ps, y, bottom)
	for i, p := range ps {
		w := m.set(p, y, shrink)
		switch {
		case p.text == "":
			continue
		case bare && p.spare:
			w.look, w.text, w.rect.H = hidden, "", 0
			m.add(sheetZone, w)
			continue
		case i == len(ps)-1 && w.rect.Y+w.rect.H > bottom && p.id == idVerdict:
			m.paged(w, bottom)
			return bottom
		}
		m.add(sheetZone, w)
		y = w.rect.Y + w.rect.H + 6*m.lay.Unit
	}
	return y
}

// fit is how much smaller paragraphs are set to end above bottom, and whether
// what can be spared is left out.
func (m *labMaker) fit(ps []passage, y, bottom float64) (shrink float64, bare bool) {
	for shrink = 1; ; shrink *= .92 {
		end, smallest := m.lowest(ps, y, shrink, bare)
		switch {
		case end <= bottom || smallest && bare:
			return shrink, bare
		case smallest:
			shrink, bare = 1/.92, true
		}
	}
}

// lowest is where the paragraphs would end, and whether all are as small as
// they may be.
func (m *labMaker) lowest(ps []passage, y, shrink float64, bare bool) (end float64, smallest bool) {
	smallest = true
	for _, p := range ps {
		if p.text == "" || bare && p.spare {
			continue
		}
		w := m.set(p, y, shrink)
		y = w.rect.Y + w.rect.H + 6*m.lay.Unit
		smallest = smallest && w.size <= p.least
	}
	return y, smallest
}

// paged shows as many lines of a text as fit, and the way to the others.
func (m *labMaker) paged(w widget, bottom float64) {
	u := m.lay.Unit
	more := m.styled(widget{id: idPanelMore, text: "First page"}, outlined)
	more.size = noteSize * u
	more.rect = draw.Rect{W: m.width(more) + 16*u, H: max(28*u, 1.5*more.size)}
	lines := splitLines(w.text)
	n := max(1, int((bottom-more.rect.H-4*u-w.rect.Y)/w.leading))
	pages := (len(lines) + n - 1) / n
	at := m.l.page % pages
	lines = lines[at*n : min(len(lines), at*n+n)]
	w.text, w.rect.H = joinLines(lines), w.leading*float64(len(lines))
	m.add(sheetZone, w)
	more.name, more.text = nextPage(at, pages)
	more.rect.X, more.rect.Y = w.rect.X+w.rect.W-more.rect.W, bottom-more.rect.H
	m.add(sheetZone, more)
}

// set is a paragraph of the sheet at a height.
func (m *labMaker) set(p passage, y, shrink float64) widget {
	w := widget{id: p.id, role: p.role, name: strings.ReplaceAll(p.text, "\n", " "), look: plain, size: max(min(p.least, p.size), p.size*shrink), bold: p.bold, soft: p.soft}
	w.leading = 1.35 * w.size
	wide := m.lay.Scene.W - 2*m.lay.pad()
	lines := m.wrapped(w.font(), w.size, wide, p.text)
	w.text = joinLines(lines)
	w.rect = draw.Rect{X: m.lay.pad(), Y: y, W: wide, H: w.leading * float64(len(lines))}
	return w
}

// wrapped are the lines of a text whose paragraphs are parted by \n.
func (m *labMaker) wrapped(f draw.Font, size, wide float64, text string) []string {
	var lines []string
	for _, part := range strings.Split(text, "\n") {
		lines = append(lines, draw.Wrap(f, size, wide, part)...)
	}
	return lines
}

// students are the names to choose from.
func (m *labMaker) students() []widget {
	var out []widget
	roster := m.l.room.Roster()
	for _, i := range m.l.found() {
		s := roster[i]
		out = append(out, widget{id: idStudent + describe.ID(i), name: strings.TrimSpace(s.ID + " " + s.Name), text: strings.TrimSpace(s.ID + "  " + draw.Printed(s.Name))})
	}
	return out
}

// stations are those to choose from, with what has been read there.
func (m *labMaker) stations() []widget {
	var out []widget
	for _, i := range m.l.foundStations() {
		name := m.l.room.Names()[i]
		w := widget{id: idQuestion + describe.ID(i), text: name}
		if n := len(m.l.room.Readings(i)); n == 1 {
			w.text += ": 1 reading"
		} else if n > 1 {
			w.text = fmt.Sprintf("%s: %d readings", w.text, n)
		}
		w.name = "Station " + w.text
		if words := m.l.room.Item(i).Station().Words; words != "" {
			w.name += ", " + words
		}
		out = append(out, w)
	}
	return out
}

// chips lays choices out in rows below y, as many to a page as fit; in smaller
// type where not even one row would.
func (m *labMaker) chips(ws []widget, y, size float64) {
	u, box := m.lay.Unit, m.chipBox(y)
	size *= m.lay.Text
	for size > noteSize*u && m.rowOf(size)+m.moreOf(size).rect.H+8*u > box.H {
		size = max(noteSize*u, .9*size)
	}
	more := m.moreOf(size)
	pages := m.chipPages(ws, size, box)
	if len(pages) > 1 {
		box.H -= more.rect.H + 8*u
		pages = m.chipPages(ws, size, box)
	}
	at := m.l.page % len(pages)
	for _, w := range pages[at] {
		m.add(sheetZone, w)
	}
	if len(pages) > 1 {
		more.name, more.text = nextPage(at, len(pages))
		more.rect.X, more.rect.Y = box.X+box.W-more.rect.W, box.Y+box.H+8*u
		m.add(sheetZone, more)
	}
}

// chipBox is the room below y.
func (m *labMaker) chipBox(y float64) draw.Rect {
	pad := m.lay.pad()
	return draw.Rect{X: pad, Y: y, W: m.lay.Scene.W - 2*pad, H: m.zones[sheetZone].rect.H - 8*m.lay.Unit - y}
}

// rowOf is the height of a row of choices in a size of type.
func (m *labMaker) rowOf(size float64) float64 { return max(44*m.lay.Unit, 1.9*size) }

// moreOf is the way to the next page.
func (m *labMaker) moreOf(size float64) widget {
	w := m.styled(widget{id: idPanelMore, text: "First page"}, outlined)
	w.size = min(w.size, size)
	w.rect = draw.Rect{W: m.width(w) + 20*m.lay.Unit, H: max(32*m.lay.Unit, 1.5*w.size, m.leastTarget())}
	return w
}

// chipPages breaks choices into rows, and rows into pages.
func (m *labMaker) chipPages(ws []widget, size float64, box draw.Rect) [][]widget {
	gap := 8 * m.lay.Unit
	pages := [][]widget{nil}
	x, y := box.X, box.Y
	for _, w := range ws {
		w = m.styled(w, chip)
		w.size, w.rect.H = size, m.rowOf(size)
		w.text = m.clipped(w, box.W-1.5*size)
		w.rect.W = min(max(m.width(w)+1.5*size, w.rect.H), box.W)
		if x > box.X && x+w.rect.W > box.X+box.W {
			x, y = box.X, y+w.rect.H+gap
		}
		if y+w.rect.H > box.Y+box.H && len(pages[len(pages)-1]) > 0 {
			pages = append(pages, nil)
			x, y = box.X, box.Y
		}
		w.rect.X, w.rect.Y = x, y
		pages[len(pages)-1] = append(pages[len(pages)-1], w)
		x += w.rect.W + gap
	}
	return pages
}

// clipped is the text of a widget, cut to a width.
func (m *labMaker) clipped(w widget, wide float64) string {
	text := []rune(w.text)
	for cut := w; len(text) > 1 && m.width(cut) > wide; {
		text = text[:len(text)-1]
		cut.text = string(text) + "…"
		if m.width(cut) <= wide {
			return cut.text
		}
	}
	return w.text
}
