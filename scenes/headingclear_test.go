package scenes

import (
	"image"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
)

// On a steep plane neither plate nor slab comes far under the heading, and where a
// corner does, the heading has a ground of its own.
func TestTheHeadingStandsClearOfThePicture(t *testing.T) {
	for _, size := range [][2]float64{{1280, 720}, {1920, 1080}, {844, 390}} {
		for _, text := range textSizes {
			for _, dip := range []orient.Angle{60, 78, 88} {
				p := orient.PlaneOf(35*orient.Degree, dip*orient.Degree)
				b, err := NewBench(BenchOptions{Seed: 7, Plane: &p})
				if err != nil {
					t.Fatal(err)
				}
				b.Choose(Settings{Text: text, Theme: theme.Contrast, Calm: true})
				asGuest(b)
				d := drive{size[0], size[1], b}
				d.wait()
				b.turnOver()
				d.wait()
				img, lay := image.NewRGBA(image.Rect(0, 0, int(size[0]), int(size[1]))), b.screen.lay
				if lay.Title.H > 0 || lay.Tight {
					continue // it stands in a row of its own, or under More
				}
				var l draw.List
				l.Reset(size[0], size[1])
				l.Region(lay.Scene)
				b.stage.Draw(&l, b.stageParams())
				raster.New().Paint(img, &l)
				for _, w := range b.screen.zones[titleZone].widgets {
					n, bare := drawnIn(img, w.rect), b.screen.zones[titleZone].ground == noGround
					if float64(n) > w.rect.W*w.rect.H/100 || n > 0 && bare {
						t.Errorf("%v, %v, dip %v: %d pixels of the picture lie under %q, ground %v", size, text, dip, n, w.text, !bare)
					}
				}
			}
		}
	}
}

// drawnIn counts the pixels in r that are not the white table.
func drawnIn(img *image.RGBA, r draw.Rect) (n int) {
	for y := int(r.Y); y < int(r.Y+r.H); y++ {
		for x := int(r.X); x < int(r.X+r.W); x++ {
			if c := img.RGBAAt(x, y); c.R < 250 || c.G < 250 || c.B < 250 {
				n++
			}
		}
	}
	return n
}
