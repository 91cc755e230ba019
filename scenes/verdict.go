package scenes

import (
	"fmt"
	"slices"
	"strings"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// verdict is the card after a recorded answer: why it went wrong, by how much,
// and what to do next, in this order. What finds no room waits behind a button.
func (m *maker) verdict(y float64) {
	y = m.verdictHead(y + 4*m.lay.Unit)
	cause, advice := m.b.reasons()
	caused, marked := m.verdictRoom(y, cause, advice)
	m.unmarked = !marked
	status := widget{id: idVerdict, role: describe.Status, name: m.allSaid(), look: hidden, rect: draw.Rect{X: m.lay.Inner.X, Y: y, W: m.lay.Inner.W, H: m.controlHeight()}}
	if caused {
		w := m.causeBlock(cause, m.lay.Inner.W)
		w.rect.X, w.rect.Y = m.lay.Inner.X, y
		w.id, w.role, w.name = status.id, status.role, status.name
		m.add(columnZone, w)
		y += w.rect.H + 8*m.lay.Unit
	} else {
		m.add(columnZone, status)
	}
	if marked {
		y = m.putMarks(y)
	}
	switch {
	case (caused || cause == "") && marked && m.fits(y, advice):
		m.para(0, y, advice, false)
	case caused && marked:
		m.whyButton(y, "Advice")
	case caused:
		m.whyButton(y, "Figures and advice", "Advice")
	default:
		m.whyButton(y, "Why?")
	}
}

// verdictRoom says which parts of a verdict find room: its cause, and the marks.
// The cause comes first, the advice last.
func (m *maker) verdictRoom(y float64, cause, advice string) (caused, marked bool) {
	u := m.lay.Unit
	rows := m.marks()
	tall, foot := 22*m.lay.Text*float64(len(rows))+6*u, m.controlHeight()
	wide := !slices.ContainsFunc(rows, func(r [2]string) bool { return !m.rowFits(r[0], r[1]) })
	room := m.lay.Buttons - 8*u - y
	block := 0.0
	if cause != "" {
		block = m.causeBlock(cause, m.lay.Inner.W).rect.H + 8*u
	}
	caused = cause != "" && block+foot <= room
	if !caused {
		block = 0
	}
	return caused, wide && (block+tall+foot <= room || block > 0 && m.fits(y+block+tall, advice))
}

// verdictHead is the verdict in a word, and the points.
func (m *maker) verdictHead(y float64) float64 {
	v, t, in := m.b.verdict, m.lay.Text, m.lay.Inner
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
	return y + 1.3*size + 6*m.lay.Unit
}

// putMarks places the marks, and returns where the next begins.
func (m *maker) putMarks(y float64) float64 {
	for i, r := range m.marks() {
		for _, w := range m.mark(i, r, m.lay.Inner.W) {
			w.rect.X += m.lay.Inner.X
			w.rect.Y += y
			m.add(columnZone, w)
		}
		y += 22 * m.lay.Text
	}
	return y + 6*m.lay.Unit
}

// whyButton opens what of the verdict finds no room, by the first name that finds
// some.
func (m *maker) whyButton(y float64, names ...string) {
	var w widget
	for _, s := range names {
		w = m.styled(widget{id: idWhy, name: strings.TrimSuffix(s, "?"), value: m.b.verdict.Said, text: s}, outlined)
		if w.rect.W = m.width(w) + 28*m.lay.Unit; w.rect.W <= m.lay.Inner.W {
			break
		}
	}
	w.rect.X, w.rect.Y = m.lay.Inner.X, y
	m.add(columnZone, w)
	m.why = w.name
}

// causeBlock is why an answer went wrong, marked by a bar at its left.
func (m *maker) causeBlock(cause string, wide float64) widget {
	w := widget{look: plain, barred: true, bold: true, size: stepSize * m.lay.Text, leading: 22 * m.lay.Text, pad: 14 * m.lay.Unit}
	lines := draw.Wrap(draw.Bold, w.size, wide-w.pad, cause)
	w.text, w.rect = joinLines(lines), draw.Rect{W: wide, H: w.leading * float64(len(lines))}
	return w
}

// reasons are why the answer went wrong, or what of it did where nothing is
// probable, and what to do next time. A right answer has no cause.
func (b *Bench) reasons() (cause, advice string) {
	if b.verdict.Right {
		return "", b.verdict.Said
	}
	var causes, advices []string
	for _, f := range b.verdict.Mistakes {
		what := firstSentence(f.Said)
		if !slices.Contains(causes, what) {
			causes, advices = append(causes, what), append(advices, strings.TrimSpace(strings.TrimPrefix(f.Said, what)))
		}
	}
	if len(causes) == 0 {
		return b.verdict.Said, ""
	}
	return strings.Join(causes, " "), strings.Join(advices, " ")
}

// outcome is what of a verdict stands before its reasons.
func (b *Bench) outcome() string {
	s := b.verdict.Said
	for _, f := range b.verdict.Mistakes {
		s = strings.Replace(s, f.Said, "", 1)
	}
	return strings.TrimSpace(s)
}

// allSaid is the verdict for the ear, with the marks where they are not on the
// screen.
func (m *maker) allSaid() string {
	if !m.unmarked {
		return m.b.verdict.Said
	}
	cause, advice := m.b.reasons()
	words := []string{m.b.outcome()}
	if cause != words[0] {
		words = append(words, cause)
	}
	for _, r := range m.marks() {
		words = append(words, r[0]+": "+r[1]+".")
	}
	if advice != words[0] {
		words = append(words, advice)
	}
	return strings.Join(strings.Fields(strings.Join(words, " ")), " ")
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
