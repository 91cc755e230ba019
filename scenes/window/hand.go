//go:build !js

package window

import (
	"time"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"cuesta/scenes/input"
)

// hand gathers what keyboard, mouse and fingers did since the last frame. Its
// slices are used again in the next frame.
type hand struct {
	clock    clock
	keys     keys
	presses  []input.Press
	pointers []input.Pointer
	runes    []rune
	pressed  []ebiten.Key
	mouse    mouse
	touch    touch
	manner   manner
}

func (h *hand) frame(w, hgt, scale float64) input.Frame {
	ticks := h.clock.ticks(time.Now())
	h.presses, h.pointers = h.presses[:0], h.pointers[:0]
	h.press(ticks)
	h.pointers = h.mouse.events(h.pointers)
	h.pointers = h.touch.events(h.pointers)
	return input.Frame{W: w, H: hgt, Scale: scale, Ticks: ticks, Presses: h.presses, Pointers: h.pointers, Touch: h.manner.learn(h.presses, h.pointers)}
}

// press gathers the strokes of keys: those that type something come from what
// is typed, so that every keyboard layout works.
func (h *hand) press(ticks int) {
	mods := held()
	h.pressed = inpututil.AppendJustPressedKeys(h.pressed[:0])
	h.runes = ebiten.AppendInputChars(h.runes[:0])
	h.presses = h.keys.strokes(h.presses, h.pressed, ebiten.IsKeyPressed, ticks, mods)
	h.presses = h.keys.typed(h.presses, h.runes, len(h.pressed) > 0, mods)
	if mods&(input.Ctrl|input.Alt) != 0 {
		h.presses = chords(h.presses, h.pressed, h.runes, mods)
	}
}

func held() input.Mods {
	var m input.Mods
	if ebiten.IsKeyPressed(ebiten.KeyShift) {
		m |= input.Shift
	}
	if ebiten.IsKeyPressed(ebiten.KeyControl) || ebiten.IsKeyPressed(ebiten.KeyMeta) {
		m |= input.Ctrl
	}
	if ebiten.IsKeyPressed(ebiten.KeyAlt) {
		m |= input.Alt
	}
	return m
}
