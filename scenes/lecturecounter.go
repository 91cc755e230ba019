package scenes

import (
	"cmp"
	"fmt"
	"strings"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
)

// stepState is how far a step has come, which says what the next press does.
type stepState uint8

const (
	stepDone     stepState = iota // it goes on
	stepMeasured                  // it ends the student's work
	stepMoved                     // it ends what is done at the instrument
	stepSettles                   // it goes on, but the needle has not come to rest
	stepOpen                      // it reveals the answer
)

// signs are the words of a state beside the counter, and those of its
// description.
var signs = [...][2]string{
	stepDone:     {"", ""},
	stepMeasured: {"working", "The student is measuring."},
	stepMoved:    {"working", "The instrument is being moved."},
	stepSettles:  {"settling", "The needle is coming to rest."},
	stepOpen:     {"answer hidden", "An answer is hidden: %s shows it."},
}

// stateWords are the words of a state in the description.
func (t *Lecture) stateWords() string {
	words := signs[t.state()][1]
	if t.state() != stepOpen {
		return words
	}
	var keys []string
	for _, a := range [...]keymap.Action{keymap.Reveal, keymap.NextStep} {
		if key := t.set.keysFor(a); key != "" {
			keys = append(keys, describe.KeyWords(key))
		}
	}
	return fmt.Sprintf(words, cmp.Or(strings.Join(keys, " or "), "Space"))
}

// stepWords are which step this is.
func (t *Lecture) stepWords() string {
	step := fmt.Sprintf("tep %d of %d", t.play.At()+1, t.play.Len())
	if t.play.IsLive() {
		return "Live play, s" + step
	}
	return "S" + step
}

func (t *Lecture) state() stepState {
	p := t.play
	switch {
	case p.IsLive():
		return stepDone
	case p.Busy() && p.Step().Mistake != "":
		return stepMeasured
	case p.Busy():
		return stepMoved
	case p.Open():
		return stepOpen
	case p.Running():
		return stepSettles
	}
	return stepDone
}

// counter says which step this is and how far it has come, in plain ink so that
// the presenter reads it from afar: in one row,
// or below each other where the title has a row of its own.
func (m *lectureMaker) counter() {
	r, mar, size := m.lay.Scene, m.s.lay.Margin, m.typeSize(lectureType)
	p, sign := m.t.play, signs[m.t.state()]
	text := fmt.Sprintf("%d of %d", p.At()+1, p.Len())
	if p.IsLive() {
		text = "live, " + text
	}
	w := widget{text: text, look: plain, size: size, leading: 1.25 * size}
	state := widget{id: idLectureState, role: describe.Status, name: m.t.stateWords(), text: sign[0], look: plain, size: size, leading: 1.25 * size}
	if sign[0] != "" && !m.apart() {
		state.text = " · " + state.text
	}
	w.rect, state.rect = draw.Rect{W: m.width(w), H: 1.25 * size}, draw.Rect{W: m.width(state), H: 1.25 * size}
	right := r.X + r.W - mar
	w.rect.Y = mar*.8 + .15*size
	state.rect.X, state.rect.Y = right-state.rect.W, w.rect.Y
	w.rect.X = state.rect.X - w.rect.W
	if m.apart() {
		w.rect.X, state.rect.Y = right-w.rect.W, w.rect.Y+w.rect.H
	}
	m.add(menuZone, w)
	if sign[0] != "" {
		m.add(menuZone, state)
	}
	x := min(w.rect.X, state.rect.X)
	z := &m.s.zones[menuZone]
	z.ground, z.rect = m.over(), snap(draw.Rect{X: x - mar/2, Y: mar * .4, W: right - x + mar, H: state.rect.Y + state.rect.H - w.rect.Y + .8*mar})
	if m.apart() {
		z.ground = tableTop
	}
}

// counterWide is the room beside the title for the longest words of the counter.
func (m *lectureMaker) counterWide() float64 {
	if m.apart() {
		return 8 * m.typeSize(lectureType)
	}
	return 13 * m.typeSize(lectureType)
}
