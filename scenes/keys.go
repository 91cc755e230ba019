package scenes

import (
	"strings"
	"unicode"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// press handles one stroke of a key. Signs that belong into the notebook go
// there from wherever the keyboard is; letters are short cuts only while the
// instrument has the focus.
func (b *Bench) press(p input.Press) {
	b.view.hurry()
	if p.Repeat && !repeats(p) {
		return
	}
	switch {
	case p.Rune != 0:
		b.pressRune(p)
	case p.Key == input.Tab:
		b.moveFocus(p.Mods&input.Shift != 0)
	case p.Key == input.Escape:
		b.escape()
	case p.Key == input.F1:
		b.open(helpPanel)
	case p.Key == input.F2:
		b.open(settingsPanel)
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
func repeats(p input.Press) bool {
	switch p.Key {
	case input.Left, input.Right, input.Up, input.Down, input.Backspace, input.Delete, input.Tab:
		return true
	}
	return p.Rune == '[' || p.Rune == ']' || p.Rune == ',' || p.Rune == '.'
}

func (b *Bench) escape() {
	if b.panel != noPanel {
		b.open(noPanel)
		return
	}
	b.focus = idInstrument
}

func (b *Bench) pressRune(p input.Press) {
	r := p.Rune
	switch {
	case p.Mods&(input.Ctrl|input.Alt) != 0:
		if unicode.ToLower(r) == 'z' && b.phase == measuring && b.note.undo() {
			b.edited()
		}
	case b.panel != noPanel:
	case b.phase != measuring:
		b.overlayKey(r)
	case b.focus == idNotebook && b.cutsShort(unicode.ToLower(r)):
		b.shortCut(unicode.ToLower(r))
	case b.focus == idNotebook:
		b.typed(r)
	case unicode.IsDigit(r), r == '/', b.opensQuadrant(unicode.ToLower(r)):
		b.typed(r)
	default:
		b.shortCut(unicode.ToLower(r))
	}
}

// cutsShort says that a letter typed in the notebook can be no part of a note,
// and is meant for the instrument: behind figures no notation has a T, F, L or C.
func (b *Bench) cutsShort(r rune) bool {
	return b.text != "" && strings.ContainsRune("tflc", r) && strings.Trim(b.text, "0123456789/. ") == ""
}

// shortCut are the single letters; they act while the focus is not in the
// notebook.
func (b *Bench) shortCut(r rune) {
	switch r {
	case 't':
		b.act(idTurn)
	case 'f':
		b.act(idFlip)
	case 'l':
		b.lockOrFree()
	case 's':
		b.step = (b.step + 1) % 3
	case 'c':
		b.act(idViewCloser)
	case '[':
		b.lean(-b.step.Angle())
	case ']':
		b.lean(b.step.Angle())
	case ',':
		b.turnRing(-b.step.Angle())
	case '.':
		b.turnRing(b.step.Angle())
	case 'n':
		b.focus = idNotebook
	}
}

// opensQuadrant says that a letter begins a bearing rather than a short cut.
func (b *Bench) opensQuadrant(r rune) bool {
	return b.set.Notation == orient.Quadrant && (r == 'n' || r == 's')
}

func (b *Bench) lean(a orient.Angle) {
	if a < 0 {
		b.handle(idLeanLess, -a)
		return
	}
	b.handle(idLeanMore, a)
}

// overlayKey switches the overlays of the answer with the digits.
func (b *Bench) overlayKey(r rune) {
	ids := []describe.ID{idShowWater, idShowStrike, idShowArrow, idShowHand, idShowNumbers, idShowYours}
	if i := int(r - '1'); i >= 0 && i < len(ids) {
		b.toggle(ids[i])
	}
	if unicode.ToLower(r) == 'c' {
		b.act(idViewCloser)
	}
}

// stride is the step a stroke makes: Shift is coarse, Control or Alt fine.
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

// pressBench: the arrows move the instrument, whichever control has the focus,
// unless the focus is on one of several choices.
func (b *Bench) pressBench(p input.Press) {
	step := b.stride(p.Mods)
	switch p.Key {
	case input.Left:
		b.handle(idSwingLess, step)
	case input.Right:
		b.handle(idSwingMore, step)
	case input.Up:
		b.handle(b.upwards(true), step)
	case input.Down:
		b.handle(b.upwards(false), step)
	case input.Space:
		b.space()
	case input.Enter:
		b.enter()
	case input.Backspace:
		b.intoField(p)
	}
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

func (b *Bench) space() {
	switch {
	case b.focus != idInstrument && b.focus != idNotebook && b.focus != idView && b.focus != idNone:
		b.act(b.focus)
	case b.phase != measuring:
		b.toggle(idShowWater)
	default:
		b.act(idTap)
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

// pressView orbits: the arrows turn the eye round the rock.
func (b *Bench) pressView(p input.Press) {
	step := 5 * orient.Degree
	switch p.Key {
	case input.Left:
		b.view.orbit(b, -step, 0)
	case input.Right:
		b.view.orbit(b, step, 0)
	case input.Up:
		b.view.orbit(b, 0, step)
	case input.Down:
		b.view.orbit(b, 0, -step)
	case input.Enter, input.Space:
		b.act(idViewCloser)
	}
}

// moveFocus goes to the next control in reading order, or back.
func (b *Bench) moveFocus(back bool) {
	b.keyed = true
	b.focus = nextFocus(&b.screen.tree, b.focus, back)
	b.blink = 0
}

// held is a stepper that the pointer keeps pressed.
type held struct {
	id    describe.ID
	ticks int
}

// Holding a stepper repeats it 10 times a second after half a second.
const (
	holdDelay = 60
	holdEvery = 12
)

func (b *Bench) repeatHeld(ticks int) {
	if b.held.id == 0 {
		return
	}
	b.held.ticks += ticks
	for b.held.ticks >= holdDelay+holdEvery {
		b.held.ticks -= holdEvery
		b.act(b.held.id)
	}
}

func isStepper(id describe.ID) bool {
	switch id {
	case idSwingLess, idSwingMore, idTiltLess, idTiltMore, idLeanLess, idLeanMore, idRingLess, idRingMore, idViewLeft, idViewRight:
		return true
	}
	return false
}

// drag is a pointer that moves the instrument or the eye; nothing needs it.
type drag struct {
	on         bool
	instrument bool
	x, y       float64
}

func (b *Bench) pointer(p input.Pointer) {
	switch p.Kind {
	case input.PointerDown:
		b.pointerDown(p)
	case input.PointerMove:
		b.pointerMove(p)
	case input.PointerUp:
		b.held, b.drag = held{}, drag{}
	case input.PointerWheel:
		b.wheel(p)
	}
}

func (b *Bench) pointerDown(p input.Pointer) {
	b.notice, b.keyed = "", false
	b.view.hurry()
	if n := hitIn(&b.screen.tree, p.X, p.Y, p.Touch, b.screen.lay.Unit); n != nil {
		if n.Focusable {
			b.focus = n.ID
		}
		b.held = held{}
		if isStepper(n.ID) {
			b.held.id = n.ID
		}
		if n.ID == idNotebook {
			b.note.caret = b.screen.caretAt(b, p.X)
			b.caretTo(0)
		}
		b.act(n.ID)
		return
	}
	if b.panel == noPanel && contains(b.screen.lay.Scene, p.X, p.Y) {
		b.drag = drag{on: true, instrument: b.phase == measuring && b.onInstrument(p.X, p.Y), x: p.X, y: p.Y}
		b.focus = idInstrument
	}
}

func (b *Bench) onInstrument(x, y float64) bool {
	return contains(b.stage.InstrumentBounds(), x, y)
}

// dragRate is the turn of a pixel's drag: at unit size 0.25°.
const dragRate = orient.Degree / 4

func (b *Bench) pointerMove(p input.Pointer) {
	if !b.drag.on {
		return
	}
	k := dragRate / orient.Angle(b.screen.lay.Unit)
	dx, dy := orient.Angle(p.X-b.drag.x)*k, orient.Angle(p.Y-b.drag.y)*k
	b.drag.x, b.drag.y = p.X, p.Y
	if !b.drag.instrument {
		b.view.orbit(b, -dx, dy)
		return
	}
	if dx != 0 {
		b.handle(idSwingMore, -dx)
	}
	if dy != 0 {
		b.handle(b.upwards(true), -dy)
	}
}

func (b *Bench) wheel(p input.Pointer) {
	if b.panel != noPanel || !contains(b.screen.lay.Scene, p.X, p.Y) {
		return
	}
	b.view.close = p.Wheel > 0
}

func contains(r draw.Rect, x, y float64) bool {
	return x >= r.X && y >= r.Y && x < r.X+r.W && y < r.Y+r.H
}
