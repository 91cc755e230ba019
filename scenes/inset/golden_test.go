package inset

import (
	"flag"
	"image"
	"image/png"
	"os"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

var update = flag.Bool("update", false, "write the pictures anew; look at them before they are kept")

func TestInsetsGolden(t *testing.T) {
	const r = 64
	o := onSide(30*orient.Degree, 30.5*orient.Degree, sim.Left)
	turned := sim.Dial{Needle: -36 * orient.Degree, Ring: 12 * orient.Degree, North: orient.AzimuthOf(48 * orient.Degree)}
	for _, c := range []struct {
		file string
		th   theme.Name
		add  func(s *Set, l *draw.List, th *theme.Theme, c draw.Point)
	}{
		{"round", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) {
			s.Round(l, th, c, r, sim.RoundLevel{Right: .4, Forward: .7})
		}},
		{"dial", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Dial(l, th, c, r, turned, false) }},
		{"tube", theme.Dark, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Tube(l, th, c, r, o) }},
		{"arc", theme.ContrastBlack, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Arc(l, th, c, r, o) }},
	} {
		th := theme.Of(c.th)
		var l draw.List
		l.Reset(2*r+32, 2*r+32)
		l.Fill(draw.Box(draw.Rect{W: l.W, H: l.H}), th.Panel)
		c.add(New(), &l, th, draw.Point{X: r + 16, Y: r + 16})
		golden(t, "testdata/"+c.file+".png", raster.Image(&l))
	}
}

// golden compares a picture with the one that is kept: no channel of any pixel
// may differ by more than 24, and on the average by more than 0.5.
func golden(t *testing.T, file string, got *image.RGBA) {
	t.Helper()
	if *update {
		write(t, file, got)
		return
	}
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if img.Bounds() != got.Bounds() {
		t.Fatalf("%s: size %v, want %v", file, got.Bounds(), img.Bounds())
	}
	sum, most := 0, 0
	for y := range got.Rect.Dy() {
		for x := range got.Rect.Dx() {
			r, g, b, _ := img.At(x, y).RGBA()
			c := got.RGBAAt(x, y)
			for _, d := range [...]int{int(r>>8) - int(c.R), int(g>>8) - int(c.G), int(b>>8) - int(c.B)} {
				d = max(d, -d)
				sum, most = sum+d, max(most, d)
			}
		}
	}
	if mean := float64(sum) / float64(3*got.Rect.Dx()*got.Rect.Dy()); most > 24 || mean > .5 {
		t.Errorf("%s: a channel differs by %d, all by %.3f on the average", file, most, mean)
	}
}

func write(t *testing.T, file string, img *image.RGBA) {
	t.Helper()
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}
