package instrument

import (
	"math"

	"cuesta/orient"
)

// TubeLevel is a tube level: a bubble in a barrel-ground tube between two
// marks. Lengths in metres.
type TubeLevel struct {
	Radius float64 // of the barrel
	Mark   float64 // from the middle to either mark
	Bubble float64 // half the length of the bubble
	End    float64 // from the middle to either end of the tube
}

// StandardTube is the tube level of the bench: 0.4775° for 2 mm.
func StandardTube() TubeLevel {
	return TubeLevel{Radius: 240 * Millimetre, Mark: 5.6 * Millimetre, Bubble: 4.2 * Millimetre, End: 14.25 * Millimetre}
}

// Reach is how far the middle of the bubble can go before it meets an end.
func (l TubeLevel) Reach() float64 { return l.End - l.Bubble }

// Sensitivity is the tilt that moves the bubble by 2 mm.
func (l TubeLevel) Sensitivity() orient.Angle { return orient.Angle(travel / l.Radius) }

// Goal is where the bubble comes to rest when the vertical has the component
// along the tube and the component across it in the plane of the barrel. The
// tube may stand on either side. With both nought (the tube lies on its side)
// the bubble rests in the middle.
func (l TubeLevel) Goal(along, across float64) float64 {
	d := l.Radius * math.Atan2(along, math.Abs(across))
	return max(-2*l.Reach(), min(2*l.Reach(), d))
}

// Step moves the bubble for dt seconds towards goal; the ends stop it.
func (l TubeLevel) Step(m Motion, goal, dt float64) Motion {
	return m.Toward(goal, dt).Within(l.Reach())
}

// InHalfGaps is the place of the bubble in half gaps between the marks.
func (l TubeLevel) InHalfGaps(m Motion) float64 { return m.At / l.Mark }

// Centred says whether the bubble is wholly between the marks.
func (l TubeLevel) Centred(m Motion) bool { return math.Abs(m.At)+l.Bubble <= l.Mark }

// AtEnd says whether the bubble touches an end of the tube.
func (l TubeLevel) AtEnd(m Motion) bool { return math.Abs(m.At) >= l.Reach()-1e-6 }
