package scenes

import (
	"fmt"
	"unicode"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

func (p *Paper) press(k input.Press) {
	if a, ok := p.set.Keys.At(keymap.InForm, keymap.Of(k)); ok && k.Rune == 0 && p.run(a) {
		return
	}
	switch {
	case p.advises(k):
	case k.Rune != 0 && k.Mods&(input.Ctrl|input.Alt) != 0:
		if unicode.ToLower(k.Rune) == 'z' {
			p.control()
		}
	case k.Rune != 0:
		p.pressRune(k)
	case k.Key == input.Tab:
		p.moveFocus(k.Mods&input.Shift != 0)
	case k.Key == input.Escape:
		p.pad = false
		p.shut()
	case p.focus == idNotebook:
		p.pressField(k)
	case k.Key == input.Enter, k.Key == input.Space:
		if !k.Repeat {
			p.act(p.focus)
		}
	case k.Key == input.Left, k.Key == input.Right, k.Key == input.Up, k.Key == input.Down:
		p.arrow(k.Key)
	}
}

// run carries out an action of a form, and says whether it was one.
func (p *Paper) run(a keymap.Action) bool {
	switch a {
	case keymap.NextItem:
		p.forward()
	case keymap.LastItem:
		p.goTo(p.at - 1)
	default:
		return false
	}
	return true
}

// pressRune: signs go into the field from everywhere, unless they are to write
// only; a letter that is a key of the form does what it says where nothing is
// written.
func (p *Paper) pressRune(k input.Press) {
	if p.set.Quiet && p.focus != idNotebook && !p.onChoice() {
		return
	}
	a, ok := p.set.Keys.At(keymap.InForm, keymap.Of(k))
	if ok && p.focus != idNotebook && !p.onChoice() && p.run(a) {
		return
	}
	p.typed(k.Rune)
}

func (p *Paper) onChoice() bool { return p.focus >= idChoice && p.focus < idChoice+mostChoices }

// control takes back a change in the field, or else the last answer.
func (p *Paper) control() {
	if !p.note.undo() {
		p.undo()
	}
}

func (p *Paper) open() bool {
	return !p.review && p.done == "" && !p.atBench() && (p.sit.Left(p.at) > 0 || p.fresh)
}

func (p *Paper) typed(r rune) {
	if p.open() && p.chooses() {
		p.letter(unicode.ToUpper(r))
		return
	}
	if !p.open() || !p.note.insert(r) {
		return
	}
	p.focus, p.said, p.blink, p.large = idNotebook, "", 0, false
}

// letter goes to the choice of that letter; Enter keeps it.
func (p *Paper) letter(r rune) {
	if i := int(r - 'A'); i >= 0 && i < len(p.item().Ask().Choices) {
		p.focus = idChoice + describe.ID(i)
		p.note.set(string(r))
		p.said = ""
		return
	}
	p.said = fmt.Sprintf("The choices are A to %c.", 'A'+len(p.item().Ask().Choices)-1)
}

func (p *Paper) pressField(k input.Press) {
	p.blink = 0
	switch k.Key {
	case input.Space:
		p.typed(' ')
	case input.Enter:
		p.record()
	case input.Backspace:
		p.note.remove(false)
	case input.Delete:
		p.note.remove(true)
	case input.Left:
		p.note.shift(-1)
	case input.Right:
		p.note.shift(1)
	case input.Home:
		p.note.shift(-fieldLimit)
	case input.End:
		p.note.shift(fieldLimit)
	case input.Up:
		p.symbolKey(orient.Degree, k.Mods)
	case input.Down:
		p.symbolKey(-orient.Degree, k.Mods)
	}
}

// symbolKey turns a symbol that is drawn: up and down the strike, with Shift
// the dip.
func (p *Paper) symbolKey(a orient.Angle, m input.Mods) {
	if p.item().Ask().Kind != item.AskSymbol {
		return
	}
	if m&input.Shift != 0 {
		p.turnSymbol(0, a)
		return
	}
	p.turnSymbol(a, 0)
}

func (p *Paper) moveFocus(back bool) { p.focus = nextFocus(&p.screen.tree, p.focus, back) }

// arrow moves the focus by rows and columns. Below the last row the next part
// begins.
func (p *Paper) arrow(k input.Key) {
	t, turns := &p.screen.tree, false
	if p.focus, turns = inPanel(t, draw.Rect{W: t.Root.Bounds.W, H: t.Root.Bounds.H}, p.focus, k, 0); turns {
		p.act(idPanelMore)
	}
}

// nextFocus is the control after one in reading order, or before it.
func nextFocus(t *describe.Tree, now describe.ID, back bool) describe.ID {
	order := t.Order()
	if len(order) == 0 {
		return now
	}
	at := -1
	for i, n := range order {
		if n.ID == now {
			at = i
		}
	}
	d := 1
	if back {
		d = -1
		at = max(at, 0)
	}
	return order[(at+d+len(order))%len(order)].ID
}

func (p *Paper) pointer(q input.Pointer) {
	if n := hitIn(&p.screen.tree, q.X, q.Y, q.Touch, p.screen.lay.Unit); n != nil {
		p.focus = n.ID
		p.act(n.ID)
	}
}
