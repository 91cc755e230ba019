package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/keymap"
)

// helpLines are the way of a reading and the keys in force, a pair a row.
func (m *maker) helpLines() [][2]string {
	set := m.b.set
	lines := [][2]string{
		{"Level", "swing and roll the plate on its edge until the bubble lies wholly inside the ring"},
		{"Strike", "let the needle rest, read the dial at its north end; if the rock falls to the left of the arrow, turn end for end first"},
		{"Dip", "turn the plate on its side, edge straight down the slope; turn the arm until its bubble lies between the marks, read the outer scale"},
		{"Note", "write strike and dip, record, and see what was right and why the rest was not"},
	}
	if m.b.manner == byTap {
		return append(lines, tapLines...)
	}
	for _, l := range [...][2]string{
		{set.keysFor(keymap.SwingLess, keymap.SwingMore), "swing the plate on the rock"},
		{set.keysFor(keymap.Lift, keymap.Lower), "roll it about its edge; on its side, turn the arm; on its lid, open the hinge"},
		{set.keysFor(keymap.StepSize), "changes the step: 10°, 1°, 0.1°. No key has to be held and none needs another with it; Shift or Ctrl with an arrow are short for 10° and 0.1°. A turn is taken back by the same turn the other way"},
		{set.keysFor(keymap.TurnOver, keymap.Flip), "turn the plate on its side and back; turn it end for end"},
		{set.keysFor(keymap.Tap, keymap.LockFree, keymap.Calibrate, keymap.Method), "tap the case; lock and free the needle; calibrate the sensor; next method: edge and side, lid, sensor"},
		{set.keysFor(keymap.LeanLess, keymap.LeanMore), "on its side: lean the face"},
		{set.keysFor(keymap.RingLess, keymap.RingMore), "turn the declination ring, where it is yours to set"},
		{set.keysFor(keymap.Magnify, keymap.ReadOut), "magnifies level or scale, and goes back; says in words what scale and level show"},
		{m.digits(), "go straight into the notebook; Backspace or Ctrl Z takes back"},
		{"Enter", "goes on: turns the plate, records, deals the next plane"},
		{"Tab, Esc", "from control to control; back to the instrument"},
		{set.keysFor(keymap.Help, keymap.Settings, keymap.Keys, keymap.Menu), "this help; the settings; the keys, which can all be changed; the menu. F11 " + fillsWords},
		{set.keysFor(keymap.Closer), "come closer; drag the ground to walk round"},
		{m.overlayKeys(), "after the answer: water, strike, arrow, hand, numbers, yours"},
		{"Switches", "in the settings: a mark goes from control to control, and Space, Enter, " + set.keysFor(keymap.Switch) + " or a touch anywhere presses what it is on; with two switches Space or " + set.keysFor(keymap.SwitchMove) + " moves it"},
	} {
		if l[0] != "" {
			lines = append(lines, l)
		}
	}
	return lines
}

// fillsWords say what F11 does, which is always the same key.
const fillsWords = "fills the screen with the picture, and back"

// digits are what goes into the notebook from everywhere, where it does.
func (m *maker) digits() string {
	if m.b.set.Quiet {
		return ""
	}
	return "Digits"
}

func (m *maker) overlayKeys() string {
	if m.b.set.Quiet {
		return ""
	}
	return "1 to 6"
}

func (m *maker) help(rows [][2]string) []block {
	var out []block
	for i, row := range rows {
		name := widget{id: idHelpLine + describe.ID(i), role: describe.Line, group: "Lines", name: row[0] + ": " + row[1], text: row[0], bold: true, focus: true}
		out = append(out, m.helpLine(name, row[1], 110*m.lay.Text)...)
	}
	return out
}

// helpLine is a name with its words beside it, so far to the right, or, in a
// narrow panel, line by line below it.
func (m *maker) helpLine(name widget, words string, right float64) []block {
	t, w := m.lay.Text, m.sheetWidth()
	line := func(x widget, left float64) widget {
		x.look, x.size, x.leading = plain, noteSize*t, 21*t
		x.rect = draw.Rect{X: left, W: w - left, H: 21 * t * float64(len(splitLines(x.text)))}
		return x
	}
	if !m.narrow() {
		var b block
		n := line(name, 0)
		n.rect.W = right
		b.add(n)
		b.add(line(widget{text: joinLines(draw.Wrap(draw.Regular, noteSize*t, w-right, words))}, right))
		return []block{b}
	}
	out := make([]block, 1)
	out[0].add(line(name, 0))
	out[0].close, out[0].keep = true, true
	for _, s := range draw.Wrap(draw.Regular, noteSize*t, w, words) {
		b := block{close: true}
		more := name
		more.text, more.bold = s, false
		b.add(line(more, 0))
		out = append(out, b)
	}
	out[len(out)-1].close = false
	return out
}
