package scenes

import (
	"strings"
	"unicode"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/scenes/lesson"
)

// press handles one stroke of a key. A presenter's clicker sends PageDown,
// PageUp, a letter for the blank screen, F5 and Escape.
func (t *Lecture) press(p input.Press) {
	if p.Repeat && !t.repeats(p) {
		return
	}
	if !p.Repeat {
		t.hurry()
	}
	switch {
	case t.blank:
		t.blank = false
	case p.Key == input.Tab:
		t.moveFocus(p.Mods&input.Shift != 0)
	case p.Key == input.Escape:
		t.escape()
	case t.everywhere(p):
	case t.panel != noPanel:
		t.pressPanel(p)
	case t.keyed && t.focus != idInstrument && (p.Key == input.Enter || p.Key == input.Space):
		t.act(t.focus)
	case t.moves(p):
	case t.play.IsLive() && t.pressLive(p):
	default:
		t.pressLecture(p)
	}
}

// repeats says that holding the key means more of the same.
func (t *Lecture) repeats(p input.Press) bool {
	switch p.Key {
	case input.Left, input.Right, input.Up, input.Down:
		return t.play.IsLive() || t.magnify || t.pointer
	case input.Tab:
		return true
	}
	return t.play.IsLive() && t.hand.repeats(p)
}

// everywhere does what keys do on every screen, and says whether this was one.
func (t *Lecture) everywhere(p input.Press) bool {
	a, ok := t.set.Keys.At(keymap.Everywhere, keymap.Of(p))
	if !ok && p.Rune == '?' {
		a, ok = keymap.Help, true
	}
	if !ok || p.Rune != 0 && t.set.Quiet {
		return false
	}
	switch a {
	case keymap.Help:
		t.act(idLectureKeys)
	case keymap.Settings:
		t.act(idSettings)
	case keymap.Menu:
		t.act(idHall)
	default:
		return false
	}
	return true
}

// escape takes back the last thing that was opened.
func (t *Lecture) escape() {
	switch {
	case t.panel != noPanel:
		t.shut()
		t.keyed = t.panel != noPanel
	case t.magnify:
		t.magnify = false
	case t.pointer:
		t.pointer = false
	case t.play.IsLive():
		t.act(idReturn)
	default:
		t.focus, t.keyed, t.idle = idNone, false, hideAfter
		t.notice = t.wayOut()
	}
}

// wayOut says how the lecture is left, where there is something to go to.
func (t *Lecture) wayOut() string {
	if t.leave == nil {
		return ""
	}
	return t.set.keysFor(keymap.Menu) + ": menu."
}

// moves takes the arrows while a place is pointed at or magnified, and says
// whether it was one of them.
func (t *Lecture) moves(p input.Press) bool {
	if !t.magnify && !t.pointer {
		return false
	}
	d := t.screen.h / 40
	if t.magnify {
		d *= 2
	}
	if p.Mods&input.Shift != 0 {
		d *= 4
	}
	switch p.Key {
	case input.Left:
		t.carry(-d, 0)
	case input.Right:
		t.carry(d, 0)
	case input.Up:
		t.carry(0, -d)
	case input.Down:
		t.carry(0, d)
	default:
		return false
	}
	return true
}

// pressLive works the instrument with the keys of the bench, and says whether
// this was one of them.
func (t *Lecture) pressLive(p input.Press) bool {
	if p.Rune != 0 && (t.set.Quiet || p.Mods&(input.Ctrl|input.Alt) != 0) {
		return false
	}
	a, ok := t.set.Keys.At(keymap.AtBench, keymap.Of(p))
	if !ok && (p.Key == input.Left || p.Key == input.Right || p.Key == input.Up || p.Key == input.Down) {
		// With Shift, Control or Alt the keys are the same, the step is not.
		a, ok = t.set.Keys.At(keymap.AtBench, keymap.Of(input.Press{Key: p.Key}))
	}
	if !ok || a == keymap.Notebook || a == keymap.Method { // a lecture has neither
		return false
	}
	t.work(func() { t.hand.run(a, t.hand.stride(p.Mods)) })
	return true
}

// work does something at the bench in live play.
func (t *Lecture) work(f func()) {
	if t.hand == nil {
		return
	}
	t.hand.issued, t.hand.notice = t.hand.issued[:0], ""
	f()
	t.issued = append(t.issued, t.hand.issued...)
	t.notice, t.notices = t.hand.notice, t.notices+1
}

// pressLecture: on, back, and the presenter's letters.
func (t *Lecture) pressLecture(p input.Press) {
	if p.Rune != 0 && (t.set.Quiet || p.Mods&(input.Ctrl|input.Alt) != 0) {
		return
	}
	if a, ok := t.set.Keys.At(keymap.InLecture, keymap.Of(p)); ok {
		if id := lectureControl(a); id != idNone {
			t.act(id)
			return
		}
	}
	switch {
	case p.Key == input.Right, p.Key == input.Down, p.Key == input.Enter, p.Key == input.Space:
		t.act(idNext)
	case p.Key == input.Left, p.Key == input.Up, p.Key == input.Backspace:
		t.act(idBack)
	case p.Key == input.Home:
		t.act(idRestart)
	case unicode.ToLower(p.Rune) == 'l' && !t.play.IsLive():
		t.act(idLive)
	case p.Rune == '.':
		t.act(idBlank)
	}
}

// lectureControl is the control that an action presses.
func lectureControl(a keymap.Action) describe.ID {
	switch a {
	case keymap.NextStep:
		return idNext
	case keymap.LastStep:
		return idBack
	case keymap.Blank:
		return idBlank
	case keymap.Magnify:
		return idMagnify
	case keymap.Pointer:
		return idPointer
	case keymap.Reveal:
		return idAnswer
	case keymap.Live:
		return idLive
	}
	return idNone
}

