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
}

// drawBackdrop paints the backdrop, made anew when size or theme has changed.
func (st *Stage) drawBackdrop(sc *scene) {
	r := sc.p.Rect
	x, y := math.Floor(r.X), math.Floor(r.Y)
	key := backKey{int(math.Ceil(r.X+r.W) - x), int(math.Ceil(r.Y+r.H) - y), sc.th.Name}
	if st.back.texture == nil || st.back.key != key {
		st.version++
		img := paintBackdrop(key, sc.th, min(r.W/47, r.H/41))
		st.back = backdrop{key, &draw.Texture{W: key.w, H: key.h, Version: st.version, Pixels: img}}
	}
	sc.list.Sprite(st.back.texture, x, y, 1, 1)
}

// paintBackdrop blends the two tones of the backdrop and lays the pool of light
// over them; a grain of half a level keeps the blend free of bands.
func paintBackdrop(key backKey, t *theme.Theme, k float64) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, key.w, key.h))
	cx, cy := float64(key.w)/2, 0.518*float64(key.h)+4.4*k
	rx, ry := 46*k, 25*k
	top, bottom, pool := tone(t.BgTop), tone(t.BgBot), tone(t.Ground)
	for y := range key.h {
		v := float64(y) / float64(key.h)
		row := blend(top, bottom, v)
		for x := range key.w {
			c := row
			if !t.Flat {
				dx, dy := (float64(x)-cx)/rx, (float64(y)-cy)/ry
				if dx*dx+dy*dy < 1 {
					c = blend(c, pool, 1-ease(0.15, 1, length2(dx, dy)))
				}
			}
			d := (rock.Dither(x, y) - 0.5) / 255
			i := img.PixOffset(x, y)
			img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3] = to8(c.R+d), to8(c.G+d), to8(c.B+d), 255
		}
	}
	return img
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
