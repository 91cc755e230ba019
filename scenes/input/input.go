// Package input is what a person does to a screen in one frame, as data. The
// window, the browser page and the tests all fill it; scenes read it.
package input

import "cuesta/scenes/describe"

// Key is a key that has a meaning of its own, whatever it types.
type Key uint8

// The keys scenes may ask for. Letters and signs that are typed come as Runes.
const (
	NoKey Key = iota
	Left
	Right
	Up
	Down
	Tab
	Enter
	Escape
	Space
	Backspace
	Delete
	Home
	End
	PageUp
	PageDown
	F1
	F2
	F3
	F4
	F5
	F6
	F7
	F8
	F9
	F10
	F11
	F12
)

// Mods are the modifier keys held.
type Mods uint8

// The modifiers.
const (
	Shift Mods = 1 << iota
	Ctrl       // Control, or Command on a Mac
	Alt
)

// Press is one stroke of a key: the first, or a repeat while it is held.
// Exactly one of Key and Rune is set. A rune is what the keyboard types, with
// Shift already in it; the space bar is the key Space.
type Press struct {
	Key    Key
	Rune   rune
	Mods   Mods
	Repeat bool
}

// PointerKind is what the pointer did.
type PointerKind uint8

// The pointer events.
const (
	PointerMove PointerKind = iota
	PointerDown
	PointerUp
	PointerWheel
)

// Pointer is one event of the mouse or of a finger, in device pixels.
type Pointer struct {
	Kind  PointerKind
	X, Y  float64
	Wheel float64 // rows, up positive
	Touch bool
}

// ActKind is what a person does to a control that they name instead of pointing
// at it.
type ActKind uint8

// The acts.
const (
	Activate ActKind = iota // presses it
	Focus                   // gives it the keyboard
	Write                   // makes a field hold Text
)

// Act is done to a control by its ID in the description, as screen readers,
// switches and the controls of a page do. An ID that is not on the screen, or
// is disabled there, is passed over.
type Act struct {
	Kind  ActKind
	ID    describe.ID
	Text  string // of Write
	After int    // how many of the frame's Presses came before it
}

// Frame is everything since the last frame, in the order it happened.
type Frame struct {
	W, H     float64 // size of the picture in device pixels; pointers use them too
	Touch    bool    // who works it has a finger at hand and no keyboard, as far as is known
	Scale    float64 // device pixels in one nominal pixel, at least the size text needs
	Ticks    int     // fixed steps of 1/120 s that have passed
	Presses  []Press
	Pointers []Pointer
	Acts     []Act // in order; their After never falls
}

// InOrder calls press and act for the presses and acts of the frame as they
// came.
func (f *Frame) InOrder(press func(Press), act func(Act)) {
	next := 0
	for i := range f.Presses {
		for ; next < len(f.Acts) && f.Acts[next].After <= i; next++ {
			act(f.Acts[next])
		}
		press(f.Presses[i])
	}
	for ; next < len(f.Acts); next++ {
		act(f.Acts[next])
	}
}
