package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// padRows are the keys for those who write with a pointer: figures, what parts
// them, and the letters of directions. The arrow takes back one sign.
var padRows = [...][]string{{"7", "8", "9", "N", "←"}, {"4", "5", "6", "E", "clear"}, {"1", "2", "3", "S", "space"}, {"/", "0", ".", "W"}}

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

// keypad are the rows of the keypad: a grid, or where there is little room as
// many keys in a row as it holds. Other keys may follow its own.
func (m *sketch) keypad(wide float64, more ...widget) []block {
	var ks []widget
	n := 0
	for _, row := range padRows {
		for _, s := range row {
			ks = append(ks, m.styled(widget{id: idPadKey + describe.ID(n), name: padName(s), text: s}, outlined))
			n++
		}
	}
	ks = append(ks, more...)
	need, free := m.columns(ks, wide, len(padRows[0]))
	if m.flat || m.lay.Tight && !m.lay.Phone || free < 0 {
		return m.inRows(m.snug(ks), wide)
	}
	return m.grid(ks, need, free)
}

// snug makes keys as small as a finger can press.
func (m *sketch) snug(ks []widget) []widget {
	u := m.lay.Unit
	for i := range ks {
		ks[i].rect.W, ks[i].rect.H = max(44*u, m.width(ks[i])+20*u), max(44*u, 1.5*ks[i].size)
	}
	return ks
}

// columns are how wide each column of keys has to be, and what they leave free.
func (m *sketch) columns(ks []widget, wide float64, n int) (need []float64, free float64) {
	u := m.lay.Unit
	need, free = make([]float64, n), wide-8*u*float64(n-1)
	for i, k := range ks {
		need[i%n] = max(need[i%n], m.width(k)+12*u, m.leastTarget())
	}
	for _, x := range need {
		free -= x
	}
	return need, free
}

// grid places keys in columns, each as wide as its widest key needs, and as even
// as what is free allows.
func (m *sketch) grid(ks []widget, need []float64, free float64) []block {
	columns, gap := len(need), 8*m.lay.Unit
	even := min(72*m.lay.control(), need[0]+free/float64(columns))
	for i := range need {
		need[i] = max(need[i], even)
	}
	var out []block
	x := 0.0
	for i, k := range ks {
		if i%columns == 0 {
			out, x = append(out, block{}), 0
		}
		k.rect.X, k.rect.W = x, need[i%columns]
		out[len(out)-1].add(k)
		x += k.rect.W + gap
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

// writing opens the keypad. It leaves the notebook in view; where there is no
// room for both, what is written and how it reads stand above the keys.
func (m *maker) writing() {
	r := m.padPlace()
	z := &m.zones[sheetZone]
	z.ground, z.rect = sheetGround, r
	m.add(sheetZone, widget{id: idPanelTitle, role: describe.Heading, name: "Write", look: hidden, rect: draw.Rect{X: r.X, Y: r.Y, W: r.W, H: 1}})
	blocks := m.padKeys(r.W - 2*m.lay.pad())
	tall := 0.0
	for _, b := range blocks {
		tall += b.h + m.gapAfter(b)
	}
	y := r.Y + max(8*m.lay.Unit, min(r.H-tall, 2*m.lay.pad())/2)
	for _, b := range blocks {
		for _, w := range b.parts {
			w.rect.X += r.X + m.lay.pad()
			w.rect.Y += y
			m.add(sheetZone, w)
		}
		y += b.h + m.gapAfter(b)
	}
}

// padPlace is where the keypad opens: the Pad where it fits there, or else over
// all that a panel may cover.
func (m *maker) padPlace() draw.Rect {
	m.blind = false
	tall := 0.0
	for _, b := range m.padKeys(m.lay.Pad.W - 2*m.lay.pad()) {
		tall += b.h + m.gapAfter(b)
	}
	m.blind = meets(m.lay.Pad, m.lay.Column) || tall+8*m.lay.Unit > m.lay.Pad.H
	if m.blind {
		return m.lay.Sheet
	}
	m.lay.Sheet, m.s.lay.Sheet = m.lay.Pad, m.lay.Pad
	return m.lay.Pad
}

// padKeys are the keys and the way back, below what is written where the
// notebook is covered.
func (m *maker) padKeys(wide float64) []block {
	back := m.styled(widget{id: idClosePanel, name: "Back to the bench", text: "Back", keys: "Escape"}, outlined)
	keys := m.keypad(wide, back)
	if !m.blind {
		return keys
	}
	h := max(44*m.lay.Unit, 1.35*20*m.lay.Text)
	var b block
	b.add(widget{id: idNotebook, role: describe.Field, name: "Notebook, " + m.form(), value: m.b.text, text: m.b.text, look: box,
		size: 20 * m.lay.Text, caret: -1, rect: draw.Rect{W: min(wide, 300*m.lay.Text), H: h}})
	out := []block{b}
	if m.b.echo != "" {
		out = append(out, m.wrapped(idEcho, describe.Status, m.b.echo, noteSize, false, wide)...)
	}
	return append(out, keys...)
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
