package scenes

import (
	"strings"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/lesson"
)

// fitCard lays out what the student wrote and returns its height. All that the
// judge says stands there, unless without the advice there is room for both
// magnifiers; where nothing else helps, words are left to the presenter.
func (m *lectureMaker) fitCard(w lesson.Written, f lectureFrame) float64 {
	all := strings.Join(w.Reasons, " ")
	var short []string
	for _, r := range w.Reasons {
		short = append(short, firstSentence(r))
	}
	brief := strings.Join(short, " ")
	tries := []struct {
		reasons string
		enough  func(lectureFrame) bool
	}{{all, m.allMagnified}, {brief, m.allMagnified}, {all, m.scaleMagnified}, {brief, m.cardWhole}, {"", m.cardWhole}}
	for _, x := range tries {
		f.Card = m.layCard(w, x.reasons)
		if m.set(f); x.enough(f) {
			return f.Card
		}
	}
	w.Outcome = ""
	return m.layCard(w, "")
}

func (m *lectureMaker) cardWhole(f lectureFrame) bool { return f.Card <= m.lay.Inner.H+2 }

// scaleMagnified says that the scale has found room beside the card, or needs
// none on an upright page.
func (m *lectureMaker) scaleMagnified(f lectureFrame) bool {
	if m.lay.Phone {
		return m.lay.Scene.H >= .25*m.s.h
	}
	return m.cardWhole(f) && (!f.Scaled || 2*m.lay.Dial.R >= lectureLeast*m.s.lay.Type)
}

// allMagnified says that both magnifiers have found room.
func (m *lectureMaker) allMagnified(f lectureFrame) bool {
	return (!f.Levels || m.lay.Round.R > 0) && (!f.Scaled || m.lay.Dial.R > 0)
}

func firstSentence(s string) string {
	if i := strings.Index(s, ". "); i >= 0 {
		return s[:i+1]
	}
	return s
}

func (m *lectureMaker) layCard(w lesson.Written, reasons string) float64 {
	m.card = m.card[:0]
	wide, y := m.lay.Inner.W, 0.0
	put := func(s string, size float64, bold bool) {
		if s == "" {
			return
		}
		size = m.typeSize(size)
		font := draw.Regular
		if bold {
			font = draw.Bold
		}
		lines := draw.Wrap(font, size, wide, s)
		h := 1.25 * size * float64(len(lines))
		m.card = append(m.card, widget{text: joinLines(lines), look: plain, bold: bold, size: size, leading: 1.25 * size,
			rect: draw.Rect{Y: y, W: wide, H: h}})
		y += h + .3*m.typeSize(lectureType)
	}
	put("The student wrote", lectureType, false)
	put(w.Text, lectureAnswer, true)
	put(w.Outcome, lectureType, true)
	put(reasons, lectureType, false)
	all := &m.card[0]
	all.id, all.role = idLectureWrote, describe.Status
	all.name = "The student wrote " + w.Text + "."
	all.value = strings.TrimSpace(w.Outcome + " " + strings.Join(w.Reasons, " "))
	return y
}
