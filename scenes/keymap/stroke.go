package keymap

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"cuesta/scenes/input"
)

// Stroke is a key by itself: one that has a name, or one that types a sign, in
// lower case. The zero value is no key.
type Stroke struct {
	Key  input.Key
	Rune rune
}

func named(k input.Key) Stroke { return Stroke{Key: k} }
func typed(r rune) Stroke      { return Stroke{Rune: r} }

// Of is the stroke of a press, whatever is held beside it.
func Of(p input.Press) Stroke {
	return Stroke{Key: p.Key, Rune: unicode.ToLower(p.Rune)}
}

// Typed says that the key types a sign, so that it may be switched off or be
// wanted in a note.
func (s Stroke) Typed() bool { return s.Rune != 0 }

var keyNames = [...]string{
	input.Left: "←", input.Right: "→", input.Up: "↑", input.Down: "↓",
	input.Tab: "Tab", input.Enter: "Enter", input.Escape: "Escape", input.Space: "Space",
	input.Backspace: "Backspace", input.Delete: "Delete", input.Home: "Home", input.End: "End",
	input.PageUp: "Page Up", input.PageDown: "Page Down",
	input.F1: "F1", input.F2: "F2", input.F3: "F3", input.F4: "F4", input.F5: "F5", input.F6: "F6",
	input.F7: "F7", input.F8: "F8", input.F9: "F9", input.F10: "F10", input.F11: "F11", input.F12: "F12",
}

// String is the key as it is printed on it.
func (s Stroke) String() string {
	if s.Rune != 0 {
		return string(unicode.ToUpper(s.Rune))
	}
	if int(s.Key) < len(keyNames) {
		return keyNames[s.Key]
	}
	return ""
}

// ParseStroke reads what String writes; upper and lower case are alike.
func ParseStroke(text string) (Stroke, error) {
	for k, n := range keyNames {
		if n != "" && strings.EqualFold(n, text) {
			return named(input.Key(k)), nil
		}
	}
	r, size := utf8.DecodeRuneInString(text)
	if size == 0 || size != len(text) || r == utf8.RuneError || !unicode.IsPrint(r) || unicode.IsSpace(r) {
		return Stroke{}, fmt.Errorf("read %.20q, which is no key; write one sign, or a name such as Space or F4", text)
	}
	return typed(unicode.ToLower(r)), nil
}

// reserved says why a key cannot be had for an action, or "".
func (s Stroke) reserved(a Action) string {
	switch s.Key {
	case input.Tab, input.Enter, input.Escape:
		return s.String() + " stays as it is, so that there is always a way on and a way out"
	case input.Backspace, input.Delete, input.Home, input.End:
		return s.String() + " is for the field that is written in"
	}
	if unicode.IsDigit(s.Rune) || s.Rune == '/' {
		return s.String() + " writes into the note"
	}
	if s.Typed() && a.Place() == Everywhere {
		return s.String() + " writes where there is a field, and this is to work there too: take a key that writes nothing"
	}
	return ""
}
