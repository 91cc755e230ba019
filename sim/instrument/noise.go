package instrument

// Noise is a source of random numbers that can be asked for any of them in any
// order: the same seed and number give the same value. So looking at a sensor
// twice in the same moment shows the same, and not looking changes nothing.
type Noise uint64

// mix is the finaliser of SplitMix64 (Steele, Lea & Flood 2014, Fast splittable
// pseudorandom number generators).
func mix(z uint64) uint64 {
	z += 0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// Uniform is the nth number, in [0, 1).
func (s Noise) Uniform(n uint64) float64 {
	return float64(mix(mix(uint64(s))+n)>>11) / (1 << 53)
}

// spread is how many uniform numbers make a normal one.
const spread = 12

// Normal is the nth number of mean 0 and standard deviation 1: the sum of
// twelve uniform ones less six (Irwin–Hall), within ±6. It needs no logarithm,
// which differs between targets.
func (s Noise) Normal(n uint64) float64 {
	sum := -spread / 2.0
	for i := range uint64(spread) {
		sum += s.Uniform(n*spread + i)
	}
	return sum
}

// Vec is the nth vector with components of standard deviation sd.
func (s Noise) Vec(n uint64, sd float64) Axes {
	return Axes{X: sd * s.Normal(3*n), Y: sd * s.Normal(3*n+1), Z: sd * s.Normal(3*n+2)}
}
