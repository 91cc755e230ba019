package inset

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// roundReach is the radius of the opening over the round level, in cm.
const roundReach = 1.20

// roundView has forward up.
func roundView(c draw.Point, r float64) view {
	return view{centre: c, focus: figure.RoundCentre, k: r / roundReach, turn: -orient.Right}
}

// Round adds the round level, forward up, in a circle of radius r about c.
func (s *Set) Round(l *draw.List, th *theme.Theme, c draw.Point, r float64, o sim.RoundLevel) {
	w, v := windowOf(th, c, r, s.unit()), roundView(c, r)
	s.shadow(l, th, c, r)
	w.fill(l, th.Bezel)
	w.show(l, s.part(th, roundBody, 0, v.k, around(v.focus, 1.3, v.k), paintRound), v)
	bubble := draw.Point{X: v.focus.X + figure.RoundRing*o.Forward, Y: v.focus.Y + figure.RoundRing*o.Right}
	w.show(l, s.part(th, roundBubble, 0, v.k, around(draw.Point{}, figure.RoundBubble, v.k), paintRoundBubble), v.part(bubble, 0))
	w.show(l, s.part(th, roundMarks, 0, v.k, around(draw.Point{}, 1, v.k), paintRoundMarks), v.part(v.focus, 0))
	w.edge(l, th.Rim)
}

func paintRound(l *draw.List, th *theme.Theme, _ uint8)       { figure.RoundLevel(l, th) }
func paintRoundBubble(l *draw.List, th *theme.Theme, _ uint8) { figure.RoundBubbleShape(l, th) }
func paintRoundMarks(l *draw.List, th *theme.Theme, _ uint8) {
	figure.RoundMarks(l, th, draw.Point{})
}
