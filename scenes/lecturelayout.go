package scenes

import (
	"math"

	"cuesta/scenes/draw"
)

// Sizes of a lecture at 1920×1080, in pixels. No type is smaller than
// lectureType: 2.6 % of the height, where 2.5 % is the least that a class reads
// from the back.
const (
	lectureType    = 28.0 // captions, cards, controls
	lectureTitle   = 36.0
	lectureLine    = 38.0
	lectureLead    = 1.22 // of the line
	lectureAnswer  = 60.0 // what the student wrote
	lectureReading = 46.0 // what the scale shows
	lectureMargin  = 36.0
	lectureColumn  = 440.0
	lectureRound   = 300.0 // diameters of the magnifiers
	lectureDial    = 440.0
	lectureLeast   = 300.0 // below which the figures of a scale are too small
	lectureSmall   = 130.0 // below which a bubble tells nothing
)

// lectureFrame is what the layout of a lecture depends on.
type lectureFrame struct {
	W, H, Scale float64
	Text        float64 // factor
	Rows        int     // of the line
	Levels      bool
	Scaled      bool // the magnified scale
	Reading     bool // with its figure
	Curve       bool
	Card        float64 // height of the student's card
	Strip       float64 // height of the controls, where they have a place of their own
	Title       float64 // the same of the title
}

// lectureLayout is where everything of a lecture stands, in device pixels.
type lectureLayout struct {
	layout
	Seated bool      // the controls have a place of their own
	Type   float64   // device pixels in one of 1080 parts of the height, for type
	Curve  draw.Rect // the diagram with its caption
	Card   draw.Rect // what the student wrote
}

// column says whether anything stands in the column.
func (f lectureFrame) column() bool { return f.Levels || f.Scaled || f.Curve || f.Card > 0 }

func layOutLecture(f lectureFrame) lectureLayout {
	var l lectureLayout
	l.W, l.H = f.W, f.H
	scale := max(f.Scale, 1)
	l.Phone = f.H >= f.W
	l.TooTiny = f.W < 200*scale || f.H < 200*scale
	if l.Phone {
		k := f.W / 390
		l.Unit, l.Type = k, .56*k
		l.Text = f.Text * l.Type * lectureType / noteSize
		l.stacked(f)
		return l
	}
	k := min(f.W/1920, f.H/1080)
	l.Unit, l.Type = 1.5*k, f.H/1080
	l.Text = f.Text * l.Type * lectureType / noteSize
	l.wideLecture(f, k)
	return l
}

// barTall is the height of the bar for so many rows of the line.
func (l *lectureLayout) barTall(f lectureFrame) float64 {
	return math.Ceil(l.Type * (float64(max(f.Rows, 2))*lectureLead*lectureLine*f.Text + 18))
}

func (l *lectureLayout) wideLecture(f lectureFrame, k float64) {
	bar := l.barTall(f)
	m := math.Round(lectureMargin * k)
	l.Margin = m
	colW := 0.0
	if f.column() {
		colW = math.Round(lectureColumn*k) + 2*m
	}
	x := f.W - colW
	l.Bar = draw.Rect{Y: f.H - bar, W: x, H: bar}
	tall := f.H
	if f.W < 1.6*f.H { // a narrow picture needs all its width for the line
		l.Bar.W, tall = f.W, f.H-bar
	}
	l.Title = draw.Rect{W: x, H: f.Title}
	l.Scene = draw.Rect{Y: f.Title, W: x, H: f.H - bar - f.Title - f.Strip}
	l.Sheet = draw.Rect{W: f.W, H: f.H}
	l.Seated = f.Strip > 0
	l.Strip = draw.Rect{W: x, Y: f.H - bar - f.Strip, H: f.Strip}
	if colW == 0 {
		return
	}
	l.Column = draw.Rect{X: x, W: colW, H: tall}
	l.Inner = draw.Rect{X: x + m, Y: m, W: colW - 2*m, H: tall - 2*m}
	l.stack(f, k)
}

// captionTall is the room under a magnifier.
func (l *lectureLayout) captionTall(reading bool, text float64) float64 {
	h := (10 + 1.25*lectureType*text) * l.Type
	if reading {
		h += 1.2 * lectureReading * text * l.Type
	}
	return h
}

