package scenes

import (
	"strings"
	"unicode"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

// press handles one stroke of a key. Signs that belong into the notebook go
// there from wherever the keyboard is; other signs are short cuts only while
// the focus is not in the notebook.
func (b *Bench) press(p input.Press) {
	b.hurry()
	if p.Repeat && (b.keys.asking || !b.repeats(p)) {
		return
	}
	switch {
	case b.keys.asking:
		b.Choose(b.keys.give(p, b.set))
	case p.Rune != 0:
		b.pressRune(p)
	case p.Key == input.Tab:
		b.moveFocus(p.Mods&input.Shift != 0)
	case p.Key == input.Escape:
		b.escape()
	case b.opens(p):
	case b.panel != noPanel:
		b.pressPanel(p)
	case b.focus == idNotebook && b.phase == measuring:
		b.pressField(p)
	case b.focus == idView:
		b.pressView(p)
	default:
		b.pressBench(p)
	}
}

// repeats says that holding the key means more of the same. Enter held must
// not record, and then deal, and then turn the next plate.
func (b *Bench) repeats(p input.Press) bool {
	switch p.Key {
	case input.Backspace, input.Delete, input.Tab:
		return true
	case input.Left, input.Right, input.Up, input.Down:
		if b.panel != noPanel || b.focus == idNotebook {
			return true
		}
	}
	a, ok := b.set.Keys.At(keymap.AtBench, keymap.Of(p))
	return ok && stepper(a) != idNone
}

// stepper is the control that an action works step by step, or idNone. The
// controls that lift and lower depend on how the plate stands.
func stepper(a keymap.Action) describe.ID {
	switch a {
	case keymap.SwingLess:
		return idSwingLess
	case keymap.SwingMore:
		return idSwingMore
	case keymap.Lift:
		return idTiltMore
	case keymap.Lower:
		return idTiltLess
	case keymap.LeanLess:
		return idLeanLess
	case keymap.LeanMore:
		return idLeanMore
	case keymap.RingLess:
		return idRingLess
	case keymap.RingMore:
		return idRingMore
	}
	return idNone
}

func (b *Bench) escape() {
	if b.panel != noPanel {
		b.shut()
		return
	}
	b.view.large = noMagnifier
	b.focus = idInstrument
}

// opens does what keys do on every screen, and says whether this was one.
func (b *Bench) opens(p input.Press) bool {
	a, ok := b.set.Keys.At(keymap.Everywhere, keymap.Of(p))
	if ok {
		b.run(a, 0)
	}
	return ok
}

func (b *Bench) pressRune(p input.Press) {
	r := p.Rune
	switch {
	case p.Mods&(input.Ctrl|input.Alt) != 0:
		if unicode.ToLower(r) == 'z' && b.phase == measuring {
			b.takeBack()
		}
	case b.panel != noPanel:
	case b.focus == idNotebook && b.phase == measuring:
		if !b.set.Quiet && b.cutsShort(p) {
			b.shortCut(p)
			return
		}
		b.typed(r)
	case b.set.Quiet:
	case b.phase != measuring:
		b.overlayKey(p)
	case unicode.IsDigit(r), r == '/', b.opensQuadrant(unicode.ToLower(r)):
		b.typed(r)
	default:
		b.shortCut(p)
	}
}

// cutsShort says that a letter typed in the notebook can be no part of a note,
// and is meant for the instrument: behind figures no notation has any but N, E,
// S and W.
func (b *Bench) cutsShort(p input.Press) bool {
	if b.text == "" || !unicode.IsLetter(p.Rune) || strings.ContainsRune("nesw", unicode.ToLower(p.Rune)) {
		return false
	}
	return strings.Trim(b.text, "0123456789/. ") == ""
}

// shortCut does what a key says.
func (b *Bench) shortCut(p input.Press) {
	if a, ok := b.set.Keys.At(keymap.AtBench, keymap.Of(p)); ok {
		b.run(a, b.stride(p.Mods))
		return
	}
	if a, ok := b.set.Keys.At(keymap.InLecture, keymap.Of(p)); ok && a == keymap.Magnify {
		b.magnify(b.magnifyNext())
	}
}

// run carries out an action, with a step of a size where it turns something.
func (b *Bench) run(a keymap.Action, step orient.Angle) {
	switch a {
	case keymap.SwingLess, keymap.SwingMore, keymap.LeanLess, keymap.LeanMore, keymap.RingLess, keymap.RingMore:
		b.handle(stepper(a), step)
	case keymap.Lift, keymap.Lower:
		b.handle(b.upwards(a == keymap.Lift), step)
	case keymap.TurnOver:
		b.act(idTurn)
	case keymap.Flip:
		b.act(idFlip)
	case keymap.Tap:
		b.tapOrWater()
	case keymap.Calibrate:
		b.act(idCalibrate)
	case keymap.Method:
		b.nextMethod()
	case keymap.LockFree:
		b.lockOrFree()
	case keymap.StepSize:
		b.nextStep()
	case keymap.Closer:
		b.act(idViewCloser)
	case keymap.Notebook:
		b.focus = idNotebook
	case keymap.ReadOut:
		b.act(idReadOut)
	case keymap.Help:
		b.open(helpPanel)
	case keymap.Settings:
		b.open(settingsPanel)
	case keymap.Keys:
		b.open(keysPanel)
	case keymap.Menu:
		b.act(idHall)
	case keymap.NextItem, keymap.LastItem, keymap.NextStep, keymap.LastStep, keymap.Blank, keymap.Magnify,
		keymap.Pointer, keymap.Reveal, keymap.Live, keymap.Switch, keymap.SwitchMove:
	}
}

// nextStep goes on to the next size of step and says which it is.
func (b *Bench) nextStep() {
	if b.phase == measuring {
		b.step = (b.step + 1) % 3
		b.say("Steps of " + b.step.String() + ".")
	}
}

func (b *Bench) tapOrWater() {
	if b.phase != measuring {
		b.toggle(idShowWater)
		return
	}
	b.act(idTap)
}

// opensQuadrant says that a letter begins a bearing rather than a short cut.
func (b *Bench) opensQuadrant(r rune) bool {
	return b.set.Notation == orient.Quadrant && (r == 'n' || r == 's')
}

// overlayKey switches the overlays of the answer with the digits.
func (b *Bench) overlayKey(p input.Press) {
	ids := []describe.ID{idShowWater, idShowStrike, idShowArrow, idShowHand, idShowNumbers, idShowYours}
	if i := int(p.Rune - '1'); i >= 0 && i < len(ids) {
		b.toggle(ids[i])
		b.focus = ids[i] // so that what it shows now is said
		return
	}
	b.shortCut(p)
}

// stride is the step a stroke makes: Shift is coarse, Control or Alt fine. No
// step needs them, since the usual step can be changed by itself.
func (b *Bench) stride(m input.Mods) orient.Angle {
	switch {
	case m&input.Shift != 0:
		return Coarse.Angle()
	case m&(input.Ctrl|input.Alt) != 0:
		return Fine.Angle()
	default:
		return b.step.Angle()
	}
}

// pressBench: the keys move the instrument, whichever control has the focus;
// Enter and the space bar press the control.
func (b *Bench) pressBench(p input.Press) {
	switch {
	case p.Key == input.Enter:
		b.enter()
	case p.Key == input.Space && b.onControl():
		b.act(b.focus)
	case p.Key == input.Backspace:
		b.intoField(p)
	default:
		b.shortCut(p)
	}
}

// onControl says that the focus is on something to press.
func (b *Bench) onControl() bool {
	return b.focus != idInstrument && b.focus != idNotebook && b.focus != idView && b.focus != idNone
}

// upwards is the control that lifts the free side of the plate, or the arm.
func (b *Bench) upwards(up bool) describe.ID {
	if up == b.liftsWithMore() {
		return idTiltMore
	}
	return idTiltLess
}

func (b *Bench) intoField(p input.Press) {
	if b.phase == measuring && b.text != "" {
		b.focus = idNotebook
		b.pressField(p)
	}
}

func (b *Bench) enter() {
	if b.focus == idInstrument || b.focus == idNone {
		b.primary()
		return
	}
	b.act(b.focus)
}

func (b *Bench) pressField(p input.Press) {
	switch p.Key {
	case input.Space:
		b.typed(' ')
	case input.Enter:
		b.primary()
	case input.Backspace:
		b.change(b.note.remove(false))
	case input.Delete:
		b.change(b.note.remove(true))
	case input.Left:
		b.caretTo(-1)
	case input.Right:
		b.caretTo(1)
	case input.Home:
		b.caretTo(-fieldLimit)
	case input.End:
		b.caretTo(fieldLimit)
	case input.Up, input.Down:
		b.focus = idInstrument
		b.pressBench(p)
	}
}

func (b *Bench) change(changed bool) {
	if changed {
		b.edited()
	}
}

func (b *Bench) caretTo(d int) {
	b.note.shift(d)
	b.caret, b.blink = b.note.caret, 0
}

// pressView orbits: the keys that swing and lift turn the eye round the rock.
func (b *Bench) pressView(p input.Press) {
	step := 5 * orient.Degree
	if p.Key == input.Enter || p.Key == input.Space {
		b.act(idViewCloser)
		return
	}
	a, ok := b.set.Keys.At(keymap.AtBench, keymap.Of(p))
	if !ok {
		return
	}
	switch a {
	case keymap.SwingLess:
		b.view.orbit(b, -step, 0)
	case keymap.SwingMore:
		b.view.orbit(b, step, 0)
	case keymap.Lift:
		b.view.orbit(b, 0, step)
	case keymap.Lower:
		b.view.orbit(b, 0, -step)
	}
}

// moveFocus goes to the next control in reading order, or back.
func (b *Bench) moveFocus(back bool) {
	b.keyed, b.blink = true, 0
	if b.panel == helpPanel {
		if id, ok := lineBeside(b.focus, back, b.lines); ok {
			b.focus = id
			return
		}
	}
	b.focus = nextFocus(&b.screen.tree, b.focus, back)
}
