package stage

import (
	"image"
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage/rock"
	"cuesta/scenes/theme"
)

// backKey is what the backdrop depends on.
type backKey struct {
	w, h  int
	theme theme.Name
}

// backdrop is the picture behind everything, made once.
type backdrop struct {
	key     backKey
	texture *draw.Texture
	coarse  float64     // px of the list in a pixel of the texture
	finer   *image.RGBA // on its way to take the place of a coarse one
	rows    int         // of finer that are done
}

// coarseBackdrop is how many px wide and high a pixel of the backdrop is where
// many pictures follow each other: it has no edges, and what is missing for a
// moment is its grain.
const coarseBackdrop = 8

// drawBackdrop paints the backdrop, made anew when size or theme has changed.
func (st *Stage) drawBackdrop(sc *scene) {
	r := sc.p.Rect
	x, y := math.Floor(r.X), math.Floor(r.Y)
	key := backKey{int(math.Ceil(r.X+r.W) - x), int(math.Ceil(r.Y+r.H) - y), sc.th.Name}
	if b := &st.back; b.texture == nil || b.key != key {
		*b = backdrop{key: key, coarse: 1}
		if sc.list.Live {
			b.coarse = coarseBackdrop
		}
		w, h := (key.w+int(b.coarse)-1)/int(b.coarse), (key.h+int(b.coarse)-1)/int(b.coarse)
		img := image.NewRGBA(image.Rect(0, 0, w, h))
		b.paint(sc, img, b.coarse, 0, h)
		st.showBackdrop(img)
	} else if b.coarse > 1 {
		st.refineBackdrop(sc)
	}
	sc.list.Sprite(st.back.texture, x, y, st.back.coarse, 1)
}

func (st *Stage) showBackdrop(img *image.RGBA) {
	st.version++
	st.back.texture = &draw.Texture{W: img.Rect.Dx(), H: img.Rect.Dy(), Version: st.version, Pixels: img}
}

// refineBackdrop goes on with the backdrop as it is to be, once the stone is.
func (st *Stage) refineBackdrop(sc *scene) {
	b := &st.back
	if st.stone.rough != nil {
		return
	}
	if b.finer == nil {
		b.finer = image.NewRGBA(image.Rect(0, 0, b.key.w, b.key.h))
	}
	until := b.key.h
	if sc.list.Live {
		until = min(until, b.rows+1+3*perPicture/b.key.w)
	}
	b.paint(sc, b.finer, 1, b.rows, until)
	if b.rows = until; until == b.key.h {
		b.coarse = 1
		st.showBackdrop(b.finer)
		b.finer = nil
	}
}

// paint blends the two tones of the backdrop and lays the pool of light over
// them, in rows from…to of img, whose pixels are so many px large; a grain of
// half a level keeps the blend free of bands.
func (b *backdrop) paint(sc *scene, img *image.RGBA, size float64, from, to int) {
	r, t := sc.p.Rect, sc.th
	k := min(r.W/47, r.H/41)
	cx, cy := float64(b.key.w)/2, 0.518*float64(b.key.h)+4.4*k
	rx, ry := 46*k, 25*k
	top, bottom, pool := tone(t.BgTop), tone(t.BgBot), tone(t.Ground)
	for y := from; y < to; y++ {
		row := blend(top, bottom, float64(y)*size/float64(b.key.h))
		for x := range img.Rect.Dx() {
			c := row
			dx, dy := (float64(x)*size-cx)/rx, (float64(y)*size-cy)/ry
			if !t.Flat && dx*dx+dy*dy < 1 {
				c = blend(c, pool, 1-ease(0.15, 1, length2(dx, dy)))
			}
			d := (rock.Dither(x, y) - 0.5) / 255
			i := img.PixOffset(x, y)
			img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3] = to8(c.R+d), to8(c.G+d), to8(c.B+d), 255
		}
	}
}

func blend(a, b rock.Tone, k float64) rock.Tone {
	return rock.Tone{R: lerp(a.R, b.R, k), G: lerp(a.G, b.G, k), B: lerp(a.B, b.B, k)}
}

func to8(v float64) uint8 { return uint8(255*max(0, min(1, v)) + 0.5) }

// drawRing paints the horizon ring: two circles, ticks every 5°, longer every
// 10°, heavy at the four quarters.
func (st *Stage) drawRing(sc *scene) {
	b := sc.open(st.lines)
	c := colour(sc.th.Ring, 1, 1)
	heavy := 1.0
	if sc.th.Flat {
		heavy = 1.6
	}
	const step = 5
	last := orient.AzimuthOf(-step * orient.Degree).Vec()
	for i := 0; i < 360; i += step {
		now := orient.AzimuthOf(orient.Angle(i) * orient.Degree).Vec()
		b.line(mul(ringInner, last), mul(ringInner, now), sc.px(1.6*heavy), c)
		b.line(mul(ringOuter, last), mul(ringOuter, now), sc.px(1*heavy), c)
		long, wide := 0.45, 1.0
		switch {
		case i%90 == 0:
			long, wide = ringOuter-ringInner, 4
		case i%10 == 0:
			long, wide = 0.85, 1.5
		}
		b.line(mul(ringInner, now), mul(ringInner+long, now), sc.px(wide*heavy), c)
		last = now
	}
	b.pen.Done()
}

// drawGroundShadow lays the shadows of slab, stand and instrument on the table.
func (st *Stage) drawGroundShadow(sc *scene) {
	if sc.th.Flat {
		return
	}
	ground := sheet{x: orient.Vec{X: 1}, y: orient.Vec{Y: 1}}
	b := sc.open(nil)
	slab := blot{sheet: ground, close: 0.5}
	sc.eachSlabCorner(func(p orient.Vec) { slab.cast(p, sc.light, orient.Up, 0.16) })
	slab.wrap()
	slab.fill(&b, colour(sc.th.Shadow, 1, 0.62*sc.th.ShadowAlpha), false)
	foot := blot{sheet: ground, close: 0.9}
	for i := range 4 {
		a, h := corners4(i, baseA, baseH)
		foot.cast(sc.at(a, h, baseTop), sc.light, orient.Up, 0.5)
		foot.cast(sc.at(a, h, 0), sc.light, orient.Up, 0.5)
	}
	foot.widen(0.5)
	foot.wrap()
	foot.fill(&b, colour(sc.th.Shadow, 1, 0.9*sc.th.ShadowAlpha), true) // the base covers the rest
	b.pen.Done()
}

// widen makes every corner fade over at least w.
func (b *blot) widen(w float64) {
	for i := range b.n {
		b.pts[i].soft = max(w, b.pts[i].soft)
	}
}

func (sc *scene) eachSlabCorner(f func(orient.Vec)) {
	for i := range 8 {
		a, b := corners4(i&3, rock.HalfA, rock.HalfB)
		f(sc.on(a, b, -rock.Thick*float64(i>>2)))
	}
}

// corners4 goes round a rectangle.
func corners4(i int, a, b float64) (x, y float64) {
	if i == 0 || i == 3 {
		a = -a
	}
	if i < 2 {
		b = -b
	}
	return a, b
}
