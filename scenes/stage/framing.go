package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
)

// Radii of the horizon ring, and the size of its letters at unit 1 in px.
const (
	ringInner  = 18.4
	ringOuter  = 20.1
	letterSize = 20
)

// frame sets scale and centre of the lens: a little larger than usual where
// there is room, smaller and shifted for what stands tall. It does not depend on the
// azimuth, nor on how the instrument lies, so that the picture keeps still.
func (sc *scene) frame() {
	r, l := sc.p.Rect, &sc.lens
	share := 0.518
	wide, tall := 47.0, 41.0
	if r.H < 0.8*r.W && r.W < 440*sc.p.Unit {
		share, tall = 0.5, 43
	}
	letter := sc.letter()
	k := min(r.W/wide, r.H/tall)
	up, down, side := sc.reach()
	margin := sc.px(8)
	k = min(1.14*k, (r.H-2*margin-2.6*letter)/(up+down), (r.W-2*margin-2.6*letter)/(2*side))
	l.scale = k
	l.cx = r.X + r.W/2
	l.cy = r.Y + max(margin+1.3*letter+k*up, min(r.H-margin-1.3*letter-k*down, share*r.H))
	sc.approach()
	sc.magnify()
}

// magnify is the last step: about a place that stays where it is.
func (sc *scene) magnify() {
	z, l := sc.p.Zoom, &sc.lens
	if z.K <= 1 {
		return
	}
	l.scale *= z.K
	l.cx, l.cy = z.X+z.K*(l.cx-z.X), z.Y+z.K*(l.cy-z.Y)
}

// letter is the size of the ring letters: smaller in small pictures.
func (sc *scene) letter() float64 {
	size := sc.px(letterSize) * sc.textScale() * min(1, max(0.8, sc.p.Rect.W/(560*sc.p.Unit)))
	return min(size, max(sc.px(15), letterShare*min(sc.p.Rect.W, sc.p.Rect.H)))
}

// letterShare is the most of a small picture that a letter takes up: the rock
// is what matters.
const letterShare = 0.075

// reach is how far the bench reaches above, below and beside the target at
// scale 1, for whatever azimuth the eye may have.
func (sc *scene) reach() (up, down, side float64) {
	eye := sc.lens
	eye.cx, eye.cy, eye.scale = 0, 0, 1
	ring := func(rho, z float64) {
		for i := range 24 {
			s, c := math.Sincos(float64(i) * math.Pi / 12)
			x, y := eye.project(add(mul(rho*c, eye.right), orient.Vec{X: -rho * s * eye.right.Y, Y: rho * s * eye.right.X, Z: z}))
			up, down, side = max(up, -y), max(down, y), max(side, math.Abs(x))
		}
	}
	ring(ringOuter, 0)
	for _, a := range [2]float64{-rock.HalfA, rock.HalfA} {
		for _, b := range [2]float64{-rock.HalfB, rock.HalfB} {
			for _, n := range [2]float64{-rock.Thick, 0} {
				q := sc.on(a, b, n)
				ring(length2(q.X, q.Y), q.Z)
			}
		}
	}
	for _, b := range [2]float64{-8, -3} { // the instrument, upright or level
		q := sc.on(4, b, 10)
		ring(length2(q.X, q.Y), q.Z)
	}
	if n := sc.lidReach(); n > 0 {
		q := sc.on(0, -7, n)
		ring(length2(q.X, q.Y), q.Z)
	}
	return up, down, side
}

// approach zooms in on the instrument as far as Close says.
func (sc *scene) approach() {
	k := max(0, min(1, sc.p.Camera.Close))
	if k == 0 {
		return
	}
	l, r := &sc.lens, sc.p.Rect
	x0, y0, x1, y1 := sc.tool.box(l)
	fit := 0.97 * min(r.W/(x1-x0), r.H/(y1-y0))
	zoom := math.Pow(max(1, fit), k)
	mx, my := (x0+x1)/2, (y0+y1)/2
	// The middle of the instrument moves to the middle of the picture.
	gx, gy := lerp(mx, r.X+r.W/2, k), lerp(my, r.Y+r.H/2, k)
	l.scale *= zoom
	l.cx = gx + zoom*(l.cx-mx)
	l.cy = gy + zoom*(l.cy-my)
}
