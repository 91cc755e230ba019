package window

import (
	"image"
	"math"
	"testing"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
)

const testW, testH = 320, 240

var (
	ink   = draw.Color{R: 0x1d, G: 0x26, B: 0x29, A: 255}
	rust  = draw.Color{R: 0xb5, G: 0x36, B: 0x1c, A: 255}
	water = draw.Color{R: 0x2f, G: 0x8f, B: 0xb8, A: 112}
	paper = draw.Color{R: 0xf6, G: 0xf4, B: 0xef, A: 255}
)

// words is a texture of text and fine lines.
func words(w, h int) *draw.Texture {
	l := &draw.List{}
	l.Reset(float64(w), float64(h))
	l.Fill(draw.RoundBox(draw.Rect{W: float64(w), H: float64(h)}, 6), paper)
	for i := 4; i < w; i += 5 {
		l.Stroke(draw.Polyline(false, draw.Point{X: float64(i), Y: 4}, draw.Point{X: float64(i), Y: 12}), draw.Stroke{Width: 1, Color: ink})
	}
	l.Text(draw.Text{S: "035°", At: draw.Point{X: float64(w) / 2, Y: float64(h) - 8}, Size: 22, Font: draw.Bold, Align: draw.AlignCentre, Color: ink})
	return &draw.Texture{W: w, H: h, List: l, Version: 1}
}

// stripes is a texture of pixels with transparent and faint parts.
func stripes() *draw.Texture {
	img := image.NewRGBA(image.Rect(0, 0, 48, 48))
	for i := range 48 * 48 {
		x, y := i%48, i/48
		a := uint8(255 - 5*y)
		img.Pix[4*i], img.Pix[4*i+1], img.Pix[4*i+2], img.Pix[4*i+3] = a/2, uint8(int(a)*(x/6%2)), a/3, a
	}
	return &draw.Texture{W: 48, H: 48, Pixels: img, Version: 1}
}

// quad adds a texture on any four corners, with colour factors from k to 1.
func quad(l *draw.List, t *draw.Texture, k float32, c [4]draw.Point) {
	p := l.Open(t)
	w, h := float32(t.W), float32(t.H)
	uv := [4][2]float32{{0, 0}, {w, 0}, {w, h}, {0, h}}
	for i, q := range c {
		f := k + (1-k)*float32(i)/3
		p.Vertex(draw.Vertex{X: float32(q.X), Y: float32(q.Y), U: uv[i][0], V: uv[i][1], R: f, G: f, B: f, A: 1})
	}
	p.Quad(0, 1, 2, 3)
	p.Done()
}

func ground(l *draw.List) {
	l.Reset(testW, testH)
	cover(l)
}

// cover puts paper over everything.
func cover(l *draw.List) {
	p := l.Open(nil)
	p.FeatherPolygon([]draw.Point{{X: -9, Y: -9}, {X: testW + 9, Y: -9}, {X: testW + 9, Y: testH + 9}, {X: -9, Y: testH + 9}}, 0, paper)
	p.Done()
}

func soft(l *draw.List) {
	p := l.Open(nil)
	star := make([]draw.Point, 10)
	for i := range star {
		s, c := math.Sincos(float64(i) * math.Pi / 5)
		r := 60 - 32*float64(i%2)
		star[i] = draw.Point{X: 90 + r*s, Y: 100 - r*c}
	}
	p.FeatherPolygon(star, 1, rust)
	p.FeatherPolygon(star, 16, water)
	p.FeatherLine(star[:5], 2.5, 1, ink, false)
	p.Disc(draw.Point{X: 220, Y: 90}, 40, 1, water)
	p.Ring(draw.Point{X: 220, Y: 90}, 40, 3, 1, ink)
	p.Done()
}

func sprites(l *draw.List) {
	l.Sprite(words(80, 40), 10, 20, 1, 1)
	l.Sprite(words(80, 40), 120, 20, 1, .4)
	l.Sprite(stripes(), 40.3, 100.7, 2.3, .8)
}

