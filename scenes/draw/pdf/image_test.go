package pdf

import (
	"bytes"
	"image"
	"image/color"
	_ "image/png" // of what the reader paints
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/scenes/draw"
)

// halves is red on the left and blue on the right.
func halves() image.Image { return tinted(255) }

// tinted is the same with another blue.
func tinted(blue uint8) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, 64, 32))
	for i := range 64 * 32 {
		c := color.RGBA{R: 255, A: 255}
		if i%64 >= 32 {
			c = color.RGBA{B: blue, A: 255}
		}
		img.Set(i%64, i/64, c)
	}
	return img
}

func illustrated(t *testing.T) []byte {
	d := New(Options{Sheet: A4, Title: "Images", Lang: "en-GB"})
	for range 2 {
		d.Page()
		d.Draw(sample(), draw.Affine{A: .2, D: .2, E: 450, F: 20})
		d.Image("Red beside blue", halves(), draw.Rect{X: 100, Y: 200, W: 200, H: 100})
		for i := range 12 { // of one width, whose order the library leaves to chance
			d.Image("One of many", tinted(uint8(20+20*i)), draw.Rect{X: 400, Y: 200 + 20*float64(i), W: 20, H: 10})
		}
	}
	out, err := d.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// pageTwo is the second page as poppler paints it, a pixel a point.
func pageTwo(t *testing.T, file []byte) image.Image {
	t.Helper()
	dir := t.TempDir()
	path := filepath.Join(dir, "a.pdf")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-png", "-r", "72", "-f", "2", "-l", "2", path, filepath.Join(dir, "p")).CombinedOutput(); err != nil || len(out) > 0 {
		t.Fatalf("pdftoppm: %v\n%s", err, out)
	}
	f, err := os.Open(filepath.Join(dir, "p-2.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	page, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return page
}

// The picture stands where it was put, the right way up, and has words in its
// stead; poppler, which is no kin of the library that wrote the file, says so.
func TestImage(t *testing.T) {
	file := illustrated(t)
	if !bytes.Equal(file, illustrated(t)) {
		t.Error("the same calls gave different bytes")
	}
	if got := reader(t, "pdfimages", file, "-list", "FILE"); !strings.Contains(got, "jpeg") {
		t.Errorf("pdfimages lists no picture:\n%s", got)
	}
	if !bytes.Contains(file, []byte(textString("Red beside blue"))) {
		t.Error("the picture has no words in its stead")
	}
	page := pageTwo(t, file)
	for _, c := range []struct {
		x, y             int
		red, green, blue bool // bright
	}{
		{120, 210, true, false, false}, {180, 290, true, false, false}, {220, 210, false, false, true}, {280, 290, false, false, true},
		{95, 250, true, true, true}, {305, 250, true, true, true}, {200, 195, true, true, true}, {200, 305, true, true, true},
	} {
		r, g, b, _ := page.At(c.x, c.y).RGBA()
		if r>>15 == 1 != c.red || g>>15 == 1 != c.green || b>>15 == 1 != c.blue {
			t.Errorf("at %d, %d: %04x %04x %04x, want red %v, green %v, blue %v", c.x, c.y, r, g, b, c.red, c.green, c.blue)
		}
	}
}

func TestEveryImageInItsPlace(t *testing.T) {
	page := pageTwo(t, illustrated(t))
	for i := range 12 {
		_, _, b, _ := page.At(415, 205+20*i).RGBA()
		if got, want := int(b>>8), 20+20*i; got < want-8 || got > want+8 {
			t.Errorf("picture %d has blue %d, want %d", i, got, want)
		}
	}
}

func TestImageWithoutPage(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("Image without Page did not panic")
		}
	}()
	New(Options{Sheet: Letter}).Image("", halves(), draw.Rect{W: 10, H: 10})
}
