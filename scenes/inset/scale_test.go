package inset

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
	"cuesta/sim/instrument"
)

const near = 0.02 * orient.Degree // float32 vertices of a large texture

// under is the point of a part, in its own frame, that is drawn at the place p
// of the screen; ok is false when no triangle of the part covers it.
func under(l *draw.List, t *draw.Texture, p draw.Point) (q draw.Point, ok bool) {
	for _, m := range l.Meshes {
		if m.Texture != t {
			continue
		}
		for i := 0; i < len(m.Indices); i += 3 {
			a, b, c := m.Vertices[m.Indices[i]], m.Vertices[m.Indices[i+1]], m.Vertices[m.Indices[i+2]]
			x, y := p.X-float64(a.X), p.Y-float64(a.Y)
			bx, by := float64(b.X-a.X), float64(b.Y-a.Y)
			cx, cy := float64(c.X-a.X), float64(c.Y-a.Y)
			det := bx*cy - cx*by
			if math.Abs(det) < 1 {
				continue
			}
			s, r := (x*cy-cx*y)/det, (bx*y-x*by)/det
			if s < -1e-4 || r < -1e-4 || s+r > 1+1e-4 {
				continue
			}
			u := float64(a.U) + s*float64(b.U-a.U) + r*float64(c.U-a.U)
			v := float64(a.V) + s*float64(b.V-a.V) + r*float64(c.V-a.V)
			k := t.Map()
			return draw.Point{X: (u - k.E) / k.A, Y: (v - k.F) / k.D}, true
		}
	}
	return draw.Point{}, false
}

// baked is the part of a kind that was drawn last.
func baked(t *rapid.T, s *Set, what piece) *draw.Texture {
	best := kept{}
	for _, k := range s.kept {
		if k.key.what == what && k.used > best.used {
			best = k
		}
	}
	if best.t == nil {
		t.Fatalf("part %d was not drawn", what)
	}
	return best.t
}

func angle(t *rapid.T, lo, hi orient.Angle, label string) orient.Angle {
	return orient.Angle(rapid.Float64Range(float64(lo), float64(hi)).Draw(t, label))
}

// TestScaleUnderNeedle: whatever the needle and the declination set, the number
// drawn under the tip is the reading that the instrument gives.
func TestScaleUnderNeedle(t *testing.T) {
	s := New()
	rapid.Check(t, func(t *rapid.T) {
		needle, ring := angle(t, -orient.Half, orient.Half, "needle"), angle(t, -orient.Half, orient.Half, "ring")
		r := float64(rapid.IntRange(16, 240).Draw(t, "radius"))
		c := draw.Point{X: 400, Y: 300}
		o := sim.Dial{Needle: needle, Ring: ring, North: instrument.Dial{Ring: ring}.At(needle)}
		var l draw.List
		s.Dial(&l, theme.Of(theme.Light), c, r, o, false)
		body := baked(t, s, needleBody)
		tip, ok := screenOf(&l, body, draw.Point{X: figure.NeedleTip})
		if !ok || math.Abs(tip.X-c.X) > .01 || tip.Y > c.Y+.5*r {
			t.Fatalf("the tip of the needle is drawn at %v, want straight over %v", tip, c)
		}
		on, ok := under(&l, baked(t, s, dialDisc), tip)
		if !ok {
			t.Fatal("no scale under the tip")
		}
		got := orient.AzimuthOf(-orient.Atan2(on.Y, on.X))
		if d := got.From(o.North); d.Abs() > near {
			t.Fatalf("under the tip stands %.4f°, want %.4f°", got.Degrees(), o.North.Degrees())
		}
		if out := math.Hypot(on.X, on.Y); math.Abs(out-figure.NeedleTip) > .002 {
			t.Fatalf("the tip is drawn %.4f cm from the centre of the scale, want %v", out, figure.NeedleTip)
		}
	})
}

// screenOf is where the point q of a part is drawn, found from two places.
func screenOf(l *draw.List, t *draw.Texture, q draw.Point) (draw.Point, bool) {
	for _, m := range l.Meshes {
		if m.Texture != t {
			continue
		}
		u, v := figure.UV(t, q)
		a, b, c := m.Vertices[0], m.Vertices[len(m.Vertices)/3], m.Vertices[2*len(m.Vertices)/3]
		bu, bv := float64(b.U-a.U), float64(b.V-a.V)
		cu, cv := float64(c.U-a.U), float64(c.V-a.V)
		x, y := u-float64(a.U), v-float64(a.V)
		det := bu*cv - cu*bv
		s, r := (x*cv-cu*y)/det, (bu*y-x*bv)/det
		return draw.Point{
			X: float64(a.X) + s*float64(b.X-a.X) + r*float64(c.X-a.X),
			Y: float64(a.Y) + s*float64(b.Y-a.Y) + r*float64(c.Y-a.Y),
		}, true
	}
	return draw.Point{}, false
}

