package scenes

import (
	"errors"
	"strings"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

// keysFor are the keys in force for some actions, as they are shown; signs that
// only write are left out.
func (s Settings) keysFor(as ...keymap.Action) string {
	var out []string
	for _, a := range as {
		if k := s.Keys.Of(a); !s.Quiet || !k.Typed() {
			out = append(out, k.String())
		}
	}
	return strings.Join(out, " ")
}

// keyList is the list of keys while it is open: which key is asked for, and what
// came of the last.
type keyList struct {
	asking bool          // the next key is the new one of asked
	asked  keymap.Action // in the list
	said   string
}

// ask waits for the key that is to do an action.
func (k *keyList) ask(a keymap.Action) {
	*k = keyList{true, a, "Press the key for: " + a.Words() + ". Escape leaves it as it is."}
}

// give takes the key that was pressed and returns the settings with it. Whatever
// comes of it, the next key is a key again.
func (k *keyList) give(p input.Press, s Settings) Settings {
	k.asking = false
	if p.Key == input.Escape {
		k.said = "Left as it is."
		return s
	}
	m, swapped, err := s.Keys.With(k.asked, keymap.Of(p))
	if err != nil {
		k.said = keyError(err)
		return s
	}
	k.said = k.asked.Words() + ": " + m.Of(k.asked).String() + "."
	for _, a := range swapped {
		k.said += " In exchange, " + a.Words() + ": " + m.Of(a).String() + "."
	}
	s.Keys = m
	return s
}

// usual gives every action its usual key back.
func (k *keyList) usual(s Settings) Settings {
	s.Keys = keymap.Map{}
	k.asking, k.said = false, "Every key is the usual one again."
	return s
}

// line says what to do in the list of keys, or what came of it.
func (k *keyList) line() string {
	if k.said != "" {
		return k.said
	}
	return "Choose what to change, then press its new key. Tab, Enter and Escape stay as they are."
}

// keyError is why a key was not taken, in words.
func keyError(err error) string {
	if errors.Is(err, keymap.ErrKept) {
		return "Not taken: " + strings.TrimPrefix(err.Error(), keymap.ErrKept.Error()+": ") + "."
	}
	return err.Error()
}

// keysRow is the way from the settings to the list of keys.
func (m *maker) keysRow() block {
	o := option{first: idSetKeys, name: "Keys", words: []string{"Change keys"}, at: -1}
	b := m.choices(o)
	for i := range b.parts {
		if w := &b.parts[i]; w.id == idSetKeys {
			w.role, w.look, w.name, w.keys = describe.Button, outlined, "Change keys", m.b.set.keysFor(keymap.Keys)
		}
	}
	return b
}

// keyRows are the actions with their keys, and the way back to the usual ones.
func (m *sketch) keyRows(k keyList, set Settings, wide float64) []block {
	u, t := m.lay.Unit, m.lay.Text
	var out []block
	for a := range keymap.Actions {
		h := m.rowHeight()
		key := set.Keys.Of(a).String()
		text := key
		if k.asking && a == k.asked {
			text = "Press a key"
		}
		c := m.styled(widget{id: idKeyRow + describe.ID(a), name: a.Words() + ", " + text, text: text}, outlined)
		c.size = noteSize * t
		c.rect.H, c.rect.W = h, max(m.width(c), m.width(widget{text: "Press a key", size: c.size}))+20*u
		words := widget{text: a.Words(), look: plain, size: noteSize * t, leading: h}
		var b block
		room := wide - c.rect.W - 12*u
		lines := draw.Wrap(draw.Regular, words.size, room, words.text)
		words.text = joinLines(lines)
		if len(lines) > 1 {
			words.leading = 21 * t
		}
		words.rect = draw.Rect{X: c.rect.W + 12*u, W: room, H: max(h, words.leading*float64(len(lines)))}
		b.add(c)
		b.add(words)
		out = append(out, b)
	}
	fills := block{}
	lines := draw.Wrap(draw.Regular, noteSize*t, wide, "F11 "+fillsWords)
	fills.add(widget{id: idPanelText, role: describe.Label, name: "F11 " + fillsWords, look: plain, size: noteSize * t, leading: 21 * t,
		text: joinLines(lines), rect: draw.Rect{W: wide, H: 21 * t * float64(len(lines))}})
	usual := m.styled(widget{id: idUsualKeys, name: "Back to the usual keys", text: "Usual keys", disabled: set.Keys.Usual()}, outlined)
	usual.rect.W = m.width(usual) + 24*u
	var b block
	b.add(usual)
	return append(out, fills, b)
}

// sign is a key that types and cannot be changed, as it is shown.
func (b *Bench) sign(s string) string {
	if b.set.Quiet {
		return ""
	}
	return s
}
