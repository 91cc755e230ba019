package stage

import (
	"cuesta/orient"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// water is the level sheet on the falling side. Its shoreline, where the
// height of the top equals the level, runs along the strike.
type water struct {
	on       bool
	level    float64 // z of its surface
	shore    float64 // b of the shoreline on the slab
	from, to float64 // its reach along the strike
	out      float64 // its reach from the shoreline
}

// anchorB is how far down the dip the strike line lies: under the seated edge
// when it is level.
const anchorB = -5.4

// level is the dip below which a bed counts as level: it has no strike.
const levelDip = 0.25 * orient.Degree

func (sc *scene) hasStrike() bool { return sc.p.Plane.Dip >= levelDip }

// plan sets the water as high as its progress says; at its highest the shore
// is the strike line.
func (sc *scene) plan() {
	w := water{on: sc.p.Reveal.Water, from: -rock.HalfA, to: rock.HalfA + 3.5}
	if sc.p.Pose.Seat == sim.OnSide {
		w.from, w.to = -rock.HalfA-3.5, rock.HalfA
	}
	high := float64(anchorB)
	if !sc.hasStrike() {
		high = -rock.HalfB
	}
	w.shore = lerp(rock.HalfB, high, max(0, min(1, sc.p.Reveal.Progress)))
	w.level = sc.on(0, w.shore, 0).Z
	w.out = max(7, (rock.HalfB-w.shore)*sc.p.Plane.Dip.Cos()+3.5)
	sc.water = w
}

// wave is a point of the sheet, a along the strike, h out from the shoreline.
func (sc *scene) wave(a, h float64) orient.Vec {
	return add(sc.on(a, sc.water.shore, 0), mul(h, sc.H))
}

// drawWater paints the sheet, a little clearer away from the shore, and its
// outline with the shoreline.
func (st *Stage) drawWater(sc *scene) {
	w := &sc.water
	alpha := sc.th.WaterAlpha
	near, far := colour(sc.th.Water, 1, 0.95*alpha), colour(sc.th.Water, 1, 0.62*alpha)
	b := sc.open(nil)
	b.polygon(corner{at: sc.wave(w.from, 0), c: near}, corner{at: sc.wave(w.to, 0), c: near},
		corner{at: sc.wave(w.to, w.out), c: far}, corner{at: sc.wave(w.from, w.out), c: far})
	b.pen.Done()
	l := sc.open(st.lines)
	thin := sc.px(1.25)
	if sc.th.Flat {
		thin = sc.px(2)
	}
	ink := colour(sc.th.WaterInk, 1, 1)
	l.line(sc.wave(w.from, 0), sc.wave(w.from, w.out), thin, ink)
	l.line(sc.wave(w.from, w.out), sc.wave(w.to, w.out), thin, ink)
	l.line(sc.wave(w.to, w.out), sc.wave(w.to, 0), thin, ink)
	l.cased(sc.wave(w.from, 0), sc.wave(w.to, 0), sc.px(2), sc.px(1), ink, colour(sc.th.WaterCase, 1, 0.9))
	l.pen.Done()
}

// dips says whether any part of the instrument lies under the water.
func (sc *scene) dips() bool {
	if !sc.water.on || sc.p.Bare {
		return false
	}
	for i := range sc.tool.spots() {
		p := sc.tool.spot(i)
		if p.Z < sc.water.level-0.02 {
			return true
		}
	}
	return false
}
