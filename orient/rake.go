package orient

import "gonum.org/v1/gonum/spatial/r3"

// Rake is the angle in the plane from its right-hand strike down to the line,
// in [0, π): below 90° the line goes down towards the strike, above it towards
// the other end. A line outside the plane counts by its projection; a line at
// right angles to the plane has rake 0.
func (p Plane) Rake(l Line) Angle {
	v := l.Vec()
	along, down := r3.Dot(v, p.StrikeVec()), r3.Dot(v, p.DownDip())
	if down < -level {
		along, down = -along, -down
	}
	if down <= level { // along the strike, either way
		return 0
	}
	return Atan2(down, along)
}

// Pitch is the acute angle in the plane between the strike line and the line,
// in [0, π/2].
func (p Plane) Pitch(l Line) Angle {
	r := p.Rake(l)
	return min(r, Half-r)
}

// LineOfRake is the line of the plane at the rake r, counted downwards from
// the right-hand strike.
func (p Plane) LineOfRake(r Angle) Line {
	return LineOf(r3.Add(r3.Scale(r.Cos(), p.StrikeVec()), r3.Scale(r.Sin(), p.DownDip())))
}
