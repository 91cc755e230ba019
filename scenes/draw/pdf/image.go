package pdf

import (
	"bytes"
	"image"
	"image/jpeg"

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
