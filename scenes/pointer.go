package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// held is a stepper that the pointer keeps pressed.
type held struct {
	id    describe.ID
	ticks int
}

// Holding a stepper repeats it 10 times a second after half a second.
const (
	holdDelay = 60
	holdEvery = 12
)

func (b *Bench) repeatHeld(ticks int) {
	if b.held.id == 0 {
		return
	}
	b.held.ticks += ticks
	for b.held.ticks >= holdDelay+holdEvery {
		b.held.ticks -= holdEvery
		b.act(b.held.id)
	}
}

func isStepper(id describe.ID) bool {
	switch id {
	case idSwingLess, idSwingMore, idTiltLess, idTiltMore, idLeanLess, idLeanMore, idRingLess, idRingMore, idViewLeft, idViewRight:
		return true
	}
	return false
}

// drag is a pointer that moves the instrument or the eye; nothing needs it. On
// the instrument it works one stepper at a time, the one of the way it sets out.
type drag struct {
	on         bool
	instrument bool
	way        dragWay
	x, y       float64
}

type dragWay uint8

const (
	noWay  dragWay = iota
	across         // swings
	upDown         // rolls, or turns the arm
)

// dragStart is how far a pointer goes before it has a way, in units.
const dragStart = 5

func (b *Bench) pointer(p input.Pointer) {
	switch p.Kind {
	case input.PointerDown:
		b.pointerDown(p)
	case input.PointerMove:
		b.pointerMove(p)
	case input.PointerUp:
		b.held, b.drag = held{}, drag{}
	case input.PointerWheel:
		b.wheel(p)
	}
}

func (b *Bench) pointerDown(p input.Pointer) {
	n := b.under(p)
	if b.doubled.holds(n) {
		return
	}
	was := targetOf(n)
	b.pressedAt(p, n)
	b.screen.build(b)
	b.doubled.meet(was, b.under(p))
}

// under is the control under a pointer, or nil.
func (b *Bench) under(p input.Pointer) *describe.Node {
	return hitIn(&b.screen.tree, p.X, p.Y, p.Touch, b.screen.lay.Unit)
}

// pressedAt is a press on a control, or on what lies there where it is nil.
func (b *Bench) pressedAt(p input.Pointer, n *describe.Node) {
	b.notice, b.keyed = "", false
	b.hurry()
	if b.onLarge(p.X, p.Y) {
		b.magnify(b.magnified())
		return
	}
	if n != nil {
		if n.Focusable {
			b.focus = n.ID
		}
		b.held = held{}
		if isStepper(n.ID) {
			b.held.id = n.ID
		}
		if n.ID == idNotebook {
			b.note.caret = b.screen.caretAt(b, p.X)
			b.caretTo(0)
		}
		b.act(n.ID)
		return
	}
	if b.panel == noPanel && b.magnified() == noMagnifier && contains(b.screen.lay.Scene, p.X, p.Y) {
		b.drag = drag{on: true, instrument: b.phase == measuring && b.onInstrument(p), x: p.X, y: p.Y}
		b.focus = idInstrument
	}
}

// onInstrument says that a pointer is on the instrument. A finger may miss by a
// little.
func (b *Bench) onInstrument(p input.Pointer) bool {
	r := b.stage.InstrumentBounds()
	if p.Touch {
		r = grow(r, 12*b.screen.lay.Unit)
	}
	return contains(r, p.X, p.Y)
}

// sets gives a drag its way once it has gone far enough, and says whether it has
// one.
func (d *drag) sets(p input.Pointer, unit float64) bool {
	dx, dy := abs(p.X-d.x), abs(p.Y-d.y)
	if d.way == noWay && max(dx, dy) >= dragStart*unit {
		d.way = upDown
		if dx > dy {
			d.way = across
		}
	}
	return d.way != noWay
}

// dragRate is the turn of a pixel's drag: at unit size 0.25°.
const dragRate = orient.Degree / 4

func (b *Bench) pointerMove(p input.Pointer) {
	if !b.drag.on {
		return
	}
	if b.drag.instrument && !b.drag.sets(p, b.screen.lay.Unit) {
		return
	}
	k := dragRate / orient.Angle(b.screen.lay.Unit)
	dx, dy := orient.Angle(p.X-b.drag.x)*k, orient.Angle(p.Y-b.drag.y)*k
	b.drag.x, b.drag.y = p.X, p.Y
	if !b.drag.instrument {
		b.view.orbit(b, -dx, dy)
		return
	}
	switch {
	case b.drag.way == across && dx != 0:
		b.handle(idSwingMore, -dx)
	case b.drag.way == upDown && dy != 0:
		b.handle(b.upwards(true), -dy)
	}
}

func (b *Bench) wheel(p input.Pointer) {
	if b.panel != noPanel || !contains(b.screen.lay.Scene, p.X, p.Y) {
		return
	}
	b.view.close = p.Wheel > 0
}

func contains(r draw.Rect, x, y float64) bool {
	return x >= r.X && y >= r.Y && x < r.X+r.W && y < r.Y+r.H
}
