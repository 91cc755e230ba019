package quiz

import (
	"math"
	"math/rand/v2"

	"cuesta/orient"
)

// Mix is how often planes of each dip class are dealt. Only the ratios count.
// A mix that is not valid, such as the zero value, deals like DefaultMix.
type Mix struct {
	Gentle, Moderate, Steep float64 // shares, each ≥ 0 and finite
}

// The mixes on offer. DefaultMix deals the three classes alike, so that nobody
// practises on moderate dips alone, where everything is easy.
var (
	DefaultMix   = Mix{Gentle: 1, Moderate: 1, Steep: 1}
	GentleOnly   = Mix{Gentle: 1}
	ModerateOnly = Mix{Moderate: 1}
	SteepOnly    = Mix{Steep: 1}
)

// IsValid says whether every share is finite and not negative and one is more
// than zero.
func (m Mix) IsValid() bool {
	for _, s := range m.shares() {
		if !(s >= 0) || math.IsInf(s, 1) {
			return false
		}
	}
	t := m.total()
	return t > 0 && !math.IsInf(t, 1)
}

// Share returns the share of the class c in [0, 1].
func (m Mix) Share(c DipClass) float64 {
	if !m.IsValid() {
		m = DefaultMix
	}
	return m.shares()[c] / m.total()
}

// Plane deals a plane: the class by its share, then the strike even in
// [0°, 360°) and the dip even over the range of the class; neither is rounded.
// The same source in the same state deals the same plane; it takes three
// numbers from it.
func (m Mix) Plane(r *rand.Rand) orient.Plane {
	c := m.class(r.Float64())
	strike := orient.Angle(r.Float64()) * orient.Full
	from, to := c.Range()
	dip := from + orient.Angle(r.Float64())*(to-from)
	return orient.PlaneOf(strike, dip)
}

// class returns the class at the fraction u in [0, 1) of the mix.
func (m Mix) class(u float64) DipClass {
	last := Gentle
	for _, c := range []DipClass{Gentle, Moderate, Steep} {
		s := m.Share(c)
		if s == 0 {
			continue
		}
		if u < s {
			return c
		}
		u -= s
		last = c
	}
	return last
}

func (m Mix) shares() [Classes]float64 { return [Classes]float64{m.Gentle, m.Moderate, m.Steep} }

func (m Mix) total() float64 { return m.Gentle + m.Moderate + m.Steep }
