package instrument

import (
	"math"
	"testing"

	"cuesta/orient"
)

const (
	deg = orient.Degree
	dt  = 1.0 / 120
)

// Level Developments Ltd 2020, Sensitivity and accuracy of spirit level vials:
// tilt for 2 mm of bubble travel. The table is multiples of a rounded 0.955°,
// so it holds to one part in ten thousand or one unit of its last digit.
var sensitivities = []struct{ radius, want float64 }{
	{30, 3.8200}, {60, 1.9100}, {120, 0.9550}, {240, 0.4775}, {480, 0.2388},
}

func TestSensitivity(t *testing.T) {
	for _, c := range sensitivities {
		r := RoundLevel{Radius: c.radius * Millimetre}.Sensitivity().Degrees()
		u := TubeLevel{Radius: c.radius * Millimetre}.Sensitivity().Degrees()
		if tol := max(1, c.want) * 1e-4; math.Abs(r-c.want) > tol || math.Abs(u-c.want) > tol {
			t.Errorf("radius %v mm: got %v° and %v°, want %v°", c.radius, r, u, c.want)
		}
	}
}

// The same table, the other way round: tilted by so much, the bubble comes to
// rest 2 mm from the middle, on the high side.
func TestBubbleTravelsTwoMillimetres(t *testing.T) {
	for _, c := range sensitivities {
		tilt := orient.Angle(c.want) * deg
		l := StandardRound()
		l.Radius = c.radius * Millimetre
		goal := l.Goal(tilt.Sin(), 0, tilt.Cos())
		tube := StandardTube()
		tube.Radius = c.radius * Millimetre
		along := tube.Goal(tilt.Sin(), tilt.Cos())
		if d := math.Abs(goal.Right - travel); d > 1e-6 || goal.Forward != 0 {
			t.Errorf("radius %v mm, round: got %+v", c.radius, goal)
		}
		if math.Abs(along-travel) > 1e-6 {
			t.Errorf("radius %v mm, tube: got %v", c.radius, along)
		}
	}
}

func TestStandardLevels(t *testing.T) {
	r, u := StandardRound(), StandardTube()
	if got := r.Sensitivity().Degrees(); math.Abs(got-0.955) > 5e-4 {
		t.Errorf("round: %v°", got)
	}
	if got := u.Sensitivity().Degrees(); math.Abs(got-0.4775) > 5e-4 {
		t.Errorf("tube: %v°", got)
	}
}

func TestRoundGoal(t *testing.T) {
	l := StandardRound()
	for _, c := range []struct {
		name               string
		right, forward, up float64
		want               Offset
	}{
		{"level", 0, 0, 1, Offset{}},
		{"right side high", math.Sin(0.01), 0, math.Cos(0.01), Offset{Right: 0.01 * l.Radius}},
		{"forward end low", 0, -math.Sin(0.02), math.Cos(0.02), Offset{Forward: -0.02 * l.Radius}},
		{"on its side", 1, 0, 0, Offset{Right: 2 * l.Reach()}},
		{"on its face", 0, 0, -1, Offset{Forward: 2 * l.Reach()}},
	} {
		got := l.Goal(c.right, c.forward, c.up)
		if math.Abs(got.Right-c.want.Right) > 1e-12 || math.Abs(got.Forward-c.want.Forward) > 1e-12 {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestTubeGoal(t *testing.T) {
	l := StandardTube()
	for _, c := range []struct {
		name                string
		along, across, want float64
	}{
		{"level", 0, 1, 0},
		{"level, upside down", 0, -1, 0},
		{"index end high", math.Sin(0.01), math.Cos(0.01), 0.01 * l.Radius},
		{"index end low", -math.Sin(0.01), math.Cos(0.01), -0.01 * l.Radius},
		{"upright", 1, 0, 2 * l.Reach()},
		{"lying on its side", 0, 0, 0},
	} {
		if got := l.Goal(c.along, c.across); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
	}
}

// A bubble settles in about half a second and hardly overshoots (design
// assumption).
func TestBubbleSettlesInHalfASecond(t *testing.T) {
	m := Motion{}
	const goal = 5 * Millimetre
	for i := range 120 {
		m = m.Toward(goal, dt)
		if m.At > 1.001*goal {
			t.Fatalf("overshoots to %v after %d steps", m.At, i)
		}
		if i == 60 && math.Abs(m.At-goal) > 0.05*goal {
			t.Errorf("after half a second at %v of %v", m.At, goal)
		}
		if i == 6 && m.At > 0.5*goal {
			t.Errorf("jumps to %v in 50 ms", m.At)
		}
	}
	for range 600 {
		m = m.Toward(goal, dt)
	}
	if m != (Motion{At: goal}) {
		t.Errorf("never comes to rest: %+v", m)
	}
}

func TestWallStopsTheBubble(t *testing.T) {
	l := StandardRound()
	var s Spot
	for range 240 {
		s = l.Step(s, l.Goal(0.6, 0.8, 0), dt)
		if d := s.distance(); d > l.Reach()+1e-12 {
			t.Fatalf("the bubble stands %v beyond the wall", d-l.Reach())
		}
	}
	if !l.AtWall(s) || l.Centred(s) {
		t.Errorf("at the wall %v, centred %v", l.AtWall(s), l.Centred(s))
	}
	if got := s.Forward.At / s.Right.At; math.Abs(got-0.8/0.6) > 1e-3 {
		t.Errorf("stands at %+v, not on the high side", s)
	}
	for range 240 {
		s = l.Step(s, Offset{}, dt)
	}
	if l.AtWall(s) || !l.Centred(s) {
		t.Errorf("level again: at the wall %v, centred %v", l.AtWall(s), l.Centred(s))
	}
}

func TestEndStopsTheTubeBubble(t *testing.T) {
	l := StandardTube()
	var m Motion
	for range 240 {
		m = l.Step(m, l.Goal(-1, 0), dt)
	}
	if !l.AtEnd(m) || l.Centred(m) || m.At != -l.Reach() {
		t.Errorf("got %+v", m)
	}
	if got, want := l.InHalfGaps(m), -(14.25-4.2)/5.6; math.Abs(got-want) > 1e-12 {
		t.Errorf("got %v half gaps, want %v", got, want)
	}
}

// Centred means wholly inside the marks: with the drawn proportions a bubble
// may stand 1.3 mm and 1.4 mm off.
func TestCentred(t *testing.T) {
	r, u := StandardRound(), StandardTube()
	for _, c := range []struct {
		off   float64
		round bool
		tube  bool
	}{{0, true, true}, {1.29, true, true}, {1.31, false, true}, {1.39, false, true}, {1.41, false, false}} {
		off := c.off * Millimetre
		if got := r.Centred(Spot{Forward: Motion{At: -off}}); got != c.round {
			t.Errorf("round, %v mm: got %v", c.off, got)
		}
		if got := u.Centred(Motion{At: off}); got != c.tube {
			t.Errorf("tube, %v mm: got %v", c.off, got)
		}
	}
}
