package scenes

import (
	"fmt"
	"slices"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/stage"
)

// From the pixels: under the words on the declination lies the bare table, not
// the slab, the instrument or a letter of the ring.
func TestDeclinationStandsOverNothing(t *testing.T) {
	plane := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	for _, window := range [][2]float64{{1280, 720}, {1024, 600}, {800, 600}, {844, 390}} {
		t.Run(fmt.Sprintf("%vx%v", window[0], window[1]), func(t *testing.T) {
			t.Parallel()
			stone := stage.New()
			for i := range 2 * len(textSizes) {
				text, policy := textSizes[i/2], [...]Declination{DeclinationSet, DeclinationYours}[i%2]
				b, err := NewBench(BenchOptions{Seed: 7, Plane: &plane})
				if err != nil {
					t.Fatal(err)
				}
				b.stage = stone
				b.Choose(Settings{Text: text, Declination: policy, Calm: true})
				d := drive{window[0], window[1], b}
				d.wait()
				bareUnderPlace(t, fmt.Sprintf("%v, strike", text), b)
				b.turnOver()
				for range 4 {
					d.wait()
				}
				bareUnderPlace(t, fmt.Sprintf("%v, dip", text), b)
			}
		})
	}
}

// bareUnderPlace looks at the picture without its title.
func bareUnderPlace(t *testing.T, where string, b *Bench) {
	t.Helper()
	n := b.Description().Find(idPlace)
	if n == nil || b.screen.lay.Tight { // described only
		return
	}
	title := &b.screen.zones[titleZone]
	kept := title.texture
	title.texture.W = 0
	var l draw.List
	b.Picture(&l)
	title.texture = kept
	img := raster.Image(only(&l, draw.Rect(n.Bounds)))
	least, most := 255, 0
	for y := int(n.Bounds.Y); y < int(n.Bounds.Y+n.Bounds.H); y++ {
		for x := int(n.Bounds.X); x < int(n.Bounds.X+n.Bounds.W); x++ {
			g := int(img.RGBAAt(x, y).G)
			least, most = min(least, g), max(most, g)
		}
	}
	if most-least > 24 {
		t.Errorf("%s: the ground of the words on the declination goes from %d to %d, want a plain one", where, least, most)
	}
}

// only is a picture of which what lies in a box is painted, and little besides; a
// colour may be rounded the other way.
func only(l *draw.List, box draw.Rect) *draw.List {
	c := *l
	c.Regions = slices.Clone(l.Regions)
	for i := range c.Regions {
		c.Regions[i].Rect = shared(c.Regions[i].Rect, grow(box, 2))
	}
	return &c
}

func shared(a, b draw.Rect) draw.Rect {
	x, y := max(a.X, b.X), max(a.Y, b.Y)
	return draw.Rect{X: x, Y: y, W: max(0, min(a.X+a.W, b.X+b.W)-x), H: max(0, min(a.Y+a.H, b.Y+b.H)-y)}
}
