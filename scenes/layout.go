package scenes

import (
	"math"

	"cuesta/scenes/draw"
)

// Smallest window the bench is laid out for, in nominal pixels.
const (
	minWidth  = 320
	minHeight = 400
	minWide   = 480
	minTall   = 360
)

// circle is the place of an inset.
type circle struct{ X, Y, R float64 }

// layout is where everything stands, in device pixels. It follows from the
// size of the window and of the text alone.
type layout struct {
	W, H    float64
	Unit    float64 // device pixels in one unit of length
	Text    float64 // device pixels in one unit of type
	Margin  float64
	Phone   bool
	Low     bool // as a phone on its side: controls and line go under everything
	Tight   bool // for its type the window is small: what is wanted most stays in reach, the rest is under More
	TooTiny bool
	Fair    bool // rock and insets have all the room they should have

	Scene  draw.Rect // the rock
	Strip  draw.Rect // the controls under it
	Sheet  draw.Rect // where settings and help open: over title, rock and strip
	Pad    draw.Rect // where the keypad opens: the notebook stays in view
	Bar    draw.Rect // the line that says what to do next
	Column draw.Rect // insets, notebook, buttons
	Title  draw.Rect // on a phone the title has a row of its own
	Inner  draw.Rect // the column without its margins

	Round, Dial circle // no radius: not shown
	Hinge       circle // there on the lid only
	Large       circle // the magnifier in the place of the rock
	Lone        bool   // and the others are not shown
	BesideCap   bool   // the words of the first inset stand to its right
	TwoCaps     bool   // the insets stand side by side, a caption under each
	Caps        int    // lines of such a caption
	Bare        bool   // the field of the notebook stands by itself, without its name
	Notes       float64
	Buttons     float64 // top of the buttons
}

// frameOf is what a layout depends on.
type frameOf struct {
	W, H, Scale float64
	Text        float64
	BarLines    int
	StripRows   int
	Strip       float64 // height of the strip; 0 is that of its rows
	Usual       share   // of rock and inset at the usual size of text, where this is a larger one
	Spare       thrift
	Without     bool // some controls are under More
	ButtonRows  int
	Header      float64 // height of a row of its own for the title; 0 lays it over the rock
	Judged      bool
	Form        bool // a wider column, for questions
	Hinged      bool // a third magnifier, for the hinge
	Large       bool // one of them stands in the place of the rock
}

// share is the height of the rock and of an inset.
type share struct{ Scene, Inset float64 }

// kept is how much of its usual size a larger text leaves to rock and insets.
const kept = .84

// thrift is what a small window goes without, so that rock and insets keep
// their size: each step goes without what the steps before do as well.
type thrift uint8

const (
	noThrift    thrift = iota
	noEchoRoom         // the echo takes the place of the line
	noCapStates        // the insets have their names only
	noNoteName         // and the field has none
	noCaps             // nor have the insets
	thrifts
)

func floor4(x float64) float64 { return math.Floor(x/4) * 4 }

func layOut(f frameOf) layout {
	l := layout{W: f.W, H: f.H}
	scale := max(f.Scale, 1)
	l.Phone = f.W < 720*scale && f.H >= f.W
	if l.Phone {
		l.Unit = max(scale, min(f.W/390, f.H/844))
	} else {
		l.Unit = max(scale, min(f.W/1280, f.H/720))
	}
	l.Text = l.Unit * f.Text
	w, h := f.W/l.Unit, f.H/l.Unit
	l.TooTiny = w < minWidth || h < minHeight && !(w >= minWide && h >= minTall) || !l.Phone && w < minWide
	if l.TooTiny {
		return l
	}
	l.Tight = l.isTight(f)
	l.Low = !l.Phone && !l.Tight && !f.Form && h < lowest*f.Text
	switch {
	case l.Phone:
		l.phone(f)
	case l.Low:
		l.low(f)
	default:
		l.wide(f)
	}
	return l
}

// lowest is the height of a window, in units of type, below which controls and
// line need all of its width.
const lowest = 500

