package figure

import (
	"strconv"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// The sensor is a plate like the other, with a display in place of all scales.
// The display has a frame of its own, in cm about its centre: x to the right of
// the plate and y back, so that it stands upright when the forward end is up.
var (
	DisplayCentre = draw.Point{X: 7.0, Y: Width / 2}
	DisplayBox    = draw.Rect{X: -3.4, Y: -4.7, W: 6.8, H: 9.4}
)

// DisplayTurn is the turn of the display's frame in the plan.
const DisplayTurn = orient.Right

const (
	directionAt = -2.35 // height of the figures of the dip direction
	dipAt       = 0.85  // and of the dip
	digitSize   = 2.30
	digitPitch  = 1.36
	nameSize    = 0.62
	stateTop    = 2.15 // of the field that tells the state
	stateAt     = 3.42
	stateSize   = 0.75
	signAt      = -2.15 // the sign before its words
	signRadius  = 0.50
)

// DigitBox is the box of a digit about its centre.
var DigitBox = draw.Rect{X: -.72, Y: -.9, W: 1.44, H: 1.8}

// Display adds the display without its figures and its state, in its own
// frame.
func Display(l *draw.List, th *theme.Theme) {
	l.Fill(draw.RoundBox(DisplayBox, .25), th.Well)
	name := func(s string, y float64) {
		l.Text(label(s, draw.Point{Y: y}, nameSize, 0, draw.Bold, th.DialInk))
	}
	name("dip direction", directionAt-1.45)
	name("dip", dipAt-1.35)
	var rule draw.Path
	rule.MoveTo(-2.9, -1.15)
	rule.LineTo(2.9, -1.15)
	l.Stroke(rule, draw.Stroke{Width: .04, Color: th.DialInk2})
}

// Digit adds the digit d, of 0 to 9, about its centre.
func Digit(l *draw.List, th *theme.Theme, d uint8) {
	l.Text(label(strconv.Itoa(int(d)), draw.Point{}, digitSize, 0, draw.Bold, th.DialInk))
}

// Shown calls f for each digit of the figures on the display, with its place:
// three of the dip direction and two of the dip.
func Shown(direction, dip int, f func(digit uint8, at draw.Point)) {
	row := func(n, places int, y float64) {
		x := digitPitch * float64(places-1) / 2
		for range places {
			f(uint8(n%10), draw.Point{X: x, Y: y})
			n, x = n/10, x-digitPitch
		}
	}
	row(direction, 3, directionAt)
	row(min(dip, 99), 2, dipAt)
}

// StateBox is the field of the display that tells the state.
var StateBox = draw.Rect{X: DisplayBox.X + .3, Y: stateTop, W: DisplayBox.W - .6, H: DisplayBox.Y + DisplayBox.H - .3 - stateTop}

// DisplayState adds whether the sensor has been calibrated, in the frame of the
// display: before that in a dark field, with an open ring.
func DisplayState(l *draw.List, th *theme.Theme, calibrated bool) {
	ink, sign := th.DialInk, draw.Circle(signAt, stateAt, signRadius)
	if !calibrated {
		l.Fill(draw.RoundBox(StateBox, .2), th.DialInk)
		ink, sign = th.Well, draw.Path{}
		sign.Arc(signAt, stateAt, signRadius, -orient.Right.Radians()+.6, 3*orient.Right.Radians()-.6)
	}
	l.Stroke(sign, draw.Stroke{Width: .14, Color: ink})
	words := []string{"not", "calibrated"}
	if calibrated {
		l.Fill(draw.Circle(signAt, stateAt, .2), ink)
		words = words[1:]
	}
	for i, s := range words {
		y := stateAt + (float64(i)-float64(len(words)-1)/2)*1.1*stateSize + halfDigit*stateSize
		l.Text(draw.Text{S: s, At: draw.Point{X: signAt + signRadius + .35, Y: y}, Size: stateSize, Font: draw.Bold, Color: ink})
	}
}

// SensorFace adds all of the sensor's face but figures and state, in the plan.
func SensorFace(l *draw.List, th *theme.Theme) {
	Blank(l, th)
	box := draw.Rect{X: DisplayCentre.X - DisplayBox.Y - DisplayBox.H, Y: DisplayCentre.Y + DisplayBox.X, W: DisplayBox.H, H: DisplayBox.W}
	l.Fill(draw.RoundBox(draw.Rect{X: box.X - .2, Y: box.Y - .2, W: box.W + .4, H: box.H + .4}, .4), th.Bezel)
	if th.Flat {
		l.Stroke(draw.RoundBox(draw.Rect{X: box.X - .2, Y: box.Y - .2, W: box.W + .4, H: box.H + .4}, .4), draw.Stroke{Width: .05, Color: th.PlateRim})
	}
	l.Fill(draw.RoundBox(box, .25), th.Well)
	l.Fill(shape(sensorArrow()), th.Edge)
}

// sensorArrow points forward over the display.
func sensorArrow() []draw.Point {
	const from, neck, to, half, shaft = 12.35, 13.4, 15.2, 1.5, .55
	y := DisplayCentre.Y
	return []draw.Point{
		{X: from, Y: y - shaft}, {X: neck, Y: y - shaft}, {X: neck, Y: y - half}, {X: to, Y: y},
		{X: neck, Y: y + half}, {X: neck, Y: y + shaft}, {X: from, Y: y + shaft},
	}
}

// SensorFaceTexture bakes what stays where it is on the sensor's face, in the
// plan.
func SensorFaceTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(draw.Rect{W: Length, H: Width}, px, func(l *draw.List) { SensorFace(l, th) })
}

// DisplayTexture bakes the display in its own frame.
func DisplayTexture(th *theme.Theme, px float64) *draw.Texture {
	return Bake(DisplayBox, px, func(l *draw.List) { Display(l, th) })
}

// DigitTexture bakes a digit about its centre.
func DigitTexture(th *theme.Theme, px float64, d uint8) *draw.Texture {
	return Bake(DigitBox, px, func(l *draw.List) { Digit(l, th, d) })
}

// DisplayStateTexture bakes the state in the frame of the display.
func DisplayStateTexture(th *theme.Theme, px float64, calibrated bool) *draw.Texture {
	return Bake(StateBox, px, func(l *draw.List) { DisplayState(l, th, calibrated) })
}
