package orient

// Line is an axis in space: trend in [0, 2π) of its lower end and plunge in
// [0, π/2], positive downwards. With plunge π/2 the trend means nothing.
type Line struct {
	Trend  Azimuth
	Plunge Angle
}

// Vec is the unit vector along the line, pointing down the plunge.
func (l Line) Vec() Vec {
	h := l.Trend.Vec()
	return Vec{X: l.Plunge.Cos() * h.X, Y: l.Plunge.Cos() * h.Y, Z: -l.Plunge.Sin()}
}

// IsValid says whether trend and plunge lie in their ranges.
func (l Line) IsValid() bool {
	return l.Trend >= 0 && l.Trend < Azimuth(Full) && l.Plunge >= 0 && l.Plunge <= Right
}
