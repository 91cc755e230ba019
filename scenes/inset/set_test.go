package inset

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// all draws the magnifiers in one state.
func all(s *Set, l *draw.List, th *theme.Theme, r float64, turn orient.Angle) {
	c := draw.Point{X: 300, Y: 300}
	s.Round(l, th, c, r, sim.RoundLevel{Right: turn.Sin(), Forward: turn.Cos()})
	s.Dial(l, th, c, r, sim.Dial{Needle: turn.Wrapped(), Ring: turn / 3, North: orient.AzimuthOf(turn/3 - turn)}, false)
	o := onSide(30*orient.Degree, turn.Abs()/8, sim.Left)
	s.Tube(l, th, c, r, o)
	s.Arc(l, th, c, r, o)
	s.Hinge(l, th, c, r, turn.Abs()/2)
	shows := sim.Sensor{Direction: orient.AzimuthOf(turn), Dip: turn.Abs() / 8, Calibrated: turn > 1}
	s.Display(l, th, c, r, shows)
	s.Ready(l, th, c, r, shows)
}

// TestNothingAllocated: once the parts are baked a frame only writes triangles
// into memory that is there already.
func TestNothingAllocated(t *testing.T) {
	s, th, turn := New(), theme.Of(theme.Light), orient.Angle(0)
	var l draw.List
	frame := func() {
		l.Reset(600, 600)
		turn += 3 * orient.Degree
		all(s, &l, th, 116, turn)
	}
	for range 125 { // all the digits that it will show
		frame()
	}
	if n := testing.AllocsPerRun(100, frame); n != 0 {
		t.Errorf("%v allocations a frame, want none", n)
	}
}

// TestStaysInTheCircle: but for the soft shadow, no triangle leaves the circle,
// and no corner leaves its texture.
func TestStaysInTheCircle(t *testing.T) {
	for _, n := range theme.Names {
		for _, r := range []float64{24, 64, 116, 220} {
			s := New()
			var l draw.List
			for turn := orient.Angle(0); turn < orient.Full; turn += 17 * orient.Degree {
				all(s, &l, theme.Of(n), r, turn)
			}
			for _, m := range l.Meshes {
				if m.Texture != nil && m.Texture.Pixels != nil {
					continue
				}
				for _, v := range m.Vertices {
					if d := math.Hypot(float64(v.X)-300, float64(v.Y)-300); d > r+.51 {
						t.Fatalf("%v, radius %v: a corner %.2f px from the middle", n, r, d)
					}
					if x := m.Texture; x != nil && (v.U < -.01 || v.V < -.01 || v.U > float32(x.W)+.01 || v.V > float32(x.H)+.01) {
						t.Fatalf("%v, radius %v: (%v, %v) is outside of a texture of %d×%d", n, r, v.U, v.V, x.W, x.H)
					}
				}
			}
		}
	}
}

// TestKeepsWhatItUses: the same frame again bakes nothing, and changing sizes
// do not pile up.
func TestKeepsWhatItUses(t *testing.T) {
	s, th := New(), theme.Of(theme.Dark)
	var l draw.List
	for turn := range 12 { // all the digits that it will show
		all(s, &l, th, 116, orient.Angle(turn))
	}
	n := len(s.kept)
	first := s.kept[0].t
	all(s, &l, th, 116, 2)
	if len(s.kept) != n || s.kept[0].t != first {
		t.Errorf("a second frame baked again: %d parts, then %d", n, len(s.kept))
	}
	for r := 60.0; r < 90; r++ {
		all(s, &l, th, r, 1)
		if len(s.kept) > most {
			t.Fatalf("%d parts are kept, want at most %d", len(s.kept), most)
		}
	}
	if n > most/2 {
		t.Errorf("one size takes %d parts of the %d kept: two sizes must fit", n, most)
	}
}

// TestShadow: soft, faint and only in themes that are not flat.
func TestShadow(t *testing.T) {
	x := shadowTexture(theme.Of(theme.Light).Shadow, 60, shadowBlur)
	mid, rim := x.Pixels.RGBAAt(x.W/2, x.H/2), x.Pixels.RGBAAt(x.W/2+30, x.H/2)
	if mid.A < 69 || mid.A > 72 { // .28 of 255
		t.Errorf("alpha %d in the middle, want 71", mid.A)
	}
	if rim.A < 30 || rim.A > 41 {
		t.Errorf("alpha %d at the rim, want half of the middle", rim.A)
	}
	if edge := x.Pixels.RGBAAt(0, x.H/2); edge.A > 1 {
		t.Errorf("alpha %d at the border of the texture, want it to fade out", edge.A)
	}
	s := New()
	var l draw.List
	all(s, &l, theme.Of(theme.ContrastBlack), 64, 1)
	for _, k := range s.kept {
		if k.t.Pixels != nil {
			t.Error("a flat theme has a shadow")
		}
	}
}
