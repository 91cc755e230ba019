package window

import (
	"unicode"
	"unicode/utf8"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// pageEvent is one thing done on a page, as the page's own script notes it
// down: a key by the name that the browser gives it (UI Events KeyboardEvent
// key Values), a pointer, or an act on a control.
type pageEvent struct {
	Do     string  // "key", "pointer" or "act"
	Key    string  // of a key
	Mods   uint8   // input.Mods
	Repeat bool    // of a key
	Kind   string  // of a pointer or an act
	X, Y   float64 // of a pointer, in pixels of the page
	Wheel  float64 // rows, up positive
	Touch  bool    // of a pointer
	ID     uint16  // of an act
	Text   string  // of an act
}

// moves says that a pointer only went somewhere: such events come in every
// frame, and the page does not count them.
func (e pageEvent) moves() bool { return e.Do == "pointer" && e.Kind == "move" }

// pageKeys are the keys with a meaning of their own, by the browser's names.
var pageKeys = map[string]input.Key{
	"ArrowLeft": input.Left, "ArrowRight": input.Right, "ArrowUp": input.Up, "ArrowDown": input.Down,
	"Tab": input.Tab, "Enter": input.Enter, "Escape": input.Escape, " ": input.Space,
	"Backspace": input.Backspace, "Delete": input.Delete, "Home": input.Home, "End": input.End,
	"PageUp": input.PageUp, "PageDown": input.PageDown,
	"F1": input.F1, "F2": input.F2, "F3": input.F3, "F4": input.F4, "F5": input.F5, "F6": input.F6,
	"F7": input.F7, "F8": input.F8, "F9": input.F9, "F10": input.F10, "F11": input.F11, "F12": input.F12,
}

var pagePointers = map[string]input.PointerKind{
	"move": input.PointerMove, "down": input.PointerDown, "up": input.PointerUp, "wheel": input.PointerWheel,
}

var pageActs = map[string]input.ActKind{"activate": input.Activate, "focus": input.Focus, "write": input.Write}

// mostRepeatsOnPage is how many repeats of a held key count in one frame,
// however slow it was. Strokes always count.
const mostRepeatsOnPage = 4

// pageInput is what was done on a page since the last frame, in order. Its
// slices are used again.
type pageInput struct {
	presses  []input.Press
	pointers []input.Pointer
	acts     []input.Act
	repeats  int
}

// take sorts events; scale is how many device pixels a pixel of the page has.
// It returns how many of them the page counts.
func (p *pageInput) take(events []pageEvent, scale float64) (counted int) {
	p.presses, p.pointers, p.acts, p.repeats = p.presses[:0], p.pointers[:0], p.acts[:0], 0
	for _, e := range events {
		if !e.moves() {
			counted++
		}
		switch e.Do {
		case "key":
			p.key(e)
		case "pointer":
			if k, ok := pagePointers[e.Kind]; ok {
				p.pointers = append(p.pointers, input.Pointer{Kind: k, X: e.X * scale, Y: e.Y * scale, Wheel: e.Wheel, Touch: e.Touch})
			}
		case "act":
			if k, ok := pageActs[e.Kind]; ok {
				p.acts = append(p.acts, input.Act{Kind: k, ID: describe.ID(e.ID), Text: e.Text, After: len(p.presses)})
			}
		}
	}
	return counted
}

func (p *pageInput) key(e pageEvent) {
	if e.Repeat {
		if p.repeats++; p.repeats > mostRepeatsOnPage {
			return
		}
	}
	if s, ok := strokeOnPage(e); ok {
		p.presses = append(p.presses, s)
	}
}

// strokeOnPage is a key as scenes know it; false for keys that mean nothing.
func strokeOnPage(e pageEvent) (input.Press, bool) {
	mods := input.Mods(e.Mods) & (input.Shift | input.Ctrl | input.Alt)
	if k := pageKeys[e.Key]; k != input.NoKey {
		return input.Press{Key: k, Mods: mods, Repeat: e.Repeat}, true
	}
	r, n := utf8.DecodeRuneInString(e.Key)
	if n == 0 || n != len(e.Key) || r == utf8.RuneError || !unicode.IsPrint(r) {
		return input.Press{}, false
	}
	return input.Press{Rune: sign(r, mods), Mods: signMods(r, mods), Repeat: e.Repeat}, true
}

// sign is a letter in lower case where it was not typed but pressed with
// Control or Alt.
func sign(r rune, m input.Mods) rune {
	if signMods(r, m)&(input.Ctrl|input.Alt) != 0 {
		return unicode.ToLower(r)
	}
	return r
}

// signMods leaves out Alt where it reached the third level of the keyboard: the
// sign is then meant as it is.
func signMods(r rune, m input.Mods) input.Mods {
	if m&input.Ctrl == 0 && !(r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r))) {
		return m &^ input.Alt
	}
	return m
}
