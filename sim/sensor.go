package sim

import (
	"math"

	"cuesta/orient"
	"cuesta/sim/instrument"
)

// sensor is the sensor in the back of the instrument. What it shows follows
// from the pose and the tick alone, so it costs a step nothing.
type sensor struct {
	field      orient.Vec // in the world, T
	bias       orient.Vec // of its own iron, in the body, T
	noise      instrument.Noise
	known      orient.Vec // the bias it has found, in the body, T
	calibrated bool
	times      uint64 // calibrations so far, so that no two have the same noise
}

// sensorStream tells the noise of the sensor from other uses of the same seed.
const sensorStream = 0x73656e736f72

// shownTicks is how long the sensor shows the same value.
const shownTicks = TicksPerSecond / 10

// sensorIn is a sensor at a place, fresh from the box: magnetised somehow, and
// not calibrated.
func sensorIn(f Field, seed uint64, s instrument.Sensor) sensor {
	n := instrument.Noise(seed ^ sensorStream)
	h := orient.AzimuthOf(f.Declination).Vec()
	return sensor{
		field: orient.Vec{X: f.Horizontal * h.X, Y: f.Horizontal * h.Y, Z: -f.Vertical()},
		bias:  scaled(orient.Unit(n.Vec(0, 1)), s.Bias),
		noise: n + 1,
	}
}

// show is what it shows in a frame at a tick.
func (d *sensor) show(s instrument.Sensor, f Frame, t Tick) instrument.Attitude {
	n := 2 * uint64(t/shownTicks)
	up := added(f.axes(orient.Up), d.noise.Vec(n, s.Vertical))
	field := added(f.axes(d.field), d.noise.Vec(n+1, s.Field))
	return s.Show(up, added(field, added(d.bias, scaled(d.known, -1))))
}

// calibrate finds the bias anew.
func (d *sensor) calibrate(s instrument.Sensor) {
	d.times++
	strength := length(d.field)
	d.known = s.Calibrate(strength, d.bias, d.noise+instrument.Noise(d.times)<<32)
	d.calibrated = true
}

// axes are the components of v in the body.
func (f Frame) axes(v orient.Vec) instrument.Axes {
	return instrument.Axes{X: along(f.Right, v), Y: along(f.Forward, v), Z: along(f.Out, v)}
}

func along(u, v orient.Vec) float64 {
	return float64(u.X*v.X) + float64(u.Y*v.Y) + float64(u.Z*v.Z)
}

func added(u, v orient.Vec) orient.Vec { return orient.Vec{X: u.X + v.X, Y: u.Y + v.Y, Z: u.Z + v.Z} }

func scaled(u orient.Vec, s float64) orient.Vec {
	return orient.Vec{X: float64(s * u.X), Y: float64(s * u.Y), Z: float64(s * u.Z)}
}

func length(u orient.Vec) float64 { return math.Sqrt(along(u, u)) }