// liveKeys are the keys that begin live play: at the instrument L is a key of the
// bench.
func (t *Lecture) liveKeys() string {
	key := t.set.keysFor(keymap.Live)
	if _, taken := t.set.Keys.At(keymap.InLecture, keymap.Stroke{Rune: 'l'}); taken || t.set.Quiet {
		return key
	}
	return key + " or L"
}

// pressPanel moves among the choices of a panel.
func (t *Lecture) pressPanel(p input.Press) {
	switch p.Key {
	case input.Enter, input.Space:
		t.act(t.focus)
	case input.Left, input.Right, input.Up, input.Down:
		t.arrow(p.Key)
	case input.PageDown, input.PageUp:
		t.page, t.focus = t.page+1, idClosePanel
	}
}

// arrow moves the focus in a panel. Below its last row the next page begins.
func (t *Lecture) arrow(k input.Key) {
	lines := 0
	if t.panel == helpPanel {
		lines = t.lines
	}
	tree, turns := &t.screen.tree, false
	t.keyed = true
	if t.focus, turns = inPanel(tree, t.screen.lay.Sheet, t.focus, k, lines); turns {
		t.page, t.focus = t.page+1, idClosePanel
		t.screen.build(t)
		t.focus = firstInPanel(tree)
	}
}

// moveFocus goes to the next control in reading order, or to the next line of
// the keys, or back.
func (t *Lecture) moveFocus(back bool) {
	t.keyed = true
	if t.panel == helpPanel {
		if id, ok := lineBeside(t.focus, back, t.lines); ok {
			t.focus = id
			return
		}
	}
	t.focus = nextFocus(&t.screen.tree, t.focus, back)
}

// act carries out what a control does when it is pressed.
func (t *Lecture) act(id describe.ID) {
	switch id {
	case idNext:
		t.goOn()
	case idBack:
		t.hurry()
		_, err := t.play.Back()
		t.try(err)
		t.begun()
	case idRestart:
		t.restart()
	case idAnswer:
		t.play.Reveal()
	case idBlank:
		t.blank = !t.blank
	case idMagnify:
		t.aim(&t.magnify)
	case idPointer:
		t.aim(&t.pointer)
	case idLive:
		t.goLive()
	case idReturn:
		t.magnify = false
		t.try(t.play.Return())
		t.begun()
	case idSettings:
		t.openPanel(settingsPanel)
	case idLectureKeys:
		t.openPanel(helpPanel)
	case idClosePanel:
		t.shut()
	case idPanelMore:
		t.page++
	case idAnotherPlace:
		t.nextSpot()
	case idHall:
		if t.leave != nil {
			t.leave()
		}
	case idInstrument:
	default:
		if id >= idSetNotation && id < idHelpLine {
			t.Choose(t.set.with(id))
			return
		}
		t.work(func() { t.hand.act(id) })
	}
}

// goOn ends what still moves; then it shows the answer to an open question, and
// then it goes to the next step.
func (t *Lecture) goOn() {
	t.hurry()
	switch {
	case t.play.Busy():
		t.play.Finish()
	case t.play.IsLive() && t.play.Open(): // live play hides the question, so that comes back first
		t.act(idReturn)
	case t.play.Reveal():
	default:
		ok, err := t.play.Next()
		t.try(err)
		if !ok && err == nil {
			t.notice = strings.TrimSpace("This was the last step. " + t.wayOut())
		}
		t.begun()
	}
}

// restart begins the lesson anew for the next class.
func (t *Lecture) restart() {
	t.try(t.play.Restart())
	t.water, t.ball = 0, 0
	t.begun()
}

// begun: a step begins. What was magnified in another need not be worth a look in
// this one.
func (t *Lecture) begun() {
	if t.play.At() != t.screen.key.at {
		t.magnify = false
	}
	if !t.play.IsLive() {
		t.hand = nil
		t.held, t.drag = held{}, drag{}
	}
	t.water, t.ball = t.water*one(t.shows(lesson.Water)), t.ball*int(one(t.shows(lesson.Ball)))
}

func one(on bool) float64 {
	if on {
		return 1
	}
	return 0
}

// goLive hands the instrument to the presenter, or takes it back.
func (t *Lecture) goLive() {
	if t.play.IsLive() {
		t.act(idReturn)
		return
	}
	t.hurry()
	t.idle, t.magnify, t.pointer = 0, false, false
	t.play.Live()
	t.hand = &Bench{ses: t.play.Session(), step: Normal, focus: idInstrument, stage: t.stage, insets: t.insets}
	t.hand.set = t.handSettings()
	t.hand.field = t.play.Session().Options().Field
	t.hand.obs = t.play.Session().World().Observe()
	t.focus = idInstrument
}

// handSettings let the ring be turned where there is a declination.
func (t *Lecture) handSettings() Settings {
	s := t.set
	s.Declination = DeclinationNone
	if t.play.Lesson().Declination != 0 {
		s.Declination = DeclinationYours
	}
	return s
}

func (t *Lecture) openPanel(p panel) {
	if t.panel == p {
		t.shut()
		return
	}
	t.over = t.over.opened(t.panel, p, t.focus)
	t.panel, t.page, t.focus, t.keyed = p, 0, idClosePanel, true
	if p == settingsPanel {
		t.focus = idSetText + describe.ID(t.set.Text)
	}
}

// shut closes the panel, and goes back to what it was opened over.
func (t *Lecture) shut() {
	t.panel, t.page, t.focus = t.over.panel, 0, t.over.focus
	t.over = beneath{}
}
