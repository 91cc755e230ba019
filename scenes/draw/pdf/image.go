package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"regexp"
	"slices"
	"strconv"

	"codeberg.org/go-pdf/fpdf"

	"cuesta/scenes/draw"
)

// imageQuality keeps thin lines and small figures of a screen clean (of 100).
const imageQuality = 88

// Image paints pixels into a rectangle of the page, as a figure with words in
// its stead. It is for pictures whose shapes are too many to be drawn one by
// one. It panics when there is no page.
func (d *Document) Image(alt string, img image.Image, r draw.Rect) {
	if len(d.pages) == 0 {
		panic("pdf: Image without Page")
	}
	var packed bytes.Buffer
	if err := jpeg.Encode(&packed, img, &jpeg.Options{Quality: imageQuality}); err != nil {
		d.fail(err)
		return
	}
	name := digest(packed.Bytes())
	kind := fpdf.ImageOptions{ImageType: "JPG"}
	d.f.RegisterImageOptionsReader(name, kind, &packed)
	d.Open(Figure, alt)
	d.begin(r)
	d.flush()
	d.f.ImageOptions(name, r.X, r.Y, r.W, r.H, false, kind, 0, "")
	d.put("EMC\n")
	d.Shut()
}

// imageRef is where the resources of the pages name an image.
var imageRef = regexp.MustCompile(`/I([0-9a-f]+) (\d+) 0 R`)

// sortImages puts the images in the order of their bytes: the library numbers
// those of one width as chance will have it.
func (f *file) sortImages() {
	var at []int
	for n, body := range f.objects {
		if bytes.HasPrefix(body, []byte("<</Type /XObject\n/Subtype /Image")) {
			at = append(at, n)
		}
	}
	slices.Sort(at)
	order := slices.Clone(at)
	slices.SortFunc(order, func(a, b int) int { return bytes.Compare(f.objects[a], f.objects[b]) })
	bodies, now := make([][]byte, len(at)), map[int]int{}
	for i, n := range order {
		bodies[i], now[n] = f.objects[n], at[i]
	}
	for i, n := range at {
		f.objects[n] = bodies[i]
	}
	for n, body := range f.objects {
		if len(at) > 0 && bytes.Contains(body, []byte("/XObject <<")) && !bytes.Contains(body, []byte("stream")) {
			f.objects[n] = imageRef.ReplaceAllFunc(body, func(m []byte) []byte {
				p := imageRef.FindSubmatch(m)
				old, _ := strconv.Atoi(string(p[2])) // digits, as the pattern says
				return fmt.Appendf(nil, "/I%s %d 0 R", p[1], now[old])
			})
		}
	}
}
