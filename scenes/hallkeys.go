package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

// lists says that the key of the list of keys was pressed where the hall has to
// open it: the bench has the list among its panels.
func (h *Hall) lists(ps []input.Press) bool {
	if _, own := h.inside.(*Bench); own && h.open || h.keys.asking {
		return false
	}
	return h.does(ps, keymap.Keys)
}

// list opens the list of keys, or closes it.
func (h *Hall) list() {
	if h.listing {
		h.unlist()
		return
	}
	h.listing, h.keys, h.page, h.focus, h.age = true, keyList{}, 0, idClosePanel, 0
	h.screen.made = false
}

// unlist goes back to the doors, or to the scene as it stood.
func (h *Hall) unlist() {
	h.listing, h.page, h.focus = false, 0, idDoor
	h.screen.made = false
}

// everywhere does what the keys of help and settings do on every screen, and
// says whether this was one. The help of the hall is the list of keys.
func (h *Hall) everywhere(p input.Press) bool {
	a, ok := h.Settings().Keys.At(keymap.Everywhere, keymap.Of(p))
	switch {
	case !ok || p.Repeat:
		return false
	case a == keymap.Help:
		h.list()
	case a == keymap.Settings:
		h.toSettings()
	default:
		return false
	}
	if !h.shows() {
		h.screen.build(h)
	}
	return true
}

// toSettings goes to the first setting, on whatever page of the hall it stands.
// From the list of keys over a scene it goes back there, where all of them are.
func (h *Hall) toSettings() {
	if h.listing {
		h.unlist()
	}
	if h.open {
		return
	}
	h.advised, h.said, h.focus = true, h.ofSettings(), idSetText+describe.ID(h.Settings().Text)
}

// ofSettings says what of the settings is to be had in the hall.
func (h *Hall) ofSettings() string {
	return "Settings of every screen: the arrow keys and Enter choose. " + h.Settings().keysFor(keymap.Settings) + " at the bench has the others."
}

// escape closes the list of keys, or goes back into the scene that was left.
func (h *Hall) escape() {
	if h.listing {
		h.unlist()
		return
	}
	h.goOn()
}

// rekey puts the settings in force and has them kept, whatever scene is open.
func (h *Hall) rekey(s Settings) {
	h.Choose(s)
	if h.keep != nil {
		h.keep(s)
	}
}

// list is the list of keys over the whole window.
func (m *hallMaker) list() {
	r := draw.Rect{W: m.lay.W, H: m.lay.Bar.Y}
	back := "Back to the menu"
	if m.h.open {
		back = "Back to where you were"
	}
	m.h.page = m.leaf(leaf{rect: r, page: m.h.page, now: m.h.focus, name: "Keys", back: back}, m.keyRows(m.h.keys, m.s.key.set, r.W-2*m.lay.pad()))
	m.s.key.page = m.h.page
}