// onSide is an instrument on its side on a plane of dip d, its edge straight
// down the dip, the arm at a. On the right edge the forward end points up the
// dip. The bubble is where the standard tube has it at rest.
func onSide(d, a orient.Angle, seated sim.Side) sim.Observation {
	f, r := orient.Vec{Y: d.Cos(), Z: -d.Sin()}, orient.Vec{Y: d.Sin(), Z: d.Cos()}
	if seated == sim.RightSide {
		f, r = orient.Vec{Y: -d.Cos(), Z: d.Sin()}, orient.Vec{Y: -d.Sin(), Z: -d.Cos()}
	}
	level := instrument.StandardTube()
	along, across := a.Cos()*f.Z+a.Sin()*r.Z, -a.Sin()*f.Z+a.Cos()*r.Z
	off := max(-level.Reach(), min(level.Reach(), level.Goal(along, across))) / level.Mark
	return sim.Observation{
		Seat: sim.OnSide, Seated: seated, Arc: sim.Arc{Arm: a}, Frame: sim.Frame{Forward: f, Right: r},
		Tube: sim.TubeLevel{Off: off, Centred: math.Abs(off) < .25},
	}
}

// TestScaleUnderPointer: the arm's pointer stands on the mark of its own angle
// on either scale, on either edge.
func TestScaleUnderPointer(t *testing.T) {
	s := New()
	rapid.Check(t, func(t *rapid.T) {
		o := onSide(angle(t, 0, orient.Right, "dip"), angle(t, 0, orient.Right, "arm"), rapid.SampledFrom([]sim.Side{sim.Left, sim.RightSide}).Draw(t, "edge"))
		r := float64(rapid.IntRange(30, 240).Draw(t, "radius"))
		var l draw.List
		s.Arc(&l, theme.Of(theme.Dark), draw.Point{X: 500, Y: 500}, r, o)
		arm, plate := baked(t, s, arcArm), baked(t, s, arcPlate)
		for _, out := range []float64{figure.ArmTip, figure.PercentBase} {
			tip, _ := screenOf(&l, arm, draw.Point{X: out})
			on, ok := under(&l, plate, tip)
			if !ok {
				t.Fatal("no scale under the pointer")
			}
			x, y := on.X-figure.ArmPivot.X, on.Y-figure.ArmPivot.Y
			if got := orient.Atan2(y, x); (got - o.Arc.Arm).Abs() > near {
				t.Fatalf("under the pointer stands %.4f°, want %.4f°", got.Degrees(), o.Arc.Arm.Degrees())
			}
			if d := math.Hypot(x, y); math.Abs(d-out) > .003 {
				t.Fatalf("the pointer crosses the scale at %.4f cm, want %v", d, out)
			}
		}
	})
}

// TestLevelArmLooksLevel: when the bubble is centred the arm lies level on the
// screen, its figures upright, pointing left on the left edge and right on the
// right edge.
func TestLevelArmLooksLevel(t *testing.T) {
	for _, seated := range []sim.Side{sim.Left, sim.RightSide} {
		for _, d := range []orient.Angle{0, 2 * orient.Degree, 30 * orient.Degree, 70 * orient.Degree, 90 * orient.Degree} {
			o := onSide(d, d, seated)
			if math.Abs(o.Tube.Off) > 1e-9 {
				t.Fatalf("dip %v: the bubble is off by %v", d.Degrees(), o.Tube.Off)
			}
			plan := armView(draw.Point{}, 50, arcFocus, o)
			got := (plan.turn + o.Arc.Arm).Wrapped()
			want := orient.Half
			if seated == sim.RightSide {
				want = 0
			}
			if (got - want).Wrapped().Abs() > 1e-9 {
				t.Errorf("dip %v°, edge %v: the arm points to %.3f° on the screen, want %.0f°", d.Degrees(), seated, got.Degrees(), want.Degrees())
			}
			for _, x := range figure.ArcFigures(theme.Of(theme.Light), upright(o)) {
				at := orient.Atan2(x.At.Y, x.At.X)
				if (at - d).Abs() > 5*orient.Degree {
					continue
				}
				if lean := (orient.Angle(x.Rotate) + plan.turn).Wrapped(); lean.Abs() > 6*orient.Degree {
					t.Errorf("dip %v°, edge %v: %q leans %.1f°", d.Degrees(), seated, x.S, lean.Degrees())
				}
			}
		}
	}
}

