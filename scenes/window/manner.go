package window

import "cuesta/scenes/input"

// manner is how a person works the screen, as far as it is known: by taps, until
// a mouse or a key that no keyboard on a screen sends shows otherwise.
type manner struct{ touch bool }

// learn takes in what was done in a frame, and says whether the person taps.
func (m *manner) learn(presses []input.Press, pointers []input.Pointer) bool {
	for _, p := range pointers {
		m.touch = p.Touch
	}
	for _, p := range presses {
		switch p.Key {
		case input.NoKey, input.Enter, input.Space, input.Backspace: // a keyboard on a screen sends these too
		default:
			m.touch = false
		}
	}
	return m.touch
}
