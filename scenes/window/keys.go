//go:build !js

package window

import (
	"unicode"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/scenes/input"
)

// named are the keys that have a meaning of their own.
var named = map[ebiten.Key]input.Key{
	ebiten.KeyArrowLeft: input.Left, ebiten.KeyArrowRight: input.Right,
	ebiten.KeyArrowUp: input.Up, ebiten.KeyArrowDown: input.Down,
	ebiten.KeyTab: input.Tab, ebiten.KeyEnter: input.Enter, ebiten.KeyNumpadEnter: input.Enter,
	ebiten.KeyEscape: input.Escape, ebiten.KeySpace: input.Space,
	ebiten.KeyBackspace: input.Backspace, ebiten.KeyDelete: input.Delete,
	ebiten.KeyHome: input.Home, ebiten.KeyEnd: input.End,
	ebiten.KeyPageUp: input.PageUp, ebiten.KeyPageDown: input.PageDown,
	ebiten.KeyF1: input.F1, ebiten.KeyF2: input.F2, ebiten.KeyF3: input.F3, ebiten.KeyF4: input.F4,
	ebiten.KeyF5: input.F5, ebiten.KeyF6: input.F6, ebiten.KeyF7: input.F7, ebiten.KeyF8: input.F8,
	ebiten.KeyF9: input.F9, ebiten.KeyF10: input.F10, ebiten.KeyF11: input.F11, ebiten.KeyF12: input.F12,
}

// A key that is held repeats after 400 ms, 30 times a second.
const (
	repeatAfter = 400 * ticksPerSecond / 1000
	repeatEvery = ticksPerSecond / 30
	mostRepeats = 4 // in one frame, however slow it was

	// A frame counts for so much of the first wait at most: where frames take
	// long, a tap is seen down in one more of them and is still no held key.
	mostOfWait = repeatAfter / 3
)

// keys is which key is held and for how long.
type keys struct {
	held  ebiten.Key
	down  bool // held is a key
	ticks int
	fresh bool // a key went down in the last frame
}

// strokes adds the strokes of named keys: first those that went down in this
// frame, then the repeats of the one that went down last and is still held.
func (k *keys) strokes(out []input.Press, pressed []ebiten.Key, isDown func(ebiten.Key) bool, ticks int, mods input.Mods) []input.Press {
	before := k.ticks
	if k.down && !isDown(k.held) {
		k.down = false
	}
	for _, key := range pressed {
		name := named[key]
		if name == input.NoKey {
			continue
		}
		out = append(out, input.Press{Key: name, Mods: mods})
		k.held, k.down, k.ticks, before = key, true, 0, -1
	}
	if !k.down || before < 0 {
		return out
	}
	if k.ticks < repeatAfter {
		ticks = min(ticks, mostOfWait)
	}
	k.ticks += ticks
	for range min(repeats(k.ticks)-repeats(before), mostRepeats) {
		out = append(out, input.Press{Key: named[k.held], Mods: mods, Repeat: true})
	}
	return out
}

// repeats is how often a key has repeated that has been held for some ticks.
func repeats(ticks int) int {
	if ticks < repeatAfter {
		return 0
	}
	return 1 + (ticks-repeatAfter)/repeatEvery
}

// typed adds what was typed. The system repeats signs by itself; one that
// comes with no key going down in this frame or the last is a repeat.
func (k *keys) typed(out []input.Press, runes []rune, pressed bool, mods input.Mods) []input.Press {
	again := !pressed && !k.fresh
	k.fresh = pressed
	for _, r := range runes {
		if r != ' ' && unicode.IsPrint(r) && mods&input.Ctrl == 0 {
			out = append(out, input.Press{Rune: r, Mods: typing(mods), Repeat: again})
		}
	}
	return out
}

// typing leaves out Alt where a sign was typed: with it the third level of the
// keyboard is reached, and the sign is meant as it is.
func typing(m input.Mods) input.Mods { return m &^ input.Alt }

// chords adds letters and digits that went down with Control or Alt, which
// type nothing.
func chords(out []input.Press, pressed []ebiten.Key, typed []rune, mods input.Mods) []input.Press {
	if mods&input.Ctrl == 0 && len(typed) > 0 {
		return out
	}
	for _, key := range pressed {
		if r := letter(key); r != 0 {
			out = append(out, input.Press{Rune: r, Mods: mods})
		}
	}
	return out
}

// letter is what a key types by itself on this keyboard, in lower case, or 0.
func letter(key ebiten.Key) rune {
	name := []rune(ebiten.KeyName(key))
	if len(name) == 1 && named[key] == input.NoKey {
		return unicode.ToLower(name[0])
	}
	if key >= ebiten.KeyA && key <= ebiten.KeyZ {
		return 'a' + rune(key-ebiten.KeyA)
	}
	if key >= ebiten.KeyDigit0 && key <= ebiten.KeyDigit9 {
		return '0' + rune(key-ebiten.KeyDigit0)
	}
	return 0
}
