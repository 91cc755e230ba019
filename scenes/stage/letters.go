package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

var quarters = [4]string{"N", "E", "S", "W"}

// letter is one of the quarters, baked.
type letter struct {
	theme   *theme.Theme
	size    float64
	strong  bool // in ink, to be read over the water
	texture *draw.Texture
}

// drawLetters writes the quarters outside the ring, upright. One that rock or
// instrument would hide moves straight up until it is clear and keeps a stem.
// Close up there are none.
func (st *Stage) drawLetters(sc *scene) {
	if sc.p.Camera.Close > 0.2 {
		return
	}
	size := sc.letter()
	cx, cy := sc.lens.project(orient.Vec{})
	for i := range quarters {
		x, y := sc.lens.project(mul(ringOuter, orient.AzimuthOf(orient.Angle(i)*orient.Right).Vec()))
		dx, dy := x-cx, y-cy
		k := length2(dx, dy)
		x, y = x+dx/k*1.05*size, y+dy/k*0.95*size
		clear, moved := sc.clearOf(box{x - 0.5*size, y - 0.5*size, size, size})
		if moved {
			clear.y += sc.lowered(clear)
			st.drawStem(sc, x, clear.y+clear.h+0.05*size, y)
		}
		sc.take(clear)
		t := st.letter(sc, i, size)
		sc.list.Sprite(t, math.Round(x-float64(t.W)/2), math.Round(clear.y+clear.h/2-float64(t.H)/2), 1, 1)
	}
}

// letter returns a baked letter: text on the list itself would be painted anew
// in every frame.
func (st *Stage) letter(sc *scene, i int, size float64) *draw.Texture {
	l := &st.letters[i]
	strong := i == 0 || sc.p.Reveal.Water
	if l.texture != nil && l.theme == sc.th && l.size == size && l.strong == strong {
		return l.texture
	}
	c := sc.th.Ink2
	if strong {
		c = sc.th.Ink
	}
	side := 2 * math.Ceil(0.7*size)
	text := draw.Text{
		S: quarters[i], At: draw.Point{X: side / 2, Y: side/2 + draw.CapHeight(draw.Bold, size)/2},
		Size: size, Font: draw.Bold, Color: c, Align: draw.AlignCentre,
	}
	list := &draw.List{W: side, H: side}
	list.Text(text)
	*l = letter{sc.th, size, strong, &draw.Texture{W: int(side), H: int(side), List: list, Version: 1}}
	return l.texture
}

// clearOf moves a box straight up until nothing solid meets it.
func (sc *scene) clearOf(b box) (box, bool) {
	moved := false
	for range 4 {
		again := false
		for _, h := range [3]*hull{&sc.slabHull, &sc.standHull, &sc.toolHull} {
			if h.meets(b) {
				b.y = h.top(b.x, b.x+b.w) - b.h - letterGap*b.h
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

// lowered is how far a letter above the rock comes down where it would touch what
// else stands in the picture: as far as the gap over the outline allows.
func (sc *scene) lowered(b box) float64 {
	down := 0.0
	for _, r := range sc.p.Keep {
		if r.W > 0 && b.meets(box{r.X, r.Y, r.W, r.H}) {
			down = max(down, r.Y+r.H-b.y)
		}
	}
	return min(down, (letterGap-0.1)*b.h)
}

// letterGap is the gap between a letter and the rock below it, in heights of the
// letter.
const letterGap = 0.45

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
