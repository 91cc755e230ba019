package scenes

import (
	"math"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/figure"
)

// figure is that of the question, or nil.
func (m *pageMaker) figure() item.Figure { return m.p.item().Figure() }

// isTable says that the figure is a table of readings, which is all text.
func (m *pageMaker) isTable() bool {
	_, ok := m.figure().(item.TableFigure)
	return ok
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
