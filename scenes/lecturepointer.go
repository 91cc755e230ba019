package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
	"cuesta/sim"
)

// aim switches the pointer or the magnifier. Each begins where the other is, or
// at the instrument; the pointer where the mouse is, if that has just moved.
func (t *Lecture) aim(on *bool) {
	first, other := t.places()[0], t.magnify || t.pointer
	*on = !*on
	mouse := on == &t.pointer && t.idle < hideAfter && t.moused && contains(draw.Rect{W: t.screen.w, H: t.screen.h}, t.spot.X, t.spot.Y)
	if !*on || mouse || other {
		return
	}
	t.spot = first
}

// carry moves the place by so much. From a magnifier, which is shown whole, it
// goes on to what comes next on the way; a picture that is magnified is not left
// for where there is nothing to see.
func (t *Lecture) carry(dx, dy float64) {
	was := t.screen.looksAt(t)
	at := t.spot
	for {
		to := draw.Point{X: max(0, min(t.screen.w, t.spot.X+dx)), Y: max(0, min(t.screen.h, t.spot.Y+dy))}
		if to == t.spot {
			break
		}
		t.spot = to
		if !t.magnify {
			return
		}
		now := t.screen.looksAt(t)
		if now != was && now != noMagnifier || now == noMagnifier && contains(t.screen.lay.Scene, to.X, to.Y) {
			return
		}
	}
	t.spot = at
}

// places are what may be worth a closer look: the instrument or the middle of
// the slab, and the magnifiers.
func (t *Lecture) places() []draw.Point {
	s := t.screen.lay.Scene
	first := draw.Point{X: s.X + s.W/2, Y: s.Y + s.H/2}
	if t.shows(lesson.Instrument) {
		if b := t.stage.InstrumentBounds(); b.W > 0 {
			first = draw.Point{X: b.X + b.W/2, Y: b.Y + b.H/2}
			if t.magnify && t.screen.looksAt(t) == noMagnifier { // where it stands unmagnified
				first.X, first.Y = t.spot.X+(first.X-t.spot.X)/magnified, t.spot.Y+(first.Y-t.spot.Y)/magnified
			}
		}
	}
	out := []draw.Point{first}
	for _, c := range []circle{t.screen.lay.Round, t.screen.lay.Dial} {
		if c.R > 0 {
			out = append(out, draw.Point{X: c.X, Y: c.Y})
		}
	}
	return out
}

// nextSpot goes on to the next of the places, for those who cannot point.
func (t *Lecture) nextSpot() {
	all := t.places()
	for i, p := range all {
		if p == t.spot {
			t.spot = all[(i+1)%len(all)]
			return
		}
	}
	t.spot = all[len(all)-1]
}

func (t *Lecture) repeatHeld(ticks int) {
	if t.held.id == 0 {
		return
	}
	t.held.ticks += ticks
	for t.held.ticks >= holdDelay+holdEvery {
		t.held.ticks -= holdEvery
		t.act(t.held.id)
	}
}

// point handles the mouse or a finger.
func (t *Lecture) point(p input.Pointer) {
	t.idle = 0
	switch p.Kind {
	case input.PointerMove:
		t.pointed(p)
	case input.PointerDown:
		t.pointed(p)
		t.pushed(p)
	case input.PointerUp:
		t.held, t.drag = held{}, drag{}
		t.swiped(p)
	case input.PointerWheel:
		if t.play.IsLive() && t.hand != nil {
			t.hand.view.close = p.Wheel > 0
		}
	}
}

func (t *Lecture) pointed(p input.Pointer) {
	t.spot, t.moused = draw.Point{X: p.X, Y: p.Y}, true
	if !t.drag.on || t.hand == nil {
		return
	}
	k := dragRate / orient.Angle(t.screen.lay.Unit)
	dx, dy := orient.Angle(p.X-t.drag.x)*k, orient.Angle(p.Y-t.drag.y)*k
	t.drag.x, t.drag.y = p.X, p.Y
	t.work(func() {
		t.hand.handle(idSwingMore, -dx)
		t.hand.handle(t.hand.upwards(true), -dy)
	})
}

func (t *Lecture) pushed(p input.Pointer) {
	t.notice, t.keyed = "", false
	if t.blank {
		t.blank = false
		return
	}
	if n := hitIn(&t.screen.tree, p.X, p.Y, p.Touch, t.screen.lay.Unit); n != nil {
		t.focus, t.held = n.ID, held{}
		if isStepper(n.ID) {
			t.held.id = n.ID
		}
		t.act(n.ID)
		t.look(false)
		return
	}
	t.focus = idNone
	if p.Touch && !t.play.IsLive() && t.panel == noPanel && !t.magnify && !t.pointer {
		t.swipe = swipe{true, p.X, p.Y}
	}
	if t.play.IsLive() && t.panel == noPanel && contains(t.stage.InstrumentBounds(), p.X, p.Y) {
		t.drag = drag{on: true, instrument: true, x: p.X, y: p.Y}
	}
}

// swipe is a finger that goes over the picture.
type swipe struct {
	on   bool
	x, y float64
}

// swiped goes on where a finger went to the left, and back where it went to the
// right. The step changes at once, as by its button: nothing slides.
func (t *Lecture) swiped(p input.Pointer) {
	s := t.swipe
	t.swipe = swipe{}
	dx, dy := p.X-s.x, p.Y-s.y
	if !s.on || abs(dx) < 40*t.screen.lay.Unit || abs(dx) < 2*abs(dy) {
		return
	}
	id := idNext
	if dx > 0 {
		id = idBack
	}
	t.act(id)
	t.look(false)
}

// feel takes in what the bubble shows of the tilt of the edge.
func (t *Lecture) feel() {
	if t.obs.Seat == sim.OnEdge {
		t.tilt = tiltShown(t.obs.Round)
	}
}
