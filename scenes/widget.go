package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// look is how a control or a text is drawn.
type look uint8

const (
	plain    look = iota // text only
	quiet                // a text that can be pressed
	filled               // the one filled button
	outlined             // a button
	chip                 // one of several choices, or a switch
	key                  // one half of a stepper: − or +
	caption              // the name between the halves of a stepper
	box                  // the notebook field
	tab                  // a step of the task; underlined when it is the one
	hidden               // described but drawn by someone else
	lens                 // can be pressed, and drawn by someone else; round where it is as high as wide
)

// widget is one thing on the screen: what it is in words and how it is drawn.
type widget struct {
	id       describe.ID
	role     describe.Role
	name     string // in words
	value    string
	keys     string
	group    string // of controls, in words
	text     string // what is drawn; lines are parted by \n
	look     look
	rect     draw.Rect
	size     float64 // of the type, in device pixels
	bold     bool
	soft     bool // quieter ink
	align    draw.Align
	on       bool
	disabled bool
	focus    bool // can have the keyboard
	writes   describe.Signs
	again    int // rises when a status tells the same once more
	caret    int // in runes, for the field; −1 is none
	leading  float64
	pad      float64 // of text that begins at the left
	barred   bool    // a text that stands out, by a bar at its left
}

func (w widget) node() describe.Node {
	r := w.rect
	return describe.Node{
		ID: w.id, Role: w.role, Name: w.name, Value: w.value, Keys: w.keys, Group: w.group,
		Focusable: w.focus, Disabled: w.disabled, On: w.on, Again: w.again, Writes: w.writes,
		Bounds: describe.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H},
	}
}

// inked is a pen for widgets: the palette and the size of things.
type inked struct {
	l       *draw.List
	th      *theme.Theme
	u       float64
	focused describe.ID
}

func (k inked) rule() float64 {
	if k.th.Flat {
		return 2 * k.u
	}
	return max(1, k.u)
}

func (k inked) widget(w widget) {
	switch w.look {
	case hidden, lens:
	case plain, caption:
		k.bar(w)
		k.lines(w, k.ink(w))
	case quiet:
		k.lines(w, k.ink(w))
	case tab:
		k.lines(w, k.ink(w))
		if w.on {
			k.underline(w)
		}
	case filled:
		if w.disabled {
			k.frame(w, k.th.Panel)
			k.lines(w, k.ink(w))
			break
		}
		k.l.Fill(draw.RoundBox(w.rect, 4*k.u), k.th.Btn)
		k.lines(w, k.th.BtnInk)
	case outlined, key:
		k.frame(w, k.th.Panel)
		k.lines(w, k.ink(w))
	case chip:
		k.frame(w, k.th.Panel)
		k.lines(w, k.ink(w))
		if w.on {
			k.mark(w)
		}
	case box:
		k.frame(w, k.th.Field)
		k.field(w)
	}
	if w.id != 0 && w.id == k.focused && w.look != hidden {
		k.ring(w)
	}
}

func (k inked) ink(w widget) draw.Color {
	if w.soft || w.disabled {
		return k.th.Ink2
	}
	return k.th.Ink
}

func (k inked) frame(w widget, fill draw.Color) {
	r, s := w.rect, k.rule()
	inner := draw.Rect{X: r.X + s/2, Y: r.Y + s/2, W: r.W - s, H: r.H - s}
	k.l.Fill(draw.RoundBox(r, 4*k.u), fill)
	k.l.Stroke(draw.RoundBox(inner, 4*k.u-s/2), draw.Stroke{Width: s, Color: k.th.FieldLine})
}

// mark shows a choice that is on by a bar along its lower edge: shape, not
// colour alone.
func (k inked) mark(w widget) {
	r := w.rect
	h := max(3, 4*k.u)
	k.l.Fill(draw.Box(draw.Rect{X: r.X + 8*k.u, Y: r.Y + r.H - h - 4*k.u, W: r.W - 16*k.u, H: h}), k.th.Ink)
}

func (k inked) bar(w widget) {
	if r := w.rect; w.barred {
		k.l.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: max(3, 4*k.u), H: r.H}), k.th.Ink)
	}
}

