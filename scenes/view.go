package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// view is the eye: where it stands and where it is going. What the student
// turns it by is counted from the view that suits the pose.
type view struct {
	base  stage.Camera // that suits the pose
	from  stage.Camera // where a move began
	now   stage.Camera
	turn  orient.Angle
	lift  orient.Angle
	close bool
	large magnifier // in the place of the rock
	zoom  float64   // 0 far, 1 close
	left  int       // ticks of the move that remain
}

// moveTicks is the length of a move of the eye, 400 ms.
const moveTicks = 400 * sim.TicksPerSecond / 1000

// follow sets out for the view that suits the pose of the instrument.
func (v *view) follow(b *Bench, atOnce bool) {
	v.turn, v.lift, v.large = 0, 0, noMagnifier
	v.base = stage.DefaultCamera(b.ses.Truth(), b.ses.World().Pose())
	v.from, v.left = v.now, moveTicks
	if atOnce {
		v.left, v.now = 0, v.base
	}
}

// trail goes after the instrument when its face has turned away.
func (v *view) trail(b *Bench) {
	base := stage.DefaultCamera(b.ses.Truth(), b.ses.World().Pose())
	if base == v.base {
		return
	}
	v.base, v.from, v.left = base, v.now, moveTicks
	if b.set.Calm {
		v.left = 0
	}
}

func (v *view) act(b *Bench, id describe.ID) {
	switch id {
	case idViewLeft:
		v.orbit(b, -10*orient.Degree, 0)
	case idViewRight:
		v.orbit(b, 10*orient.Degree, 0)
	case idViewCloser:
		v.close = !v.close
	case idMagnifyLevel, idMagnifyScale, idMagnifyHinge:
		b.magnify(magnifierOf(id))
	}
}

// orbit turns the eye, within the range in which the slab is never lost.
func (v *view) orbit(b *Bench, turn, lift orient.Angle) {
	c := v.base.Orbit(v.turn+turn, v.lift+lift, b.ses.Truth(), b.ses.World().Pose())
	v.turn, v.lift = c.Azimuth.From(v.base.Azimuth), c.Elevation-v.base.Elevation
}

// hurry ends a move at once.
func (v *view) hurry() { v.left = 0 }

func (v *view) advance(b *Bench, ticks int) {
	if b.obs.Seat == sim.OnSide && !b.drag.instrument { // which would move under the finger
		v.trail(b)
	}
	v.left = max(0, v.left-ticks)
	to := v.base.Orbit(v.turn, v.lift, b.ses.Truth(), b.ses.World().Pose())
	v.now = v.from.Between(to, ease(1-float64(v.left)/moveTicks))
	v.zoomBy(b, ticks)
}

func (v *view) zoomBy(b *Bench, ticks int) {
	d := float64(ticks) / moveTicks
	if b.set.Calm {
		d = 1
	}
	if v.close {
		v.zoom = min(1, v.zoom+d)
	} else {
		v.zoom = max(0, v.zoom-d)
	}
}

// ease goes in and out softly.
func ease(t float64) float64 { return t * t * (3 - 2*t) }

func (v *view) camera() stage.Camera {
	c := v.now
	c.Close = ease(v.zoom)
	return c
}
