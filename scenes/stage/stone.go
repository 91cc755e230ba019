package stage

import (
	"image"
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage/rock"
	"cuesta/scenes/theme"
)

// stoneKey is what the picture of the stone depends on.
type stoneKey struct {
	seed  uint64
	theme theme.Name
	px    float64
}

// stone is the painted stone: the top, and the four sides below it.
type stone struct {
	key     stoneKey
	px      float64
	texture *draw.Texture
	sideAt  [4]int
	shape   slabShape
	top     *rock.Top
	lit     int // the direction of light it has been painted in
}

func tone(c draw.Color) rock.Tone {
	return rock.Tone{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}
}

func paletteOf(t *theme.Theme) rock.Palette {
	return rock.Palette{
		Lo: tone(t.RockLo), Mid: tone(t.RockMid), Hi: tone(t.RockHi), Top: tone(t.RockTop),
		Cool: tone(t.RockCool), Stain: tone(t.Stain), Flat: t.Flat,
	}
}

// resolutions of the rock in pixels per cm; coarse is for small or slow screens.
var resolutions = [...]float64{12, 20, 26}

// resolution is the coarsest one that is still sharp at the usual scale.
func resolution(k float64, coarse bool) float64 {
	if coarse {
		return resolutions[0]
	}
	for _, r := range resolutions {
		if r >= k {
			return r
		}
	}
	return resolutions[len(resolutions)-1]
}

// prepareStone paints the stone if the one at hand is not the one asked for.
func (st *Stage) prepareStone(sc *scene) {
	usual := min(sc.p.Rect.W/47, sc.p.Rect.H/41)
	key := stoneKey{sc.p.RockSeed, sc.th.Name, resolution(usual, sc.p.Coarse)}
	dir, l := litFrom(sc)
	if st.stone.texture != nil && st.stone.key == key && (st.stone.lit == dir || sc.th.Flat) {
		return
	}
	if st.stone.texture == nil || st.stone.key != key {
		st.paintStone(sc, key)
	}
	st.stone.top.Lit(l, st.stone.texture.Pixels)
	st.stone.lit = dir
	st.version++
	st.stone.texture.Version = st.version
}

func (st *Stage) paintStone(sc *scene, key stoneKey) {
	pal := paletteOf(sc.th)
	s := rock.New(key.seed)
	top := s.Top(key.px, pal)
	high := int(rock.Thick * key.px)
	img := image.NewRGBA(image.Rect(0, 0, top.W, top.H+4*(high+2)))
	st.stone = stone{key: key, px: key.px, top: top}
	st.stone.texture = &draw.Texture{W: img.Rect.Dx(), H: img.Rect.Dy(), Pixels: img}
	for i, side := range rock.Sides {
		st.stone.sideAt[side] = top.H + 2 + i*(high+2)
		s.PaintSide(side, key.px, pal, img, st.stone.sideAt[side])
	}
	if sc.th.Flat {
		s = nil
	}
	st.stone.shape = shapeOf(s)
}

// litFrom is the light on the top in the slab's own frame, as it falls in the
// starting view, and a number for it: the relief does not turn with the eye.
func litFrom(sc *scene) (int, rock.Light) {
	l := lightFor(sc.p.Plane, usualCamera(sc.p.Plane, sc.p.Pose.Seat), sc.p.Pose.Seat)
	const sectors = 8
	az := math.Atan2(dot(l, sc.D), dot(l, sc.S))
	sector := int(math.Round(az / (2 * math.Pi) * sectors))
	sector = (sector + sectors) % sectors
	d := orient.Angle(sector) * orient.Full / sectors
	return sector, rock.Light{X: 0.62 * d.Cos(), Y: 0.62 * d.Sin(), Z: 0.78}
}
