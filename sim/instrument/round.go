package instrument

import (
	"math"

	"cuesta/orient"
)

// RoundLevel is a round level: a bubble under a spherical cap with a marked
// ring. Lengths in metres.
type RoundLevel struct {
	Radius float64 // of the cap
	Ring   float64 // radius of the marked ring
	Bubble float64 // radius of the bubble
	Wall   float64 // inner radius of the vial
}

// StandardRound is the round level of the bench: 0.955° for 2 mm.
func StandardRound() RoundLevel {
	return RoundLevel{Radius: 120 * Millimetre, Ring: 5 * Millimetre, Bubble: 3.7 * Millimetre, Wall: 10.8 * Millimetre}
}

// Spot is the bubble of a round level: one motion for each axis of the body.
type Spot struct {
	Right, Forward Motion
}

// Offset is a place in the vial, in metres from its middle.
type Offset struct {
	Right, Forward float64
}

// Reach is how far the middle of the bubble can go before it meets the wall.
func (l RoundLevel) Reach() float64 { return l.Wall - l.Bubble }

// Sensitivity is the tilt that moves the bubble by 2 mm.
func (l RoundLevel) Sensitivity() orient.Angle { return orient.Angle(travel / l.Radius) }

// Goal is where the bubble comes to rest when the vertical has the components
// right, forward and out in the body: the highest point of the cap, at
// R·θ/sin θ · (right, forward) with θ the tilt. The bubble runs to the high
// side. Goals far beyond the wall are drawn in to twice its distance; a level
// lying exactly on its face has its bubble forward.
func (l RoundLevel) Goal(right, forward, out float64) Offset {
	s := math.Sqrt(float64(right*right) + float64(forward*forward))
	if s == 0 {
		if out >= 0 {
			return Offset{}
		}
		return Offset{Forward: 2 * l.Reach()}
	}
	d := min(l.Radius*math.Atan2(s, out), 2*l.Reach()) / s
	return Offset{Right: d * right, Forward: d * forward}
}

// Step moves the bubble for dt seconds towards goal; the wall stops it, and
// lets it slide along.
func (l RoundLevel) Step(s Spot, goal Offset, dt float64) Spot {
	s.Right = s.Right.Toward(goal.Right, dt)
	s.Forward = s.Forward.Toward(goal.Forward, dt)
	d := s.distance()
	if d <= l.Reach() {
		return s
	}
	x, y := s.Right.At/d, s.Forward.At/d
	out := max(0, float64(s.Right.Rate*x)+float64(s.Forward.Rate*y))
	return Spot{
		Right:   Motion{At: x * l.Reach(), Rate: s.Right.Rate - float64(out*x)},
		Forward: Motion{At: y * l.Reach(), Rate: s.Forward.Rate - float64(out*y)},
	}
}

func (s Spot) distance() float64 {
	return math.Sqrt(float64(s.Right.At*s.Right.At) + float64(s.Forward.At*s.Forward.At))
}

// InRings is the place of the bubble in radii of the marked ring.
func (l RoundLevel) InRings(s Spot) (right, forward float64) {
	return s.Right.At / l.Ring, s.Forward.At / l.Ring
}

// Centred says whether the bubble is wholly inside the ring.
func (l RoundLevel) Centred(s Spot) bool { return s.distance()+l.Bubble <= l.Ring }

// AtWall says whether the bubble touches the wall.
func (l RoundLevel) AtWall(s Spot) bool { return s.distance() >= l.Reach()-1e-6 }
