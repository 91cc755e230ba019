package rock

import "math"

// noise is a source of repeatable random values over the integers.
type noise uint64

// at returns a value in [0, 1) for a pair of integers.
func (n noise) at(x, y int) float64 {
	return float64(mix(uint64(n)+uint64(int64(x))*0x9e3779b97f4a7c15+uint64(int64(y))*0xd1b54a32d192ed03)>>40) / (1 << 24)
}

// with returns an independent source.
func (n noise) with(k uint64) noise { return noise(mix(uint64(n) + k*0x9e3779b97f4a7c15)) }

// mix is the finaliser of the splitmix64 generator (Steele, Lea and Flood 2014,
// constants from memory): every input bit reaches every output bit.
func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// smooth is value noise over the plane, in [0, 1).
func (n noise) smooth(x, y float64) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	i, j := int(fx), int(fy)
	u, v := ease(x-fx), ease(y-fy)
	a, b, c, d := n.at(i, j), n.at(i+1, j), n.at(i, j+1), n.at(i+1, j+1)
	return a + (b-a)*u + (c-a)*v + (a-b-c+d)*u*v
}

// cloud sums octaves of smooth noise about 0, within ±0.5.
func (n noise) cloud(x, y float64, octaves int) float64 {
	sum, k, total := 0.0, 1.0, 0.0
	for o := range octaves {
		sum += k * (n.with(uint64(o)).smooth(x, y) - 0.5)
		total += k
		k *= 0.5
		x, y = 2.03*x+11.3, 2.03*y+7.1
	}
	return sum / total
}

// broken is noise along a line with straight pieces: broken stone has corners,
// and smooth noise looks melted.
func (n noise) broken(t float64) float64 {
	f := math.Floor(t)
	i := int(f)
	a, b := n.at(i, 0), n.at(i+1, 0)
	return a + (b-a)*(t-f)
}

func ease(t float64) float64 { return t * t * (3 - 2*t) }

// step rises smoothly from 0 at a to 1 at b.
func step(a, b, x float64) float64 {
	return ease(max(0, min(1, (x-a)/(b-a))))
}

// Dither is a fixed random value in [0, 1) for a pixel.
func Dither(x, y int) float64 { return noise(3).at(x, y) }
