package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	pic "cuesta/scenes/draw"
)

// fan adds a many-sided polygon as triangles about a centre in half-transparent
// black: overlaps would be darker, gaps lighter.
func fan(l *pic.List, x, y, r float64, n int) {
	p := l.Open(nil)
	half := pic.Color{A: 128}
	mid := p.Vertex(pic.Tint(pic.Point{X: x, Y: y}, half, 1))
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		p.Vertex(pic.Tint(pic.Point{X: x + r*c, Y: y + r*s}, half, 1))
	}
	for i := range n {
		p.Triangle(mid, mid+1+uint16(i), mid+1+uint16((i+1)%n))
	}
	p.Done()
}

func TestSharedEdgesArePaintedOnce(t *testing.T) {
	for _, at := range []pic.Point{{X: 50, Y: 50}, {X: 50.5, Y: 50.5}, {X: 49.31, Y: 50.77}} {
		img := paint(100, 100, func(l *pic.List) { fan(l, at.X, at.Y, 44, 37) })
		n := 0
		for y := range 100 {
			for x := range 100 {
				a := img.RGBAAt(x, y).A
				if a != 0 && a != 128 {
					t.Fatalf("centre %v: the pixel at (%d, %d) has %d, want 0 or 128", at, x, y, a)
				}
				if a == 0 && math.Hypot(float64(x)+.5-at.X, float64(y)+.5-at.Y) < 43 {
					t.Fatalf("centre %v: a gap at (%d, %d)", at, x, y)
				}
				n += int(a) / 128
			}
		}
		if want := 37. / 2 * 44 * 44 * math.Sin(2*math.Pi/37); math.Abs(float64(n)-want) > 40 {
			t.Errorf("centre %v: %d pixels, want about %.0f", at, n, want)
		}
	}
}

// checks is a texture of four colours.
func checks() *pic.Texture {
	img := image.NewRGBA(image.Rect(0, 0, 2, 2))
	img.SetRGBA(0, 0, color.RGBA{R: 200, A: 255})
	img.SetRGBA(1, 0, color.RGBA{G: 200, A: 255})
	img.SetRGBA(0, 1, color.RGBA{B: 200, A: 255})
	img.SetRGBA(1, 1, color.RGBA{R: 100, G: 100, B: 100, A: 255})
	return &pic.Texture{W: 2, H: 2, Pixels: img}
}

func TestSampling(t *testing.T) {
	tests := []struct {
		name string
		x, y int // in a picture of 8×8, the texture drawn from 0 to 8
		want color.RGBA
	}{
		{"corners are clamped", 0, 0, color.RGBA{R: 200, A: 255}},
		{"another corner", 7, 7, color.RGBA{R: 100, G: 100, B: 100, A: 255}},
		// Pixel 3 lies at 3.5/4−0.5 = 0.375 between the two.
		{"between two", 3, 0, color.RGBA{R: 125, G: 75, A: 255}},
		// 0.375 both ways: weights .390625, .234375, .234375, .140625.
		{"between four", 3, 3, color.RGBA{R: 92, G: 61, B: 61, A: 255}},
	}
	img := paint(8, 8, func(l *pic.List) { l.Sprite(checks(), 0, 0, 4, 1) })
	for _, tt := range tests {
		got := img.RGBAAt(tt.x, tt.y)
		for i, d := range []int{int(got.R) - int(tt.want.R), int(got.G) - int(tt.want.G), int(got.B) - int(tt.want.B), int(got.A) - int(tt.want.A)} {
			if d < -1 || d > 1 {
				t.Errorf("%s: %v, want %v (channel %d)", tt.name, got, tt.want, i)
			}
		}
	}
	exact := paint(4, 4, func(l *pic.List) { l.Sprite(checks(), 1, 1, 1, 1) })
	if got, want := exact.RGBAAt(2, 1), (color.RGBA{G: 200, A: 255}); got != want {
		t.Errorf("a sprite on whole pixels has %v, want the texture's own %v", got, want)
	}
}

