package inset

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
)

// hingeView is the view of the hinge plate with the index up. A degree is never
// shorter than on the dial.
func hingeView(c draw.Point, r float64, open orient.Angle) view {
	k := max(r/dialReach, min(leastDegree/(figure.HingeBase*math.Pi/180), r/leastReach))
	out := max(dialFocus, 3.42-.8*r/k)
	v := view{centre: c, focus: draw.Point{X: out}, k: k, turn: -orient.Right}
	return v.part(draw.Point{}, -figure.HingeAngle(open))
}

// Hinge adds the scale of the hinge at its index, turned so that the index
// points up and the scale slides under it, in a circle of radius r about c.
func (s *Set) Hinge(l *draw.List, th *theme.Theme, c draw.Point, r float64, open orient.Angle) {
	w, plate := windowOf(th, c, r, s.unit()), hingeView(c, r, open)
	s.shadow(l, th, c, r)
	w.fill(l, th.Plate)
	px := finer(plate.k, 2*figure.HingeRadius)
	w.show(l, s.part(th, hingePlate, 0, px, figure.HingeBox, paintHinge), plate)
	w.show(l, s.part(th, hingeIndex, 0, px, figure.HingeIndexBox, paintHingeIndex), plate.part(draw.Point{}, figure.HingeAngle(open)))
	w.edge(l, th.Rim)
}

func paintHinge(l *draw.List, th *theme.Theme, _ uint8)      { figure.HingePlate(l, th) }
func paintHingeIndex(l *draw.List, th *theme.Theme, _ uint8) { figure.HingeIndex(l, th) }
