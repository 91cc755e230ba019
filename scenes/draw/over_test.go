package draw

import "testing"

func TestOverReachesEveryRegion(t *testing.T) {
	var l List
	l.Reset(100, 100)
	l.Region(Rect{W: 50, H: 100})
	l.Fill(Box(Rect{W: 10, H: 10}), Color{A: 255})
	l.Region(Rect{X: 50, W: 50, H: 100})
	l.Fill(Box(Rect{X: 60, W: 10, H: 10}), Color{A: 255})
	l.Over(func(p *Pen) {
		p.Triangle(p.Vertex(Vertex{X: 40}), p.Vertex(Vertex{X: 60}), p.Vertex(Vertex{X: 50, Y: 9}))
	})
	var got []Op
	for _, it := range l.Items {
		got = append(got, it.Op)
	}
	want := []Op{OpRegion, OpFill, OpMesh, OpRegion, OpFill, OpMesh}
	if len(got) != len(want) {
		t.Fatalf("got %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("got %v, want %v", got, want)
		}
	}
	n := len(l.Items)
	if l.Over(func(*Pen) {}); len(l.Items) != n {
		t.Error("an empty mesh was laid over the picture")
	}
}
