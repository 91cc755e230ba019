package raster

import (
	"image"
	"image/draw"
	"math"
	"testing"

	"golang.org/x/image/vector"

	pic "cuesta/scenes/draw"
)

var (
	black = pic.Color{A: 255}
	white = pic.Color{R: 255, G: 255, B: 255, A: 255}
)

// paint paints a list of a size on nothing.
func paint(w, h float64, f func(*pic.List)) *image.RGBA {
	var l pic.List
	l.Reset(w, h)
	f(&l)
	return Image(&l)
}

// covered is the number of pixels covered, uncut ones counting 1.
func covered(img *image.RGBA) float64 {
	sum := 0
	for i := 3; i < len(img.Pix); i += 4 {
		sum += int(img.Pix[i])
	}
	return float64(sum) / 255
}

func TestCoverageIsTheAreaCovered(t *testing.T) {
	long := func(w float64, c pic.Cap) func(*pic.List) {
		return func(l *pic.List) {
			l.Stroke(pic.Polyline(false, pic.Point{X: 20, Y: 30}, pic.Point{X: 70, Y: 60}), pic.Stroke{Width: w, Color: black, Cap: c})
		}
	}
	length := math.Hypot(50, 30)
	tests := []struct {
		name string
		f    func(*pic.List)
		want float64
	}{
		{"box on whole pixels", func(l *pic.List) { l.Fill(pic.Box(pic.Rect{X: 3, Y: 4, W: 20, H: 10}), black) }, 200},
		{"box on parts of pixels", func(l *pic.List) { l.Fill(pic.Box(pic.Rect{X: 3.25, Y: 4.5, W: 20.5, H: 10.25}), black) }, 20.5 * 10.25},
		{"sliver", func(l *pic.List) { l.Fill(pic.Box(pic.Rect{X: 3.25, Y: 4, W: .5, H: 80}), black) }, 40},
		{"circle", func(l *pic.List) { l.Fill(pic.Circle(50, 50, 40.3), black) }, math.Pi * 40.3 * 40.3},
		{"tiny circle", func(l *pic.List) { l.Fill(pic.Circle(50.2, 50.7, .6), black) }, math.Pi * .36},
		{"run either way", func(l *pic.List) {
			l.Fill(pic.Polyline(true, pic.Point{X: 10, Y: 90}, pic.Point{X: 90, Y: 90}, pic.Point{X: 10, Y: 10}), black)
		}, 3200},
		{"two of one turn count once", func(l *pic.List) {
			p := pic.Box(pic.Rect{X: 10, Y: 10, W: 40, H: 40})
			q := pic.Box(pic.Rect{X: 30, Y: 10, W: 40, H: 40})
			l.Fill(pic.Path{Kinds: append(p.Kinds, q.Kinds...), Points: append(p.Points, q.Points...)}, black)
		}, 2400},
		{"round box", func(l *pic.List) { l.Fill(pic.RoundBox(pic.Rect{X: 10, Y: 10, W: 60, H: 40}, 12), black) }, 2400 - (4-math.Pi)*144},
		{"line, flat ends", long(3, pic.ButtCap), 3 * length},
		{"line, square ends", long(3, pic.SquareCap), 3 * (length + 3)},
		{"line, round ends", long(8, pic.RoundCap), 8*length + math.Pi*16},
		{"thin line", long(.5, pic.ButtCap), .5 * length},
		{"dot", func(l *pic.List) {
			var p pic.Path
			p.MoveTo(50, 50)
			p.LineTo(50, 50)
			l.Stroke(p, pic.Stroke{Width: 9, Color: black, Cap: pic.RoundCap})
		}, math.Pi * 81 / 4},
		{"circle line", func(l *pic.List) { l.Stroke(pic.Circle(50, 50, 30), pic.Stroke{Width: 4, Color: black}) }, 2 * math.Pi * 30 * 4},
		{"square corner", func(l *pic.List) {
			l.Stroke(pic.Polyline(false, pic.Point{X: 10, Y: 80}, pic.Point{X: 10, Y: 10}, pic.Point{X: 80, Y: 10}), pic.Stroke{Width: 6, Color: black})
		}, 6*70*2 - 9 + 9},
		{"cut corner", func(l *pic.List) {
			l.Stroke(pic.Polyline(false, pic.Point{X: 10, Y: 80}, pic.Point{X: 10, Y: 10}, pic.Point{X: 80, Y: 10}), pic.Stroke{Width: 6, Color: black, Join: pic.BevelJoin})
		}, 6*70*2 - 9 + 4.5},
		{"dashes", func(l *pic.List) {
			l.Stroke(pic.Polyline(false, pic.Point{X: 5, Y: 50}, pic.Point{X: 95, Y: 50}), pic.Stroke{Width: 2, Color: black, Dash: []float64{6, 4}})
		}, 9 * 6 * 2},
		{"nothing", func(l *pic.List) { l.Fill(pic.Path{}, black) }, 0},
		{"a line has no inside", func(l *pic.List) { l.Fill(pic.Polyline(true, pic.Point{X: 1, Y: 1}, pic.Point{X: 50, Y: 60}), black) }, 0},
		{"outside", func(l *pic.List) { l.Fill(pic.Circle(-500, 50, 40), black) }, 0},
		{"far larger than the picture", func(l *pic.List) { l.Fill(pic.Circle(50, 50, 1e7), black) }, 1e4},
		{"half plane", func(l *pic.List) { l.Fill(pic.Box(pic.Rect{X: -1e9, Y: -1e9, W: 1e9 + 30.5, H: 2e9}), black) }, 3050},
	}
	for _, tt := range tests {
		got := covered(paint(100, 100, tt.f))
		// An 8 bit picture knows the share of a cut pixel to 1/510 at best.
		if tol := .004*tt.want + .25; math.Abs(got-tt.want) > tol {
			t.Errorf("%s: %.2f pixels, want %.2f", tt.name, got, tt.want)
		}
	}
}

