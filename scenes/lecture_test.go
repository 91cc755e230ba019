package scenes

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/scenes/lesson"
	"cuesta/scenes/session"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// projectors are the pictures a lecture is shown in: the common sizes, one of
// them narrow, one of four times the pixels.
var projectors = [][2]float64{{1920, 1080}, {1280, 720}, {1024, 768}, {3840, 2160}}

type room struct {
	*Lecture
	t    testing.TB
	w, h float64
}

func lectureOf(t testing.TB, text string) room {
	t.Helper()
	l, err := lesson.Parse("test", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return inRoom(t, l, Settings{}, 1920, 1080)
}

func inRoom(t testing.TB, l lesson.Lesson, s Settings, w, h float64) room {
	t.Helper()
	x, err := NewLecture(l, LectureOptions{Settings: s})
	if err != nil {
		t.Fatal(err)
	}
	r := room{x, t, w, h}
	r.wait(0)
	return r
}

func (r room) frame(f input.Frame) []sim.Command {
	f.W, f.H, f.Scale = r.w, r.h, 1
	return r.Update(f)
}

func (r room) wait(ticks int) {
	for ; ticks > 20; ticks -= 20 {
		r.frame(input.Frame{Ticks: 20})
	}
	r.frame(input.Frame{Ticks: ticks})
}

func (r room) key(k input.Key) { r.frame(input.Frame{Presses: []input.Press{{Key: k}}}) }

func (r room) typed(s string) {
	for _, c := range s {
		r.frame(input.Frame{Presses: []input.Press{{Rune: c}}})
	}
}

// press presses the control of a name.
func (r room) press(name string) {
	r.t.Helper()
	n := r.find(name)
	if n == nil || n.Disabled {
		r.t.Fatalf("step %d: there is no control %q to press; there are %q", r.play.At()+1, name, r.names())
	}
	r.frame(input.Frame{Acts: []input.Act{{Kind: input.Activate, ID: n.ID}}})
}

func (r room) find(name string) *describe.Node {
	var found *describe.Node
	visit(&r.Description().Root, func(n *describe.Node) {
		if n.Focusable && (n.Name == name || strings.HasPrefix(n.Name, name+":")) {
			found = n
		}
	})
	return found
}

func (r room) names() []string {
	var out []string
	for _, n := range r.Description().Order() {
		out = append(out, n.Name)
	}
	return out
}

func (r room) said() string {
	var out []string
	visit(&r.Description().Root, func(n *describe.Node) { out = append(out, n.Name, n.Value) })
	return strings.Join(out, "\n")
}

const talk = `title = "Two beds"
plane = "035/30"
seed = 3
[[step]]
ask = "What is level here?"
answer = "The shoreline."
[[step]]
show = ["water", "strike", "ball"]
say = "Water."
[[step]]
pose = { swing = 20, roll = 5 }
hide = "all"
show = ["instrument", "levels", "scale"]
say = "The plate, off level."
[[step]]
do = ["swing -20", "roll -5", "tap"]
show = ["reading", "curve"]
say = "Level."
[[step]]
mistake = "other-end"
hide = ["curve", "reading"]
show = ["student"]
view = "strike"
say = "A student."
[[step]]
plane = "200/70"
hide = "all"
show = ["strike", "ends", "numbers", "arrow", "hand"]
view = "above"
say = "Another bed."
`

// eachStep calls f at the end of each step of the shipped lessons, with its
// answer revealed.
func eachStep(t *testing.T, s Settings, w, h float64, f func(r room, where string)) {
	for _, l := range lesson.Shipped() {
		r := inRoom(t, l, s, w, h)
		for i := range l.Steps {
			r.play.Finish()
			r.play.Reveal()
			r.hurry()
			r.wait(0)
			f(r, fmt.Sprintf("%s, step %d, %gx%g", l.Name, i+1, w, h))
			if _, err := r.play.Next(); err != nil {
				t.Fatal(err)
			}
			r.begun()
		}
	}
}

// written are all texts of the zones that are drawn.
func (r room) written() []draw.Text {
	var out []draw.Text
	for i := range r.screen.zones {
		if z := &r.screen.zones[i]; z.texture.W > 0 && z.rect.W > 0 {
			out = append(out, z.list.Texts...)
		}
	}
	return out
}

// Legible from the back: no type under 2.5 % of the height of the picture, a
// rule of thumb for projected text (common practice: letters of 1/50 to 1/40 of
// the height of the picture).
func TestNoTypeOfALectureIsSmall(t *testing.T) {
	const least = .025
	for _, p := range projectors {
		eachStep(t, Settings{}, p[0], p[1], func(r room, where string) {
			for _, x := range r.written() {
				if x.Size < least*r.h {
					t.Fatalf("%s: %q is %.1f px high, want at least %.1f", where, x.S, x.Size, least*r.h)
				}
			}
			p := r.stageParams(theme.Of(theme.Light))
			if label := 17 * p.Unit * p.TextScale; label < least*r.h {
				t.Fatalf("%s: labels on the rock are %.1f px high", where, label)
			}
			// The figures of dial and arc are .25 cm high, in a window of 1.36 cm.
			if d := r.screen.lay.Dial; r.shows(lesson.Scale) && .25*d.R/1.36 < least*r.h {
				t.Fatalf("%s: the scale has a radius of %.0f px", where, d.R)
			}
			if r.shows(lesson.Curve) {
				var l draw.List
				r.screen.column(r.Lecture, &l, theme.Of(theme.Light))
				for _, list := range r.curve.lists {
					for _, x := range list.Texts {
						if x.Size < least*r.h {
							t.Fatalf("%s: %q in the diagram is %.1f px high", where, x.S, x.Size)
						}
					}
				}
			}
		})
	}
}

// textBox is where a text stands.
func textBox(x draw.Text) draw.Rect {
	w := draw.Measure(x.Font, x.Size, x.S, x.Track)
	r := draw.Rect{X: x.At.X, Y: x.At.Y - .75*x.Size, W: w, H: x.Size}
	switch x.Align {
	case draw.AlignCentre:
		r.X -= w / 2
	case draw.AlignRight:
		r.X -= w
	}
	return r
}

func meet(a, b draw.Rect) bool {
	return a.X < b.X+b.W && b.X < a.X+a.W && a.Y < b.Y+b.H && b.Y < a.Y+a.H
}

func TestNothingOfALectureOverlapsOrIsCut(t *testing.T) {
	sizes := append(slices.Clone(projectors), [2]float64{390, 844}, [2]float64{844, 390}, [2]float64{640, 360})
	for _, text := range []TextSize{Text100, Text200} {
		for _, p := range sizes {
			failed := ""
			eachStep(t, Settings{Text: text}, p[0], p[1], func(r room, where string) {
				if failed == where[:12] {
					return
				}
				defer func() {
					if t.Failed() {
						failed = where[:12]
					}
				}()
				all := r.written()
				for i, x := range all {
					b := textBox(x)
					if b.X < -1 || b.Y < -1 || b.X+b.W > r.w+1 || b.Y+b.H > r.h+1 {
						t.Errorf("%s, text %v: %q is cut: %+v", where, text, x.S, b)
					}
					for _, c := range []circle{r.screen.lay.Round, r.screen.lay.Dial} {
						if c.R > 0 && meet(b, draw.Rect{X: c.X - .7*c.R, Y: c.Y - .7*c.R, W: 1.4 * c.R, H: 1.4 * c.R}) {
							if z := r.screen.zones[columnZone]; slices.ContainsFunc(z.list.Texts, func(y draw.Text) bool { return y.S == x.S }) {
								t.Errorf("%s, text %v: %q lies on a magnifier", where, text, x.S)
							}
						}
					}
					for _, y := range all[i+1:] {
						if meet(b, textBox(y)) && r.screen.zones[stripZone].rect.H >= 0 && !r.inStrip(x) && !r.inStrip(y) {
							t.Errorf("%s, text %v: %q and %q overlap: %+v %+v", where, text, x.S, y.S, b, textBox(y))
						}
					}
				}
			})
		}
	}
}

// inStrip says that a text is of the controls, which lie over the picture while
// they are shown.
func (r room) inStrip(x draw.Text) bool {
	return slices.Contains(r.screen.zones[stripZone].list.Texts, x) && !r.screen.lay.Phone
}

func TestALectureByNameAlone(t *testing.T) {
	r := lectureOf(t, talk)
	if strings.Contains(r.said(), "The shoreline.") {
		t.Error("the answer is told before it is revealed")
	}
	r.press("Reveal the answer")
	if !strings.Contains(r.said(), "The shoreline.") || r.find("Reveal the answer").Disabled == false {
		t.Errorf("the answer is not told: %s", r.said())
	}
	for range 3 {
		r.press("Next step")
		if r.play.Running() {
			r.press("Next: to the end of this step")
		}
	}
	r.wait(1400)
	if r.play.At() != 3 || !strings.Contains(r.said(), "Level.") {
		t.Fatalf("at step %d: %s", r.play.At()+1, r.said())
	}
	hash := r.play.Session().World().Hash()
	r.press("Play with the instrument")
	for range 4 {
		r.press("Swing clockwise")
	}
	r.press("Roll right side down")
	r.press("Turn the plate on its side")
	r.press("Turn the arm away from the edge")
	if r.play.Session().World().Hash() == hash {
		t.Error("nothing was moved")
	}
	r.press("Back to the lesson as it stood")
	if r.play.Session().World().Hash() != hash || r.find("Swing clockwise") != nil {
		t.Error("the step does not stand as it stood")
	}
	r.press("Step back")
	for range 2 {
		r.press("Next step")
		r.press("Next: to the end of this step")
	}
	if !strings.Contains(r.said(), "The student wrote 21") {
		t.Errorf("what the student wrote is not told: %s", r.said())
	}
	r.press("Magnify a place")
	r.press("Another place")
	r.press("Magnify a place")
	r.press("Pointer")
	r.press("Blank screen")
	r.press("Blank screen")
	r.press("Settings")
	r.press("Colours: dark")
	if r.Settings().Theme != theme.Dark {
		t.Error("the colours were not changed")
	}
	r.press("Back to the lecture")
	r.press("Next step")
	if !strings.Contains(r.said(), "035") && !strings.Contains(r.said(), "200") {
		t.Errorf("the numbers are not told: %s", r.said())
	}
}

func TestALectureByKeyboardAlone(t *testing.T) {
	r := lectureOf(t, talk)
	next := []input.Key{input.PageDown, input.Right, input.Space, input.Enter}
	n := 0
	for r.play.At() < r.play.Len()-1 && n < 40 {
		r.key(next[n%len(next)])
		n++
	}
	if r.play.At() != 5 {
		t.Fatalf("at step %d after %d strokes", r.play.At()+1, n)
	}
	for range 9 {
		r.key(input.PageUp)
	}
	if r.play.At() != 0 {
		t.Errorf("at step %d, want the first", r.play.At()+1)
	}
	r.key(input.Tab)
	for range 30 {
		if m := r.Description().Find(r.focus); m != nil && m.Name == "Settings" {
			break
		}
		r.key(input.Tab)
	}
	r.key(input.Enter)
	if r.panel != settingsPanel {
		t.Error("Tab and Enter do not open the settings")
	}
	r.key(input.Escape)
	r.typed("?")
	if r.panel != helpPanel || !strings.Contains(r.said(), "reveals the answer") {
		t.Error("? does not tell the keys")
	}
	r.key(input.Escape)
	if r.panel != noPanel {
		t.Error("Escape does not close the keys")
	}
}

// A clicker sends these and nothing else.
func TestAPresentersClicker(t *testing.T) {
	r := lectureOf(t, talk)
	r.key(input.PageDown)
	if r.play.At() != 0 || r.play.Answer() == "" {
		t.Error("the first press does not reveal the answer")
	}
	r.key(input.PageDown)
	r.key(input.PageDown)
	if r.play.At() != 2 {
		t.Errorf("at step %d", r.play.At()+1)
	}
	r.wait(2)
	r.key(input.PageDown)
	if r.play.At() != 3 || !r.play.Busy() {
		t.Error("a needle that comes to rest keeps the presenter waiting")
	}
	r.key(input.PageDown)
	if r.play.At() != 3 || r.play.Busy() {
		t.Error("a press does not bring a step under way to its end")
	}
	r.key(input.PageUp)
	r.typed("b")
	if !r.blank {
		t.Error("B does not blank the screen")
	}
	r.key(input.PageDown)
	if r.blank || r.play.At() != 2 {
		t.Error("the first press after a blank screen does more than bring it back")
	}
	r.key(input.F5)
	if !r.play.IsLive() {
		t.Error("F5 does not begin live play")
	}
	r.key(input.Escape)
	if r.play.IsLive() || r.play.At() != 2 {
		t.Error("Escape does not end live play")
	}
	r.key(input.PageUp)
	if r.play.At() != 1 {
		t.Errorf("PageUp: at step %d", r.play.At()+1)
	}
}

// Whatever a key of a lecture does can be done by a control too.
func TestEveryControlIsDescribed(t *testing.T) {
	r := lectureOf(t, talk)
	r.Leaves(func() {})
	r.wait(0)
	want := []string{"Next", "Step back", "Reveal the answer", "Play with the instrument", "Magnify a place", "Pointer", "Blank screen",
		"Settings", "Keys of a lecture", "Menu"}
	for _, name := range want {
		if r.find(name) == nil && !strings.Contains(fmt.Sprint(r.said()), name) {
			t.Errorf("there is no control %q among %q", name, r.names())
		}
	}
	for a := range keymap.Actions {
		if a.Place() == keymap.InLecture && lectureControl(a) == idNone {
			t.Errorf("no control does %q", a.Words())
		}
	}
	visit(&r.Description().Root, func(n *describe.Node) {
		if n.Focusable && (n.Name == "" || n.Bounds.W < 24 || n.Bounds.H < 24) {
			t.Errorf("control %d %q is %g by %g; at least 24 px is wanted (WCAG 2.2, 2.5.8)", n.ID, n.Name, n.Bounds.W, n.Bounds.H)
		}
	})
}

func TestABlankScreenHidesEverything(t *testing.T) {
	r := lectureOf(t, talk)
	r.typed("b")
	var l draw.List
	r.Picture(&l)
	if len(l.Meshes) != 1 || l.Meshes[0].Texture != nil {
		t.Errorf("a blank screen has %d meshes", len(l.Meshes))
	}
	for _, v := range l.Meshes[0].Vertices {
		if v.R != 0 || v.G != 0 || v.B != 0 || v.A != 1 {
			t.Fatalf("a blank screen is %v, want it black in every palette", v)
		}
	}
	if s := r.said(); strings.Contains(s, "level") || len(r.names()) != 1 {
		t.Errorf("a blank screen tells %q", s)
	}
	if _, ok := r.Observation(); ok {
		t.Error("the instrument can be heard behind a blank screen")
	}
	r.typed("b")
	if r.blank {
		t.Error("it stays blank")
	}
}

// In live play the keys do at the instrument what they do at the bench.
func TestLivePlayHasTheKeysOfTheBench(t *testing.T) {
	r := lectureOf(t, talk)
	r.key(input.PageDown)
	r.key(input.PageDown)
	r.key(input.PageDown)
	r.key(input.F5)
	same, err := session.Resume(r.play.Session().Recording(), r.play.Session().Options())
	if err != nil {
		t.Fatal(err)
	}
	b, err := NewBench(BenchOptions{Session: same})
	if err != nil {
		t.Fatal(err)
	}
	presses := []input.Press{{Key: input.Left}, {Key: input.Right, Mods: input.Shift}, {Key: input.Up}, {Key: input.Down}, {Rune: 't'},
		{Key: input.Up}, {Rune: '['}, {Rune: ']'}, {Rune: 't'}, {Rune: 'f'}, {Key: input.Space}, {Rune: 'l'}, {Rune: 'l'}, {Rune: 's'}, {Key: input.Left}}
	for _, p := range presses {
		got := slices.Clone(r.frame(input.Frame{Presses: []input.Press{p}}))
		want := slices.Clone(b.Update(input.Frame{W: 1280, H: 720, Scale: 1, Presses: []input.Press{p}}))
		if len(got) != len(want) {
			t.Errorf("%+v: got %+v, want %+v", p, got, want)
			continue
		}
		for i := range got {
			if got[i].Kind != want[i].Kind || got[i].Seat != want[i].Seat || math.Abs(float64(got[i].Angle-want[i].Angle)) > 1e-12 {
				t.Errorf("%+v: got %+v, want %+v", p, got[i], want[i])
			}
		}
	}
}

func TestMotionEndsWithAnyKeyAndIsLeftOutWhenReduced(t *testing.T) {
	r := lectureOf(t, talk)
	r.key(input.PageDown)
	r.key(input.PageDown)
	r.wait(30)
	if r.water <= 0 || r.water >= 1 {
		t.Errorf("after a quarter of a second the water has come up by %g", r.water)
	}
	r.typed("p")
	if r.water != 1 {
		t.Error("the water still rises")
	}
	calm := lectureOf(t, talk)
	calm.Choose(Settings{Calm: true})
	calm.key(input.PageDown)
	calm.key(input.PageDown)
	calm.wait(1)
	if calm.water != 1 || calm.eye.left != 0 {
		t.Errorf("with reduced motion: water at %g, eye with %d ticks to go", calm.water, calm.eye.left)
	}
	calm.key(input.PageDown)
	calm.wait(1)
	if calm.turn.left != 0 {
		t.Error("with reduced motion the plate still turns")
	}
}

func TestTheWayBetweenTwoPosesIsATurn(t *testing.T) {
	poses := []sim.Frame{}
	for _, a := range []float64{0, 20, 90, 179, 180, 250} {
		for _, tilt := range []float64{0, 30, 90} {
			s, c := math.Sincos(a * math.Pi / 180)
			f := sim.Frame{Forward: orient.Vec{X: s, Y: c}, Right: orient.Vec{X: c, Y: -s}, Out: orient.Up}
			d := orient.Angle(tilt) * orient.Degree
			poses = append(poses, sim.Frame{Forward: f.Forward, Right: spun(f.Right, f.Forward, d), Out: spun(f.Out, f.Forward, d)})
		}
	}
	dot := func(a, b orient.Vec) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
	for _, a := range poses {
		for _, b := range poses {
			if got := between(a, b, 1); dot(got.Forward, b.Forward) < 1-1e-9 || dot(got.Right, b.Right) < 1-1e-9 || dot(got.Out, b.Out) < 1-1e-9 {
				t.Fatalf("from %+v to %+v: ends at %+v", a, b, got)
			}
			m := between(a, b, .4)
			if math.Abs(dot(m.Forward, m.Right)) > 1e-9 || math.Abs(dot(m.Out, m.Out)-1) > 1e-9 {
				t.Fatalf("from %+v to %+v: bent on the way: %+v", a, b, m)
			}
		}
	}
}

// The diagram against the formula of the handbook: sin(error) = tan(tilt) /
// tan(dip) (Ragan, Structural Geology, ch. 1, from memory), with a bubble whose
// offset is the tilt times the radius of its vial.
func TestTheCurveShowsTheTiltOfTheBubble(t *testing.T) {
	r := lectureOf(t, talk)
	for range 3 {
		r.key(input.PageDown)
		r.key(input.PageDown)
	}
	r.key(input.F5)
	for range 4 {
		r.key(input.Right)
		r.wait(240)
		f := r.obs.Frame.Forward
		tilt := math.Abs(math.Asin(f.Z)) * 180 / math.Pi
		if got := r.tilt.Degrees(); math.Abs(got-tilt) > .02+.01*tilt && !r.obs.Round.AtWall {
			t.Errorf("the bubble shows a tilt of %.3f°, the edge has %.3f°", got, tilt)
		}
	}
	k := curveKey{rect: draw.Rect{W: 440, H: 400}, size: 28, u: 1}
	var c curvePicture
	c.follow(k, 1.5*orient.Degree)
	p := k.plot()
	for i, at := range c.pts {
		dip := (at.X - p.X) / p.W * 45 // the axis of a gentle bed
		off := (1 - (at.Y-p.Y)/p.H) * 30
		want := math.Asin(min(1, math.Tan(1.5*math.Pi/180)/math.Tan(dip*math.Pi/180))) * 180 / math.Pi
		if math.Abs(off-want) > .01 {
			t.Errorf("point %d, dip %.2f°: the curve lies at %.3f°, want %.3f°", i, dip, off, want)
		}
	}
}

func TestASteadyLectureAllocatesAlmostNothing(t *testing.T) {
	r := lectureOf(t, talk)
	r.key(input.PageDown)
	r.key(input.PageDown)
	r.key(input.PageDown)
	r.wait(3000)
	var l draw.List
	f := func() {
		r.frame(input.Frame{Ticks: 2})
		r.Picture(&l)
	}
	for range 50 {
		f()
	}
	if got := testing.AllocsPerRun(100, f); got > 4 {
		t.Errorf("got %v allocations a frame, want at most 4", got)
	}
}
