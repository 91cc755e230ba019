package stage

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

var everything = Overlays{Strike: true, Arrow: true, Water: true, Progress: 1, Hand: true, Numbers: true, Yours: true, YoursPlane: planeOf(47, 38)}

func triangles(l *draw.List) int {
	n := 0
	for _, m := range l.Meshes {
		n += len(m.Indices) / 3
	}
	return n
}

// The picture must cost little on a software renderer: few triangles for the
// bench, a few more while the answer is shown.
func TestTriangleBounds(t *testing.T) {
	st := New()
	var l draw.List
	for _, d := range dips {
		p := planeOf(35, d)
		for _, o := range poses(p) {
			for _, reveal := range []Overlays{{}, everything} {
				q := params(p, o)
				q.Reveal = reveal
				l.Reset(928, 664)
				st.Draw(&l, q)
				most := 1500
				if reveal.Any() {
					most = 2000
				}
				if got := triangles(&l); got > most {
					t.Errorf("dip %g, overlays %v: got %d triangles, want at most %d", d, reveal.Any(), got, most)
				}
			}
		}
	}
}

// While the camera orbits and the needle swings nothing is allocated.
func TestSteadyStateAllocatesNothing(t *testing.T) {
	p := planeOf(35, 30)
	for i, name := range theme.Names {
		q := params(p, [...]sim.Pose{level(p), lidded(p, orient.Right, p.Dip), flatOn(p, orient.Right), lidded(p, -orient.Right, p.Dip)}[i])
		q.Theme = theme.Of(name)
		q.Reveal = everything
		st := New()
		var l draw.List
		base := q.Camera
		i := 0
		frame := func() {
			i++
			q.Camera = base.Orbit(degrees(50*math.Sin(float64(i)/9)), degrees(10*math.Cos(float64(i)/7)), q.Plane, q.Pose)
			q.Observation.Dial.Needle = degrees(float64(7*i) / 10)
			q.Observation.Round.Right = math.Sin(float64(i))
			q.Observation.Sensor = sim.Sensor{Direction: orient.AzimuthOf(degrees(float64(i))), Dip: degrees(float64(i % 90))}
			l.Reset(928, 664)
			st.Draw(&l, q)
		}
		for range 200 {
			frame()
		}
		if got := testing.AllocsPerRun(200, frame); got > 0 {
			t.Errorf("%v: %g allocations a frame, want 0", name, got)
		}
	}
}

// Textures keep their identity and version from frame to frame.
func TestTexturesAreKept(t *testing.T) {
	p := planeOf(35, 30)
	q := params(p, level(p))
	st := New()
	type id struct {
		t *draw.Texture
		v uint64
	}
	textures := func() map[id]bool {
		var l draw.List
		l.Reset(928, 664)
		st.Draw(&l, q)
		set := map[id]bool{}
		for _, m := range l.Meshes {
			if m.Texture != nil {
				set[id{m.Texture, m.Texture.Version}] = true
			}
		}
		return set
	}
	before := textures()
	q.Camera = q.Camera.Orbit(degrees(30), degrees(12), p, q.Pose)
	for k := range textures() {
		if !before[k] {
			t.Errorf("texture of %d×%d was made anew by an orbit", k.t.W, k.t.H)
		}
	}
}

// Every triangle lies near the picture: nothing is projected from behind the
// eye, nothing is not a number.
func TestVerticesAreSane(t *testing.T) {
	st := New()
	var l draw.List
	for _, d := range dips {
		p := planeOf(137, d)
		for _, o := range poses(p) {
			q := params(p, o)
			q.Reveal = everything
			l.Reset(928, 664)
			st.Draw(&l, q)
			for _, m := range l.Meshes {
				for _, v := range m.Vertices {
					x, y := float64(v.X), float64(v.Y)
					if math.IsNaN(x) || math.IsNaN(y) || math.Abs(x) > 4000 || math.Abs(y) > 4000 {
						t.Fatalf("dip %g, swing %.0f°: vertex at %g, %g", d, o.Swing.Degrees(), x, y)
					}
					if v.R > v.A+1e-4 || v.G > v.A+1e-4 || v.B > v.A+1e-4 {
						t.Fatalf("dip %g: colour factor %g %g %g beyond alpha %g", d, v.R, v.G, v.B, v.A)
					}
				}
			}
		}
	}
}

