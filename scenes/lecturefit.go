package scenes

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/lesson"
)

// measure lays out in type as large as is asked for, or as finds room.
func (m *lectureMaker) measure() {
	asked := m.t.set.Text.Factor()
	for _, k := range [...]float64{2, 1.75, 1.5, 1.25, 1} {
		if m.s.text = k; k <= asked && m.fits() {
			return
		}
	}
}

// fits lays out, with the room that words and controls need, and says whether it
// was there.
func (m *lectureMaker) fits() bool {
	t := m.t
	f := lectureFrame{
		W: m.s.w, H: m.s.h, Scale: m.s.scale, Text: m.s.text,
		Levels: t.shows(lesson.Levels), Scaled: t.shows(lesson.Scale), Reading: t.shows(lesson.Reading),
		Curve: t.shows(lesson.Curve),
	}
	m.set(f)
	if m.lay.TooTiny {
		return true
	}
	f.Rows = m.mostRows()
	if m.apart() {
		f.Title = m.titleTall()
	}
	if m.lay.Phone {
		m.rows = m.evened(m.items(), m.s.w-2*m.s.lay.Margin)
		f.Strip = m.rowsTall()
	}
	if w, ok := t.play.Written(); ok && t.shows(lesson.Student) {
		f.Card = 1
		m.set(f)
		f.Card = m.fitCard(w, f)
	}
	m.set(f)
	m.line = m.wrapped(draw.Regular, t.play.Line())
	m.ans = m.wrapped(draw.Bold, t.play.Answer())
	if !m.lay.Phone {
		m.rows = m.evened(m.items(), m.lay.Scene.W-2*m.s.lay.Margin-40*m.lay.Unit)
		m.seat(f)
	}
	return m.roomy(f)
}

// leastSeated is the share of the height that the picture keeps beside the
// controls of live play.
const leastSeated = .42

// seat gives the controls of live play a place of their own, so that nothing of
// the slab and its ring is under them.
func (m *lectureMaker) seat(f lectureFrame) {
	if !m.t.play.IsLive() {
		return
	}
	f.Rows, f.Strip = max(f.Rows, len(m.line)+len(m.ans)), m.rowsTall()
	if m.set(f); m.s.text == 1 && m.lay.Scene.H < leastSeated*m.s.h {
		f.Strip = 0
		m.set(f)
	}
}

// roomy says that the words leave the picture a fair part of the screen, and
// that the captions fit the column.
func (m *lectureMaker) roomy(f lectureFrame) bool {
	if m.lay.Phone {
		return m.lay.Scene.H >= .14*m.s.h && m.lay.Scene.Y+m.lay.Scene.H <= m.lay.Bar.Y+1 && f.Card <= m.lay.Inner.H+2
	}
	caption := draw.Measure(draw.Bold, m.typeSize(lectureType), "Dial, north end", 0)
	least := .56
	if m.s.lay.Seated {
		least = leastSeated
	}
	return m.lay.Scene.H >= least*m.s.h && (!f.column() || caption <= m.lay.Inner.W && f.Card <= m.lay.Inner.H+2) &&
		(m.s.lay.Seated || m.rowsTall() <= .8*m.lay.Scene.H) && (!f.Scaled || f.Card > 0 || m.lay.Dial.R*2 >= lectureLeast*m.s.lay.Type)
}

func (m *lectureMaker) set(f lectureFrame) {
	m.s.lay = layOutLecture(f)
	m.lay = m.s.lay.layout
}

func (m *lectureMaker) wrapped(font draw.Font, s string) []string {
	if s == "" {
		return nil
	}
	return draw.Wrap(font, m.typeSize(lectureLine), m.lay.Bar.W-2*m.s.lay.Margin, s)
}

// mostRows is the number of rows of the longest line of the lesson, so that the
// picture above the line keeps its place. An answer may lie over the picture;
// where the line has all the width, or stands under the column, it may not.
func (m *lectureMaker) mostRows() int {
	n := 2
	if m.lay.Phone {
		s := m.lined()
		return max(n, m.rowsOf(s.Say)+m.rowsOf(s.Ask)+len(m.wrapped(draw.Bold, s.Answer)))
	}
	over := m.s.w >= 1.6*m.s.h && !m.apart()
	for _, s := range m.t.play.Lesson().Steps {
		rows := max(m.rowsOf(s.Say), m.rowsOf(s.Ask))
		if !over {
			rows += len(m.wrapped(draw.Bold, s.Answer))
		}
		n = max(n, rows)
	}
	return n
}

// apart says that the title has a row of its own, not a place over the picture.
func (m *lectureMaker) apart() bool { return m.lay.Phone || m.s.text > 1.2 }

func (m *lectureMaker) rowsOf(s string) int { return len(m.wrapped(draw.Regular, s)) }

// lined is the step whose line is on the screen.
func (m *lectureMaker) lined() lesson.Step {
	steps := m.t.play.Lesson().Steps
	for i := m.t.play.At(); i > 0; i-- {
		if s := steps[i]; s.Say != "" || s.Ask != "" {
			return s
		}
	}
	return steps[0]
}
