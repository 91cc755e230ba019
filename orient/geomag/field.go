package geomag

import (
	"math"

	"cuesta/orient"
)

// Field is the main field at a place and date. Intensities are in nT, North
// to Total as in the package comment. At an exact pole north is the direction
// along the meridian that the site names.
type Field struct {
	North, East, Down float64
	Horizontal, Total float64
	Declination       orient.Angle // (−π, π], 0 where there is no horizontal field
	Inclination       orient.Angle // [−π/2, π/2], down positive
	// DeclinationError is one standard error of Declination, in [0, π].
	DeclinationError orient.Angle
	Yearly           Change
	Caution          Caution
}

// Change is what a year adds: nT a year, and radians a year.
type Change struct {
	North, East, Down        float64
	Horizontal, Total        float64
	Declination, Inclination orient.Angle
}

// At is the field at a site and date; an error says which of them is outside
// any sense. A date or place where the model is weak comes with a Caution.
func (m *Model) At(s Site, y Year) (Field, error) {
	if err := s.check(); err != nil {
		return Field{}, err
	}
	if err := y.check(m.epoch); err != nil {
		return Field{}, err
	}
	g := geocentricOf(s)
	l := legendreAt(g.cos, g.sin)
	f := fieldOf(m.at(y).synthesis(g, l), m.change.synthesis(g, l))
	f.Caution = m.caution(f, y)
	return f, nil
}

// At is the field of the World Magnetic Model 2025.
func At(s Site, y Year) (Field, error) { return WMM2025().At(s, y) }

func fieldOf(v, rate vector) Field {
	h := math.Sqrt(v.north*v.north + v.east*v.east)
	f := Field{
		North: v.north, East: v.east, Down: v.down,
		Horizontal:  h,
		Total:       math.Sqrt(h*h + v.down*v.down),
		Declination: orient.Atan2(v.east, v.north),
		Inclination: orient.Atan2(v.down, h),
	}
	f.DeclinationError = DeclinationError(h)
	f.Yearly = changeOf(f, rate)
	return f
}

// changeOf differentiates what is not a component. Where the horizontal or
// the total field is nothing, its direction changes without bound, and 0
// stands for that.
func changeOf(f Field, rate vector) Change {
	c := Change{North: rate.north, East: rate.east, Down: rate.down}
	if f.Horizontal > 0 {
		c.Horizontal = (f.North*rate.north + f.East*rate.east) / f.Horizontal
		c.Declination = orient.Angle((f.North*rate.east - f.East*rate.north) / (f.Horizontal * f.Horizontal))
	}
	if f.Total > 0 {
		c.Total = (f.Horizontal*c.Horizontal + f.Down*rate.down) / f.Total
		c.Inclination = orient.Angle((f.Horizontal*rate.down - f.Down*c.Horizontal) / (f.Total * f.Total))
	}
	return c
}

// DeclinationError is one standard error of the declination where the
// horizontal intensity is h nT: √(0.26² + (5417/h)²) degrees, at most 180°
// (WMM2025 technical report, as two implementations quote it).
func DeclinationError(h float64) orient.Angle {
	return min(orient.Half, orient.Angle(math.Sqrt(0.26*0.26+5417/h*(5417/h)))*orient.Degree)
}