// Labels cover neither the instrument nor each other, and stay inside.
func TestLabelsKeepClear(t *testing.T) {
	st := New()
	var l draw.List
	for _, s := range strikes {
		for _, d := range dips {
			p := planeOf(s, d)
			for _, o := range []sim.Pose{level(p), upright(p), poseOf(p, sim.OnEdge, orient.Half, p.Dip)} {
				q := params(p, o)
				q.Reveal = Overlays{Strike: true, Arrow: true, Water: true, Progress: 1, Numbers: true}
				q.Keep = [4]draw.Rect{{X: 32, Y: 24, W: 190, H: 64}, {X: 630, Y: 14, W: 290, H: 30}}
				l.Reset(928, 664)
				st.Draw(&l, q)
				sc := &st.sc
				for i, b := range sc.placed[4:sc.boxes] {
					if sc.toolHull.meets(b) {
						t.Errorf("%g/%g: label %d covers the instrument", s, d, i)
					}
					if d > 0 && sc.crosses(b, sc.on(sc.arrowA, anchorB, 0), sc.on(sc.arrowA, arrowEnd, 0)) {
						t.Errorf("%g/%g: label %d crosses the arrow", s, d, i)
					}
					for j, c := range sc.placed[:4+i] {
						if b.meets(c) {
							t.Errorf("%g/%g: label %d covers letter or label %d", s, d, i, j)
						}
					}
					for _, r := range q.Keep[:2] {
						if b.meets(box{r.X, r.Y, r.W, r.H}) {
							t.Errorf("%g/%g: label %d covers the title", s, d, i)
						}
					}
					if b.x < 0 || b.y < 0 || b.x+b.w > wide.W || b.y+b.h > wide.H {
						t.Errorf("%g/%g: label %d leaves the picture", s, d, i)
					}
				}
			}
		}
	}
}

// The letters of the ring are never covered by rock or instrument.
func TestLettersKeepClear(t *testing.T) {
	st := New()
	var l draw.List
	for _, s := range strikes {
		for _, d := range dips {
			p := planeOf(s, d)
			q := params(p, level(p))
			l.Reset(928, 664)
			st.Draw(&l, q)
			sc := &st.sc
			if sc.boxes != 4 {
				t.Fatalf("got %d letters, want 4", sc.boxes)
			}
			for i, b := range sc.placed[:4] {
				if sc.slabHull.meets(b) || sc.toolHull.meets(b) {
					t.Errorf("%g/%g: %s is covered", s, d, quarters[i])
				}
			}
		}
	}
}

// A letter above the rock comes down from words that stand over it, but not onto
// the rock.
func TestLettersComeDownFromWords(t *testing.T) {
	st := New()
	var l draw.List
	p := planeOf(35, 30)
	q := params(p, level(p))
	l.Reset(928, 664)
	st.Draw(&l, q)
	free := st.sc.placed[0]
	touched := free.h / 4
	q.Keep = [4]draw.Rect{{W: 928, H: free.y + touched}}
	st.Draw(&l, q)
	if b := st.sc.placed[0]; b.y < free.y+touched || b.x != free.x || st.sc.slabHull.meets(b) || st.sc.toolHull.meets(b) {
		t.Errorf("N stands at %v, want it %.1f px lower than %v and off the rock", b, touched, free)
	}
}

func TestInstrumentBounds(t *testing.T) {
	p := planeOf(35, 30)
	st := New()
	var l draw.List
	l.Reset(928, 664)
	st.Draw(&l, params(p, level(p)))
	r := st.InstrumentBounds()
	if r.W < 200 || r.H < 80 || r.X < 0 || r.X+r.W > 928 || r.Y < 0 || r.Y+r.H > 664 {
		t.Errorf("got %v, want a box of some hundred pixels inside the picture", r)
	}
}

func TestNumbers(t *testing.T) {
	tests := []struct {
		kind        labelKind
		strike, dip int
		want        string
	}{
		{strikeLabel, 35, 30, "strike 035°"},
		{strikeLabel, 0, 5, "strike 000°"},
		{dipLabel, 0, 5, "dip 05°"},
		{yoursLabel, 47, 8, "yours 047/08"},
	}
	for _, tt := range tests {
		if got := tt.kind.text(labelKey{strike: tt.strike, dip: tt.dip}); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

// Tiny and odd rectangles draw something or nothing, but never fail.
func TestOddRectangles(t *testing.T) {
	p := planeOf(35, 30)
	st := New()
	var l draw.List
	for _, r := range []draw.Rect{{}, {W: 1, H: 1}, {X: 10.5, Y: -3.25, W: 40, H: 900}, {W: 900, H: 40}, {X: 3, W: 3000, H: 2000}} {
		for _, close := range []float64{0, 1} {
			q := params(p, upright(p))
			q.Rect, q.Reveal, q.Camera.Close = r, everything, close
			l.Reset(r.W, r.H)
			st.Draw(&l, q)
			if got := len(l.Regions); got != 1 {
				t.Errorf("%v: got %d regions, want 1", r, got)
			}
			for _, m := range l.Meshes {
				for _, v := range m.Vertices {
					if v.X != v.X || v.Y != v.Y {
						t.Fatalf("%v: a vertex is not a number", r)
					}
				}
			}
		}
	}
}
