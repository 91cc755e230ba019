package scenes

import (
	"image"
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
)

// wordless is a picture with all its text left out.
func wordless(l *draw.List) *draw.List {
	c := *l
	c.Texts = slices.Clone(l.Texts)
	for i := range c.Texts {
		c.Texts[i].Color.A = 0
	}
	c.Meshes = slices.Clone(l.Meshes)
	for i := range c.Meshes {
		if t := c.Meshes[i].Texture; t != nil && t.List != nil {
			u := *t
			u.List = wordless(t.List)
			c.Meshes[i].Texture = &u
		}
	}
	return &c
}

// laid is a text and the corners of its box on the screen.
type laid struct {
	draw.Text
	box  [4]draw.Point
	clip draw.Rect
}

// texts are all texts of a picture that are laid on it flat: on its own list,
// and in textures that are moved, turned and sized but not put in perspective.
func texts(l *draw.List, m draw.Affine, clip draw.Rect) []laid {
	var out []laid
	for _, it := range l.Items {
		switch it.Op {
		case draw.OpRegion:
			clip = l.Regions[it.N].Rect
		case draw.OpText:
			out = append(out, laid{l.Texts[it.N], textCorners(l.Texts[it.N], m), clip})
		case draw.OpMesh:
			mesh := l.Meshes[it.N]
			if mesh.Texture == nil || mesh.Texture.List == nil {
				continue
			}
			if on, ok := flat(mesh); ok {
				under := mesh.Texture.Under
				if under == (draw.Affine{}) {
					under = draw.Identity
				}
				out = append(out, texts(mesh.Texture.List, chain(m, chain(on, under)), clip)...)
			}
		}
	}
	return out
}

// chain applies b, then a.
func chain(a, b draw.Affine) draw.Affine {
	return draw.Affine{
		A: a.A*b.A + a.C*b.B, B: a.B*b.A + a.D*b.B,
		C: a.A*b.C + a.C*b.D, D: a.B*b.C + a.D*b.D,
		E: a.A*b.E + a.C*b.F + a.E, F: a.B*b.E + a.D*b.F + a.F,
	}
}

func moved(m draw.Affine, x, y float64) draw.Point {
	return draw.Point{X: m.A*x + m.C*y + m.E, Y: m.B*x + m.D*y + m.F}
}

// flat is how a mesh lays its texture on the screen, when one affine map does.
func flat(m draw.Mesh) (draw.Affine, bool) {
	v := m.Vertices
	for k := 2; k < len(v); k++ {
		u1, v1 := float64(v[1].U-v[0].U), float64(v[1].V-v[0].V)
		u2, v2 := float64(v[k].U-v[0].U), float64(v[k].V-v[0].V)
		det := u1*v2 - u2*v1
		if math.Abs(det) < 1 {
			continue
		}
		x1, y1 := float64(v[1].X-v[0].X), float64(v[1].Y-v[0].Y)
		x2, y2 := float64(v[k].X-v[0].X), float64(v[k].Y-v[0].Y)
		a := draw.Affine{A: (x1*v2 - x2*v1) / det, B: (y1*v2 - y2*v1) / det, C: (x2*u1 - x1*u2) / det, D: (y2*u1 - y1*u2) / det}
		a.E = float64(v[0].X) - a.A*float64(v[0].U) - a.C*float64(v[0].V)
		a.F = float64(v[0].Y) - a.B*float64(v[0].U) - a.D*float64(v[0].V)
		for _, w := range v {
			if p := moved(a, float64(w.U), float64(w.V)); math.Hypot(p.X-float64(w.X), p.Y-float64(w.Y)) > .5 {
				return a, false
			}
		}
		return a, true
	}
	return draw.Affine{}, false
}

func textCorners(t draw.Text, m draw.Affine) [4]draw.Point {
	wide := draw.Measure(t.Font, t.Size, t.S, t.Track)
	x0 := 0.0
	switch t.Align {
	case draw.AlignCentre:
		x0 = -wide / 2
	case draw.AlignRight:
		x0 = -wide
	}
	s, c := math.Sincos(t.Rotate)
	at := func(x, y float64) draw.Point { return moved(m, t.At.X+c*x-s*y, t.At.Y+s*x+c*y) }
	return [4]draw.Point{at(x0, -.8*t.Size), at(x0+wide, -.8*t.Size), at(x0+wide, .25*t.Size), at(x0, .25*t.Size)}
}

