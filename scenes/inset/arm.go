package inset

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

const (
	tubeReach = 1.52 // radius of the opening over the tube level, in cm: the whole vial
	arcReach  = 1.42 // and over the arc
	arcFocus  = 5.28 // how far from the pivot the opening over the arc is centred
)

// levelTurn turns the plan so that what is up at the bench is up on the screen:
// the arm is then level when its bubble is centred. A face that lies flat has
// no way up; the arm itself is drawn level then.
func levelTurn(o sim.Observation) orient.Angle {
	x, y := o.Frame.Forward.Z, o.Frame.Right.Z
	if math.Abs(x)+math.Abs(y) < 1e-9 {
		return -o.Arc.Arm + upright(o).Turn()
	}
	return -orient.Right - orient.Atan2(y, x)
}

// upright is the way the figures of the arc stand.
func upright(o sim.Observation) figure.Upright {
	if o.Seated == sim.RightSide {
		return figure.OnRight
	}
	return figure.OnLeft
}

// armView is the view of the plan with the point of the arm at the distance out
// from the pivot in the middle of a circle of radius r about c.
func armView(c draw.Point, k, out float64, o sim.Observation) view {
	turn := levelTurn(o)
	v := view{centre: c, focus: draw.Point{X: out}, k: k, turn: turn + o.Arc.Arm}
	return v.part(draw.Point{}, -o.Arc.Arm).part(draw.Point{X: -figure.ArmPivot.X, Y: -figure.ArmPivot.Y}, 0)
}

// Tube adds the tube level of the arm in a circle of radius r about c.
func (s *Set) Tube(l *draw.List, th *theme.Theme, c draw.Point, r float64, o sim.Observation) {
	w, plan := windowOf(th, c, r, s.unit()), armView(c, r/tubeReach, figure.TubeAt, o)
	arm := plan.part(figure.ArmPivot, o.Arc.Arm)
	s.shadow(l, th, c, r)
	w.fill(l, th.Plate)
	size := figure.TubeAt + tubeReach
	near := draw.Rect{X: figure.ArmPivot.X - tubeReach, Y: figure.ArmPivot.Y - tubeReach, W: size + tubeReach, H: size + tubeReach}
	w.show(l, s.part(th, tubePlate, 0, plan.k, near, paintPlate), plan)
	px := finer(plan.k, figure.ArmTip)
	s.showArm(l, th, w, arm, tubeArm, px)
	bubble := draw.Point{X: figure.TubeAt + figure.TubeMark*o.Tube.Off}
	w.show(l, s.part(th, tubeBubble, 0, px, around(draw.Point{}, figure.TubeBubble, px), paintTubeBubble), arm.part(bubble, 0))
	w.show(l, s.part(th, tubeMarks, 0, px, figure.TubeBox, paintTubeMarks), arm)
	w.edge(l, th.Rim)
}

// Arc adds the index of the arm on its two scales in a circle of radius r
// about c.
func (s *Set) Arc(l *draw.List, th *theme.Theme, c draw.Point, r float64, o sim.Observation) {
	w, plan := windowOf(th, c, r, s.unit()), armView(c, r/arcReach, arcFocus, o)
	s.shadow(l, th, c, r)
	w.fill(l, th.Plate)
	size := arcFocus + 2*arcReach
	px := finer(plan.k, size)
	box := draw.Rect{X: figure.ArmPivot.X - arcReach, Y: figure.ArmPivot.Y - arcReach, W: size, H: size}
	w.show(l, s.part(th, arcPlate, uint8(upright(o)), px, box, paintArc), plan)
	s.showArm(l, th, w, plan.part(figure.ArmPivot, o.Arc.Arm), arcArm, finer(plan.k, figure.ArmTip))
	w.edge(l, th.Rim)
}

func (s *Set) showArm(l *draw.List, th *theme.Theme, w window, arm view, what piece, px float64) {
	box := draw.Rect{X: figure.ArmTail - .05, Y: -figure.ArmHalf - .05, W: figure.ArmTip - figure.ArmTail + .1, H: 2*figure.ArmHalf + .1}
	if !th.Flat {
		w.show(l, s.part(th, armShade, 0, px, box, paintArmShadow), arm.moved(draw.Point{X: .05, Y: .06}))
	}
	w.show(l, s.part(th, what, 0, px, box, paintArm), arm)
}

func paintArc(l *draw.List, th *theme.Theme, u uint8) {
	figure.Plate(l, th)
	figure.Sector(l, th, figure.Upright(u))
}
func paintArm(l *draw.List, th *theme.Theme, _ uint8)        { figure.Arm(l, th) }
func paintArmShadow(l *draw.List, th *theme.Theme, _ uint8)  { figure.ArmShadow(l, th) }
func paintTubeBubble(l *draw.List, th *theme.Theme, _ uint8) { figure.TubeBubbleShape(l, th) }
func paintTubeMarks(l *draw.List, th *theme.Theme, _ uint8)  { figure.TubeMarks(l, th) }
