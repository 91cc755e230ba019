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
	px      float64 // as it is painted, which may be coarser than key asks for
	texture *draw.Texture
	sideAt  [4]int
	shape   slabShape
	top     *rock.Top
	lit     int          // the direction of light it has been painted in
	rough   *rock.Stone  // the stone that is shown roughly, or nil
	finer   *rock.Making // on its way to be painted as key asks for, or nil
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

// roughest is the resolution of a stone that is wanted at once and shown sharper
// soon after.
const roughest = 3

// perPicture is how many pixels of a sharper stone are made with each picture
// meanwhile. It takes a good millisecond; in a browser several.
const perPicture = 5000

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
// Where many pictures follow each other, it comes roughly at first.
func (st *Stage) prepareStone(sc *scene) {
	usual := min(sc.p.Rect.W/47, sc.p.Rect.H/41)
	key := stoneKey{sc.p.RockSeed, sc.th.Name, resolution(usual, sc.p.Coarse)}
	if st.stone.texture == nil || st.stone.key != key {
		st.newStone(sc, key)
	} else if st.stone.rough != nil {
		st.refineStone(sc)
	}
	dir, l := litFrom(sc)
	if st.stone.lit == dir || sc.th.Flat && st.stone.lit != unlit {
		return
	}
	st.stone.top.Lit(l, st.stone.texture.Pixels)
	st.stone.lit = dir
	st.version++
	st.stone.texture.Version = st.version
}

// unlit is the direction of light on a stone that has just been made.
const unlit = -1

// newStone makes another stone: as it is asked for, or roughly if the list is
// one of many.
func (st *Stage) newStone(sc *scene, key stoneKey) {
	s, pal := rock.New(key.seed), paletteOf(sc.th)
	px := key.px
	if sc.list.Live {
		px = roughest
	}
	m := s.Make(px, pal)
	m.Go(math.MaxInt)
	shape := shapeOf(s)
	if sc.th.Flat {
		shape = shapeOf(nil)
	}
	st.stone = stone{key: key, shape: shape}
	st.stone.paint(m, px)
	if px != key.px {
		st.stone.rough = s
	}
}

// refineStone goes on with the sharper stone, and shows it when it is done.
func (st *Stage) refineStone(sc *scene) {
	bit := perPicture
	if !sc.list.Live {
		bit = math.MaxInt
	}
	if st.stone.finer == nil {
		st.stone.finer = st.stone.rough.Make(st.stone.key.px, paletteOf(sc.th))
	}
	if m := st.stone.finer; m.Go(bit) {
		st.stone.paint(m, st.stone.key.px)
		st.stone.rough, st.stone.finer = nil, nil
	}
}

// paint paints the sides and makes room for the top, on which light falls later.
func (s *stone) paint(m *rock.Making, px float64) {
	top := m.Top()
	high := int(rock.Thick * px)
	img := image.NewRGBA(image.Rect(0, 0, top.W, top.H+4*(high+2)))
	s.px, s.top, s.lit = px, top, unlit
	s.texture = &draw.Texture{W: img.Rect.Dx(), H: img.Rect.Dy(), Pixels: img}
	for i, side := range rock.Sides {
		s.sideAt[side] = top.H + 2 + i*(high+2)
		m.PaintSide(side, img, s.sideAt[side])
	}
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
