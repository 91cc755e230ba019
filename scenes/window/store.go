package window

import (
	"image"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
)

// store keeps the textures that have been handed to the display.
type store struct {
	kept    map[*draw.Texture]*stored
	white   *ebiten.Image
	picture *image.RGBA // painted, before the border is put round it
	framed  []byte
	frame   int
}

type stored struct {
	image   *ebiten.Image
	version uint64
	pixels  *image.RGBA
	w, h    int
	mark    uint64      // of its list
	under   draw.Affine // under its list
	used    int         // frame in which it was last drawn
	opaque  bool
}

// border is the width of a frame round each texture that repeats its outermost
// pixels, so that mixing at the edge finds the edge and not a neighbour: the
// farthest tap lies 3/8 of FarthestTap off along both sides of a pixel, and
// mixing four pixels takes half a one more.
const border = 6

// whiteSize is the size of the image that stands for no texture.
const whiteSize = 4

// keepFor is how many frames a texture that is not drawn stays in store.
const keepFor = 900

// tick starts a frame, and now and then lets go of what is no longer drawn.
func (s *store) tick() {
	s.frame++
	if s.frame%keepFor != 0 {
		return
	}
	for t, k := range s.kept {
		if s.frame-k.used > keepFor {
			k.image.Deallocate()
			delete(s.kept, t)
		}
	}
}

// image returns the image of a texture, handing it over if it is new or
// changed. A texture without size has none.
func (s *store) image(r *raster.Painter, t *draw.Texture) *ebiten.Image {
	if t == nil {
		return s.plain()
	}
	if t.W <= 0 || t.H <= 0 {
		return nil
	}
	k := s.kept[t]
	if k != nil && k.version == t.Version && k.pixels == t.Pixels && k.w == t.W && k.h == t.H {
		k.used = s.frame
		return k.image
	}
	if k == nil {
		k = &stored{}
		if s.kept == nil {
			s.kept = map[*draw.Texture]*stored{}
		}
		s.kept[t] = k
	}
	if k.image == nil || k.w != t.W || k.h != t.H {
		if k.image != nil {
			k.image.Deallocate()
		}
		k.image = ebiten.NewImage(t.W+2*border, t.H+2*border)
	}
	same := k.holds(t)
	k.version, k.pixels, k.w, k.h, k.used = t.Version, t.Pixels, t.W, t.H, s.frame
	if !same {
		k.image.WritePixels(s.frameRound(s.paint(r, t)))
		k.opaque = opaque(s.framed)
	}
	return k.image
}

// covers says whether a texture that is in store hides all that is under it.
func (s *store) covers(t *draw.Texture) bool { return t == nil || s.kept[t].opaque }

func opaque(pix []byte) bool {
	for i := 3; i < len(pix); i += 4 {
		if pix[i] != 255 {
			return false
		}
	}
	return true
}

// holds says whether a list of a new version looks as the old one did, and
// notes how it looks now. That takes far less time than painting it.
func (k *stored) holds(t *draw.Texture) bool {
	if t.List == nil || t.Pixels != nil {
		return false
	}
	mark, under := t.List.Mark(), t.Map()
	same := k.w == t.W && k.h == t.H && k.mark == mark && k.under == under && k.pixels == nil
	k.mark, k.under = mark, under
	return same
}

func (s *store) plain() *ebiten.Image {
	if s.white == nil {
		s.white = ebiten.NewImage(whiteSize, whiteSize)
		pix := make([]byte, 4*whiteSize*whiteSize)
		for i := range pix {
			pix[i] = 255
		}
		s.white.WritePixels(pix)
	}
	return s.white
}

// paint returns the pixels of a texture, W×H.
func (s *store) paint(r *raster.Painter, t *draw.Texture) *image.RGBA {
	if t.Pixels != nil && t.Pixels.Rect.Dx() == t.W && t.Pixels.Rect.Dy() == t.H {
		return t.Pixels
	}
	n := 4 * t.W * t.H
	if s.picture == nil || cap(s.picture.Pix) < n {
		s.picture = image.NewRGBA(image.Rect(0, 0, t.W, t.H))
	}
	s.picture.Pix, s.picture.Stride, s.picture.Rect = s.picture.Pix[:n], 4*t.W, image.Rect(0, 0, t.W, t.H)
	r.Texture(s.picture, t)
	return s.picture
}

// frameRound copies an image and puts the border round it.
func (s *store) frameRound(src *image.RGBA) []byte {
	w, h := src.Rect.Dx(), src.Rect.Dy()
	stride := 4 * (w + 2*border)
	if n := stride * (h + 2*border); cap(s.framed) < n {
		s.framed = make([]byte, n)
	} else {
		s.framed = s.framed[:n]
	}
	for y := range h + 2*border {
		from := max(0, min(y-border, h-1))
		i := src.PixOffset(src.Rect.Min.X, src.Rect.Min.Y+from)
		row, line := s.framed[y*stride:(y+1)*stride], src.Pix[i:i+4*w]
		copy(row[4*border:], line)
		for x := range border {
			copy(row[4*x:], line[:4])
			copy(row[4*(w+border+x):], line[4*(w-1):])
		}
	}
	return s.framed
}