// TestBubbleRunsUp: in the picture the bubble of the tube stands at the higher
// end.
func TestBubbleRunsUp(t *testing.T) {
	s := New()
	rapid.Check(t, func(t *rapid.T) {
		d := angle(t, 5*orient.Degree, 85*orient.Degree, "dip")
		o := onSide(d, d+angle(t, -5*orient.Degree, 5*orient.Degree, "off"), rapid.SampledFrom([]sim.Side{sim.Left, sim.RightSide}).Draw(t, "edge"))
		if math.Abs(o.Tube.Off) < .01 {
			t.Skip("level")
		}
		var l draw.List
		c := draw.Point{X: 200, Y: 200}
		s.Tube(&l, theme.Of(theme.Light), c, 100, o)
		p, ok := screenOf(&l, baked(t, s, tubeBubble), draw.Point{})
		if !ok || p.Y >= c.Y {
			t.Fatalf("the bubble is drawn at %v, want above %v", p, c)
		}
		want := figure.TubeMark * math.Abs(o.Tube.Off) * 100 / tubeReach
		if got := math.Hypot(p.X-c.X, p.Y-c.Y); math.Abs(got-want) > .05 {
			t.Fatalf("the bubble is %.3f px off the middle, want %.3f", got, want)
		}
	})
}

func TestRoundBubble(t *testing.T) {
	s, c, r := New(), draw.Point{X: 100, Y: 100}, 60.0
	ring := figure.RoundRing * r / roundReach
	for _, k := range []struct {
		o    sim.RoundLevel
		want draw.Point
	}{
		{sim.RoundLevel{}, c},
		{sim.RoundLevel{Forward: 1}, draw.Point{X: 100, Y: 100 - ring}},
		{sim.RoundLevel{Right: 1}, draw.Point{X: 100 + ring, Y: 100}},
		{sim.RoundLevel{Right: -.5, Forward: -1}, draw.Point{X: 100 - ring/2, Y: 100 + ring}},
	} {
		var l draw.List
		s.Round(&l, theme.Of(theme.Contrast), c, r, k.o)
		got, ok := screenOf(&l, s.find(key{roundBubble, theme.Contrast, r / roundReach, 0}), draw.Point{})
		if !ok || math.Hypot(got.X-k.want.X, got.Y-k.want.Y) > .01 {
			t.Errorf("%+v: bubble at %v, want %v", k.o, got, k.want)
		}
	}
}

// TestDegreeNeverTooFine: one degree of the dial stays at least 2.8 px long,
// and the tip and a figure stay inside, down to circles that are too small to use.
func TestDegreeNeverTooFine(t *testing.T) {
	for r := 33.0; r <= 300; r++ {
		v := dialView(draw.Point{}, r, 1)
		if got := v.k * figure.DialBase * math.Pi / 180; got < 2.8-1e-9 {
			t.Errorf("radius %v: a degree is %.3f px", r, got)
		}
		out := math.Hypot(v.focus.X-figure.DialCentre.X, v.focus.Y-figure.DialCentre.Y)
		if reach := r / v.k; out-reach > figure.NeedleTip-.2 || out+reach < 3.4 {
			t.Errorf("radius %v: the opening runs from %.2f to %.2f cm", r, out-reach, out+reach)
		}
	}
}

// TestScaleUnderHingeIndex: however far the hinge is open, the number drawn
// under the tip of its index is the reading that the hinge gives.
func TestScaleUnderHingeIndex(t *testing.T) {
	s := New()
	rapid.Check(t, func(t *rapid.T) {
		open := angle(t, 0, orient.Half, "open")
		r := float64(rapid.IntRange(16, 240).Draw(t, "radius"))
		c := draw.Point{X: 400, Y: 300}
		var l draw.List
		s.Hinge(&l, theme.Of(theme.Light), c, r, open)
		tip, ok := screenOf(&l, baked(t, s, hingeIndex), draw.Point{X: figure.HingeTip})
		if !ok || math.Abs(tip.X-c.X) > .01 || tip.Y > c.Y+.5*r {
			t.Fatalf("the tip of the index is drawn at %v, want straight over %v", tip, c)
		}
		on, ok := under(&l, baked(t, s, hingePlate), tip)
		if !ok {
			t.Fatal("no scale under the tip")
		}
		if got := orient.Atan2(-on.Y, on.X); (got - open).Wrapped().Abs() > near {
			t.Fatalf("under the tip stands %.4f°, want %.4f°", got.Degrees(), open.Degrees())
		}
	})
}
