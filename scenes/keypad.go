package scenes

import (
	"slices"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// padRows are the keys for those who write with a pointer: figures, what parts
// them, and the letters of directions. The arrow takes back one sign.
var padRows = [...][]string{{"7", "8", "9", "N"}, {"4", "5", "6", "E"}, {"1", "2", "3", "S"}, {"/", "0", ".", "W"}, {"space", "←", "clear"}}

// padSign is what key n of the keypad says.
func padSign(n int) string {
	for _, row := range padRows {
		if n < len(row) {
			return row[n]
		}
		n -= len(row)
	}
	return ""
}

// keypad are the rows of the keypad. Where there is little height its keys
// follow each other as far as a row goes.
func (m *sketch) keypad(wide float64) []block {
	u := m.lay.Unit
	var keys [][]widget
	n := 0
	for _, row := range padRows {
		var ks []widget
		for _, s := range row {
			w := m.styled(widget{id: idPadKey + describe.ID(n), name: padName(s), text: s}, outlined)
			w.rect.W = max(60*u, m.width(w)+24*u)
			if m.lay.Tight {
				w.rect.W, w.rect.H = max(44*u, m.width(w)+20*u), max(44*u, 1.5*w.size)
			}
			ks = append(ks, w)
			n++
		}
		keys = append(keys, ks)
	}
	if m.lay.Tight && !m.lay.Phone {
		keys = [][]widget{slices.Concat(keys...)}
	}
	var out []block
	for _, ks := range keys {
		out = append(out, m.inRows(ks, wide)...)
	}
	return out
}

// inRows places widgets side by side, in as many rows as they need.
func (m *sketch) inRows(ws []widget, wide float64) []block {
	var out []block
	x := wide + 1
	for _, w := range ws {
		if x > 0 && x+w.rect.W > wide {
			out, x = append(out, block{}), 0
		}
		w.rect.X = x
		out[len(out)-1].add(w)
		x += w.rect.W + 8*m.lay.Unit
	}
	return out
}

// writing is the panel of the keypad; where it covers the notebook, what is
// written stands above the keys.
func (m *maker) writing() []block {
	keys := m.keypad(m.sheetWidth())
	if !m.lay.Tight {
		return keys
	}
	h := max(44*m.lay.Unit, 1.35*20*m.lay.Text)
	var b block
	b.add(widget{id: idNotebook, role: describe.Field, name: "Notebook, " + m.form(), value: m.b.text, text: m.b.text, look: box,
		size: 20 * m.lay.Text, caret: -1, rect: draw.Rect{W: min(m.sheetWidth(), 300*m.lay.Text), H: h}})
	return append([]block{b}, keys...)
}

func padName(s string) string {
	switch s {
	case "←":
		return "Take back one sign"
	case "/":
		return "Slash"
	case ".":
		return "Point"
	case "clear":
		return "Clear the field"
	}
	return s
}

// press does in a field what a key of the keypad says; it tells whether
// anything has changed.
func (f *field) press(sign string) bool {
	switch sign {
	case "":
		return false
	case "←":
		return f.remove(false)
	case "clear":
		f.keep()
		f.set("")
		return true
	case "space":
		return f.insert(' ')
	}
	return f.insert([]rune(sign)[0])
}

// padKey writes key n of the keypad and takes the reading as it stands, as
// typing does.
func (b *Bench) padKey(n int) {
	if b.phase != measuring || !b.note.press(padSign(n)) {
		return
	}
	b.edited()
	b.read()
}

// padKey writes key n of the keypad.
func (p *Paper) padKey(n int) {
	if p.open() && p.note.press(padSign(n)) {
		p.said = ""
	}
}
