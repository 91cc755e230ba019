package instrument

import (
	"math"
	"testing"

	"cuesta/orient"
)

// surface is the vertical and the field in the axes of a sensor lying on a
// surface of the given dip, its forward end at the angle φ from the strike
// towards the dip; the field lies at the angle north clockwise from the dip
// direction, with the inclination down.
func surface(dip, φ, north, inclination orient.Angle, h float64) (up, field Axes) {
	into := func(strike, down, out float64) Axes {
		return Axes{
			X: down*φ.Cos() - strike*φ.Sin(),
			Y: strike*φ.Cos() + down*φ.Sin(),
			Z: out,
		}
	}
	level := h * north.Cos() // along the dip direction
	side := -h * north.Sin() // along the strike: 90° anticlockwise from it
	z := -h * inclination.Tan()
	up = into(0, -dip.Sin(), dip.Cos())
	field = into(side, level*dip.Cos()-z*dip.Sin(), level*dip.Sin()+z*dip.Cos())
	return up, field
}

func TestSensorShowsTheSurface(t *testing.T) {
	for _, dip := range []orient.Angle{1, 30, 60, 89, 90} {
		for _, φ := range []orient.Angle{0, 37, 90, 200, -120} {
			for _, north := range []orient.Angle{0, 10, 90, 179, -60} {
				for _, inc := range []orient.Angle{0, 65, -40} {
					up, field := surface(dip*deg, φ*deg, north*deg, inc*deg, 20e-6)
					got := Sensor{}.Show(up, field)
					off := (got.Direction + north*deg).Wrapped() // the dip direction lies −north from north
					if (got.Dip-dip*deg).Abs() > 1e-9 || off.Abs() > 1e-9 {
						t.Fatalf("dip %v, φ %v, north %v, inclination %v: got %v° towards %v°", dip, φ, north, inc,
							got.Dip.Degrees(), got.Direction.Degrees())
					}
				}
			}
		}
	}
}

func TestCalibrationFindsTheBias(t *testing.T) {
	s := StandardSensor()
	for seed := range uint64(50) {
		want := Noise(seed).Vec(7, s.Bias)
		got := s.Calibrate(50e-6, want, Noise(seed+1000))
		d := math.Sqrt(sq(got.X-want.X) + sq(got.Y-want.Y) + sq(got.Z-want.Z))
		if d > 0.15e-6 {
			t.Errorf("seed %d: off by %v T", seed, d)
		}
	}
	s.Field = 0
	want := Axes{X: 1e-6, Y: -2e-6, Z: 3e-6}
	got := s.Calibrate(20e-6, want, 0)
	if sq(got.X-want.X)+sq(got.Y-want.Y)+sq(got.Z-want.Z) > 1e-32 {
		t.Errorf("without noise: got %v, want %v", got, want)
	}
}

func sq(x float64) float64 { return x * x }

// Mean 0, variance 1 and fourth moment 3 − 6/(5·12) = 2.9 (Irwin–Hall, the sum
// of twelve uniform numbers).
func TestNormal(t *testing.T) {
	const n = 200_000
	var m, v, k float64
	for i := range uint64(n) {
		x := Noise(3).Normal(i)
		m += x / n
		v += x * x / n
		k += x * x * x * x / n
	}
	if math.Abs(m) > 0.01 || math.Abs(v-1) > 0.02 || math.Abs(k-2.9) > 0.1 {
		t.Errorf("mean %v, variance %v, fourth moment %v", m, v, k)
	}
	if Noise(3).Normal(5) != Noise(3).Normal(5) || Noise(3).Normal(5) == Noise(4).Normal(5) {
		t.Error("the numbers do not follow from the seed")
	}
}

// The first output of SplitMix64 from the seed 0 (Vigna's reference program,
// value from memory: e220a8397b1dcdaf).
func TestMix(t *testing.T) {
	if got := mix(0); got != 0xe220a8397b1dcdaf {
		t.Errorf("got %x", got)
	}
}
