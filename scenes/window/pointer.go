//go:build !js

package window

import (
	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/inpututil"

	"cuesta/scenes/input"
)

// mouse is where the mouse was.
type mouse struct {
	x, y  int
	known bool
}

func (m *mouse) events(out []input.Pointer) []input.Pointer {
	x, y := ebiten.CursorPosition()
	if x != m.x || y != m.y {
		if m.known {
			out = append(out, input.Pointer{Kind: input.PointerMove, X: float64(x), Y: float64(y)})
		}
		m.x, m.y, m.known = x, y, true
	}
	at := input.Pointer{X: float64(x), Y: float64(y)}
	if inpututil.IsMouseButtonJustPressed(ebiten.MouseButtonLeft) {
		at.Kind = input.PointerDown
		out = append(out, at)
	}
	if inpututil.IsMouseButtonJustReleased(ebiten.MouseButtonLeft) {
		at.Kind = input.PointerUp
		out = append(out, at)
	}
	if _, rows := ebiten.Wheel(); rows != 0 {
		at.Kind, at.Wheel = input.PointerWheel, rows
		out = append(out, at)
	}
	return out
}

// touch follows one finger; others are passed over while it is down.
type touch struct {
	id   ebiten.TouchID
	down bool
	x, y int
	new  []ebiten.TouchID
}

func (t *touch) events(out []input.Pointer) []input.Pointer {
	if t.down {
		if inpututil.IsTouchJustReleased(t.id) {
			t.down = false
			out = append(out, t.event(input.PointerUp))
		} else if x, y := ebiten.TouchPosition(t.id); x != t.x || y != t.y {
			t.x, t.y = x, y
			out = append(out, t.event(input.PointerMove))
		}
	}
	t.new = inpututil.AppendJustPressedTouchIDs(t.new[:0])
	if !t.down && len(t.new) > 0 {
		t.id, t.down = t.new[0], true
		t.x, t.y = ebiten.TouchPosition(t.id)
		out = append(out, t.event(input.PointerDown))
	}
	return out
}

func (t *touch) event(k input.PointerKind) input.Pointer {
	return input.Pointer{Kind: k, X: float64(t.x), Y: float64(t.y), Touch: true}
}
