package scenes

import (
	"fmt"
	"math"
	"strings"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// apart says that the title has a row of its own above the rock. Words on the
// place need it where they would reach over the slab.
func (m *maker) apart() bool {
	if m.b.field.Declination != 0 && (m.lay.Low || m.lay.Text > 1.2*m.lay.Unit) {
		return true
	}
	return m.lay.Phone || !m.lay.Low && (m.lay.W < 1024*m.lay.Unit || m.lay.Text > 1.3*m.lay.Unit)
}

// untitled says that there is no room for a title: it then stands under More.
func (m *maker) untitled() bool { return m.lay.Tight && !m.lay.Phone }

// stepless says that there is no room for the steps beside the rock: the name
// then tells the one under way.
func (m *maker) stepless() bool {
	if !m.lay.Low {
		return m.lay.Tight
	}
	if m.crowded() {
		return true
	}
	_, wide := m.steps()
	return m.lay.pad()+wide > m.lay.Scene.W/2-24*m.lay.Unit
}

// crowded says that the rock of a low window comes close to a title in larger
// text, which stands over it.
func (m *maker) crowded() bool {
	return m.lay.Low && m.lay.Text > m.lay.Unit && !m.apart()
}

// headerHeight is the height of that row.
func (m *maker) headerHeight() float64 {
	if !m.apart() || m.untitled() {
		return 0
	}
	z := &m.zones[titleZone]
	z.widgets = z.widgets[:0]
	m.title()
	h := z.rect.H
	z.widgets = z.widgets[:0]
	return h
}

// title is the name of the task, its steps and what must be known of the
// place. Apart from the rock they flow in one row as far as there is room.
func (m *maker) title() {
	if m.untitled() {
		m.add(titleZone, widget{id: idTitle, role: describe.Heading, name: m.titleWords(titleSize * m.lay.Text), value: m.b.where(), look: hidden, rect: m.lay.Scene})
		return
	}
	u, t := m.lay.Unit, m.lay.Text
	x, y := m.lay.pad(), 20*u
	size := titleSize * t
	if m.lay.W < 1024*u {
		y = 12 * u
	}
	name := m.titleWords(size)
	if m.apart() || m.lay.Low {
		size, y = 20*t, 10*u
	}
	w := widget{id: idTitle, role: describe.Heading, name: name, value: m.b.where(), text: name, look: plain, size: size, bold: true, leading: 1.3 * size}
	w.rect = draw.Rect{X: x, Y: y, W: m.width(w), H: 1.3 * size}
	m.add(titleZone, w)
	right, bottom := x+w.rect.W, y+1.3*size
	steps, wide := m.steps()
	if m.stepless() {
		bottom += 4 * u
	} else if sx := right + 24*u; m.apart() && sx+wide < m.lay.Scene.W-m.lay.pad() {
		right, bottom = m.putSteps(steps, m.lay.Scene.W-m.lay.pad()-wide, y+3*u), bottom+6*u
	} else {
		right = max(right, m.putSteps(steps, x, bottom+6*u))
		bottom += 6*u + 1.3*stepSize*t + 8*u
	}
	right, bottom = m.place(x, bottom, right)
	z := &m.zones[titleZone]
	z.ground, z.rect = m.overRock(), draw.Rect{X: math.Floor(x - 14*u), Y: 6 * u, W: math.Ceil(right - x + 28*u), H: math.Ceil(bottom - 6*u)}
	if m.b.notice != "" || m.crowded() { // it reaches over the stone
		z.ground = plateGround
	}
	if m.apart() {
		z.ground, z.rect = tableTop, draw.Rect{W: m.lay.Scene.W, H: max(m.lay.Title.H, math.Ceil(bottom+4*u))}
	}
}

// where says that a question is being answered here, and not on the screen of the
// form, which has the same name.
func (b *Bench) where() string {
	if b.exam == nil {
		return ""
	}
	return "at the bench"
}

// titleWords are the name of the task, and where there is no room for its
// steps, the one under way.
func (m *maker) titleWords(size float64) string {
	name := fmt.Sprintf("Bedding, station %d", m.b.number)
	switch {
	case m.b.exam != nil:
		name = m.b.exam.name
	case m.apart() || m.lay.Low:
		name = fmt.Sprintf("Station %d", m.b.number)
	}
	if !m.stepless() {
		return name
	}
	whole := name + ": " + [...]string{"strike", "dip", "note"}[m.b.task()]
	if m.b.atOnce() && m.b.task() == 0 {
		whole = name + ": both"
	}
	room := m.lay.Scene.W - 2*m.lay.pad()
	if m.lay.Low {
		room -= 80 * m.lay.Text
	}
	if draw.Measure(draw.Bold, size, whole, 0) > room {
		return name
	}
	return whole
}

// stepNames are the parts of the task and the one under way, from 0.
func (m *maker) stepNames() (names []string, now int) {
	if m.b.atOnce() {
		return []string{"1 Both at once", "2 Note"}, m.b.task() / 2
	}
	return []string{"1 Strike", "2 Dip", "3 Note"}, m.b.task()
}

// steps are the parts of the task, and how wide they are together.
func (m *maker) steps() (ws []widget, wide float64) {
	u, size := m.lay.Unit, stepSize*m.lay.Text
	names, now := m.stepNames()
	ws = make([]widget, len(names))
	for i, name := range names {
		on := i == now
		ws[i] = widget{text: name, look: tab, size: size, leading: 1.3 * size, on: on, bold: on, soft: !on}
		if i == 0 {
			ws[i].id, ws[i].role = idSteps, describe.Label
			ws[i].name, ws[i].value = "Steps: "+strings.Join(names, ", "), "now "+names[now]
		}
		ws[i].rect = draw.Rect{W: m.width(ws[i]), H: 1.3*size + 3*u}
		wide += ws[i].rect.W + m.stepGap()
	}
	return ws, wide - m.stepGap()
}

func (m *maker) stepGap() float64 {
	if m.lay.Phone {
		return 12 * m.lay.Unit
	}
	return 20 * m.lay.Unit
}

func (m *maker) putSteps(ws []widget, x, y float64) float64 {
	for i := range ws {
		ws[i].rect.X, ws[i].rect.Y = x, y
		m.add(titleZone, ws[i])
		x += ws[i].rect.W + m.stepGap()
	}
	return x - m.stepGap()
}

// place is the declination of the place, where there is one, and a notice. Over
// the rock the first keeps to the width of the title, clear of the slab.
func (m *maker) place(x, y, right float64) (float64, float64) {
	size := noteSize * m.lay.Text
	column := right - x
	if m.apart() {
		column = m.placeWide()
	}
	put := func(id describe.ID, role describe.Role, s string, wide float64, soft bool) {
		w := widget{id: id, role: role, name: s, look: plain, size: size, leading: 1.35 * size, soft: soft}
		lines := draw.Wrap(draw.Regular, size, wide, s)
		w.text = joinLines(lines)
		w.rect = draw.Rect{X: x, Y: y, W: m.width(w), H: w.leading * float64(len(lines))}
		m.add(titleZone, w)
		right, y = max(right, x+w.rect.W), y+w.rect.H+4*m.lay.Unit
	}
	if m.b.field.Declination != 0 {
		put(idPlace, describe.Label, m.declination(), column, true)
	}
	if m.b.notice != "" && !m.told {
		put(idNotice, describe.Status, m.b.notice, m.placeWide(), false)
		m.zones[titleZone].last().again = m.b.notices
	}
	return right, y
}

// placeWide is how wide a notice may be, and the words of the place where they
// stand apart from the rock.
func (m *maker) placeWide() float64 {
	if m.apart() {
		return m.lay.Scene.W - 2*m.lay.pad()
	}
	return min(m.lay.Scene.W*.55, 460*m.lay.Text)
}

func (m *maker) declination() string {
	d := "Declination " + declinationWords(m.b.field.Declination)
	if m.b.set.Declination == DeclinationSet {
		return d + ", set on the dial."
	}
	return d + "; the dial is set to " + declinationWords(m.b.obs.Dial.Ring) + "."
}
