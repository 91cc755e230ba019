package sound

import "math"

// glide follows a wanted value without a step: it closes 1/e of the way in
// 20 ms.
type glide struct{ at, want float64 }

const glideSamples = Rate * 20 / 1000

func (g *glide) next() float64 {
	g.at += (g.want - g.at) / glideSamples
	if g.want == 0 && math.Abs(g.at) < 1e-4 {
		g.at = 0
	}
	return g.at
}

// silent says that the value is 0 and stays so.
func (g *glide) silent() bool { return g.at == 0 && g.want == 0 }

// cycle is a phase in [0, 1) that never jumps. The note stays below Rate.
type cycle float64

func (c *cycle) next(hertz float64) float64 {
	if *c += cycle(hertz / Rate); *c >= 1 {
		*c--
	}
	return float64(*c)
}

// wave is a note with some of its first overtones: a share of the second and of
// the third. It stays in [−1, 1].
func wave(phase, second, third float64) float64 {
	s, c := math.Sincos(2 * math.Pi * phase)
	return s * (1 + second*2*c + third*(3-4*s*s)) / (1 + second + third)
}

// gate opens softly at from and closes softly at to, within a cycle; 0 outside.
func gate(phase, from, to, soft float64) float64 {
	return rise((phase-from)/soft) * rise((to-phase)/soft)
}

// rise goes from 0 to 1 without a corner.
func rise(x float64) float64 {
	x = max(0, min(x, 1))
	return x * x * (3 - 2*x)
}

// struck is a short sound: it rises in 5 ms and dies away. Struck again while
// it sounds, it goes on from where it is.
type struck struct {
	hertz, loud float64
	dies        float64 // the time it takes to fall to 1/e, in seconds
	phase       cycle
	env         float64
	rising      bool
}

const attack = 1.0 / (Rate * 5 / 1000)

func (s *struck) strike() { s.rising = true }

func (s *struck) silent() bool { return s.env == 0 && !s.rising }

func (s *struck) next() float64 {
	switch {
	case s.rising:
		if s.env += attack; s.env >= 1 {
			s.env, s.rising = 1, false
		}
	case s.env < 1e-4:
		s.env, s.phase = 0, 0
		return 0
	default:
		s.env -= s.env / (s.dies * Rate)
	}
	return s.loud * s.env * wave(s.phase.next(s.hertz), .2, 0)
}
