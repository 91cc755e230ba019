package stage

import (
	"cuesta/orient"
	"cuesta/scenes/stage/rock"
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

// plan sets the water as high as its progress says; the highest shore is where
// strike line and arrow start.
func (sc *scene) plan() {
	w := water{on: sc.p.Reveal.Water, from: -rock.HalfA, to: rock.HalfA + 3.5}
	high := sc.anchorB()
	w.shore = lerp(rock.HalfB, high, max(0, min(1, sc.p.Reveal.Progress)))
	w.level = sc.on(0, w.shore, 0).Z
	w.out = max(7, (rock.HalfB-w.shore)*sc.p.Plane.Dip.Cos()+3.5)
	sc.water = w
}

// anchorB is how far down the dip the strike line is drawn.
func (sc *scene) anchorB() float64 {
	return -5.4
}

// wave is a point of the sheet, a along the strike, h out from the shoreline.
func (sc *scene) wave(a, h float64) orient.Vec {
	return add(sc.on(a, sc.water.shore, 0), mul(h, sc.H))
}

func (st *Stage) drawExplained(sc *scene) {
	sc.plan()
	st.drawInstrument(sc, whole)
}
