package scenes

import (
	"fmt"
	"strings"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// verdict is the card after a recorded answer: what was right, by how much,
// and the probable reason of what was not. What finds no room waits behind Why.
func (m *maker) verdict(y float64) {
	v, u, t, in := m.b.verdict, m.lay.Unit, m.lay.Text, m.lay.Inner
	y += 4 * u
	size := 20 * t
	if m.lay.Tight {
		size = 17 * t
	}
	head := widget{text: m.b.verdictWord(), look: plain, size: size, bold: true, leading: 1.3 * size, rect: draw.Rect{X: in.X, Y: y, W: in.W, H: 1.3 * size}}
	points := widget{text: fmt.Sprintf("%.3g of %.3g", v.Points, v.Of), look: plain, size: noteSize * t, soft: true, leading: 1.3 * size, align: draw.AlignRight,
		rect: draw.Rect{X: in.X, Y: y, W: in.W, H: 1.3 * size}}
	head.id, head.role, head.name, head.value = idVerdictHead, describe.Heading, head.text, points.text
	m.add(columnZone, head)
	if m.width(head)+m.width(points)+8*t <= in.W {
		m.add(columnZone, points)
	}
	y += 1.3*size + 4*u
	marks := m.marks()
	rows := 22 * t * float64(len(marks))
	m.unmarked = y+rows+6*u+m.controlHeight() > m.lay.Buttons-8*u
	for _, r := range marks {
		m.unmarked = m.unmarked || !m.rowFits(r[0], r[1])
	}
	if !m.unmarked {
		for i, r := range marks {
			for _, w := range m.mark(i, r, in.W) {
				w.rect.X += in.X
				w.rect.Y += y
				m.add(columnZone, w)
			}
			y += 22 * t
		}
		y += 6 * u
		if m.fits(y, v.Said) {
			m.para(idVerdict, y, v.Said, false)
			return
		}
	}
	w := m.styled(widget{id: idWhy, name: "Why", value: v.Said, text: "Why?"}, outlined)
	w.rect.X, w.rect.Y, w.rect.W = in.X, y, m.width(w)+28*u
	m.add(columnZone, w)
	m.add(columnZone, widget{id: idVerdict, role: describe.Status, name: m.unseen(), look: hidden, rect: w.rect})
}

func (b *Bench) verdictWord() string {
	if b.verdict.Right {
		return "Right"
	}
	return "Not yet right"
}

// mark is a row of the verdict: what, and how it was.
func (m *maker) mark(i int, r [2]string, wide float64) [2]widget {
	t := m.lay.Text
	w := widget{text: r[0], look: plain, size: noteSize * t, leading: 22 * t, rect: draw.Rect{W: wide, H: 22 * t}}
	v := w
	v.text, v.bold, v.align = r[1], true, draw.AlignRight
	w.id, w.role, w.name, w.value = idMark+describe.ID(i), describe.Label, r[0], r[1]
	return [2]widget{w, v}
}

// rowFits says whether a row of the verdict has room for what and how.
func (m *maker) rowFits(what, how string) bool {
	ws := m.mark(0, [2]string{what, how}, m.lay.Inner.W)
	return m.width(ws[0])+m.width(ws[1])+8*m.lay.Text <= m.lay.Inner.W
}

// fits says whether a paragraph fits above the buttons.
func (m *maker) fits(y float64, s string) bool {
	lines := draw.Wrap(draw.Regular, noteSize*m.lay.Text, m.lay.Inner.W, s)
	return y+21*m.lay.Text*float64(len(lines)) <= m.lay.Buttons-8*m.lay.Unit
}

// marks are the parts of the verdict, each by itself.
func (m *maker) marks() [][2]string {
	v := m.b.verdict
	word := func(name string, ok bool, s string, most orient.Angle) [2]string {
		if ok {
			s = "right, " + s
		}
		if whole := s + ", " + tenths(most) + " allowed"; m.rowFits(name, whole) {
			s = whole
		}
		return [2]string{name, s}
	}
	tol := m.b.ses.Options().Tolerance
	side := func(ok bool) string {
		if ok {
			return "right"
		}
		return "the other"
	}
	var out [][2]string
	if v.StrikeAsked {
		out = append(out, word("Strike line", v.StrikeRight, v.StrikeOff(), tol.Strike(m.b.ses.Truth().Dip)))
	}
	out = append(out, word("Dip", v.DipRight, v.DipOff(), tol.Dip))
	if v.StrikeAsked && !v.EndAsked {
		out = append(out, [2]string{"Side it falls to", side(v.SideRight)})
	}
	if v.EndAsked && v.StrikeRight {
		out = append(out, [2]string{"Right-hand end", side(v.EndRight)})
	}
	if m.lay.Round.R == 0 {
		return append([][2]string{{"Written", m.b.text}}, out...)
	}
	return append(out, [2]string{"Angle between poles", fmt.Sprintf("%.1f°", v.PoleAngle.Degrees())})
}

// tenths is an angle to a tenth of a degree, without the tenth where it is whole.
func tenths(a orient.Angle) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", a.Degrees()), ".0") + "°"
}