func (k inked) underline(w widget) {
	r := w.rect
	k.l.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y + r.H - 2*k.u, W: r.W, H: max(2, 2*k.u)}), k.th.Ink)
}

// ring is the mark of the focus: a gap in the panel's colour, then ink.
func (k inked) ring(w widget) {
	gap, wide, r := 2*k.u, 2*k.u, 5*k.u
	if k.th.Flat {
		wide = 3 * k.u
	}
	if w.look == lens && w.rect.W == w.rect.H && w.id != idEnlarge {
		r = w.rect.W/2 + gap
	}
	k.l.Stroke(draw.RoundBox(grow(w.rect, gap/2), r), draw.Stroke{Width: gap, Color: k.th.Panel})
	k.l.Stroke(draw.RoundBox(grow(w.rect, gap+wide/2), r+k.u), draw.Stroke{Width: wide, Color: k.th.Ink})
}

func grow(r draw.Rect, d float64) draw.Rect {
	return draw.Rect{X: r.X - d, Y: r.Y - d, W: r.W + 2*d, H: r.H + 2*d}
}

func (w widget) font() draw.Font {
	if w.bold {
		return draw.Bold
	}
	return draw.Regular
}

// lines draws the text of a widget: buttons in the middle, others from the top.
func (k inked) lines(w widget, c draw.Color) {
	lines := splitLines(w.text)
	lead := w.leading
	if lead == 0 {
		lead = 1.4 * w.size
	}
	y := w.rect.Y + lead/2
	if w.middle() {
		y = w.rect.Y + w.rect.H/2 - float64(len(lines)-1)*lead/2
	}
	x := w.rect.X + w.pad
	switch w.align {
	case draw.AlignCentre:
		x += w.rect.W / 2
	case draw.AlignRight:
		x += w.rect.W
	}
	for i, s := range lines {
		k.l.Text(draw.Text{
			S: s, At: draw.Point{X: x, Y: y + float64(i)*lead + .35*w.size},
			Size: w.size, Font: w.font(), Color: c, Align: w.align,
		})
	}
}

func (w widget) middle() bool {
	switch w.look {
	case filled, outlined, chip, key, caption, quiet:
		return true
	}
	return false
}

// field draws what is in the notebook and the caret. A text that is longer than
// the field shows the part about the caret.
func (k inked) field(w widget) {
	x, y := w.rect.X+fieldPad*k.u, w.rect.Y+w.rect.H/2+.35*w.size
	from, to := fieldPart(w.text, w.caret, w.size, w.rect.W-2*fieldPad*k.u)
	signs := []rune(w.text)
	k.l.Text(draw.Text{S: string(signs[from:to]), At: draw.Point{X: x, Y: y}, Size: w.size, Color: k.ink(w), Track: fieldTrack})
	if w.caret < 0 {
		return
	}
	cx := x + draw.Measure(draw.Regular, w.size, string(signs[from:w.caret]), fieldTrack) + k.u
	k.l.Fill(draw.Box(draw.Rect{X: cx, Y: w.rect.Y + w.rect.H/2 - w.size/2, W: max(2, 2*k.u), H: w.size}), k.th.Ink)
}

// fieldPad is the room to the left and right of the text in the field, in
// units.
const fieldPad = 14

// fieldPart is the part of a text that shows in a field: all of it, or as much
// as there is room for, with the caret, or the end where there is none.
func fieldPart(text string, caret int, size, room float64) (from, to int) {
	signs := []rune(text)
	if caret < 0 {
		caret = len(signs)
	}
	wide := func(i, j int) float64 { return draw.Measure(draw.Regular, size, string(signs[i:j]), fieldTrack) }
	for from < caret && wide(from, caret) > room {
		from++
	}
	to = len(signs)
	for to > caret && wide(from, to) > room {
		to--
	}
	return from, to
}

const fieldTrack = .02

func splitLines(s string) []string {
	var out []string
	start := 0
	for i := range len(s) {
		if s[i] == '\n' {
			out = append(out, s[start:i])
			start = i + 1
		}
	}
	return append(out, s[start:])
}
