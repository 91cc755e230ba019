package stage

import (
	"math"
	"testing"

	"cuesta/scenes/draw"
)

// By energy: a solid sphere that rolls without slipping from rest has, after a
// drop h, 7/10·v² = g·h (its moment of inertia is 2/5·m·r²; any handbook of
// mechanics). The speed is taken from the way by differences.
func TestTheBallKeepsItsEnergy(t *testing.T) {
	for _, dip := range []float64{2, 10, 30, 45, 70, 90} {
		d := degrees(dip)
		end := math.Sqrt(2 * 12 / (5.0 / 7 * gravity * d.Sin())) // when it has come 12 cm
		const dt = 1e-6
		way := BallRoll(d, end)
		v := (BallRoll(d, end+dt) - BallRoll(d, end-dt)) / (2 * dt)
		if got, want := 0.7*v*v, gravity*way*d.Sin(); math.Abs(got-want) > 1e-4*want {
			t.Errorf("dip %g: got 7/10·v² = %g, want g·h = %g", dip, got, want)
		}
	}
}

func TestTheBallStopsAtTheRimAndRestsOnALevelBed(t *testing.T) {
	if got := BallRoll(degrees(30), 100); got != ballTo-ballFrom || !BallRests(degrees(30), 100) {
		t.Errorf("got %g", got)
	}
	if BallRests(degrees(30), 0.1) || BallRoll(0, 100) != 0 || !BallRests(0, 0) {
		t.Error("a level bed, or one on which the ball still rolls")
	}
}

// The ball rolls along the dip direction: on the map its way is square to the
// strike line.
func TestTheBallRollsSquareToTheStrike(t *testing.T) {
	for _, s := range strikes {
		p := planeOf(s, 30)
		q := params(p, level(p))
		q.Bare, q.Reveal.Ball, q.Camera = true, true, AboveCamera()
		from, _ := sceneOf(q).ballAt()
		q.Reveal.BallTime = 0.2
		sc := sceneOf(q)
		to, _ := sc.ballAt()
		way := sub(to, from)
		az := math.Mod(math.Atan2(way.X, way.Y)*180/math.Pi+720, 360)
		if !near(az, math.Mod(s+90, 360), 1e-9) && !near(math.Abs(az-math.Mod(s+90, 360)), 360, 1e-9) {
			t.Errorf("strike %g: the ball rolls to %g", s, az)
		}
		x0, y0 := sc.lens.project(from)
		x1, y1 := sc.lens.project(to)
		onMap := math.Mod(math.Atan2(x1-x0, y0-y1)*180/math.Pi+720, 360)
		if d := math.Abs(math.Remainder(onMap-az, 360)); d > 12 {
			t.Errorf("strike %g: on the map the ball rolls to %g, in the world to %g", s, onMap, az)
		}
	}
}

// Magnifying keeps the place in the middle and enlarges all else.
func TestZoomKeepsThePlace(t *testing.T) {
	p := planeOf(35, 30)
	q := params(p, level(p))
	plain := sceneOf(q)
	q.Zoom = Zoom{K: 2.5, X: 300, Y: 200}
	large := sceneOf(q)
	for _, v := range []float64{-5, 0, 7} {
		x0, y0 := plain.lens.project(plain.on(v, v, 0))
		x1, y1 := large.lens.project(large.on(v, v, 0))
		if !near(x1, 300+2.5*(x0-300), 1e-6) || !near(y1, 200+2.5*(y0-200), 1e-6) {
			t.Errorf("%g: got %g, %g from %g, %g", v, x1, y1, x0, y0)
		}
	}
}

func TestABareBenchHasNoInstrument(t *testing.T) {
	p := planeOf(35, 30)
	q := params(p, level(p))
	var with, without draw.List
	New().Draw(&with, q)
	q.Bare = true
	New().Draw(&without, q)
	if len(without.Meshes) >= len(with.Meshes) {
		t.Errorf("got %d meshes without the instrument and %d with it", len(without.Meshes), len(with.Meshes))
	}
}

func TestABallThatRollsAllocatesNothing(t *testing.T) {
	p := planeOf(35, 30)
	q := params(p, level(p))
	q.Bare, q.Reveal = true, Overlays{Ball: true, Ends: true, Strike: true}
	st := New()
	var l draw.List
	draws := func() {
		q.Reveal.BallTime += 1e-4
		l.Reset(928, 664)
		st.Draw(&l, q)
	}
	for range 20 {
		draws()
	}
	if got := testing.AllocsPerRun(50, draws); got > 0 {
		t.Errorf("got %v allocations a picture, want none", got)
	}
}
