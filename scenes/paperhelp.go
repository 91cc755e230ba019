package scenes

import (
	"errors"
	"fmt"
	"strings"

	"cuesta/quiz/sitting"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

// advises tells what the keys of help and settings tell elsewhere, or takes it
// back, and says whether it was one of them.
func (p *Paper) advises(k input.Press) bool {
	a, ok := p.set.Keys.At(keymap.Everywhere, keymap.Of(k))
	words := ""
	switch {
	case ok && a == keymap.Help:
		words = p.help()
	case ok && a == keymap.Settings && p.leave != nil:
		words = "The settings are in the menu: " + p.set.keysFor(keymap.Menu) + "."
	default:
		return false
	}
	if p.said == words {
		words = ""
	}
	p.said = words
	return true
}

// help is how a form is worked by keys.
func (p *Paper) help() string {
	f := p.set.keysFor
	words := fmt.Sprintf("Enter keeps the answer. %s and %s lead to the next question and to the one before, Tab to every control, Escape back to the answer. %s lists the keys.",
		f(keymap.NextItem), f(keymap.LastItem), f(keymap.Keys))
	if p.leave != nil {
		words += " " + f(keymap.Menu) + " leads to the menu."
	}
	return words
}

// notKept says why an answer was not kept. One that cannot be read counts for
// nothing.
func notKept(err error) string {
	if why, ok := strings.CutPrefix(err.Error(), sitting.ErrUnread.Error()+": "); ok && errors.Is(err, sitting.ErrUnread) {
		return "Not kept: " + strings.TrimSuffix(why, ".") + ". It counts for no attempt."
	}
	return err.Error()
}
