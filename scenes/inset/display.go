package inset

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

const (
	displayReach = 3.78  // radius of the opening over the figures, in cm
	displayFocus = -1.15 // and its middle, above that of the display
	stateReach   = 3.15  // over the state
)

// Display adds the figures that the sensor shows in a circle of radius r about
// c.
func (s *Set) Display(l *draw.List, th *theme.Theme, c draw.Point, r float64, o sim.Sensor) {
	v := view{centre: c, focus: draw.Point{Y: displayFocus}, k: r / displayReach}
	s.shadow(l, th, c, r)
	w := s.shown(l, th, v, r, o)
	direction, dip := o.Degrees()
	figure.Shown(direction, dip, func(d uint8, at draw.Point) {
		w.show(l, s.part(th, digit, d, v.k, figure.DigitBox, paintDigit), v.part(at, 0))
	})
	w.edge(l, th.Rim)
}

// Ready adds the field that tells whether the sensor has been calibrated in a
// circle of radius r about c.
func (s *Set) Ready(l *draw.List, th *theme.Theme, c draw.Point, r float64, o sim.Sensor) {
	b := figure.StateBox
	s.shadow(l, th, c, r)
	w := s.shown(l, th, view{centre: c, focus: draw.Point{X: b.X + b.W/2, Y: b.Y + b.H/2}, k: r / stateReach}, r, o)
	w.edge(l, th.Rim)
}

// shown adds what of the display stands still, as it is seen through a window.
func (s *Set) shown(l *draw.List, th *theme.Theme, v view, r float64, o sim.Sensor) window {
	w := windowOf(th, v.centre, r, s.unit())
	w.fill(l, th.Bezel)
	w.show(l, s.part(th, display, 0, v.k, figure.DisplayBox, paintDisplay), v)
	w.show(l, s.part(th, displayState, one(o.Calibrated), v.k, figure.StateBox, paintState), v)
	return w
}

func paintDisplay(l *draw.List, th *theme.Theme, _ uint8) { figure.Display(l, th) }
func paintState(l *draw.List, th *theme.Theme, calibrated uint8) {
	figure.DisplayState(l, th, calibrated == 1)
}
func paintDigit(l *draw.List, th *theme.Theme, d uint8) { figure.Digit(l, th, d) }
