package instrument

import "math"

// bubbleRate is the natural frequency of a bubble in rad/s. Critically damped
// it is within 2 % of its place after half a second: (1+6)·e⁻⁶ = 0.017 (design
// assumption, after the look of a spirit level).
const bubbleRate = 12.0

// still is the distance, and the distance a second, below which a bubble
// stands; a nanometre, so that nothing decays for ever.
const still = 1e-9

// Motion is a bubble along one axis: where its centre stands, in metres from
// the middle of the vial, and how fast it moves, in metres a second.
type Motion struct {
	At, Rate float64
}

// Toward moves the bubble for dt seconds towards goal: second order,
// critically damped, solved backwards so that any step is stable.
func (m Motion) Toward(goal, dt float64) Motion {
	if math.Abs(goal-m.At) < still && math.Abs(m.Rate) < still {
		return Motion{At: goal}
	}
	w := float64(bubbleRate * dt)
	pull := float64(bubbleRate * w * (goal - m.At))
	rate := (m.Rate + pull) / ((1 + w) * (1 + w))
	return Motion{At: m.At + float64(rate*dt), Rate: rate}
}

// Within stops the bubble at ±reach.
func (m Motion) Within(reach float64) Motion {
	if math.Abs(m.At) < reach {
		return m
	}
	return Motion{At: math.Copysign(reach, m.At)}
}
