package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
)

var quarters = [4]string{"N", "E", "S", "W"}

// drawLetters writes the quarters outside the ring, upright. One that rock or
// instrument would hide moves straight up until it is clear and keeps a stem. Close up there
// are none.
func (st *Stage) drawLetters(sc *scene) {
	if sc.p.Camera.Close > 0.2 {
		return
	}
	size := sc.letter()
	cap := draw.CapHeight(draw.Bold, size)
	cx, cy := sc.lens.project(orient.Vec{})
	for i, s := range quarters {
		x, y := sc.lens.project(mul(ringOuter, orient.AzimuthOf(orient.Angle(i)*orient.Right).Vec()))
		dx, dy := x-cx, y-cy
		k := length2(dx, dy)
		x, y = x+dx/k*1.05*size, y+dy/k*0.95*size
		c := sc.th.Ink2
		if i == 0 {
			c = sc.th.Ink
		}
		clear, moved := sc.clearOf(box{x - 0.5*size, y - 0.5*size, size, size})
		if moved {
			st.drawStem(sc, x, clear.y+clear.h+0.05*size, y)
		}
		sc.take(clear)
		sc.list.Text(draw.Text{S: s, At: draw.Point{X: x, Y: clear.y + clear.h/2 + cap/2}, Size: size, Font: draw.Bold, Color: c, Align: draw.AlignCentre})
	}
}

// clearOf moves a box straight up until nothing solid meets it.
func (sc *scene) clearOf(b box) (box, bool) {
	moved := false
	for range 4 {
		again := false
		for _, h := range [3]*hull{&sc.slabHull, &sc.standHull, &sc.toolHull} {
			if h.meets(b) {
				b.y = h.top(b.x, b.x+b.w) - b.h - 0.45*b.h
				again, moved = true, true
			}
		}
		if !again {
			break
		}
	}
	b.y = max(b.y, sc.p.Rect.Y+sc.px(4))
	return b, moved
}

// drawStem joins a letter that has moved up to the outline below it.
func (st *Stage) drawStem(sc *scene, x, y, most float64) {
	end := most
	for _, h := range [3]*hull{&sc.slabHull, &sc.standHull, &sc.toolHull} {
		if t := h.top(x, x); t > y {
			end = min(end, t)
		}
	}
	b := sc.open(st.lines)
	b.flatLine(x, y, x, end, max(1, sc.px(1.25)), colour(sc.th.Ink2, 1, 1))
	b.pen.Done()
}
