package stage

import (
	"testing"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// The painting order is exact only while the eye is above the plane of the
// top, the slab is below it and the instrument is not.
func TestPaintingOrderHolds(t *testing.T) {
	eachScene(func(sc *scene) {
		if _, _, n := sc.coords(sc.lens.eye); n < 1 {
			t.Fatalf("dip %.0f: eye is %.2f cm above the plane of the top, want at least 1", sc.p.Plane.Dip.Degrees(), n)
		}
		sc.tool.eachCorner(func(p orient.Vec) {
			if _, _, n := sc.coords(p); n < -1e-9 {
				t.Fatalf("a corner of the instrument is %.3g cm in the rock", -n)
			}
		})
		if sc.lens.eye.Z <= sc.top.Z {
			t.Fatalf("eye at %.1f cm, top of the slab at %.1f: water would be seen from below", sc.lens.eye.Z, sc.top.Z)
		}
	})
}

func TestSlabStaysInThePicture(t *testing.T) {
	eachScene(func(sc *scene) {
		r := sc.p.Rect
		for i := range 8 {
			a, b := corners4(i&3, rock.HalfA, rock.HalfB)
			x, y := sc.lens.project(sc.on(a, b, -rock.Thick*float64(i>>2)))
			if x < r.X || x > r.X+r.W || y < r.Y || y > r.Y+r.H {
				t.Fatalf("plane %v, camera %v: corner of the slab at %.0f, %.0f, outside %v", sc.p.Plane, sc.p.Camera, x, y, r)
			}
		}
		for i := range 12 {
			x, y := sc.lens.project(mul(ringOuter, orient.AzimuthOf(orient.Angle(i)*orient.Full/12).Vec()))
			if x < r.X || x > r.X+r.W || y < r.Y || y > r.Y+r.H {
				t.Fatalf("plane %v, camera %v: ring at %.0f, %.0f, outside %v", sc.p.Plane, sc.p.Camera, x, y, r)
			}
		}
	})
}

func TestDefaultCameraSeesFaceAndRock(t *testing.T) {
	for _, d := range dips {
		for _, s := range strikes {
			p := planeOf(s, d)
			tests := []struct {
				name string
				o    sim.Pose
				min  float64
			}{
				{"level", level(p), 0.36},
				{"turned end for end", poseOf(p, sim.OnEdge, orient.Half, p.Dip), 0.36},
				{"on its side, left edge", upright(p), 0.42},
				{"on its side, right edge", poseOf(p, sim.OnSide, -orient.Right, orient.Right), 0.42},
			}
			for _, tt := range tests {
				c := DefaultCamera(p, tt.o)
				eye := direction(c.Azimuth, c.Elevation)
				if got := dot(eye, tt.o.Frame.Out); got < tt.min {
					t.Errorf("%v %s: sine between sight and face %.2f, want at least %.2f", p, tt.name, got, tt.min)
				}
				if got := dot(eye, p.Normal()); got < grazing {
					t.Errorf("%v %s: sine between sight and rock %.2f, want at least %.2f", p, tt.name, got, grazing)
				}
			}
		}
	}
}

// A face that cannot be seen from nearby does not drag the view away.
func TestHiddenFaceKeepsTheUsualView(t *testing.T) {
	p := planeOf(137, 78)
	o := poseOf(p, sim.OnSide, degrees(165), orient.Right)
	if got, want := DefaultCamera(p, o), usualCamera(p, sim.OnSide); got != want {
		t.Errorf("got %v, want the usual view %v", got, want)
	}
}

func TestStartingViews(t *testing.T) {
	p := planeOf(35, 30)
	tests := []struct {
		name   string
		o      sim.Pose
		az, el float64
	}{
		{"for the strike", level(p), 182, 30},
		{"for the dip", upright(p), 59, 27},
	}
	for _, tt := range tests {
		c := DefaultCamera(p, tt.o)
		if !near(c.Azimuth.Degrees(), tt.az, 1e-9) || !near(c.Elevation.Degrees(), tt.el, 1e-9) {
			t.Errorf("%s: got %.1f, %.1f, want %.1f, %.1f", tt.name, c.Azimuth.Degrees(), c.Elevation.Degrees(), tt.az, tt.el)
		}
	}
}

func TestClampKeepsTheOrbit(t *testing.T) {
	p := planeOf(200, 20)
	o := level(p)
	base := DefaultCamera(p, o)
	c := base.Orbit(degrees(200), degrees(-80), p, o)
	if got := c.Azimuth.From(base.Azimuth); got > OrbitReach+1e-9 {
		t.Errorf("turn: got %.1f°, want at most %.0f°", got.Degrees(), OrbitReach.Degrees())
	}
	if got := c.Elevation; got != ElevationMin {
		t.Errorf("elevation: got %.1f°, want %.0f°", got.Degrees(), ElevationMin.Degrees())
	}
}

func TestBetweenGoesTheShortWay(t *testing.T) {
	c := Camera{Azimuth: orient.AzimuthOf(degrees(350))}
	d := Camera{Azimuth: orient.AzimuthOf(degrees(20)), Elevation: degrees(40), Close: 1}
	m := c.Between(d, 0.5)
	if got := m.Azimuth.From(orient.AzimuthOf(degrees(5))); got.Abs() > 1e-12 {
		t.Errorf("half-way: got %.2f°, want 5°", m.Azimuth.Degrees())
	}
	if m.Elevation != degrees(20) || m.Close != 0.5 {
		t.Errorf("half-way: got %v, want elevation 20° and 0.5 close", m)
	}
}

// Close up the whole instrument is in the picture, and its dial figures
// (0.265 cm high) are at least 8.5 px tall before foreshortening.
func TestCloseViewShowsTheInstrument(t *testing.T) {
	for _, d := range dips {
		p := planeOf(35, d)
		for _, o := range []sim.Pose{level(p), upright(p)} {
			q := params(p, o)
			q.Camera.Close = 1
			sc := sceneOf(q)
			x0, y0, x1, y1 := sc.tool.box(&sc.lens)
			if x0 < wide.X || y0 < wide.Y || x1 > wide.X+wide.W || y1 > wide.Y+wide.H {
				t.Errorf("dip %g: instrument covers %.0f…%.0f, %.0f…%.0f, want inside %v", d, x0, x1, y0, y1, wide)
			}
			if got := 0.265 * sc.lens.scale; got < 8.5 {
				t.Errorf("dip %g: figures are %.1f px tall, want at least 8.5", d, got)
			}
		}
	}
}
