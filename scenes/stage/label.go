package stage

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// labelKind says what a label tells.
type labelKind uint8

const (
	strikeLabel labelKind = iota
	dipLabel
	yoursLabel
	endLabel
	otherEndLabel
	labelKinds
)

type labelKey struct {
	theme  theme.Name
	size   float64
	strike int
	dip    int
}

// label is a text on its plate, baked.
type label struct {
	key     labelKey
	texture *draw.Texture
}

type labels [labelKinds]label

// box is where a label stands in the picture.
type box struct{ x, y, w, h float64 }

func (b box) meets(c box) bool {
	return b.x < c.x+c.w && c.x < b.x+b.w && b.y < c.y+c.h && c.y < b.y+b.h
}

func (st *Stage) drawLabels(sc *scene) {
	if sc.p.Reveal.Numbers {
		if sc.hasStrike() && !sc.p.Reveal.Ends {
			st.drawStrikeLabel(sc)
		}
		st.drawDipLabel(sc)
	}
	if sc.p.Reveal.Ends && sc.hasStrike() {
		st.drawEndLabels(sc)
	}
	if sc.p.Reveal.Yours {
		st.drawYoursLabel(sc)
	}
}

// drawEndLabels writes its azimuth beside either end of the strike line.
func (st *Stage) drawEndLabels(sc *scene) {
	p, q := sc.strikeLine()
	if dot(sub(q, p), sc.S) < 0 {
		p, q = q, p
	}
	for i, end := range [2]orient.Vec{q, p} {
		x, y := sc.lens.project(end)
		t := st.label(sc, endLabel+labelKind(i), sc.p.Plane)
		st.put(sc, t, [...]anchor{{x, y, 0, -1}, {x, y, 1, -0.2}, {x, y, -1, -0.2}, {x, y, 0, 1}, {x, y, 1, 1}, {x, y, -1, 1}, {x, y, 1, -1}, {x, y, -1, -1}})
	}
}

func (st *Stage) drawStrikeLabel(sc *scene) {
	near, far := sc.strikeLine()
	fx, fy := sc.lens.project(far)
	nx, ny := sc.lens.project(near)
	t := st.label(sc, strikeLabel, sc.p.Plane)
	st.put(sc, t, [...]anchor{{fx, fy, 1, -0.2}, {fx, fy, -1, -0.2}, {fx, fy, 0, -1}, {fx, fy, 1, 1}, {nx, ny, -1, 0}, {nx, ny, 0, 1}, {nx, ny, 1, 1}, {nx, ny, 0, -1}})
}

func (st *Stage) drawDipLabel(sc *scene) {
	t := st.label(sc, dipLabel, sc.p.Plane)
	mx, my := sc.lens.project(sc.swept(sc.p.Plane.Dip/2, sc.angleSize()))
	tx, ty := sc.lens.project(sc.on(sc.arrowA, arrowEnd+0.6, 0))
	lx, ly := sc.lens.project(sc.swept(0, sc.angleSize()+2))
	st.put(sc, t, [...]anchor{{mx, my, 1, 0.3}, {mx, my, -1, 0.3}, {lx, ly, 1, 0}, {lx, ly, -1, 0}, {tx, ty, 0, 1}, {tx, ty, 1, 0.5}, {tx, ty, -1, 0.5}, {mx, my, 0, 1}})
}

func (st *Stage) drawYoursLabel(sc *scene) {
	t := st.label(sc, yoursLabel, sc.p.Reveal.YoursPlane)
	p, q, d := sc.yours()
	px, py := sc.lens.project(p)
	qx, qy := sc.lens.project(q)
	dx, dy := sc.lens.project(d)
	st.put(sc, t, [...]anchor{{dx, dy, 0, 1}, {dx, dy, 1, 0.3}, {dx, dy, -1, 0.3}, {px, py, -1, 0}, {px, py, 0, 1}, {px, py, 0, -1}, {qx, qy, 1, 0}, {qx, qy, 0, -1}})
}

// label returns the baked plate with its text, made anew when its numbers, the
// theme or the size have changed.
func (st *Stage) label(sc *scene, kind labelKind, p orient.Plane) *draw.Texture {
	key := labelKey{
		theme: sc.th.Name, size: math.Round(sc.px(17) * sc.textScale() * min(1, max(0.9, sc.p.Rect.W/(560*sc.p.Unit)))),
		strike: int(math.Round(p.Strike.Degrees())) % 360, dip: int(math.Round(p.Dip.Degrees())),
	}
	b := &st.labels[kind]
	if b.texture == nil || b.key != key {
		st.version++
		*b = label{key, bakeLabel(sc.th, kind.text(key), key.size, sc.p.Unit)}
		b.texture.Version = st.version
	}
	return b.texture
}

func (k labelKind) text(key labelKey) string {
	switch k {
	case strikeLabel:
		return fmt.Sprintf("strike %03d°", key.strike)
	case dipLabel:
		return fmt.Sprintf("dip %02d°", key.dip)
	case endLabel:
		return fmt.Sprintf("%03d°", key.strike)
	case otherEndLabel:
		return fmt.Sprintf("%03d°", (key.strike+180)%360)
	default:
		return fmt.Sprintf("yours %03d/%02d", key.strike, key.dip)
	}
}

