package scenes

import (
	"slices"
	"strings"
)

// field is the line of the notebook being written, with a caret and undo.
type field struct {
	text  []rune
	caret int
	past  []string // for undo, newest last
}

const fieldLimit = 60

func (f *field) String() string { return string(f.text) }

func (f *field) set(s string) {
	f.text = []rune(s)
	f.caret = len(f.text)
}

func (f *field) keep() {
	if n := len(f.past); n == 0 || f.past[n-1] != string(f.text) {
		f.past = append(f.past, string(f.text))
	}
}

// insert writes r at the caret; it says whether there was room.
func (f *field) insert(r rune) bool {
	if len(f.text) >= fieldLimit || r < ' ' || r == 0x7f {
		return false
	}
	f.keep()
	f.text = append(f.text[:f.caret], append([]rune{r}, f.text[f.caret:]...)...)
	f.caret++
	return true
}

// remove deletes the sign before the caret, or after it when ahead.
func (f *field) remove(ahead bool) bool {
	at := f.caret - 1
	if ahead {
		at = f.caret
	}
	if at < 0 || at >= len(f.text) {
		return false
	}
	f.keep()
	f.text = append(f.text[:at], f.text[at+1:]...)
	f.caret = at
	return true
}

// replace makes the field hold s, as far as it fits; it says whether anything
// has changed.
func (f *field) replace(s string) bool {
	var text []rune
	for _, r := range s {
		if len(text) < fieldLimit && r >= ' ' && r != 0x7f {
			text = append(text, r)
		}
	}
	if string(text) == string(f.text) {
		return false
	}
	f.keep()
	f.set(string(text))
	return true
}

// has says whether a word stands in the field, in small letters or capitals.
func (f *field) has(word string) bool {
	return slices.ContainsFunc(strings.Fields(f.String()), func(s string) bool { return strings.EqualFold(s, word) })
}

// toggle writes a word behind what stands there, or takes it away. The caret
// stays before it.
func (f *field) toggle(word string) bool {
	text, at := f.String(), f.caret
	if f.has(word) {
		rest := slices.DeleteFunc(strings.Fields(text), func(s string) bool { return strings.EqualFold(s, word) })
		text = strings.Join(rest, " ")
	} else {
		text = strings.TrimRight(text, " ") + " " + word
		at = min(at, len([]rune(text))-len([]rune(word))-1)
	}
	if len([]rune(text)) > fieldLimit {
		return false
	}
	f.keep()
	f.set(text)
	f.caret = min(at, f.caret)
	return true
}

func (f *field) shift(d int) { f.caret = max(0, min(len(f.text), f.caret+d)) }

// undo goes back one change.
func (f *field) undo() bool {
	n := len(f.past)
	if n == 0 {
		return false
	}
	f.set(f.past[n-1])
	f.past = f.past[:n-1]
	return true
}

func (f *field) clear() { *f = field{} }