// stack puts card, diagram and magnifiers one below the other, with even gaps.
// Where there is no room for both magnifiers the level goes.
func (l *lectureLayout) stack(f lectureFrame, k float64) {
	in := l.Inner
	curve := 0.0
	if f.Curve {
		curve = .68*in.W + 2.6*lectureType*f.Text*l.Type
	}
	cap1, cap2 := l.captionTall(false, f.Text), l.captionTall(f.Reading, f.Text)
	gap := 24 * k
	room := in.H - f.Card - curve
	d1, d2 := l.magnifiers(f, room-3*gap, cap1, cap2, k)
	used := f.Card + curve
	n := 0.0
	for _, h := range [...]float64{f.Card, curve, d1, d2} {
		if h > 0 {
			n++
		}
	}
	if d1 > 0 {
		used += d1 + cap1
	}
	if d2 > 0 {
		used += d2 + cap2
	}
	space := max(0, in.H-used) / (n + 1)
	y := in.Y + space
	if f.Card > 0 {
		l.Card = draw.Rect{X: in.X, Y: math.Round(y), W: in.W, H: f.Card}
		y += f.Card + space
	}
	if d1 > 0 {
		l.Round = circle{in.X + in.W/2, math.Round(y + d1/2), d1 / 2}
		y += d1 + cap1 + space
	}
	if curve > 0 {
		l.Curve = draw.Rect{X: in.X, Y: math.Round(y), W: in.W, H: math.Round(curve)}
		y += curve + space
	}
	if d2 > 0 {
		l.Dial = circle{in.X + in.W/2, math.Round(y + d2/2), d2 / 2}
	}
}

// magnifiers are the diameters of level and scale that fit in a height.
func (l *lectureLayout) magnifiers(f lectureFrame, room, cap1, cap2, k float64) (d1, d2 float64) {
	share := lectureRound / lectureDial
	if f.Curve {
		share = .5
	}
	least := lectureLeast * l.Type
	switch {
	case f.Levels && f.Scaled:
		d2 = min(lectureDial*k, (room-cap1-cap2)/(1+share))
		if d2 >= least {
			return floor4(share * d2), floor4(d2)
		}
		if d1 = room - cap1 - cap2 - least; d1 >= lectureSmall*l.Type && !f.Curve {
			return floor4(d1), math.Ceil(least)
		}
		return 0, floor4(min(lectureDial*k, room-cap2))
	case f.Levels:
		return floor4(min(lectureDial*k, room-cap1)), 0
	case f.Scaled:
		return 0, floor4(min(lectureDial*k, room-cap2))
	}
	return 0, 0
}

// stacked is the layout of an upright page: title, rock, what stands in the
// column, the line, and the controls, which stay.
func (l *lectureLayout) stacked(f lectureFrame) {
	u := l.Unit
	m := math.Round(16 * u)
	l.Margin = m
	l.Title = draw.Rect{W: f.W, H: f.Title}
	bar := l.barTall(f)
	l.Seated = true
	l.Strip = draw.Rect{Y: f.H - f.Strip, W: f.W, H: f.Strip}
	l.Bar = draw.Rect{Y: l.Strip.Y - bar, W: f.W, H: bar}
	l.Sheet = draw.Rect{W: f.W, H: f.H}
	below := 0.0
	if f.column() {
		below = f.Card + 2*m
		if (f.Levels || f.Scaled) && f.Card == 0 {
			below += math.Min((f.W-3*m)/2, .24*f.H) + l.captionTall(f.Reading, f.Text) + m
		}
		if f.Curve {
			below += .42*f.W + 2.6*lectureType*f.Text*l.Type + m
		}
	}
	top := l.Title.H
	l.Scene = draw.Rect{Y: top, W: f.W, H: math.Round(max(.14*f.H, l.Bar.Y-top-below))}
	if below == 0 {
		return
	}
	y := l.Scene.Y + l.Scene.H
	l.Column = draw.Rect{Y: y, W: f.W, H: max(0, l.Bar.Y-y)}
	l.Inner = draw.Rect{X: m, Y: y + m, W: f.W - 2*m, H: l.Column.H - 2*m}
	l.shelve(f, m)
}

// shelve puts the magnifiers side by side, and the diagram below them. What the
// student wrote takes their place.
func (l *lectureLayout) shelve(f lectureFrame, m float64) {
	in := l.Inner
	y := in.Y
	if f.Card > 0 {
		l.Card = draw.Rect{X: in.X, Y: y, W: in.W, H: f.Card}
		y += f.Card + m
	}
	if (f.Levels || f.Scaled) && f.Card == 0 {
		d := floor4(max(0, min((f.W-3*m)/2, .24*f.H, in.Y+in.H-y-l.captionTall(f.Reading, f.Text))))
		r := d / 2
		if d > 0 && f.Levels {
			l.Round = circle{in.X + in.W/4, y + r, r}
		}
		if d > 0 && f.Scaled {
			l.Dial = circle{in.X + 3*in.W/4, y + r, r}
		}
		y += d + l.captionTall(f.Reading, f.Text) + m
	}
	if f.Curve {
		l.Curve = draw.Rect{X: in.X, Y: y, W: in.W, H: math.Round(max(0, in.Y+in.H-y))}
	}
}
