package stage

import (
	"math"
	"testing"

	"cuesta/orient"
)

// What makes a shoreline the strike: it lies in the rock and in a level plane
// at once, and its azimuth is the strike.
func TestShorelineIsTheStrike(t *testing.T) {
	for _, s := range strikes {
		for _, d := range dips[1:] {
			for _, progress := range []float64{0, 0.3, 1} {
				p := planeOf(s, d)
				q := params(p, level(p))
				q.Reveal = Overlays{Water: true, Progress: progress}
				sc := sceneOf(q)
				from, to := sc.wave(sc.water.from, 0), sc.wave(sc.water.to, 0)
				for _, at := range []orient.Vec{from, to} {
					if _, _, n := sc.coords(at); !near(n, 0, 1e-9) {
						t.Errorf("%g/%g: shore is %.3g cm off the rock", s, d, n)
					}
					if !near(at.Z, sc.water.level, 1e-9) {
						t.Errorf("%g/%g: shore at height %.6f, water at %.6f", s, d, at.Z, sc.water.level)
					}
				}
				along := sub(to, from)
				az := orient.AzimuthOf(orient.Atan2(along.X, along.Y))
				if got := az.From(p.Strike); got.Abs() > 1e-9 {
					t.Errorf("%g/%g: shore runs to %.6f°, want the strike", s, d, az.Degrees())
				}
			}
		}
	}
}

// The sheet lies level on the falling side, above the rock and never in it.
func TestWaterLiesOnTheFallingSide(t *testing.T) {
	for _, d := range dips[1:] {
		p := planeOf(35, d)
		q := params(p, level(p))
		q.Reveal = Overlays{Water: true, Progress: 1}
		sc := sceneOf(q)
		for _, a := range []float64{sc.water.from, 0, sc.water.to} {
			at := sc.wave(a, sc.water.out)
			if _, _, n := sc.coords(at); n < 0 {
				t.Errorf("dip %g: far edge of the water is %.2f cm in the rock", d, -n)
			}
			if !near(at.Z, sc.water.level, 1e-9) {
				t.Errorf("dip %g: far edge at height %.4f, want %.4f", d, at.Z, sc.water.level)
			}
		}
	}
}

func TestWaterRises(t *testing.T) {
	p := planeOf(35, 30)
	last := math.Inf(-1)
	for _, progress := range []float64{0, 0.25, 0.5, 0.75, 1} {
		q := params(p, level(p))
		q.Reveal = Overlays{Water: true, Progress: progress}
		sc := sceneOf(q)
		if sc.water.level <= last {
			t.Errorf("progress %g: level %.2f, want above %.2f", progress, sc.water.level, last)
		}
		last = sc.water.level
	}
	// At its highest it reaches the seated edge of a level plate.
	sc := sceneOf(func() Params {
		q := params(p, level(p))
		q.Reveal = Overlays{Water: true, Progress: 1}
		return q
	}())
	if !near(sc.water.level, sc.tool.low, 1e-9) {
		t.Errorf("water at %.4f, seated edge at %.4f, want the same", sc.water.level, sc.tool.low)
	}
	if sc.dips() {
		t.Error("a level plate on the shore counts as under water")
	}
}

// The arrow runs straight down the dip: along the steepest way on the rock.
func TestArrowAndAngle(t *testing.T) {
	for _, d := range dips[1:] {
		p := planeOf(137, d)
		sc := sceneOf(params(p, level(p)))
		way := orient.Unit(sub(sc.on(sc.arrowA, arrowEnd, 0), sc.on(sc.arrowA, anchorB, 0)))
		plunge := orient.Asin(-way.Z)
		if got := (plunge - p.Dip).Abs(); got > 1e-9 {
			t.Errorf("dip %g: arrow plunges %.6f°", d, plunge.Degrees())
		}
		end := sub(sc.swept(p.Dip, 9), sc.swept(0, 0))
		if got := dot(orient.Unit(end), way); !near(got, 1, 1e-9) {
			t.Errorf("dip %g: the angle does not end on the arrow, cosine %g", d, got)
		}
		if flat := sub(sc.swept(0, 9), sc.swept(0, 0)); !near(flat.Z, 0, 1e-12) {
			t.Errorf("dip %g: the angle does not start level, %g", d, flat.Z)
		}
	}
}

// A right hand on the rock: palm down, fingers down the dip, the thumb points
// along the right-hand strike (common practice).
func TestHandIsARightHand(t *testing.T) {
	p := planeOf(35, 30)
	sc := sceneOf(params(p, level(p)))
	place := func(x, y float64) orient.Vec { return sc.on(sc.handA()-handSize*x, handB-handSize*y, 0) }
	fingers := orient.Unit(sub(place(0, -8), place(0, 0)))
	thumb := orient.Unit(sub(place(-7, 0), place(0, 0)))
	if got := dot(fingers, p.DownDip()); !near(got, 1, 1e-9) {
		t.Errorf("fingers and dip: cosine %g, want 1", got)
	}
	if got := dot(thumb, p.StrikeVec()); !near(got, 1, 1e-9) {
		t.Errorf("thumb and strike: cosine %g, want 1", got)
	}
	// Seen from the back of a right hand the thumb is a quarter turn
	// anticlockwise from the fingers.
	if got := dot(cross(fingers, thumb), p.Normal()); !near(got, 1, 1e-9) {
		t.Errorf("fingers × thumb along the normal: %g, want 1", got)
	}
	if x := thumb2(); x >= 0 {
		t.Errorf("drawn thumb ends at x = %g, want left of the palm", x)
	}
}

// thumb2 is the x of the tip of the drawn thumb.
func thumb2() float64 {
	p := thumb()
	return p.Points[len(p.Points)-1].X
}
