package instrument

import (
	"math"

	"cuesta/orient"
)

// Arc is the scale of the inclination arm, with the arm at Arm from the seated
// edge, in [0, π/2]. A degree scale and a percent scale lie side by side.
type Arc struct {
	Arm orient.Angle
}

// Turned is the arc after the arm has been turned by a; its stops are at 0
// and 90°.
func (c Arc) Turned(a orient.Angle) Arc {
	return Arc{Arm: max(0, min(orient.Right, c.Arm+a))}
}

// Percent is what the percent scale shows: 100·tan(Arm), +Inf at 90°.
func (c Arc) Percent() float64 {
	if c.Arm >= orient.Right {
		return math.Inf(1)
	}
	return 100 * c.Arm.Tan()
}

// Degree is the nearest whole degree on the degree scale.
func (c Arc) Degree() int { return int(math.Round(c.Arm.Degrees())) }