func TestFactorsMultiply(t *testing.T) {
	img := paint(4, 4, func(l *pic.List) { l.Sprite(checks(), 0, 0, 1, .5) })
	if got, want := img.RGBAAt(0, 0), (color.RGBA{R: 100, A: 128}); math.Abs(float64(got.R)-float64(want.R)) > 1 || math.Abs(float64(got.A)-float64(want.A)) > 1 {
		t.Errorf("half of it is %v, want %v", got, want)
	}
}

// Fine lines drawn at a quarter of their size come out as an even grey.
func TestSmallDrawingsAreMixed(t *testing.T) {
	lines := &pic.List{}
	for x := 0.; x < 160; x += 2 {
		lines.Fill(pic.Box(pic.Rect{X: x, W: 1, H: 160}), black)
	}
	tex := &pic.Texture{W: 160, H: 160, List: lines}
	img := paint(40, 40, func(l *pic.List) { l.Sprite(tex, 0, 0, .25, 1) })
	for i := range 40 * 40 {
		if a := img.Pix[4*i+3]; a < 118 || a > 138 {
			t.Fatalf("pixel %d has %d, want about 128", i, a)
		}
	}
}

func TestTexturesAreKeptByVersion(t *testing.T) {
	inner := &pic.List{}
	inner.Fill(pic.Box(pic.Rect{W: 10, H: 10}), black)
	tex := &pic.Texture{W: 10, H: 10, List: inner, Version: 1}
	p := New()
	show := func() uint8 {
		var l pic.List
		l.Sprite(tex, 0, 0, 1, 1)
		img := image.NewRGBA(image.Rect(0, 0, 10, 10))
		p.Paint(img, &l)
		return img.RGBAAt(5, 5).R
	}
	first := show()
	inner.Fill(pic.Box(pic.Rect{W: 10, H: 10}), white)
	same := show()
	tex.Version++
	if got := [3]uint8{first, same, show()}; got != [3]uint8{0, 0, 255} {
		t.Errorf("red of the first, of a changed list and of a new version: %v, want 0 0 255", got)
	}
}

func TestTextureMap(t *testing.T) {
	inner := &pic.List{}
	inner.Fill(pic.Box(pic.Rect{X: 1, Y: 1, W: 2, H: 1}), black) // cm
	tex := &pic.Texture{W: 40, H: 30, List: inner, Under: pic.Affine{A: 10, D: 10}}
	img := paint(40, 30, func(l *pic.List) { l.Sprite(tex, 0, 0, 1, 1) })
	if got := covered(img); got != 200 {
		t.Errorf("%g pixels, want 20 × 10", got)
	}
}

