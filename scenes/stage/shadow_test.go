package stage

import (
	"testing"

	"cuesta/orient"
)

// A shadow point lies on its plane and on the ray from the light through what
// throws it.
func TestShadowsLieOnTheirPlane(t *testing.T) {
	eachScene(func(sc *scene) {
		k := dot(sc.light, sc.N)
		if k < 0.05 {
			return
		}
		top := sheet{o: sc.top, x: sc.S, y: sc.D}
		sc.tool.eachCorner(func(p orient.Vec) {
			s := blot{sheet: top}
			s.cast(p, sc.light, sc.N, 0.1)
			at := top.at(s.pts[0])
			if _, _, n := sc.coords(at); !near(n, 0, 1e-9) {
				t.Fatalf("shadow is %.3g cm off the rock", n)
			}
			if off := cross(sub(p, at), sc.light); dot(off, off) > 1e-12 {
				t.Fatalf("shadow of %v at %v is not on the ray", p, at)
			}
		})
	})
}

func TestWrapIsConvex(t *testing.T) {
	b := blot{}
	for _, p := range [][2]float64{{0, 0}, {4, 0}, {4, 3}, {0, 3}, {2, 1}, {4, 0}, {2, 0}, {1, 2.9}} {
		b.pts[b.n] = flat{x: p[0], y: p[1]}
		b.n++
	}
	b.wrap()
	if b.n != 4 {
		t.Fatalf("hull of a rectangle and points in it: got %d corners, want 4", b.n)
	}
	for i := range b.n {
		if turn(b.pts[i], b.pts[(i+1)%4], b.pts[(i+2)%4]) <= 0 {
			t.Errorf("corner %d does not turn left", i)
		}
		x, y := b.outward(i)
		px, py := b.pts[i].x-2, b.pts[i].y-1.5
		if x*px+y*py <= 0 {
			t.Errorf("corner %d: outward points inward", i)
		}
	}
	if got := b.depth(); !near(got, 24.0/14, 1e-12) {
		t.Errorf("depth: got %g, want twice the area over the outline, %g", got, 24.0/14)
	}
}

// Cutting a square by the half plane x ≥ 1 leaves a rectangle.
func TestKeep(t *testing.T) {
	sq := []corner{{at: orient.Vec{}}, {at: orient.Vec{X: 2}, u: 2}, {at: orient.Vec{X: 2, Y: 2}, u: 2}, {at: orient.Vec{Y: 2}}}
	var to [mostCorners]corner
	h := half{orient.Vec{X: 1}, 1}
	n := h.keep(sq, to[:0])
	if n != 4 {
		t.Fatalf("got %d corners, want 4", n)
	}
	for _, c := range to[:n] {
		if c.at.X < 1-1e-12 || !near(c.u, c.at.X, 1e-12) {
			t.Errorf("corner at %v with u %g, want x ≥ 1 and u = x", c.at, c.u)
		}
	}
	h.d = 3
	if n := h.keep(sq, to[:0]); n != 0 {
		t.Errorf("cut away wholly: got %d corners, want 0", n)
	}
}
