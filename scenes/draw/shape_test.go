package draw

import (
	"image"
	"math"
	"testing"
)

func TestAffine(t *testing.T) {
	turn := Affine{A: 0, B: 1, C: -1, D: 0} // a quarter turn clockwise on the screen
	shift := Affine{A: 1, D: 1, E: 5, F: 7}
	double := Affine{A: 2, D: 2}
	tests := []struct {
		name string
		m    Affine
		want Point // of (3, 4)
	}{
		{"identity", Identity, Point{3, 4}},
		{"turn", turn, Point{-4, 3}},
		{"shift after turn", shift.After(turn), Point{1, 10}},
		{"turn after shift", turn.After(shift), Point{-11, 8}},
		{"double after shift", double.After(shift), Point{16, 22}},
	}
	for _, tt := range tests {
		if got := tt.m.At(Point{3, 4}); got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
	if got := double.After(turn).Scale(); got != 2 {
		t.Errorf("scale %g, want 2", got)
	}
	if got := (&Texture{}).Map(); got != Identity {
		t.Errorf("a texture without a map has %v, want the identity", got)
	}
}

func TestPixelsLeaveNoGap(t *testing.T) {
	for _, x := range []float64{0, 10.2, 10.5, 10.7, -3.5} {
		a, b := Rect{X: x, W: 20.3, H: 5}.Pixels(), Rect{X: x + 20.3, W: 7, H: 5}.Pixels()
		if a.Max.X != b.Min.X {
			t.Errorf("at %g: one ends at %d, the next begins at %d", x, a.Max.X, b.Min.X)
		}
	}
	if got, want := (Rect{X: 1.4, Y: 1.6, W: 2, H: 2}).Pixels(), image.Rect(1, 2, 3, 4); got != want {
		t.Errorf("%v, want %v", got, want)
	}
}

// A circle as straight lines: every point lies on it, every chord strays no
// more than the tolerance, and it comes back to where it began.
func TestFlatCircle(t *testing.T) {
	const r = 200
	for _, tol := range []float64{1, .1, .01} {
		var f Flat
		f.Add(Circle(10, 20, r), Identity, tol)
		if len(f.Runs) != 1 || !f.Runs[0].Closed {
			t.Fatalf("runs %v, want one closed", f.Runs)
		}
		for i, q := range f.Points {
			next := f.Points[(i+1)%len(f.Points)]
			mid := math.Hypot((q.X+next.X)/2-10, (q.Y+next.Y)/2-20)
			// 0.03 % of the radius is how far four Bézier arcs of 90° stray;
			// ours are of 45° and stray far less.
			if at := math.Hypot(q.X-10, q.Y-20); math.Abs(at-r) > .001*r || r-mid > tol+.001*r {
				t.Fatalf("tolerance %g: point at %g, chord at %g from the centre", tol, at, mid)
			}
		}
		if n := len(f.Points); float64(n) > 8*math.Sqrt(r/tol)+16 {
			t.Errorf("tolerance %g: %d points are more than are needed", tol, n)
		}
	}
}

func TestFlatRuns(t *testing.T) {
	var p Path
	p.MoveTo(0, 0)
	p.LineTo(10, 0)
	p.LineTo(10, 0) // twice
	p.LineTo(10, 10)
	p.LineTo(0, 0) // back to the start
	p.Close()
	p.LineTo(5, 5) // goes on from the start
	p.MoveTo(20, 20)
	p.QuadTo(30, 20, 30, 30)
	var f Flat
	f.Add(p, Identity, .1)
	if len(f.Runs) != 3 {
		t.Fatalf("%d runs, want 3", len(f.Runs))
	}
	first := f.Runs[0]
	if got := first.To - first.From; got != 3 || !first.Closed {
		t.Errorf("the triangle has %d points, closed %v; want 3, true", got, first.Closed)
	}
	if second := f.Points[f.Runs[1].From]; second != (Point{0, 0}) || f.Runs[1].Closed {
		t.Errorf("the second run begins at %v, want the start of the first", second)
	}
	if last := f.Points[len(f.Points)-1]; last != (Point{30, 30}) {
		t.Errorf("the curve ends at %v, want (30, 30)", last)
	}
}

func TestMarkTellsListsApart(t *testing.T) {
	base := func() *List {
		l := &List{}
		l.Reset(100, 50)
		l.Region(Rect{W: 100, H: 50})
		l.Fill(Box(Rect{X: 1, Y: 2, W: 3, H: 4}), Color{R: 1, G: 2, B: 3, A: 255})
		l.Stroke(Circle(5, 5, 4), Stroke{Width: 2, Color: Color{R: 9, A: 255}, Dash: []float64{3, 4}})
		l.Text(Text{S: "dip 30°", At: Point{4, 40}, Size: 15, Color: Color{A: 255}})
		l.Sprite(&Texture{W: 4, H: 4, Pixels: image.NewRGBA(image.Rect(0, 0, 4, 4))}, 3, 4, 1, 1)
		return l
	}
	changes := map[string]func(*List){
		"width":       func(l *List) { l.W++ },
		"an item":     func(l *List) { l.Items = l.Items[:4] },
		"order":       func(l *List) { l.Items[1], l.Items[2] = l.Items[2], l.Items[1] },
		"region":      func(l *List) { l.Regions[0].Rect.W-- },
		"corner":      func(l *List) { l.Fills[0].Path.Points[2].X += 1e-9 },
		"colour":      func(l *List) { l.Fills[0].Color.B++ },
		"gradient":    func(l *List) { l.Fills[0].Gradient = Gradient{Kind: Linear, To: Color{A: 1}} },
		"line width":  func(l *List) { l.Lines[0].Style.Width = 3 },
		"dash":        func(l *List) { l.Lines[0].Style.Dash = []float64{4, 3} },
		"word":        func(l *List) { l.Texts[0].S = "dip 31°" },
		"weight":      func(l *List) { l.Texts[0].Font = Bold },
		"turn":        func(l *List) { l.Texts[0].Rotate = 1 },
		"track":       func(l *List) { l.Texts[0].Track = .02 },
		"vertex":      func(l *List) { l.Meshes[0].Vertices[1].A = .5 },
		"filter":      func(l *List) { l.Meshes[0].Nearest = !l.Meshes[0].Nearest },
		"no texture":  func(l *List) { l.Meshes[0].Texture = nil },
		"version":     func(l *List) { l.Meshes[0].Texture.Version++ },
		"pixel":       func(l *List) { l.Meshes[0].Texture.Pixels.Pix[63] = 1 },
		"index order": func(l *List) { l.Meshes[0].Indices[0] = 2 },
	}
	want := base().Mark()
	if again := base().Mark(); again != want {
		t.Fatalf("the same list has the marks %x and %x", want, again)
	}
	seen := map[uint64]string{want: "nothing"}
	for name, change := range changes {
		l := base()
		change(l)
		m := l.Mark()
		if other, ok := seen[m]; ok {
			t.Errorf("a change of %s has the same mark as a change of %s", name, other)
		}
		seen[m] = name
	}
}

func TestTaps(t *testing.T) {
	drawing := &Texture{W: 100, H: 100, List: &List{}}
	photo := &Texture{W: 100, H: 100, Pixels: image.NewRGBA(image.Rect(0, 0, 100, 100))}
	tests := []struct {
		name string
		t    *Texture
		k    float64 // size of the picture over that of the texture
		want int
	}{
		{"as it is", drawing, 1.01, 1}, {"larger", drawing, 3, 1}, {"a little smaller", drawing, .7, 1},
		{"half", drawing, .5, 2}, {"a quarter", drawing, .25, 4}, {"a tenth", drawing, .1, 4},
		{"pixels", photo, .25, 1}, {"no texture", nil, .25, 1},
	}
	for _, tt := range tests {
		var l List
		if tt.t == nil {
			p := l.Open(nil)
			p.Disc(Point{5, 5}, 4, 1, Color{A: 255})
			p.Done()
		} else {
			l.Sprite(tt.t, .5, .5, tt.k, 1)
		}
		if got := l.Meshes[0].Taps(); got != tt.want {
			t.Errorf("%s: %d, want %d", tt.name, got, tt.want)
		}
	}
}
