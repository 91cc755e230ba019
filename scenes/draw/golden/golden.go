// Package golden compares pictures with those that are kept in testdata, for
// the tests of packages that draw.
package golden

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// Kept is the picture kept in a file. With update it writes got there instead,
// and there is nothing to compare with: ok is false.
func Kept(t *testing.T, file string, got *image.RGBA, update bool) (want image.Image, ok bool) {
	t.Helper()
	if update {
		save(t, file, got)
		return nil, false
	}
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if want, err = png.Decode(f); err != nil {
		t.Fatal(err)
	}
	if got.Bounds() != want.Bounds() {
		t.Fatalf("%s: size %v, want %v", file, got.Bounds(), want.Bounds())
	}
	return want, true
}

func save(t *testing.T, file string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
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

// Drawing holds a drawing of lines and figures to the one that is kept: no
// channel of any pixel may differ by more than 24 levels of 255, and on the
// average by more than 0.5.
func Drawing(t *testing.T, file string, got *image.RGBA, update bool) {
	t.Helper()
	want, ok := Kept(t, file, got, update)
	if !ok {
		return
	}
	sum, most := 0, 0
	each(got, want, func(d [3]int) {
		for _, c := range d {
			sum, most = sum+c, max(most, c)
		}
	})
	if mean := float64(sum) / float64(3*got.Rect.Dx()*got.Rect.Dy()); most > 24 || mean > .5 {
		t.Errorf("%s: a channel differs by %d, all by %.3f on the average", file, most, mean)
	}
}

// Scene holds a painted scene to the one that is kept: the mean difference may
// be 3 levels of 255, and 2 % of the pixels may differ plainly.
func Scene(t *testing.T, file string, got *image.RGBA, update bool) {
	t.Helper()
	want, ok := Kept(t, file, got, update)
	if !ok {
		return
	}
	sum, plain, n := 0, 0, 0
	each(got, want, func(d [3]int) {
		mean := (d[0] + d[1] + d[2]) / 3
		sum += mean
		n++
		if mean > 40 {
			plain++
		}
	})
	if mean := float64(sum) / float64(n); mean > 3 || 50*plain > n {
		t.Errorf("%s: mean difference %.1f levels, %d of %d pixels differ plainly", file, mean, plain, n)
	}
}

// each tells the differences of red, green and blue, pixel by pixel, in levels
// of 255.
func each(got *image.RGBA, want image.Image, f func([3]int)) {
	b := got.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			r, g, bl, _ := want.At(x, y).RGBA()
			c := got.RGBAAt(x, y)
			f([3]int{gap(r, c.R), gap(g, c.G), gap(bl, c.B)})
		}
	}
}

func gap(a uint32, b uint8) int {
	d := int(a>>8) - int(b)
	return max(d, -d)
}
