package orient

import "math"

// Angle is an angle in radians; the zero value is no angle at all.
type Angle float64

// Degree is one degree. Write 35*orient.Degree for 35°.
const Degree Angle = math.Pi / 180

// Full, Half and Right are a full turn, half a turn and a right angle.
const (
	Full  = 360 * Degree
	Half  = 180 * Degree
	Right = 90 * Degree
)

// Degrees returns the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Radians returns the angle in radians.
func (a Angle) Radians() float64 { return float64(a) }

// Abs returns |a|.
func (a Angle) Abs() Angle { return Angle(math.Abs(float64(a))) }

// Wrapped returns the equal angle in (−π, π].
func (a Angle) Wrapped() Angle {
	w := Angle(math.Mod(float64(a), float64(Full)))
	if w > Half {
		return w - Full
	}
	if w <= -Half {
		return w + Full
	}
	return w
}

// Sin, Cos and Tan are the trigonometric functions of the angle.
func (a Angle) Sin() float64 { return math.Sin(float64(a)) }

// Cos returns the cosine.
func (a Angle) Cos() float64 { return math.Cos(float64(a)) }

// Tan returns the tangent.
func (a Angle) Tan() float64 { return math.Tan(float64(a)) }

// Asin returns the angle in [−π/2, π/2] whose sine is x, x clamped to [−1, 1].
func Asin(x float64) Angle { return Angle(math.Asin(max(-1, min(1, x)))) }

// Acos returns the angle in [0, π] whose cosine is x, x clamped to [−1, 1].
func Acos(x float64) Angle { return Angle(math.Acos(max(-1, min(1, x)))) }

// Atan2 returns the angle in (−π, π] of the point (x, y).
func Atan2(y, x float64) Angle { return Angle(math.Atan2(y, x)) }
