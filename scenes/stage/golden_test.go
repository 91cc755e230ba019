package stage

import (
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// Pictures that a person has looked at. The tolerance lets fonts and figures
// of the instrument change by a pixel, not light, shape or place.
func TestGoldenPictures(t *testing.T) {
	steep, gentle := planeOf(137, 70), planeOf(35, 30)
	answer := Overlays{Strike: true, Arrow: true, Water: true, Progress: 1, Numbers: true}
	tests := []struct {
		name  string
		theme theme.Name
		p     orient.Plane
		o     sim.Pose
		r     Overlays
		close float64
	}{
		{"strike", theme.Light, gentle, level(gentle), Overlays{}, 0},
		{"dip", theme.Dark, gentle, upright(gentle), Overlays{}, 0},
		{"answer", theme.Light, gentle, level(gentle), answer, 0},
		{"steep", theme.Contrast, steep, poseOf(steep, sim.OnEdge, orient.Half, steep.Dip), answer, 0},
		{"hand", theme.ContrastBlack, steep, level(steep), Overlays{Hand: true, Strike: true}, 0},
		{"close", theme.Light, gentle, level(gentle), Overlays{}, 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			q := params(tt.p, tt.o)
			q.Rect, q.Unit, q.Coarse = draw.Rect{W: 464, H: 332}, 0.5, false
			q.Theme, q.Reveal, q.Camera.Close = theme.Of(tt.theme), tt.r, tt.close
			q.Observation.Dial.Needle = degrees(-35)
			q.Observation.Arc.Arm = tt.p.Dip
			var l draw.List
			l.Reset(q.Rect.W, q.Rect.H)
			New().Draw(&l, q)
			compare(t, filepath.Join("testdata", tt.name+".png"), raster.Image(&l))
		})
	}
}

// compare fails if the mean difference is above 3 levels of 255, or more than
// 2 % of the pixels differ plainly.
func compare(t *testing.T, path string, got *image.RGBA) {
	t.Helper()
	if *update {
		save(t, path, got)
		return
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if got.Bounds() != want.Bounds() {
		t.Fatalf("size: got %v, want %v", got.Bounds(), want.Bounds())
	}
	sum, plain, n := 0, 0, 0
	for y := range got.Rect.Dy() {
		for x := range got.Rect.Dx() {
			r0, g0, b0, _ := got.At(x, y).RGBA()
			r1, g1, b1, _ := want.At(x, y).RGBA()
			d := (gap(r0, r1) + gap(g0, g1) + gap(b0, b1)) / 3
			sum += d
			n++
			if d > 40 {
				plain++
			}
		}
	}
	if mean := float64(sum) / float64(n); mean > 3 || 50*plain > n {
		t.Errorf("%s: mean difference %.1f levels, %d of %d pixels differ plainly", path, mean, plain, n)
	}
}

func gap(a, b uint32) int {
	d := int(a>>8) - int(b>>8)
	return max(d, -d)
}

func save(t *testing.T, path string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(path)
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
