package scenes

import (
	"cuesta/scenes/describe"
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

// keypad are the rows of the keypad.
func (m *sketch) keypad() []block {
	u := m.lay.Unit
	var out []block
	n := 0
	for _, row := range padRows {
		var b block
		x := 0.0
		for _, s := range row {
			w := m.styled(widget{id: idPadKey + describe.ID(n), name: padName(s), text: s}, outlined)
			w.rect.X, w.rect.W = x, max(60*u, m.width(w)+24*u)
			b.add(w)
			x += w.rect.W + 8*u
			n++
		}
		out = append(out, b)
	}
	return out
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
