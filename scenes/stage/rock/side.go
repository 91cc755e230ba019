package rock

import (
	"image"
	"math"
)

// face is one side before light falls on it.
type face struct {
	side   Side
	w, h   int
	px     float64
	height []float32
	tone   []Tone
}

// PaintSide paints a side into img with its upper left corner at (0, y0): X
// along the side, Y down. Light falls from above and a little from the left.
func (s *Stone) PaintSide(side Side, px float64, p Palette, img *image.RGBA, y0 int) {
	s.face(side, px, &p).paint(p.Flat, img, y0)
}

func (s *Stone) face(side Side, px float64, p *Palette) *face {
	f := newFace(side, px)
	for y := range f.h {
		f.row(s, y, p)
	}
	return f
}

func newFace(side Side, px float64) *face {
	w, h := int(2*side.Half()*px), int(Thick*px)
	return &face{side: side, w: w, h: h, px: px, height: make([]float32, w*h), tone: make([]Tone, w*h)}
}

// row makes one row.
func (f *face) row(s *Stone, y int, p *Palette) {
	// Beds run on round the corners: t counts along all four sides, in the order
	// up, behind, down, ahead; the one seam is the corner farthest from the eye.
	start := [...]float64{4*HalfA + 3*HalfB, 3*HalfA + 2*HalfB, 2*HalfA + HalfB, HalfA}[f.side]
	for x := range f.w {
		t, q := (float64(x)+0.5)/f.px-f.side.Half()+start, (float64(y)+0.5)/f.px
		z, c := s.broken(f.side, t, q, x, y, p)
		f.height[y*f.w+x], f.tone[y*f.w+x] = float32(z), c
	}
}

func (f *face) paint(flat bool, img *image.RGBA, y0 int) {
	l := Light{-0.25, -0.55, 0.80}
	for y := range f.h {
		for x := range f.w {
			k := 1.0
			if !flat {
				k = l.relief(f.slope(x, y))
			}
			put(img, x, y0+y, f.tone[y*f.w+x], k)
		}
	}
}

// broken returns the height and colour of a side at t along it and depth q.
func (s *Stone) broken(side Side, t, q float64, x, y int, p *Palette) (float64, Tone) {
	n := s.seed.with(70)
	wave := 0.12*n.cloud(t*0.25, 2.2, 2) + 0.05*n.with(1).cloud(t*1.6, q*1.6, 2)
	d := max(0, q+wave)
	i := find(s.beds, d)
	b := &s.beds[i]
	joint := min(d-b.top, b.bottom-d)
	c := s.tone(i, t, d, p)
	if p.Flat {
		return 0, scale(c, 1-0.22*(1-step(0, 0.05, joint)))
	}
	block, crack := s.block(i, t, q)
	z := b.proud*step(0, 0.06, joint) + 0.05*block
	z += 0.11*n.with(2).cloud(t*1.1, q*1.9, 3) + 0.03*n.with(3).cloud(t*5, q*5, 2)
	k := 1 - 0.22*(1-step(0, 0.04, joint)) - 0.20*crack + 0.10*(block-0.5)
	k += 0.06*n.with(4).cloud(t*2.2, q*4, 2) + 1.25*s.grain(x+977*int(side), y)
	return z, scale(c, k)
}

// tone is the colour of bed i: its own, with inclined laminae in thick beds.
func (s *Stone) tone(i int, t, d float64, p *Palette) Tone {
	b := &s.beds[i]
	tone := b.tone
	if b.cross != 0 {
		up := b.bottom - d
		// Foresets flatten towards the floor of the bed.
		phase := (t + up*up*1.6/b.cross + up*0.9/b.cross) / 0.34
		tone += 0.30 * (s.seed.with(71).smooth(phase, float64(i)) - 0.5)
	}
	tone = max(0, min(1, tone))
	c := p.Lo.blend(p.Mid, min(1, 2*tone))
	if tone > 0.5 {
		c = p.Mid.blend(p.Hi, 2*tone-1)
	}
	return c.blend(p.Cool, b.cool)
}

// block breaks bed i along upright cracks: the brightness of the piece at t and
// how near its crack is, each in [0, 1].
func (s *Stone) block(i int, t, q float64) (shade, crack float64) {
	n := s.seed.with(90 + uint64(i))
	long := 1.6 + 3.2*n.at(0, 7)
	u := (t+(0.5-n.at(1, 7))*q)/long + 0.25*(n.with(1).broken(q*7)-0.5)
	f := math.Floor(u)
	k := int(f)
	if n.at(k, 2) < 0.5 {
		return n.at(k, 1), 0
	}
	return n.at(k, 1), 1 - step(0, 0.05, (u-f)*long)
}

func (f *face) slope(x, y int) (gx, gy float64) {
	x0, x1, y0, y1 := max(x-1, 0), min(x+1, f.w-1), max(y-1, 0), min(y+1, f.h-1)
	gx = float64(f.height[y*f.w+x1]-f.height[y*f.w+x0]) * f.px / float64(x1-x0)
	gy = float64(f.height[y1*f.w+x]-f.height[y0*f.w+x]) * f.px / float64(y1-y0)
	return gx, gy
}

func scale(t Tone, k float64) Tone { return Tone{t.R * k, t.G * k, t.B * k} }