// Soft shapes hold as much colour as their sharp outlines enclose.
func TestFeatheredShapesHoldTheirArea(t *testing.T) {
	star := make([]pic.Point, 10)
	for i := range star {
		s, c := math.Sincos(float64(i) * math.Pi / 5)
		r := 45 - 22*float64(i%2)
		star[i] = pic.Point{X: 50 + r*s, Y: 50 - r*c}
	}
	back := make([]pic.Point, len(star))
	for i := range star {
		back[i] = star[len(star)-1-i]
	}
	line := []pic.Point{{X: 10, Y: 20}, {X: 80, Y: 30}, {X: 30, Y: 90}}
	length := math.Hypot(70, 10) + math.Hypot(50, 60)
	tests := []struct {
		name string
		f    func(*pic.Pen)
		want float64
	}{
		{"star", func(p *pic.Pen) { p.FeatherPolygon(star, 1, black) }, pic.Area(star)},
		{"star the other way", func(p *pic.Pen) { p.FeatherPolygon(back, 1, black) }, pic.Area(star)},
		{"soft box", func(p *pic.Pen) {
			p.FeatherPolygon([]pic.Point{{X: 20, Y: 20}, {X: 80, Y: 20}, {X: 80, Y: 80}, {X: 20, Y: 80}}, 16, black)
		}, 3600},
		{"disc", func(p *pic.Pen) { p.Disc(pic.Point{X: 50.2, Y: 49.7}, 30, 1, black) }, math.Pi * 900},
		{"dot", func(p *pic.Pen) { p.Disc(pic.Point{X: 50.2, Y: 49.7}, 1.5, 1, black) }, math.Pi * 2.25},
		{"ring", func(p *pic.Pen) { p.Ring(pic.Point{X: 50, Y: 50}, 30, 3, 1, black) }, 2 * math.Pi * 30 * 3},
		{"hairline ring", func(p *pic.Pen) { p.Ring(pic.Point{X: 50, Y: 50}, 30, .5, 1, black) }, 2 * math.Pi * 30 * .5},
		{"line", func(p *pic.Pen) { p.FeatherLine(line, 4, 1, black, false) }, 4 * length},
		{"hairline", func(p *pic.Pen) { p.FeatherLine(line, .5, 1, black, false) }, .5 * length},
		{"closed line", func(p *pic.Pen) { p.FeatherLine(line, 2, 1, black, true) }, 2 * (length + math.Hypot(20, 70))},
	}
	for _, tt := range tests {
		got := covered(paint(100, 100, func(l *pic.List) { p := l.Open(nil); tt.f(&p); p.Done() }))
		if math.Abs(got-tt.want) > .035*tt.want+1 {
			t.Errorf("%s: %.1f pixels, want %.1f", tt.name, got, tt.want)
		}
	}
}

func TestShapesWithoutSizeAddNothing(t *testing.T) {
	var l pic.List
	p := l.Open(nil)
	p.FeatherPolygon(nil, 1, black)
	p.FeatherPolygon([]pic.Point{{X: 1, Y: 1}, {X: 2, Y: 2}, {X: 3, Y: 3}}, 1, black)
	p.FeatherLine([]pic.Point{{X: 1, Y: 1}}, 1, 1, black, false)
	p.FeatherLine([]pic.Point{{X: 1, Y: 1}, {X: 5, Y: 1}}, 0, 1, black, false)
	p.Disc(pic.Point{}, 0, 1, black)
	p.Ring(pic.Point{}, 5, 0, 1, black)
	p.Done()
	if len(l.Meshes) != 0 {
		t.Errorf("%d meshes, want none", len(l.Meshes))
	}
}

func TestPensAllocateNothingOnceGrown(t *testing.T) {
	var l pic.List
	pts := []pic.Point{{X: 10, Y: 10}, {X: 50, Y: 12}, {X: 30, Y: 30}, {X: 52, Y: 60}, {X: 12, Y: 50}}
	frame := func() {
		l.Reset(100, 100)
		p := l.Open(nil)
		p.FeatherPolygon(pts, 1, black)
		p.TexturedPolygon(pts, 6, func(q pic.Point) pic.Vertex { return pic.Tint(q, white, 1) })
		p.FeatherLine(pts, 2, 1, black, true)
		p.Disc(pts[0], 9, 1, black)
		p.Ring(pts[1], 9, 2, 1, black)
		p.Done()
	}
	frame()
	if n := testing.AllocsPerRun(50, frame); n > 0 {
		t.Errorf("%g allocations a frame, want 0", n)
	}
}

func BenchmarkWholePicture(b *testing.B) {
	var l pic.List
	l.Reset(1280, 720)
	back := &pic.Texture{W: 1280, H: 720, Pixels: image.NewRGBA(image.Rect(0, 0, 1280, 720))}
	l.Sprite(back, 0, 0, 1, 1)
	l.Sprite(back, .5, .5, .7, .9)
	for i := range 40 {
		l.Text(pic.Text{S: "Read the strike at the north end", At: pic.Point{X: 30, Y: 20 + 17*float64(i)}, Size: 15, Color: black})
	}
	fan(&l, 600, 400, 300, 360)
	dst, p := image.NewRGBA(image.Rect(0, 0, 1280, 720)), New()
	b.ReportAllocs()
	for b.Loop() {
		p.Paint(dst, &l)
	}
}
