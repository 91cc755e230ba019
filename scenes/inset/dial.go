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
	// dialReach is the radius of the opening over the dial, in cm.
	dialReach = 1.36
	// dialFocus is how far from the pivot the opening is centred, in cm: a
	// little short of the tip, so that the bars stay outside.
	dialFocus = 2.62
	// leastDegree is the least length of one degree on the base circle, in px.
	leastDegree = 2.8
	// leastReach is the radius below which the opening would not hold both the
	// tip and the figures, in cm.
	leastReach = 0.56
)

// dialView is the view of the plan with the north end up. In a small circle the
// opening is narrower, so that the degrees can still be told apart, and stands
// further out, so that the figures are still inside.
func dialView(c draw.Point, r float64, needle orient.Angle) view {
	k := max(r/dialReach, min(leastDegree/(figure.DialBase*math.Pi/180), r/leastReach))
	out := max(dialFocus, 3.42-.8*r/k)
	v := view{centre: c, focus: draw.Point{X: out}, k: k, turn: -orient.Right}
	return v.part(draw.Point{}, -needle).part(draw.Point{X: -figure.DialCentre.X, Y: -figure.DialCentre.Y}, 0)
}

// discView is the view of the graduated circle, which the ring setting turns
// against the case.
func discView(plan view, ring orient.Angle) view { return plan.part(figure.DialCentre, ring) }

// needleView is the view of the needle, its north end up.
func needleView(plan view, needle orient.Angle) view { return plan.part(figure.DialCentre, needle) }

// Dial adds the dial at the north end of the needle, turned so that this end
// points up and the scale slides under it, in a circle of radius r about c. A
// muted needle is one that is not being read.
func (s *Set) Dial(l *draw.List, th *theme.Theme, c draw.Point, r float64, o sim.Dial, muted bool) {
	w, plan := windowOf(th, c, r, s.unit()), dialView(c, r, o.Needle)
	s.shadow(l, th, c, r)
	w.fill(l, th.Plate)
	w.show(l, s.part(th, dialCase, 0, plan.k, around(figure.DialCentre, dialFocus+dialReach, plan.k), paintPlate), plan)
	px := finer(plan.k, 2*figure.DialRadius)
	w.show(l, s.part(th, dialDisc, 0, px, around(draw.Point{}, figure.DialRadius, px), paintDial), discView(plan, o.Ring))
	n := needleView(plan, o.Needle)
	box := around(n.focus, dialReach, n.k)
	if !th.Flat {
		w.show(l, s.part(th, needleShade, 0, n.k, box, paintNeedleShadow), n.moved(draw.Point{X: .05, Y: .04}))
	}
	w.show(l, s.part(th, needleBody, one(muted), n.k, box, paintNeedle), n)
	w.edge(l, th.Rim)
}

func one(b bool) uint8 {
	if b {
		return 1
	}
	return 0
}

func paintPlate(l *draw.List, th *theme.Theme, _ uint8)        { figure.Plate(l, th) }
func paintDial(l *draw.List, th *theme.Theme, _ uint8)         { figure.Dial(l, th) }
func paintNeedleShadow(l *draw.List, th *theme.Theme, _ uint8) { figure.NeedleShadow(l, th) }
func paintNeedle(l *draw.List, th *theme.Theme, muted uint8)   { figure.Needle(l, th, muted == 1) }
