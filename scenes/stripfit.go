package scenes

import (
	"slices"

	"cuesta/scenes/describe"
)

// stripPlan is a way to stand the controls under the rock: steppers with their
// names above, and without the last so many controls, which are under More.
type stripPlan struct {
	upright bool
	without int
}

// fitStrip takes the first plan with which rock and insets keep their size, and
// goes without what a small window can spare before it puts controls under
// More.
func (m *maker) fitStrip(f *frameOf) {
	for without := range len(m.items()) {
		for f.Spare = range m.sparing() {
			if m.try(f, stripPlan{m.lower(f, without), without}) || m.try(f, stripPlan{!m.upright, without}) {
				return
			}
		}
	}
	m.fitFew(f)
}

// lower says whether a strip with the names of its steppers above them is lower
// than one without.
func (m *maker) lower(f *frameOf, without int) bool {
	if !m.lay.Phone && !m.lay.Low {
		return false
	}
	m.try(f, stripPlan{true, without})
	high := f.Strip
	m.try(f, stripPlan{false, without})
	return high < f.Strip
}

// sparing is how many degrees of thrift there are in this window.
func (m *maker) sparing() thrift {
	if m.lay.Phone && m.b.phase == measuring || m.lay.Low {
		return thrifts
	}
	return 1
}

// try lays the window out by a plan, and says whether that is fair.
func (m *maker) try(f *frameOf, p stripPlan) bool {
	m.upright, m.few, f.Without = p.upright, p.without > 0, p.without > 0
	items := m.items()
	if len(items)-p.without < m.least() {
		return false
	}
	m.rows = m.filled(items, len(items)-p.without)
	f.StripRows, f.Strip = len(m.rows), m.stripTall(m.rows)
	if len(m.rows) > m.mostRows() {
		return false
	}
	m.lay = layOut(*f)
	return m.lay.Fair
}

// least is how many controls have to stand under the rock for the others to be
// under More: the steppers, or one of the overlays.
func (m *maker) least() int {
	if m.b.phase == measuring {
		return len(m.knobs())
	}
	return 1
}

// fitFew goes without all that can be spared: the steppers alone, or one that
// goes on to the next.
func (m *maker) fitFew(f *frameOf) {
	f.Spare = m.sparing() - 1
	m.few, f.Without, m.upright = true, true, false
	for range 2 {
		m.rows = nil
		if m.b.phase == measuring {
			m.rows = m.filled(m.items(), m.least())
		}
		f.StripRows, f.Strip = max(1, len(m.rows)), m.stripTall(m.rows)
		if m.lay = layOut(*f); len(m.rows) <= 1 && m.holds() {
			return
		}
		m.upright = !m.upright
	}
	m.upright = false
	m.rows = m.broken(m.fewItems())
	f.StripRows, f.Strip = 1, m.stripTall(m.rows)
	m.lay = layOut(*f)
}

// holds says that the rock has room for More, and the field for itself.
func (m *maker) holds() bool {
	return m.lay.Scene.H >= m.controlHeight()+20*m.lay.Unit && m.fieldTop()+m.lay.fieldHeight() <= m.lay.Buttons
}

// filled are the rows of the first few items, and of those behind them that
// find room there.
func (m *maker) filled(items []stripItem, few int) [][]stripItem {
	in := slices.Clone(items[:few])
	rows := m.broken(in)
	for _, it := range items[few:] {
		more := m.broken(append(in, it))
		if m.stripTall(more) == m.stripTall(rows) {
			in, rows = append(in, it), more
		}
	}
	return rows
}

// broken breaks items into rows. Where room is short they fill each other's
// gaps.
func (m *maker) broken(items []stripItem) [][]stripItem {
	w := m.lay.Strip.W - 2*m.lay.pad()
	if m.b.phase == measuring && (m.lay.Phone || m.lay.Low) {
		return m.packed(items, w)
	}
	return m.wrap(items, w)
}

func (m *maker) mostRows() int {
	switch {
	case m.lay.Phone:
		return 3
	case m.lay.Low, m.lay.Text <= 1.3*m.lay.Unit:
		return 2
	}
	return 1
}

// fewItems is one of the steppers, whose name goes on to the next.
func (m *maker) fewItems() []stripItem {
	if m.b.phase != measuring {
		return nil
	}
	knobs := m.knobs()
	it := knobs[m.b.knob%len(knobs)]
	mid := &it.parts[1]
	mid.id, mid.role, mid.focus, mid.look = idKnob, describe.Button, true, key
	mid.name = mid.text + "; press for the next control"
	return []stripItem{it}
}
