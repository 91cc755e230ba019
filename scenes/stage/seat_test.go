package stage

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// For any swing and roll the seated edge touches the rock along its whole
// length, stays on the slab, and no corner cuts into the rock.
func TestInstrumentTouchesTheRock(t *testing.T) {
	for _, d := range dips {
		p := planeOf(137, d)
		for _, o := range poses(p) {
			sc := sceneOf(params(p, o))
			lowest := math.Inf(1)
			sc.tool.eachCorner(func(q orient.Vec) {
				_, _, n := sc.coords(q)
				lowest = min(lowest, n)
			})
			if !near(lowest, 0, 1e-9) {
				t.Errorf("dip %g, swing %.0f°: lowest corner at %.3g cm, want 0", d, o.Swing.Degrees(), lowest)
			}
			for _, q := range sc.tool.edge {
				a, b, n := sc.coords(q)
				if !near(n, 0, 1e-9) {
					t.Errorf("dip %g, swing %.0f°: end of the seated edge %.3g cm off the rock", d, o.Swing.Degrees(), n)
				}
				if math.Abs(a) > rock.HalfA || math.Abs(b) > rock.HalfB {
					t.Errorf("dip %g, swing %.0f°: end of the seated edge at %.1f, %.1f, off the slab", d, o.Swing.Degrees(), a, b)
				}
			}
		}
	}
}

// A level plate reaches out over the falling side, whichever end points ahead.
func TestLevelPlateReachesOverTheFallingSide(t *testing.T) {
	p := planeOf(250, 40)
	for _, o := range []sim.Pose{level(p), poseOf(p, sim.OnEdge, orient.Half, p.Dip)} {
		sc := sceneOf(params(p, o))
		if got := dot(o.Frame.Out, orient.Up); !near(got, 1, 1e-12) {
			t.Fatalf("pose of the test: face is not level, %g", got)
		}
		edge := mix(sc.tool.edge[0], sc.tool.edge[1], 0.5)
		out := sub(sc.tool.middle(), edge)
		if got := dot(out, sc.H); got < 4 {
			t.Errorf("seated on side %d: middle of the plate is %.1f cm towards the dip, want at least 4", o.Seated, got)
		}
	}
}

// The edge that the pose names is the one that stands on the rock.
func TestSeatedSideIsBelow(t *testing.T) {
	p := planeOf(10, 50)
	for _, o := range poses(p) {
		if o.Seat == sim.OnSide && o.Frame.Out == (orient.Vec{}) {
			continue
		}
		sc := sceneOf(params(p, o))
		_, _, l := sc.coords(sc.tool.at(8, 0, plateThick/2))
		_, _, r := sc.coords(sc.tool.at(8, plateWide, plateThick/2))
		if o.Seated == sim.Left && l > r+1e-9 || o.Seated == sim.RightSide && r > l+1e-9 {
			t.Errorf("swing %.0f°, seated %d: left edge %.2f cm above the rock, right %.2f", o.Swing.Degrees(), o.Seated, l, r)
		}
	}
}

func TestSlabRestsOnTheBase(t *testing.T) {
	for _, d := range dips {
		sc := sceneOf(params(planeOf(35, d), level(planeOf(35, d))))
		lowest := math.Inf(1)
		sc.eachSlabCorner(func(p orient.Vec) { lowest = min(lowest, p.Z) })
		if !near(lowest, baseTop+clearing, 1e-9) {
			t.Errorf("dip %g: lowest corner at %.3f cm, want %.3f", d, lowest, baseTop+clearing)
		}
		// The wedge carries the slab from below and stands on the base.
		w := sc.wedge()
		for i := range w.n {
			_, _, n := sc.coords(w.p[i])
			if n > -rock.Thick+1e-9 {
				t.Errorf("dip %g: corner %d of the wedge is inside the slab, n = %.2f", d, i, n)
			}
			if h := dot(w.p[i], sc.H); math.Abs(h) > baseH {
				t.Errorf("dip %g: corner %d of the wedge at %.1f cm, beyond the base", d, i, h)
			}
		}
		if shoe, ok := sc.shoe(); ok {
			for i := range shoe.n {
				if _, b, _ := sc.coords(shoe.p[i]); b < rock.HalfB-1e-9 {
					t.Errorf("dip %g: corner %d of the shoe is inside the slab, b = %.2f", d, i, b)
				}
			}
		}
	}
}