// The coverage of single pixels is that of golang.org/x/image/vector.
func TestCoverageAgreesWithAnotherRasteriser(t *testing.T) {
	const size = 600 // from 513 on the other one works in floating point
	star := make([]pic.Point, 14)
	for i := range star {
		s, c := math.Sincos(float64(i)*math.Pi/7 + .1)
		r := 280 - 170*float64(i%2)
		star[i] = pic.Point{X: 300.3 + r*c, Y: 296.6 + r*s}
	}
	other := vector.NewRasterizer(size, size)
	other.MoveTo(float32(star[0].X), float32(star[0].Y))
	for _, q := range star[1:] {
		other.LineTo(float32(q.X), float32(q.Y))
	}
	other.ClosePath()
	want := image.NewAlpha(image.Rect(0, 0, size, size))
	other.DrawOp = draw.Src
	other.Draw(want, want.Bounds(), image.Opaque, image.Point{})
	got := paint(size, size, func(l *pic.List) { l.Fill(pic.Polyline(true, star...), black) })
	for i := range want.Pix {
		if d := int(got.Pix[4*i+3]) - int(want.Pix[i]); d > 1 || d < -1 {
			t.Errorf("pixel %d: %d, want %d", i, got.Pix[4*i+3], want.Pix[i])
		}
	}
}

func TestNumbersThatAreNone(t *testing.T) {
	bad := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300}
	for _, v := range bad {
		img := paint(20, 20, func(l *pic.List) {
			l.Fill(pic.Polyline(true, pic.Point{X: 1, Y: 1}, pic.Point{X: v, Y: 5}, pic.Point{X: 5, Y: v}), black)
			l.Stroke(pic.Polyline(false, pic.Point{X: 1, Y: v}, pic.Point{X: 9, Y: 5}), pic.Stroke{Width: v, Color: black, Dash: []float64{v}})
			l.Text(pic.Text{S: "dip", Size: v, Color: black})
			p := l.Open(nil)
			p.Disc(pic.Point{X: v, Y: 4}, 5, 1, black)
			p.Done()
		})
		if img.Rect.Dx() != 20 {
			t.Errorf("%g: the picture is lost", v)
		}
	}
}

func TestGradients(t *testing.T) {
	img := paint(100, 100, func(l *pic.List) {
		l.FillWith(pic.Fill{Path: pic.Box(pic.Rect{W: 100, H: 50}), Color: black,
			Gradient: pic.Gradient{Kind: pic.Linear, B: pic.Point{X: 100}, To: white}})
		l.FillWith(pic.Fill{Path: pic.Box(pic.Rect{Y: 50, W: 100, H: 50}), Color: white,
			Gradient: pic.Gradient{Kind: pic.Radial, A: pic.Point{X: 50, Y: 75}, B: pic.Point{X: 70, Y: 75}, To: black}})
	})
	tests := []struct {
		name string
		x, y int
		want float64
	}{
		{"left end", 0, 20, 1}, {"a quarter", 25, 20, 65}, {"middle", 50, 20, 129}, {"right end", 99, 20, 254},
		{"centre", 50, 75, 246}, {"half the radius", 60, 75, 121}, {"beyond", 90, 75, 0},
	}
	for _, tt := range tests {
		// The pattern that hides the steps moves a pixel by one level.
		if got := float64(img.RGBAAt(tt.x, tt.y).R); math.Abs(got-tt.want) > 2.5 {
			t.Errorf("%s: %g, want %g", tt.name, got, tt.want)
		}
	}
}

// A wide gradient of few levels shows no bands: the mean over a few pixels
// moves in steps of less than a level.
func TestGradientsShowNoBands(t *testing.T) {
	img := paint(400, 8, func(l *pic.List) {
		l.FillWith(pic.Fill{Path: pic.Box(pic.Rect{W: 400, H: 8}), Color: pic.Color{R: 100, A: 255},
			Gradient: pic.Gradient{Kind: pic.Linear, B: pic.Point{X: 400}, To: pic.Color{R: 108, A: 255}}})
	})
	for x := 0; x+8 <= 400; x += 8 {
		sum := 0
		for i := range 64 {
			sum += int(img.RGBAAt(x+i%8, i/8).R)
		}
		if got, want := float64(sum)/64, 100+8*float64(x+4)/400; math.Abs(got-want) > .2 {
			t.Errorf("at %d: mean %.2f, want %.2f", x, got, want)
		}
	}
}

func TestRegionsClip(t *testing.T) {
	img := paint(100, 100, func(l *pic.List) {
		l.Region(pic.Rect{X: 20.4, Y: 20.4, W: 30, H: 30})
		l.Fill(pic.Box(pic.Rect{W: 100, H: 100}), black)
	})
	if got := covered(img); got != 900 {
		t.Errorf("%g pixels, want 900", got)
	}
	if img.RGBAAt(20, 20).A != 255 || img.RGBAAt(50, 50).A != 0 {
		t.Errorf("the region does not begin at 20 and end before 50")
	}
}

func TestPartOfAnImage(t *testing.T) {
	whole := image.NewRGBA(image.Rect(0, 0, 60, 60))
	part := whole.SubImage(image.Rect(10, 20, 30, 40)).(*image.RGBA)
	var l pic.List
	l.Fill(pic.Box(pic.Rect{W: 500, H: 500}), black)
	New().Paint(part, &l)
	if got := covered(whole); got != 400 || whole.RGBAAt(10, 20).A != 255 {
		t.Errorf("%g pixels, want 400 from (10, 20) on", got)
	}
}