// bakeLabel is text on its own plate: text never stands on bare rock.
func bakeLabel(th *theme.Theme, s string, size, unit float64) *draw.Texture {
	w := math.Ceil(draw.Measure(draw.Bold, size, s, 0) + 1.1*size)
	h := math.Ceil(1.85 * size)
	l := &draw.List{W: w, H: h}
	line := max(1, math.Round(unit))
	edge := th.Line
	if th.Flat {
		line = max(2, math.Round(2*unit))
	}
	r := draw.RoundBox(draw.Rect{X: line / 2, Y: line / 2, W: w - line, H: h - line}, 4*unit)
	l.Fill(r, th.Panel)
	l.Stroke(r, draw.Stroke{Width: line, Color: edge})
	l.Text(draw.Text{S: s, At: draw.Point{X: w / 2, Y: h/2 + draw.CapHeight(draw.Bold, size)/2}, Size: size, Font: draw.Bold, Color: th.Ink, Align: draw.AlignCentre})
	return &draw.Texture{W: int(w), H: int(h), List: l}
}

// anchor is a point that a label may stand beside, and on which side: −1 left
// or above, 1 right or below.
type anchor struct{ x, y, sx, sy float64 }

// put paints a label at the first anchor where it covers nothing that matters.
func (st *Stage) put(sc *scene, t *draw.Texture, at [8]anchor) {
	for i := range at {
		if b := sc.beside(at[i], t); sc.free(b) {
			st.stamp(sc, t, b)
			return
		}
	}
	// Nothing is free: walk outwards from the first anchor.
	for d := 20.0; d < 400; d += 12 {
		for i := range 8 {
			s, c := math.Sincos(float64(i) * math.Pi / 4)
			a := at[0]
			a.x, a.y = a.x+sc.px(d*c), a.y+sc.px(d*s)
			if b := sc.beside(a, t); sc.free(b) {
				st.stamp(sc, t, b)
				return
			}
		}
	}
	st.stamp(sc, t, sc.beside(at[0], t))
}

func (st *Stage) stamp(sc *scene, t *draw.Texture, b box) {
	sc.list.Sprite(t, b.x, b.y, 1, 1)
	sc.take(b)
}

// take keeps a box free of further labels.
func (sc *scene) take(b box) {
	if sc.boxes < len(sc.placed) {
		sc.placed[sc.boxes] = b
		sc.boxes++
	}
}

// beside is the box of a label at an anchor, kept inside the picture.
func (sc *scene) beside(a anchor, t *draw.Texture) box {
	w, h, gap := float64(t.W), float64(t.H), sc.px(10)
	b := box{a.x + (a.sx-1)/2*w + a.sx*gap, a.y + (a.sy-1)/2*h + a.sy*gap, w, h}
	r, m := sc.p.Rect, sc.px(8)
	b.x = math.Round(max(r.X+m, min(r.X+r.W-m-w, b.x)))
	b.y = math.Round(max(r.Y+m, min(r.Y+r.H-m-h, b.y)))
	return b
}

// free says whether a label may stand in a box: not on the instrument, the
// arrow, the angle, the strike line or another label.
func (sc *scene) free(b box) bool {
	for i := range sc.boxes {
		if b.meets(sc.placed[i]) {
			return false
		}
	}
	for _, r := range sc.p.Keep {
		if r.W > 0 && b.meets(box{r.X, r.Y, r.W, r.H}) {
			return false
		}
	}
	pad := sc.px(4)
	wide := box{b.x - pad, b.y - pad, b.w + 2*pad, b.h + 2*pad}
	if sc.toolHull.meets(wide) || sc.onHand(wide) {
		return false
	}
	if sc.hasStrike() && (sc.p.Reveal.Arrow || sc.p.Reveal.Numbers) {
		if sc.crosses(wide, sc.on(sc.arrowA, anchorB, 0), sc.on(sc.arrowA, arrowEnd+0.5, 0)) ||
			sc.crosses(wide, sc.swept(0, 0), sc.swept(0, sc.angleSize()+2)) ||
			sc.crosses(wide, sc.swept(0, sc.angleSize()), sc.swept(sc.p.Plane.Dip, sc.angleSize())) {
			return false
		}
	}
	if p, q := sc.strikeLine(); sc.hasStrike() && (sc.p.Reveal.Strike || sc.p.Reveal.Ends) && sc.crosses(wide, p, q) {
		return false
	}
	if sc.p.Reveal.Yours {
		p, q, d := sc.yours()
		return !sc.crosses(wide, p, q) && !sc.crosses(wide, sc.swept(0, 0), d)
	}
	return true
}

// onHand says whether a box lies on the drawn hand.
func (sc *scene) onHand(b box) bool {
	if !sc.p.Reveal.Hand || !sc.hasStrike() {
		return false
	}
	const n = 8
	a0 := sc.handA()
	for i := range n + 1 {
		for j := range n + 1 {
			x, y := sc.lens.project(sc.on(a0-handSize*(handBox.X+handBox.W*float64(i)/n), handB-handSize*(handBox.Y+handBox.H*float64(j)/n), 0))
			if x > b.x && x < b.x+b.w && y > b.y && y < b.y+b.h {
				return true
			}
		}
	}
	return false
}

// crosses says whether the line from p to q meets a box in the picture.
func (sc *scene) crosses(b box, p, q orient.Vec) bool {
	x0, y0 := sc.lens.project(p)
	x1, y1 := sc.lens.project(q)
	return b.cuts(x0, y0, x1, y1)
}

// cuts says whether a segment meets the box (Liang and Barsky).
func (b box) cuts(x0, y0, x1, y1 float64) bool {
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{x0 - x1, x0 - b.x}, {x1 - x0, b.x + b.w - x0}, {y0 - y1, y0 - b.y}, {y1 - y0, b.y + b.h - y0}} {
		d, k := e[0], e[1]
		switch {
		case d == 0 && k < 0:
			return false
		case d < 0:
			t0 = max(t0, k/d)
		case d > 0:
			t1 = min(t1, k/d)
		}
	}
	return t0 <= t1
}
