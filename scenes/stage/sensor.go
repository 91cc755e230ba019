package stage

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
)

// drawShown paints what the sensor shows on its display.
func (st *Stage) drawShown(sc *scene, k float64) {
	p, o := st.kit, &sc.p.Observation.Sensor
	on := func(x, y float64) mount {
		return mount{at: draw.Point{X: figure.DisplayCentre.X - y, Y: figure.DisplayCentre.Y + x}, by: figure.DisplayTurn}
	}
	still := on(0, 0)
	still.box = figure.DisplayBox
	st.part(sc, p.displayPart(), still, k)
	still.box = figure.StateBox
	st.part(sc, p.state(o.Calibrated), still, k)
	direction, dip := o.Degrees()
	figure.Shown(direction, dip, func(d uint8, at draw.Point) {
		m := on(at.X, at.Y)
		m.box = figure.DigitBox
		st.part(sc, p.digit(d), m, k)
	})
}
