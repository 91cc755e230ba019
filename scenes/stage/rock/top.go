package rock

import (
	"image"
	"math"
)

// Top is the bedding surface before light falls on it: heights and colours on
// a grid, so that it can be lit from another side without being made again.
type Top struct {
	W, H   int
	Px     float64 // pixels per cm
	height []float32
	tone   []Tone
}

// Top makes the bedding surface at px pixels per centimetre. X runs along the
// strike, Y straight down the dip.
func (s *Stone) Top(px float64, p Palette) *Top {
	t := newTop(px)
	for y := range t.H {
		t.row(s, y, &p)
	}
	return t
}

func newTop(px float64) *Top {
	w, h := int(2*HalfA*px), int(2*HalfB*px)
	return &Top{W: w, H: h, Px: px, height: make([]float32, w*h), tone: make([]Tone, w*h)}
}

// row makes one row.
func (t *Top) row(s *Stone, y int, p *Palette) {
	for x := range t.W {
		a, b := (float64(x)+0.5)/t.Px-HalfA, (float64(y)+0.5)/t.Px-HalfB
		z, c := s.surface(a, b, x, y, p)
		t.height[y*t.W+x], t.tone[y*t.W+x] = float32(z), c
	}
}

// surface returns the height and colour of the top at a point.
func (s *Stone) surface(a, b float64, x, y int, p *Palette) (float64, Tone) {
	if p.Flat {
		return 0, p.Top
	}
	n := s.seed
	f := s.flaked(a, b)
	bevel := s.bevel(a, b)
	cross, along := parting(a, b)
	lin := n.with(11).cloud(along*0.16, cross*2.3, 3)
	rough := float64(f.lost)
	z := s.ripple(a, b)*(1-0.7*min(rough, 1)) + 0.012*lin
	z += 0.020*n.with(12).cloud(a*1.4, b*1.4, 3) + 0.022*rough*n.with(13).cloud(a*3.5, b*3.5, 2)
	z -= f.drop + 0.55*bevel
	return z, s.albedo(a, b, x, y, f, lin, bevel, p)
}

// parting turns (a, b) into distances across and along the current that laid
// the sand, which ran oblique to strike and dip.
func parting(a, b float64) (cross, along float64) {
	const c, d = 0.84, 0.54
	return c*b - d*a, c*a + d*b
}

// ripple is a patch of worn current ripples, crests across the current.
func (s *Stone) ripple(a, b float64) float64 {
	n := s.seed
	cross, along := parting(a, b)
	worn := step(-0.06, 0.20, n.with(21).cloud(a*0.11+3, b*0.11+5, 2))
	phase := along/1.5 + 0.9*n.with(22).cloud(a*0.22, b*0.22, 2) + 0.25*n.with(23).cloud(cross*0.7, along*0.35, 2)
	f := phase - math.Floor(phase)
	// The lee side is the steeper one.
	crest := step(0, 0.64, f) - step(0.64, 1, f)
	return 0.032 * worn * crest
}

// flake is what the rim has lost at a point: how many laminae, how deep it now
// lies, and how much the step above it keeps off the light, in [0, 1].
type flake struct {
	lost int
	drop float64
	dark float64
}

func (s *Stone) flaked(a, b float64) flake {
	n := s.seed.with(31)
	var f flake
	if min(HalfA-math.Abs(a), HalfB-math.Abs(b)) > 6.4 {
		return f
	}
	wa, wb := 0.7*n.cloud(a*0.6, b*0.6, 3), 0.7*n.with(1).cloud(a*0.6, b*0.6, 3)
	for _, side := range Sides {
		t, d := side.along(a+wa, b+wb)
		if d > 6 {
			continue
		}
		c := s.scarp(side, t)
		for i, edge := range c {
			if d < edge {
				f.lost = max(f.lost, i+1)
				f.dark = max(f.dark, 1-step(0, 0.32, edge-d))
			}
		}
		f.drop = max(f.drop, 0.07*step(c[0]+0.025, c[0]-0.025, d)+0.07*step(c[1]+0.025, c[1]-0.025, d))
	}
	return f
}

// bevel is how far below the worn rim a point lies.
func (s *Stone) bevel(a, b float64) float64 {
	deep := 0.0
	for _, side := range Sides {
		t, d := side.along(a, b)
		if d < 1.3 {
			deep = max(deep, s.Chip(side, t)-d)
		}
	}
	return deep
}

// albedo is the colour of the top under even light.
func (s *Stone) albedo(a, b float64, x, y int, f flake, lin, bevel float64, p *Palette) Tone {
	n := s.seed
	c := p.Top
	switch f.lost {
	case 1:
		c = c.blend(p.Mid, 0.42).blend(p.Cool, 0.08)
	case 2:
		c = c.blend(p.Lo, 0.20).blend(p.Stain, 0.22)
	}
	c = c.blend(p.Stain, 0.16*step(0.02, 0.22, n.with(51).cloud(a*0.10+7, b*0.08+3, 3)))
	c = c.blend(p.Cool, 0.12*step(0.02, 0.22, n.with(52).cloud(a*0.13, b*0.12, 3)))
	if bevel > 0 {
		c = c.blend(p.Mid, 0.30)
	}
	k := 1 + 0.06*n.with(53).cloud(a*0.33, b*0.33, 3) + 0.10*lin + 0.06*n.with(54).cloud(a*2.6, b*2.6, 2)
	k += (1+0.5*float64(f.lost))*s.grain(x, y) - 0.16*f.dark
	return Tone{c.R * k, c.G * k, c.B * k}
}

// grain is the sand itself: single grains, small clusters, a few dark pits and
// a few bright flakes.
func (s *Stone) grain(x, y int) float64 {
	n := s.seed.with(55)
	k := 0.085*(n.at(x, y)-0.5) + 0.075*(n.with(1).at(x>>1, (y+x&1)>>1)-0.5)
	switch r := n.with(2).at(x, y); {
	case r > 0.990:
		k -= 0.16
	case r < 0.006:
		k += 0.12
	}
	return k
}

// Lit paints the top under a light; Y of the light points down the dip.
func (t *Top) Lit(l Light, img *image.RGBA) {
	for y := range t.H {
		for x := range t.W {
			put(img, x, y, t.tone[y*t.W+x], l.relief(t.slope(x, y)))
		}
	}
}

func (t *Top) slope(x, y int) (gx, gy float64) {
	x0, x1, y0, y1 := max(x-1, 0), min(x+1, t.W-1), max(y-1, 0), min(y+1, t.H-1)
	gx = float64(t.height[y*t.W+x1]-t.height[y*t.W+x0]) * t.Px / float64(x1-x0)
	gy = float64(t.height[y1*t.W+x]-t.height[y0*t.W+x]) * t.Px / float64(y1-y0)
	return gx, gy
}