// isTight says whether the window holds too few lines of its type for
// everything to stand side by side.
func (l *layout) isTight(f frameOf) bool {
	w, h := l.W/l.Unit/f.Text, l.H/l.Unit/f.Text
	switch {
	case l.Phone && f.Form:
		return h < 560
	case l.Phone:
		return h < 600
	}
	return h < 280 || w < 490
}

func (l *layout) barHeight(f frameOf) float64 {
	return math.Ceil(max(52*l.Unit, float64(f.BarLines)*22*l.Text+20*l.Unit))
}

func (l *layout) stripHeight(f frameOf) float64 {
	if f.Strip > 0 {
		return math.Ceil(f.Strip)
	}
	return math.Ceil(float64(f.StripRows)*(max(44*l.control(), 1.5*stepSize*l.Text)+8*l.Unit) + 10*l.Unit)
}

// control is the growth of controls with the text: half of that of the type,
// so that large text leaves room for the rock.
func (l *layout) control() float64 { return l.Unit * (1 + 0.6*(l.Text/l.Unit-1)) }

// wide stands rock and column side by side. Where a larger text leaves little room
// the line goes under both, unless the insets would then be too small.
func (l *layout) wide(f frameOf) {
	across := l.Tight && f.Usual != (share{})
	l.abreast(f, across)
	if across && 2*l.Round.R < kept*f.Usual.Inset {
		l.abreast(f, false)
	}
}

func (l *layout) abreast(f frameOf, across bool) {
	u := l.Unit
	l.Margin = 24 * u
	if f.W < 1024*u {
		l.Margin = 16 * u
	}
	if l.Tight {
		l.Margin = 12 * u
	}
	m := l.Margin
	colW := min(max(.2375*f.W, 232*u), 304*u)
	if f.Form {
		colW = min(max(.36*f.W, 300*u), 480*u)
	}
	colW = math.Round(min(colW*(1+.72*(f.Text-1)), .46*f.W))
	x := f.W - colW - 2*m
	bar, strip := l.barHeight(f), l.stripHeight(f)
	low := f.H // where the column ends
	l.Bar = draw.Rect{X: 0, Y: f.H - bar, W: x, H: bar}
	if across {
		low, l.Bar.W = f.H-bar, f.W
	}
	l.Column = draw.Rect{X: x, W: f.W - x, H: low}
	l.Inner = draw.Rect{X: x + m, Y: m, W: colW, H: low - 2*m}
	l.Strip = draw.Rect{X: 0, Y: f.H - bar - strip, W: x, H: strip}
	l.Title = draw.Rect{W: x, H: math.Ceil(f.Header)}
	l.Scene = draw.Rect{X: 0, Y: l.Title.H, W: x, H: f.H - bar - strip - l.Title.H}
	l.Sheet = l.sheet(draw.Rect{W: x, H: f.H - bar})
	l.Pad, l.Bare = l.Sheet, l.Tight
	l.Buttons = low - m - l.buttonsHeight(f)
	l.Fair = !l.Tight || l.Scene.H >= kept*f.Usual.Scene
	l.insets(f)
	if f.Large && l.Tight && l.Scene.H < 3.2*l.Round.R { // what is large needs the place of the controls too
		l.Scene.H += strip
		l.Strip = draw.Rect{Y: l.Bar.Y, W: x}
	}
}

// sheet is where panels open: over r, or over everything where there is little
// room.
func (l *layout) sheet(r draw.Rect) draw.Rect {
	if l.Tight {
		return draw.Rect{W: l.W, H: l.H}
	}
	return r
}

func (l *layout) buttonsHeight(f frameOf) float64 {
	return float64(f.ButtonRows)*44*l.control() + float64(f.ButtonRows-1)*8*l.Unit
}

// notesHeight is the room the notebook needs at least: label, field and the
// echo under it. Where there is little room the field stands by itself.
func (l *layout) notesHeight(f frameOf) float64 {
	if l.Tight {
		return l.fieldHeight() + 12*l.Unit
	}
	return 24*l.Text + l.fieldHeight() + 10*l.Unit + 3*21*l.Text + 8*l.Unit
}

func (l *layout) fieldHeight() float64 { return max(48*l.control(), 1.5*fieldSize*l.Text) }

