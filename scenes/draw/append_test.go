package draw

import (
	"math"
	"testing"
)

// TestAppend: a quarter turn clockwise takes forward (+x) down the page.
func TestAppend(t *testing.T) {
	src := &List{W: 10, H: 10}
	src.FillWith(Fill{Path: Polyline(true, Point{1, 0}, Point{2, 0}, Point{2, 1}),
		Gradient: Gradient{Kind: Linear, A: Point{1, 0}, B: Point{2, 0}}})
	src.Stroke(Polyline(false, Point{0, 0}, Point{1, 0}), Stroke{Width: 2, Dash: []float64{1, 3}})
	src.Text(Text{S: "a", At: Point{3, 0}, Size: 4})
	src.Region(Rect{1, 2, 3, 4})
	p := src.Open(nil)
	p.Triangle(p.Vertex(Vertex{X: 1}), p.Vertex(Vertex{X: 2}), p.Vertex(Vertex{X: 2, Y: 1}))
	p.Done()

	dst := &List{}
	dst.Append(src, Turned(Point{100, 200}, 10, math.Pi/2))
	if got, want := len(dst.Items), len(src.Items); got != want {
		t.Fatalf("%d items, want %d", got, want)
	}
	at := func(name string, got, want Point) {
		if math.Hypot(got.X-want.X, got.Y-want.Y) > 1e-9 {
			t.Errorf("%s stands at %v, want %v", name, got, want)
		}
	}
	at("the second corner", dst.Fills[0].Path.Points[1], Point{100, 220})
	at("the end of the gradient", dst.Fills[0].Gradient.B, Point{100, 220})
	at("the end of the line", dst.Lines[0].Path.Points[1], Point{100, 210})
	at("the text", dst.Texts[0].At, Point{100, 230})
	if s := dst.Lines[0].Style; s.Width != 20 || s.Dash[1] != 30 {
		t.Errorf("the line is %v wide with dashes %v, want 20 and 10 30", s.Width, s.Dash)
	}
	if x := dst.Texts[0]; x.Size != 40 || math.Abs(x.Rotate-math.Pi/2) > 1e-12 {
		t.Errorf("the text has size %v and is turned by %v", x.Size, x.Rotate)
	}
	if r := dst.Regions[0].Rect; math.Abs(r.X-40) > 1e-9 || math.Abs(r.Y-210) > 1e-9 || math.Abs(r.W-40) > 1e-9 || math.Abs(r.H-30) > 1e-9 {
		t.Errorf("the region is %v, want {40 210 40 30}", r)
	}
	if v := dst.Meshes[0].Vertices[2]; v.X != 90 || v.Y != 220 {
		t.Errorf("the corner of the mesh stands at %v %v, want 90 220", v.X, v.Y)
	}
	if src.Lines[0].Style.Dash[0] != 1 || src.Meshes[0].Vertices[0].X != 1 || src.Fills[0].Path.Points[0] != (Point{1, 0}) {
		t.Error("the source was changed")
	}
}

// TestPieces: signs stand where the outlines put them, whatever the face.
func TestPieces(t *testing.T) {
	text := Text{S: "AV 30° → To′", At: Point{50, 0}, Size: 20, Align: AlignCentre, Track: 0.05}
	var signs []rune
	for i, p := range text.Pieces() {
		if want := []Face{RegularFace, FallbackFace, RegularFace, FallbackFace}[i]; p.Face != want {
			t.Errorf("piece %d %q is in face %d, want %d", i, string(p.Signs), p.Face, want)
		}
		before := Measure(Regular, 20, string(signs), 0.05)
		start := -Measure(Regular, 20, text.S, 0.05)/2 + 20*0.05/2 + before
		if math.Abs(p.Start-start) > 1e-9 {
			t.Errorf("piece %d starts at %v, want %v", i, p.Start, start)
		}
		if len(p.Gaps) != len(p.Signs) || p.Gaps[0] != 0 {
			t.Errorf("piece %d has gaps %v for %d signs", i, p.Gaps, len(p.Signs))
		}
		signs = append(signs, p.Signs...)
	}
	if string(signs) != text.S {
		t.Errorf("the pieces read %q", string(signs))
	}
	if gap := text.Pieces()[0].Gaps[1]; gap >= 0.05 {
		t.Errorf("the V does not move towards the A: %v", gap)
	}
}
