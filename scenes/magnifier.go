package scenes

import (
	"unicode"
	"unicode/utf8"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// magnifier is one of the round insets.
type magnifier uint8

const (
	noMagnifier magnifier = iota
	levelMagnifier
	scaleMagnifier
	hingeMagnifier
)

// The controls that draw a magnifier in the place of the rock, and take it back.
const (
	idMagnifyLevel describe.ID = iota + 90
	idMagnifyScale
	idMagnifyHinge
)

func (g magnifier) control() describe.ID { return idMagnifyLevel + describe.ID(g-levelMagnifier) }

// magnifierOf is the magnifier of a control, or none.
func magnifierOf(id describe.ID) magnifier {
	if id < idMagnifyLevel || id > idMagnifyHinge {
		return noMagnifier
	}
	return levelMagnifier + magnifier(id-idMagnifyLevel)
}

// magnified is the magnifier that stands in the place of the rock.
func (b *Bench) magnified() magnifier {
	if b.phase != measuring || b.view.large == hingeMagnifier && b.obs.Seat != sim.OnLid {
		return noMagnifier
	}
	return b.view.large
}

// magnify draws a magnifier large, or as before.
func (b *Bench) magnify(g magnifier) {
	if b.phase != measuring {
		return
	}
	if b.magnified() == g {
		g = noMagnifier
	}
	b.view.large = g
}

// magnifyNext is the magnifier that a key draws large: the one with the focus,
// else the level while its bubble is out, and the scale once it is home. The same
// key takes it back.
func (b *Bench) magnifyNext() magnifier {
	centred := b.obs.Round.Centred
	switch b.obs.Seat {
	case sim.OnSide:
		centred = b.obs.Tube.Centred
	case sim.OnBack:
		centred = true
	case sim.OnEdge, sim.OnLid:
	}
	switch {
	case b.magnified() != noMagnifier:
		return b.magnified()
	case magnifierOf(b.focus) != noMagnifier:
		return magnifierOf(b.focus)
	case centred:
		return scaleMagnifier
	}
	return levelMagnifier
}

// places are where the magnifiers stand, in reading order; no radius: not there.
func (l *layout) places() [3]struct {
	magnifier
	circle
} {
	return [3]struct {
		magnifier
		circle
	}{{levelMagnifier, l.Round}, {hingeMagnifier, l.Hinge}, {scaleMagnifier, l.Dial}}
}

// lenses are the magnifiers that can be pressed where they stand, while the place
// of the rock is in view. The one that is large has its control beside the menu.
func (m *maker) lenses() {
	if m.hides(m.lay.Scene) {
		return
	}
	for _, p := range m.lay.places() {
		if p.R == 0 || p.magnifier == m.b.magnified() {
			continue
		}
		w := widget{id: p.control(), role: describe.Button, name: "Magnify the " + uncapital(m.nameOf(p.magnifier)), look: lens, focus: true, rect: p.box()}
		if p.magnifier == m.b.magnifyNext() {
			w.keys = m.b.set.keysFor(keymap.Magnify)
		}
		m.add(magnifierZone, w)
	}
}

func (c circle) box() draw.Rect { return draw.Rect{X: c.X - c.R, Y: c.Y - c.R, W: 2 * c.R, H: 2 * c.R} }

func (m *maker) nameOf(g magnifier) string {
	level, scale := m.insetNames()
	switch g {
	case scaleMagnifier:
		return scale[0]
	case hingeMagnifier:
		return m.hingeName()[0]
	case levelMagnifier, noMagnifier:
	}
	return level[0]
}

func uncapital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToLower(r)) + s[n:]
}

// smaller is the control that brings the rock back, in front of the menu, or
// nothing.
func (m *maker) smaller() []widget {
	g := m.b.magnified()
	if g == noMagnifier {
		return nil
	}
	return []widget{{id: g.control(), name: "Smaller: back from the " + uncapital(m.nameOf(g)) + " to the rock", text: "Smaller", keys: m.b.set.keysFor(keymap.Magnify)}}
}

// enlarge finds the place of the large magnifier: as large as menu and title leave
// room for, beside them or below.
func (m *maker) enlarge() {
	if m.b.magnified() == noMagnifier {
		return
	}
	r, menu, title := m.lay.Scene, m.s.zones[menuZone].rect, m.s.zones[titleZone].rect
	under := max(r.Y, menu.Y+menu.H)
	places := []draw.Rect{
		sides(r.X, max(under, title.Y+title.H), r.X+r.W, r.Y+r.H),
		sides(r.X, max(r.Y, title.Y+title.H), menu.X, r.Y+r.H),
		sides(max(r.X, title.X+title.W), r.Y, menu.X, r.Y+r.H),
	}
	if m.lay.Title.H > 0 || title.W == 0 || under >= title.Y+title.H {
		places = append(places, sides(r.X, under, r.X+r.W, r.Y+r.H))
	}
	for _, p := range places {
		if d := min(p.W, p.H) - 12*m.lay.Unit; d > 2*m.lay.Large.R {
			m.lay.Large = circle{p.X + p.W/2, p.Y + p.H/2, d / 2}
		}
	}
	if m.lay.Lone {
		m.unshown()
	}
}

func sides(left, top, right, low float64) draw.Rect {
	return draw.Rect{X: left, Y: top, W: right - left, H: low - top}
}

// unshown describes the magnifiers while one of them has the place of all.
func (m *maker) unshown() {
	level, scale := m.insetNames()
	m.add(menuZone, insetNode(idRound, level, m.lay.Large))
	if m.lay.Hinge.R != 0 {
		m.add(menuZone, insetNode(idHinge, m.hingeName(), m.lay.Large))
	}
	m.add(menuZone, insetNode(idDial, scale, m.lay.Large))
}

// large draws the magnifier that stands in the place of the rock.
func (s *screen) large(b *Bench, l *draw.List) {
	th := theme.Of(b.set.Theme)
	l.Region(s.lay.Scene)
	flood(l, s.lay.Scene, th.Panel)
	b.inset(l, th, b.magnified(), s.lay.Large)
}

// inset draws a magnifier in a circle.
func (b *Bench) inset(l *draw.List, th *theme.Theme, g magnifier, c circle) {
	switch at := (draw.Point{X: c.X, Y: c.Y}); g {
	case levelMagnifier:
		b.levelInset(l, th, c)
	case scaleMagnifier:
		b.scaleInset(l, th, c)
	case hingeMagnifier:
		b.insets.Hinge(l, th, at, c.R, b.obs.Hinge)
	case noMagnifier:
	}
}

// onLarge says that a pointer is on the magnifier that is large, there or where
// it usually stands.
func (b *Bench) onLarge(x, y float64) bool {
	g := b.magnified()
	if g == noMagnifier || b.panel != noPanel || b.screen.told {
		return false
	}
	if contains(b.screen.lay.Large.box(), x, y) {
		return true
	}
	for _, p := range b.screen.lay.places() {
		if p.magnifier == g && !b.screen.lay.Lone && contains(p.box(), x, y) {
			return true
		}
	}
	return false
}
