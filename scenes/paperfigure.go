package scenes

import (
	"math"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
)

// figure is that of the question, or nil.
func (m *pageMaker) figure() item.Figure { return m.p.item().Figure() }

// isTable says that the figure is a table of readings, which is all text.
func (m *pageMaker) isTable() bool {
	_, ok := m.figure().(item.TableFigure)
	return ok
}

// hang gives the figure its room. Pressed where it stands it is enlarged.
func (m *pageMaker) hang(z zoneName, room draw.Rect) {
	if m.s.room = room; m.beside {
		return // it is as large as the window allows
	}
	name := "Enlarge the figure"
	if m.p.large {
		name = "Make the figure small again"
	}
	m.add(z, widget{id: idEnlarge, role: describe.Button, name: name, look: lens, focus: true, rect: m.fitted(room)})
}

// fitted is where the figure comes to stand in a room.
func (m *pageMaker) fitted(room draw.Rect) draw.Rect {
	ratio := figure.Of(m.shown(), 100, m.th).H / 100
	wide := min(room.W, room.H, room.H/ratio)
	if m.isTable() {
		wide = min(room.W, 420*m.lay.Text, room.H/ratio)
	}
	tall := wide * ratio
	return draw.Rect{X: room.X + (room.W-wide)/2, Y: room.Y + (room.H-tall)/2, W: wide, H: tall}
}

// enlarged is the figure over the whole window, and the way back.
func (m *pageMaker) enlarged() {
	u, pad := m.lay.Unit, m.lay.pad()
	z := &m.zones[sheetZone]
	z.ground, z.rect = tableTop, draw.Rect{W: m.lay.W, H: m.lay.H}
	m.add(sheetZone, widget{id: idSteps, role: describe.Heading, name: m.p.name(m.p.at) + ", figure", look: hidden, rect: z.rect})
	back := m.button(widget{id: idClosePanel, name: "Back to the question", text: "Back", keys: "Escape"}).parts[0]
	back.rect.X, back.rect.Y = m.lay.W-pad-back.rect.W, 12*u
	room := draw.Rect{X: pad, Y: 12 * u, W: back.rect.X - 2*pad, H: m.lay.H - 24*u}
	y := back.rect.Y + back.rect.H + 12*u
	if below := (draw.Rect{X: pad, Y: y, W: m.lay.W - 2*pad, H: m.lay.H - y - 12*u}); m.fitted(below).W > m.fitted(room).W {
		room = below
	}
	m.hang(sheetZone, room)
	m.add(sheetZone, back)
}

// paint makes the figure of the question, when it is another one.
func (m *pageMaker) paint() {
	f, r := m.shown(), m.s.room
	if f == nil || r.W == 0 {
		m.s.figure.W = 0
		return
	}
	k := figureKey{at: m.p.at, w: r.W, h: r.H, th: m.p.set.Theme}
	if mf, ok := f.(item.MapFigure); ok {
		k.plane = mf.Plane
	}
	if k == m.s.figured && m.s.figure.W > 0 {
		return
	}
	m.s.figured = k
	side := math.Floor(min(r.W, r.H))
	if m.isTable() {
		side = math.Floor(min(r.W, 420*m.lay.Text))
	}
	l := figure.Of(f, side, m.th)
	if l.H > r.H {
		l = figure.Of(f, math.Floor(side*r.H/l.H), m.th)
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