// insets places the two magnifiers and the notebook under them.
func (l *layout) insets(f frameOf) {
	u, t, in := l.Unit, l.Text, l.Inner
	gap := 16 * u
	if f.W < 1024*u {
		gap = 12 * u
	}
	if f.Judged && (l.Tight || f.Text >= 1.25 || l.H < 420*u) {
		l.Notes = in.Y
		return
	}
	room := l.Buttons - in.Y - l.notesHeight(f)
	d2 := floor4(min(.763*in.W, .322*f.H))
	d1 := floor4(.55 * d2)
	if !f.Judged && d1+gap+d2+30*t+16*u <= room && f.Text < 1.3 {
		l.BesideCap = true
		if f.Hinged {
			l.three(room, gap, d1, d2)
			return
		}
		l.Round = circle{in.X + d1/2, in.Y + d1/2, d1 / 2}
		l.Dial = circle{in.X + in.W/2, in.Y + d1 + gap + d2/2, d2 / 2}
		l.Notes = in.Y + d1 + gap + d2 + 8*u + 22*t + 16*u
		if f.W < 1024*u {
			l.Notes -= 8 * u
		}
		return
	}
	l.TwoCaps = true
	l.Caps = l.capsIn(f, room)
	caps := float64(l.Caps) * 21 * t
	spare := 18 * u
	if l.Tight {
		spare = 8 * u
	}
	d := floor4(min((in.W-gap)/2, max(room-caps-spare, 56*u)))
	if f.Judged {
		d = floor4(min(d, 128*u))
	}
	l.pair(in.X, in.Y, in.W, d)
	l.third(f)
	l.Notes = in.Y + d + caps + spare
}

// capsIn is how many lines of words there is room for under a pair of insets:
// name and state, the name alone, or none; what they say is described in any
// case.
func (l *layout) capsIn(f frameOf, room float64) int {
	line, least := 21*l.Text, kept*f.Usual.Inset
	switch {
	case room-3*line-18*l.Unit >= max(96*l.Unit, least):
		return 3
	case room-line-18*l.Unit >= max(72*l.Unit, least) && l.Inner.W/2 >= 84*l.Text:
		return 1
	}
	return 0
}

func (l *layout) pair(x, y, w, d float64) {
	l.Round = circle{x + w/4, y + d/2, d / 2}
	l.Dial = circle{x + 3*w/4, y + d/2, d / 2}
}

func (l *layout) phone(f frameOf) {
	u := l.Unit
	m := 16 * u
	l.Margin = m
	title := math.Ceil(max(44*u, f.Header))
	bar, strip := l.barHeight(f), l.stripHeight(f)
	l.Title = draw.Rect{W: f.W, H: title}
	l.Bar = draw.Rect{Y: f.H - bar, W: f.W, H: bar}
	l.Buttons = f.H - bar - m - l.buttonsHeight(f)
	notes := l.spare(f)
	caps := float64(l.Caps) * 21 * l.Text
	free := l.Buttons - title - strip - notes - caps - 26*u
	scene, d := l.shares(f, free)
	if f.Judged {
		scene, d = l.beside(f, l.Buttons-title-strip-24*u), 0
	}
	l.Scene = draw.Rect{Y: title, W: f.W, H: math.Round(scene)}
	l.Strip = draw.Rect{Y: l.Scene.Y + l.Scene.H, W: f.W, H: strip}
	y := l.Strip.Y + strip
	l.Sheet = l.sheet(draw.Rect{W: f.W, H: f.H - bar})
	l.Pad = draw.Rect{W: f.W, H: y}
	l.Column = draw.Rect{Y: y, W: f.W, H: l.Bar.Y - y}
	l.Inner = draw.Rect{X: m, Y: y + 12*u, W: f.W - 2*m, H: l.Column.H - 24*u}
	if f.Judged {
		l.Notes = l.Inner.Y
		return
	}
	l.pair(m, l.Inner.Y, l.Inner.W, d)
	l.third(f)
	l.Notes = l.Inner.Y + d + 6*u + caps + 8*u
	if f.Large {
		l.alone()
	}
}