// holds says whether a point lies in the box, which is convex.
func (t laid) holds(x, y float64) bool {
	left, right := false, false
	for i, p := range t.box {
		q := t.box[(i+1)%4]
		d := (q.X-p.X)*(y-p.Y) - (q.Y-p.Y)*(x-p.X)
		left, right = left || d > 0, right || d < 0
	}
	return !(left && right)
}

func (t laid) bounds() image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range t.box {
		x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X), max(y1, p.Y)
	}
	c := t.clip
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1))).
		Intersect(image.Rect(int(c.X), int(c.Y), int(c.X+c.W), int(c.Y+c.H)))
}

func painted(p *raster.Painter, l *draw.List) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, int(l.W), int(l.H)))
	p.Paint(img, l)
	return img
}

// reader tells which pixels stand out, and remembers what it has worked out.
type reader struct {
	least float64
	known map[[2]color.RGBA][4]bool
	p     [2]raster.Painter
}

// apart says for each vision whether two colours stand out from each other.
func (r *reader) apart(a, b color.RGBA) [4]bool {
	k := [2]color.RGBA{a, b}
	out, ok := r.known[k]
	if !ok {
		for i, v := range theme.Visions {
			out[i] = theme.Ratio(v.See(draw.Color(color.NRGBA(a))), v.See(draw.Color(color.NRGBA(b)))) >= r.least
		}
		r.known[k] = out
	}
	return out
}

// From the pixels: what the writing has changed stands out from what it has
// covered, for every kind of colour vision. The strokes of small type are thin,
// so that a good part of its pixels is between ink and ground; as many as there
// are signs must have the whole ratio (WCAG 2.2, 1.4.3 and 1.4.6).
func TestWritingStandsOutInThePixels(t *testing.T) {
	const w, h = 1024, 600
	for _, n := range theme.Names {
		t.Run(n.String(), func(t *testing.T) {
			t.Parallel()
			set := Settings{Theme: n}
			seen := 0
			r := &reader{least: theme.Of(n).Least(theme.Pair{Text: true}), known: map[[2]color.RGBA][4]bool{}}
			look := func(s station) {
				if !telling(s.name) {
					return
				}
				var l draw.List
				s.scene.Picture(&l)
				seen += r.check(t, s.name, &l)
			}
			benchStations(t, w, h, set, look)
			paperStations(t, w, h, set, look)
			hallStations(w, h, set, look)
			lectureStations(t, w, h, set, look)
			if seen < 200 {
				t.Errorf("looked at %d texts, want hundreds", seen)
			}
		})
	}
}

// telling are the states whose pixels are looked at: all that differ in what
// is written on what.
func telling(name string) bool {
	switch name {
	case "bench fresh", "bench on its side", "bench level on its lid", "bench sensor not calibrated", "bench wrong, overlays", "bench panel 1, page 1", "form, Read the dial",
		"form, Which reading does not belong", "form, handed in", "hall, page 1":
		return true
	}
	return strings.HasPrefix(name, "strike-and-dip") && strings.HasSuffix(name, "step 2")
}

func (r *reader) check(t *testing.T, where string, l *draw.List) (seen int) {
	t.Helper()
	with, without := painted(&r.p[0], l), painted(&r.p[1], wordless(l))
	for _, x := range texts(l, draw.Identity, draw.Rect{W: l.W, H: l.H}) {
		var full [4]int
		changed := 0
		box := x.bounds().Intersect(with.Rect)
		for py := box.Min.Y; py < box.Max.Y; py++ {
			for px := box.Min.X; px < box.Max.X; px++ {
				a, b := with.RGBAAt(px, py), without.RGBAAt(px, py)
				if a == b || !x.holds(float64(px)+.5, float64(py)+.5) {
					continue
				}
				changed++
				for i, ok := range r.apart(a, b) {
					if ok {
						full[i]++
					}
				}
			}
		}
		signs := len([]rune(strings.ReplaceAll(x.S, " ", "")))
		if changed < 12*signs { // covered, cut by the rim of a magnifier, or too thin
			continue
		}
		seen++
		for i, v := range theme.Visions {
			if full[i] < signs {
				t.Errorf("%s, %v: of %q %d of %d pixels stand out by %.1f to 1", where, v, x.S, full[i], changed, r.least)
				break
			}
		}
	}
	return seen
}
