package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/lesson"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// eye is where a lecture is seen from, and where it is going.
type eye struct {
	from, to, now stage.Camera
	left          int
	set           bool
}

// meet sets out for another view.
func (e *eye) meet(to stage.Camera, atOnce bool) {
	if e.set && to == e.to {
		return
	}
	e.from, e.to, e.left = e.now, to, moveTicks
	if atOnce || !e.set {
		e.left = 0
	}
	e.set = true
	e.pass(0)
}

func (e *eye) pass(ticks int) {
	e.left = max(0, e.left-ticks)
	e.now = e.from.Between(e.to, ease(1-float64(e.left)/moveTicks))
}

// wanted is the view that the lesson asks for, or that suits the instrument.
func (t *Lecture) wanted() stage.Camera {
	truth, pose := t.play.Session().Truth(), t.play.Session().World().Pose()
	view := t.play.View()
	if t.play.IsLive() && view != lesson.ViewAbove {
		view = lesson.ViewAsItIs
		if t.hand != nil && t.hand.view.close {
			view = lesson.ViewClose
		}
	}
	if t.play.Running() && t.play.Step().Mistake != "" && view != lesson.ViewAbove {
		view = lesson.ViewAsItIs // it follows the student
	}
	if !t.shows(lesson.Instrument) {
		pose = sim.Pose{Frame: sim.Frame{Out: orient.Up}}
	}
	switch view {
	case lesson.ViewAbove:
		return stage.AboveCamera()
	case lesson.ViewStrike:
		pose.Seat = sim.OnEdge
	case lesson.ViewDip:
		pose.Seat = sim.OnSide
	case lesson.ViewAsItIs, lesson.ViewClose:
	}
	if pose.Seat != t.obs.Seat {
		pose.Frame = sim.Frame{Out: orient.Up}
	}
	c := stage.DefaultCamera(truth, pose)
	if view == lesson.ViewClose && t.shows(lesson.Instrument) {
		c.Close = 1
	}
	return c
}