func tilted(l *draw.List) {
	quad(l, stripes(), .4, [4]draw.Point{{X: 20, Y: 20}, {X: 280, Y: 60}, {X: 250, Y: 220}, {X: 40, Y: 180}})
	quad(l, words(80, 40), .7, [4]draw.Point{{X: 60, Y: 60}, {X: 210, Y: 40}, {X: 230, Y: 130}, {X: 70, Y: 150}})
}

func minified(l *draw.List) {
	quad(l, words(80, 40), 1, [4]draw.Point{{X: 20, Y: 20}, {X: 60, Y: 30}, {X: 62, Y: 60}, {X: 22, Y: 44}})
	quad(l, words(200, 100), .5, [4]draw.Point{{X: 100, Y: 100}, {X: 150, Y: 120}, {X: 160, Y: 138}, {X: 105, Y: 112}})
}

func clipped(l *draw.List) {
	l.Region(draw.Rect{X: 30.4, Y: 20.6, W: 100, H: 90})
	soft(l)
	l.Region(draw.Rect{X: 130.4, Y: 20.6, W: 400, H: 90})
	tilted(l)
}

func looseShapes(l *draw.List) {
	soft(l)
	l.Fill(draw.Circle(160, 120, 50), water)
	l.Text(draw.Text{S: "loose", At: draw.Point{X: 160, Y: 120}, Size: 30, Align: draw.AlignCentre, Color: ink, Rotate: .3})
	l.Sprite(stripes(), 200, 150, 1, 1)
	l.Stroke(draw.Circle(200, 150, 30), draw.Stroke{Width: 3, Color: rust, Dash: []float64{6, 4}})
}

// read returns the pixels of an image; RGBA, premultiplied.
func read(img *ebiten.Image) []uint8 {
	b := img.Bounds()
	pix := make([]uint8, 4*b.Dx()*b.Dy())
	img.ReadPixels(pix)
	return pix
}

// apart returns the largest and the mean difference of two pictures.
func apart(a, b []uint8) (most int, mean float64) {
	for i := range a {
		d := int(a[i]) - int(b[i])
		d = max(d, -d)
		most = max(most, d)
		mean += float64(d)
	}
	return most, mean / float64(len(a))
}

// Both painters follow the same rules and differ in rounding only.
func TestWindowAndMemoryAgree(t *testing.T) {
	const mostApart, meanApart = 3, 0.15
	tests := []struct {
		name  string
		paint func(*draw.List)
	}{
		{"soft edges", soft}, {"sprites", sprites}, {"tilted", tilted}, {"minified", minified},
		{"regions", clipped}, {"loose shapes", looseShapes},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var l draw.List
			ground(&l)
			tt.paint(&l)
			want := raster.Image(&l).Pix
			screen := ebiten.NewImage(testW, testH)
			defer screen.Deallocate()
			NewPainter().Paint(screen, &l)
			most, mean := apart(read(screen), want)
			if most > mostApart || mean > meanApart {
				t.Errorf("largest difference %d, mean %.4f; want at most %d and %.2f", most, mean, mostApart, meanApart)
			}
			blank := ebiten.NewImage(testW, testH)
			defer blank.Deallocate()
			if differs, _ := apart(read(blank), want); differs < 50 {
				t.Errorf("the picture is empty")
			}
		})
	}
}

// moving is a picture with parts that move and parts that rest.
func moving(l *draw.List, step int) {
	l.Reset(testW, testH)
	at := float64(step)
	l.Region(draw.Rect{W: 160, H: testH})
	cover(l)
	soft(l)
	p := l.Open(nil)
	s, c := math.Sincos(at / 3)
	p.FeatherLine([]draw.Point{{X: 90, Y: 100}, {X: 90 + 50*s, Y: 100 - 50*c}}, 3, 1, ink, false)
	p.Done()
	l.Region(draw.Rect{X: 160, W: 160, H: testH})
	cover(l)
	l.Sprite(moved, 180, 30, 1, 1)
	if step%3 != 1 {
		l.Sprite(moved, 200+at, 120, 1, .7)
	}
	p = l.Open(nil)
	p.Disc(draw.Point{X: 240, Y: 200}, 20+at, 1, water)
	p.Done()
}

