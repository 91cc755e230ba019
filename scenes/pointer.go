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

// drag is a pointer that moves the instrument or the eye; nothing needs it.
type drag struct {
	on         bool
	instrument bool
	x, y       float64
}

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
	b.notice, b.keyed = "", false
	b.hurry()
	if n := hitIn(&b.screen.tree, p.X, p.Y, p.Touch, b.screen.lay.Unit); n != nil {
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
	if b.panel == noPanel && contains(b.screen.lay.Scene, p.X, p.Y) {
		b.drag = drag{on: true, instrument: b.phase == measuring && b.onInstrument(p.X, p.Y), x: p.X, y: p.Y}
		b.focus = idInstrument
	}
}

func (b *Bench) onInstrument(x, y float64) bool {
	return contains(b.stage.InstrumentBounds(), x, y)
}

// dragRate is the turn of a pixel's drag: at unit size 0.25°.
const dragRate = orient.Degree / 4

func (b *Bench) pointerMove(p input.Pointer) {
	if !b.drag.on {
		return
	}
	k := dragRate / orient.Angle(b.screen.lay.Unit)
	dx, dy := orient.Angle(p.X-b.drag.x)*k, orient.Angle(p.Y-b.drag.y)*k
	b.drag.x, b.drag.y = p.X, p.Y
	if !b.drag.instrument {
		b.view.orbit(b, -dx, dy)
		return
	}
	if dx != 0 {
		b.handle(idSwingMore, -dx)
	}
	if dy != 0 {
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