// alone gives the place of the magnifiers to the one that is large. Notebook and
// buttons stay where they are.
func (l *layout) alone() {
	low := l.Notes - 12*l.Unit - (l.Strip.Y + l.Strip.H)
	l.Lone = true
	l.Scene.H += low
	l.Strip.Y += low
	l.Column.Y, l.Column.H = l.Column.Y+low, l.Column.H-low
	l.Inner.Y, l.Inner.H = l.Inner.Y+low, l.Inner.H-low
	l.Pad.H += low
}

// shares parts the free height between rock and insets. What is gained by going
// without something goes to the rock, so that insets never grow with the type.
func (l *layout) shares(f frameOf, free float64) (scene, d float64) {
	wanted := max(.3*f.H, 200*l.Unit, kept*(f.Usual.Scene+f.Usual.Inset))
	l.Fair = free >= wanted
	part := free
	if f.Spare != noThrift || f.Without {
		part = min(free, wanted)
	}
	d = floor4(min((f.W-56*l.Unit)/2, max(.4*part, min(72*l.Unit, .5*free), 40*l.Unit)))
	return max(free-d, 40*l.Unit), d
}

// beside is the height of the rock beside a verdict, of so much for both.
func (l *layout) beside(f frameOf, both float64) float64 {
	words := 26*l.Text + 44*l.control() + 32*l.Unit
	if !l.Tight {
		words += 4 * 22 * l.Text
	}
	l.Fair = both-words >= .2*f.H
	return max(min(both-words, .34*f.H), 96*l.Unit)
}

// spare is what a small window goes without, and the room that its notebook
// then needs.
func (l *layout) spare(f frameOf) (notes float64) {
	l.TwoCaps, l.Caps = true, 3
	if f.Spare >= noCapStates {
		l.Caps = 1
	}
	if f.Spare >= noCaps || l.Caps == 1 && f.W/2-l.Margin < 84*l.Text {
		l.Caps = 0
	}
	l.Bare = f.Spare >= noNoteName
	notes = l.fieldHeight() + 10*l.Unit
	if !l.Bare {
		notes += 24*l.Text + 2*l.Unit
	}
	if f.Spare < noEchoRoom {
		notes += 2*21*l.Text + 8*l.Unit
	}
	return notes
}

// low is the layout of a phone on its side: rock and insets share all the
// height that controls and line leave, which lie under both.
func (l *layout) low(f frameOf) {
	u := l.Unit
	m := 12 * u
	l.Margin = m
	colW := math.Round(min(max(.34*f.W, 232*u)*(1+.72*(f.Text-1)), .46*f.W))
	bar, strip := math.Ceil(max(40*u, float64(f.BarLines)*22*l.Text+14*u)), l.stripHeight(f)
	x, top := f.W-colW-2*m, f.H-bar-strip
	l.Bar = draw.Rect{Y: f.H - bar, W: f.W, H: bar}
	l.Strip = draw.Rect{Y: top, W: f.W, H: strip}
	l.Title = draw.Rect{W: x, H: math.Ceil(f.Header)}
	l.Scene = draw.Rect{Y: l.Title.H, W: x, H: top - l.Title.H}
	l.Column = draw.Rect{X: x, W: f.W - x, H: top}
	l.Inner = draw.Rect{X: x + m, Y: m, W: colW, H: top - 2*m}
	l.Sheet = l.sheet(draw.Rect{W: f.W, H: f.H - bar})
	l.Pad = draw.Rect{W: x, H: top}
	l.Buttons = top - m - l.buttonsHeight(f)
	if f.Judged {
		l.Notes, l.Fair = l.Inner.Y, l.Scene.H >= .5*f.H
		return
	}
	notes := l.spare(f)
	if l.Caps > 1 {
		l.Caps = 1
	}
	caps := float64(l.Caps) * 21 * l.Text
	room := l.Buttons - l.Inner.Y - notes - caps - 14*u
	most := floor4((l.Inner.W - 16*u) / 2)
	d := floor4(min(most, max(room, 56*u)))
	l.Fair = room >= min(most, .3*f.H) && l.Scene.H >= .5*f.H
	l.pair(l.Inner.X, l.Inner.Y, l.Inner.W, d)
	l.third(f)
	l.Notes = l.Inner.Y + d + caps + 14*u
}