var moved = words(60, 40)

// Whatever way a picture has changed, the screen is as if painted afresh.
func TestDamageMissesNothing(t *testing.T) {
	screen := ebiten.NewImage(testW, testH)
	defer screen.Deallocate()
	kept := NewPainter()
	for step := range 12 {
		if step == 6 {
			moved.List.Fill(draw.Box(draw.Rect{X: 10, Y: 10, W: 9, H: 9}), rust)
			moved.Version++
		}
		var l draw.List
		moving(&l, step)
		kept.Paint(screen, &l)
		fresh := ebiten.NewImage(testW, testH)
		NewPainter().Paint(fresh, &l)
		if most, _ := apart(read(screen), read(fresh)); most > 1 { // textures lie elsewhere in memory
			t.Errorf("step %d: the screen differs by %d from a fresh one", step, most)
		}
		fresh.Deallocate()
	}
}

// What has not changed is left alone: paint put there by someone else stays.
func TestUnchangedPartsAreNotTouched(t *testing.T) {
	screen := ebiten.NewImage(testW, testH)
	defer screen.Deallocate()
	p := NewPainter()
	var l draw.List
	moving(&l, 2)
	p.Paint(screen, &l)
	foreign := image.Rect(20, 20, 24, 24) // far from the line that moves
	screen.SubImage(foreign).(*ebiten.Image).Fill(rust)
	moving(&l, 3)
	p.Paint(screen, &l)
	if got := screen.At(21, 21); !same(got, rust) {
		t.Errorf("the pixel at (21, 21) is %v, want it left as %v", got, rust)
	}
	p.Repaint()
	p.Paint(screen, &l)
	if got := screen.At(21, 21); same(got, rust) {
		t.Errorf("Repaint left the pixel at (21, 21)")
	}
}

func same(a interface{ RGBA() (r, g, b, a uint32) }, b draw.Color) bool {
	r, g, bl, _ := a.RGBA()
	r2, g2, b2, _ := b.RGBA()
	return r == r2 && g == g2 && bl == b2
}

// A new version that looks as before is not painted and handed over again.
func TestSameLookIsNotPaintedAgain(t *testing.T) {
	var s store
	var r raster.Painter
	tex := words(30, 30)
	img := s.image(&r, tex)
	img.Fill(rust)
	tex.Version++
	if got := s.image(&r, tex).At(15, 15); !same(got, rust) {
		t.Errorf("the texture was painted again, though it looks the same")
	}
	tex.List.Fill(draw.Box(draw.Rect{W: 5, H: 5}), ink)
	tex.Version++
	if got := s.image(&r, tex).At(20, 20); same(got, rust) {
		t.Errorf("the texture was not painted again, though it looks different")
	}
}

func TestTexturesOutOfUseAreLetGo(t *testing.T) {
	var s store
	var r raster.Painter
	old, used := words(30, 30), words(30, 30)
	s.image(&r, old)
	for range 3 * keepFor {
		s.tick()
		s.image(&r, used)
	}
	if s.kept[old] != nil || s.kept[used] == nil {
		t.Errorf("kept the old one: %v, the used one: %v; want false, true", s.kept[old] != nil, s.kept[used] != nil)
	}
}

func TestATextureMayChangeSize(t *testing.T) {
	var s store
	var r raster.Painter
	tex := words(30, 30)
	s.image(&r, tex)
	tex.W, tex.H, tex.Version = 50, 20, 2
	if got, want := s.image(&r, tex).Bounds().Size(), image.Pt(50+2*border, 20+2*border); got != want {
		t.Errorf("size %v, want %v", got, want)
	}
	tex.W = 0
	if s.image(&r, tex) != nil {
		t.Errorf("a texture without width has an image")
	}
}
