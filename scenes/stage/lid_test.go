package stage

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// laid is a bench on which the instrument lies on its lid.
func laid(t *testing.T, p orient.Plane, swing, open orient.Angle) (sim.Pose, sim.Observation) {
	t.Helper()
	w, err := sim.New(sim.Setup{Seed: 3, Plane: p, Tool: sim.Lidded})
	if err != nil {
		t.Fatal(err)
	}
	o := w.Observe()
	for _, c := range []sim.Command{
		{Kind: sim.Place, Seat: sim.OnLid},
		{Kind: sim.Swing, Angle: (swing - w.Pose().Swing).Wrapped()},
		{Kind: sim.Roll, Angle: open - o.Hinge},
	} {
		if err := w.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	return w.Pose(), w.Observe()
}

// The lid lies flush on the rock and on the slab, the plate is hinged to its
// back end as far open as the hinge says, and nothing cuts the rock.
func TestLidLiesFlush(t *testing.T) {
	for _, d := range dips {
		p := planeOf(137, d)
		for _, swing := range []float64{0, 35, 90, -90, 150} {
			for _, open := range []float64{0, 10, d, 90, 135, 180} {
				o, seen := laid(t, p, degrees(swing), degrees(open))
				sc := sceneOf(params(p, o))
				lid := sc.tool.lid.plate()
				for i := range lid.n {
					a, b, n := sc.coords(lid.p[i])
					if !near(n, 0, 1e-9) || math.Abs(a) > rock.HalfA || math.Abs(b) > rock.HalfB {
						t.Errorf("dip %g, swing %g: a corner of the lid at %.2f, %.2f, %.3g over the rock", d, swing, a, b, n)
					}
				}
				sc.tool.eachCorner(func(q orient.Vec) {
					if _, _, n := sc.coords(q); n < -1e-9 {
						t.Errorf("dip %g, swing %g, open %g: a corner %.2g cm in the rock", d, swing, open, -n)
					}
				})
				if got := sc.tool.lid.open; !near(got.Degrees(), seen.Hinge.Degrees(), 1e-6) {
					t.Errorf("dip %g, swing %g: drawn %.3f° open, the hinge says %.3f°", d, swing, got.Degrees(), seen.Hinge.Degrees())
				}
				if _, _, n := sc.coords(sc.tool.at(0, 0, 0)); open <= 90 && !near(n, lidThick, 1e-9) {
					t.Errorf("dip %g, open %g: the back end of the plate is %.3f cm over the rock, want on the hinge at %.2f", d, open, n, lidThick)
				}
			}
		}
	}
}

// With the hinge along the strike, opened by the dip, the plate is level and
// points down the dip: that is the method (common practice).
func TestLevelPlateOnItsLidPointsDownTheDip(t *testing.T) {
	for _, d := range []float64{10, 30, 70, 90} {
		p := planeOf(35, d)
		o, _ := laid(t, p, orient.Right, p.Dip)
		sc := sceneOf(params(p, o))
		if got := dot(sc.tool.up, orient.Up); !near(got, 1, 1e-12) {
			t.Errorf("dip %g: the plate is not level, %g", d, got)
		}
		if got := dot(sc.tool.fwd, sc.H); !near(got, 1, 1e-12) {
			t.Errorf("dip %g: the plate does not point down the dip, %g", d, got)
		}
	}
}

// The usual view shows the top of the level plate and the scale of the hinge.
func TestUsualViewOfTheLid(t *testing.T) {
	for _, s := range strikes {
		for _, d := range []float64{2, 10, 30, 45, 70, 90} {
			p := planeOf(s, d)
			o := lidded(p, orient.Right, p.Dip)
			sc := sceneOf(params(p, o))
			if !sc.hingeInFront() {
				t.Errorf("%g/%g: the scale of the hinge is turned away", s, d)
			}
			x0, y0, x1, y1 := sc.tool.box(&sc.lens)
			if r := sc.p.Rect; x0 < r.X || y0 < r.Y || x1 > r.X+r.W || y1 > r.Y+r.H {
				t.Errorf("%g/%g: the instrument leaves the picture", s, d)
			}
		}
	}
}

// On a level lid nothing of the picture jumps when the hinge opens.
func TestPictureKeepsStillWhileTheHingeOpens(t *testing.T) {
	p := planeOf(250, 40)
	a := params(p, lidded(p, orient.Right, 0))
	b := a
	b.Pose = lidded(p, degrees(20), degrees(100))
	if la, lb := sceneOf(a).lens, sceneOf(b).lens; la != lb {
		t.Errorf("lens %+v, then %+v", la, lb)
	}
}
