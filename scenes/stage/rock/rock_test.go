package rock

import (
	"bytes"
	"image"
	"math"
	"testing"
)

var sand = Palette{
	Lo: Tone{0.6, 0.5, 0.4}, Mid: Tone{0.75, 0.67, 0.54}, Hi: Tone{0.87, 0.82, 0.72},
	Top: Tone{0.83, 0.76, 0.65}, Cool: Tone{0.55, 0.53, 0.49}, Stain: Tone{0.74, 0.62, 0.45},
}

func painted(seed uint64, p Palette) *image.RGBA {
	s := New(seed)
	top := s.Top(10, p)
	high := int(Thick * 10)
	img := image.NewRGBA(image.Rect(0, 0, top.W, top.H+4*high))
	top.Lit(Light{-0.5, 0.2, 0.8}, img)
	for i, side := range Sides {
		s.PaintSide(side, 10, p, img, top.H+i*high)
	}
	return img
}

func TestSameSeedSameStone(t *testing.T) {
	a, b, c := painted(7, sand), painted(7, sand), painted(8, sand)
	differs := 0
	for i := range a.Pix {
		if a.Pix[i] != b.Pix[i] {
			t.Fatalf("byte %d: got %d and %d from one seed", i, a.Pix[i], b.Pix[i])
		}
		if a.Pix[i] != c.Pix[i] {
			differs++
		}
	}
	if differs < len(a.Pix)/4 {
		t.Errorf("another seed changed %d of %d bytes", differs, len(a.Pix))
	}
}

// A stone that is made bit by bit is the same stone.
func TestMadeBitByBitIsTheSame(t *testing.T) {
	const px = 10
	want := painted(7, sand)
	m := New(7).Make(px, sand)
	steps := 1
	for !m.Go(3000) {
		steps++
	}
	if got, least := steps, len(want.Pix)/4/3000/2; got < least {
		t.Errorf("made in %d steps, want at least %d", got, least)
	}
	img := image.NewRGBA(want.Rect)
	m.Top().Lit(Light{-0.5, 0.2, 0.8}, img)
	for i, side := range Sides {
		m.PaintSide(side, img, m.Top().H+i*int(Thick*px))
	}
	if !bytes.Equal(img.Pix, want.Pix) {
		t.Error("the stone differs from one that is made at once")
	}
}

// A closed patch would read as an island on a map: what has flaked off must be
// open to the rim, and the whole lamina must hang together.
func TestFlakesOpenToTheRim(t *testing.T) {
	px := 8.0
	w, h := int(2*HalfA*px), int(2*HalfB*px)
	for seed := range uint64(12) {
		s := New(seed)
		lost := make([]bool, w*h)
		count := 0
		for i := range lost {
			a, b := (float64(i%w)+0.5)/px-HalfA, (float64(i/w)+0.5)/px-HalfB
			lost[i] = s.flaked(a, b).lost > 0
			if lost[i] {
				count++
			}
		}
		closed := count
		for i := range lost {
			x, y := i%w, i/w
			if lost[i] && (x == 0 || y == 0 || x == w-1 || y == h-1) {
				closed -= flood(lost, w, i)
			}
		}
		// Single pixels cut off by the ragged edge are allowed.
		if float64(closed) > 0.004*float64(w*h) {
			t.Errorf("seed %d: %d of %d flaked points lie in closed patches", seed, closed, count)
		}
		if share := float64(count) / float64(w*h); share < 0.01 || share > 0.35 {
			t.Errorf("seed %d: %.2f of the top has flaked off, want some and not most", seed, share)
		}
	}
}

// flood clears the connected set at i and returns its size.
func flood(set []bool, w, i int) int {
	stack, n := []int{i}, 0
	for len(stack) > 0 {
		i, stack = stack[len(stack)-1], stack[:len(stack)-1]
		if !set[i] {
			continue
		}
		set[i] = false
		n++
		x := i % w
		for _, j := range [...]int{i - w, i + w} {
			if j >= 0 && j < len(set) {
				stack = append(stack, j)
			}
		}
		if x > 0 {
			stack = append(stack, i-1)
		}
		if x < w-1 {
			stack = append(stack, i+1)
		}
	}
	return n
}

