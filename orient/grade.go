package orient

import "math"

// PercentGrade is the slope in per cent, 100·tan a: 100 at 45°, 0 when flat.
// At 90° it is beyond any scale: a very large number or infinity.
func PercentGrade(a Angle) float64 { return 100 * a.Tan() }

// OfPercentGrade is the angle in (−π/2, π/2) of a slope in per cent. A
// gradient of 1 in n is 100/n per cent.
func OfPercentGrade(percent float64) Angle { return Angle(math.Atan(percent / 100)) }
