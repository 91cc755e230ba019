package instrument

import (
	"math"

	"cuesta/orient"
)

// Sensor is a flat device that finds its attitude from two vectors it measures
// in its own axes: the vertical and the magnetic field. Its noise is that of
// one shown value, after the averaging such devices do.
type Sensor struct {
	Vertical float64 // standard deviation of each component of the unit vertical
	Field    float64 // standard deviation of each component of the field, T
	Bias     float64 // size of the field of its own iron before calibration, T
}

// StandardSensor shows dips to about 0.3° and directions to about 0.6° at
// 20 µT; its own iron turns them by up to 17° until it is calibrated (design
// assumptions).
func StandardSensor() Sensor {
	return Sensor{Vertical: 0.004, Field: 0.2e-6, Bias: 6e-6}
}

// Axes are the components of a vector in the body: to the right, forward, and
// out of the face. They form a right-handed frame.
type Axes = orient.Vec

// Attitude is what a sensor lying on a surface shows.
type Attitude struct {
	Direction orient.Angle // of dip, clockwise from magnetic north, (−π, π]
	Dip       orient.Angle // [0, π]
}

// Show is the attitude of the surface under a sensor that measures the
// vertical up and the field. On a level surface, and where the field has no
// horizontal part, the direction means nothing.
func (s Sensor) Show(up, field Axes) Attitude {
	u := orient.Unit(up)
	east := cross(field, u)
	north := cross(u, east)
	return Attitude{Direction: orient.Atan2(east.Z, north.Z), Dip: orient.Acos(u.Z)}
}

// cross is u × v, each product rounded before the difference.
func cross(u, v Axes) Axes {
	return Axes{
		X: float64(u.Y*v.Z) - float64(u.Z*v.Y),
		Y: float64(u.Z*v.X) - float64(u.X*v.Z),
		Z: float64(u.X*v.Y) - float64(u.Y*v.X),
	}
}

// turns is how many directions the sensor is held in to calibrate it.
const turns = 200

// goldenAngle spreads points evenly over a sphere.
const goldenAngle = 2.399963229728653

// Calibrate is the bias that the sensor finds when it is turned through all
// directions in a field of the given strength, with bias its true bias: the
// middle of the sphere that its readings lie on, by least squares.
func (s Sensor) Calibrate(strength float64, bias Axes, n Noise) Axes {
	var fit sphere
	for i := range turns {
		z := (2*float64(i)+1)/turns - 1
		a := orient.Angle(goldenAngle * float64(i))
		flat := strength * math.Sqrt(1-float64(z*z))
		held := Axes{X: flat * a.Cos(), Y: flat * a.Sin(), Z: strength * z}
		fit.add(plus(plus(held, bias), n.Vec(uint64(i), s.Field)), strength)
	}
	return fit.middle(strength)
}

func plus(u, v Axes) Axes { return Axes{X: u.X + v.X, Y: u.Y + v.Y, Z: u.Z + v.Z} }

// sphere gathers the normal equations of |m|² = 2 m·c + k, with c the middle of
// the sphere, in units of the field.
type sphere [4][5]float64

func (q *sphere) add(m Axes, unit float64) {
	x, y, z := m.X/unit, m.Y/unit, m.Z/unit
	row := [5]float64{2 * x, 2 * y, 2 * z, 1, float64(x*x) + float64(y*y) + float64(z*z)}
	for i := range 4 {
		for j := range 5 {
			q[i][j] += float64(row[i] * row[j])
		}
	}
}

// middle solves the equations by elimination; readings from all directions
// make them well conditioned.
func (q *sphere) middle(unit float64) Axes {
	for i := range 4 {
		for k := range 4 {
			if k == i {
				continue
			}
			f := q[k][i] / q[i][i]
			for j := i; j < 5; j++ {
				q[k][j] -= float64(f * q[i][j])
			}
		}
	}
	at := func(i int) float64 { return unit * (q[i][4] / q[i][i]) }
	return Axes{X: at(0), Y: at(1), Z: at(2)}
}