func TestBedsFillTheDepth(t *testing.T) {
	for seed := range uint64(20) {
		list := New(seed).beds
		if list[0].top != 0 {
			t.Errorf("seed %d: first bed starts at %g, want 0", seed, list[0].top)
		}
		for i := 1; i < len(list); i++ {
			if got, want := list[i].top, list[i-1].bottom; got != want {
				t.Errorf("seed %d bed %d: top %g, want the bottom of the one above, %g", seed, i, got, want)
			}
		}
		if got := list[len(list)-1].bottom; got < Thick {
			t.Errorf("seed %d: beds end at %g, want at least %g", seed, got, Thick)
		}
	}
}

// The sides cut one list of beds: at each corner the beds of one side must
// meet those of the next at the same depth.
func TestBedsMeetAtTheCorners(t *testing.T) {
	s := New(3)
	const px = 40
	seam := [...][2]Side{{Up, Behind}, {Behind, Down}, {Down, Ahead}}
	for _, c := range seam {
		l, r := s.face(c[0], px, &Palette{Lo: Tone{}, Mid: Tone{0.5, 0.5, 0.5}, Hi: Tone{1, 1, 1}, Flat: true}), s.face(c[1], px, &Palette{Mid: Tone{0.5, 0.5, 0.5}, Hi: Tone{1, 1, 1}, Flat: true})
		sum := 0.0
		for y := range l.h {
			sum += math.Abs(l.tone[y*l.w+l.w-1].R - r.tone[y*r.w].R)
		}
		if got := sum / float64(l.h); got > 0.03 {
			t.Errorf("sides %d and %d: mean difference %.3f at their corner, want at most 0.03", c[0], c[1], got)
		}
	}
}

func TestRim(t *testing.T) {
	s := New(5)
	for _, side := range Sides {
		for x := -side.Half(); x <= side.Half(); x += 0.05 {
			if c := s.Chip(side, x); c < 0 || c > 1.2 {
				t.Errorf("side %d at %.2f: chip %g, want in [0, 1.2]", side, x, c)
			}
			if c := s.Foot(side, x); c < 0 || c > 0.6 {
				t.Errorf("side %d at %.2f: foot %g, want in [0, 0.6]", side, x, c)
			}
			a, b := side.Place(x, 0.5)
			if gotT, gotD := side.along(a, b); math.Abs(gotT-x) > 1e-12 || math.Abs(gotD-0.5) > 1e-12 {
				t.Errorf("side %d: place and back gives %g, %g, want %g, 0.5", side, gotT, gotD, x)
			}
		}
	}
}

func TestFlatTopIsPlain(t *testing.T) {
	p := sand
	p.Flat = true
	img := painted(7, p)
	want := img.RGBAAt(0, 0)
	for y := range int(2 * HalfB * 10) {
		for x := range int(2 * HalfA * 10) {
			if got := img.RGBAAt(x, y); got != want {
				t.Fatalf("flat top at %d,%d: got %v, want %v", x, y, got, want)
			}
		}
	}
}

// Relief stays subtle: light takes at most 40 % and adds at most 30 %.
func TestReliefIsBounded(t *testing.T) {
	l := Light{-0.6, 0.1, 0.78}
	if got := l.relief(0, 0); got != 1 {
		t.Errorf("level ground: got %g, want 1", got)
	}
	for _, g := range []float64{-5, -1, -0.1, 0.1, 1, 5} {
		if k := l.relief(g, g); k < 0.6 || k > 1.3 {
			t.Errorf("slope %g: got %g, want in [0.6, 1.3]", g, k)
		}
	}
	if up, down := l.relief(0.2, 0), l.relief(-0.2, 0); up <= down {
		t.Errorf("light from −X: a face that rises towards +X gets %g, one that falls %g", up, down)
	}
}

func BenchmarkTop(b *testing.B) {
	s := New(7)
	for range b.N {
		s.Top(20, sand)
	}
}
