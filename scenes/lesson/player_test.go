package lesson

import (
	"fmt"
	"slices"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

func played(t testing.TB, text string) *Player {
	t.Helper()
	l, err := Parse("test", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlayer(l)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

const walk = `title = "a"
plane = "035/30"
seed = 3
[[step]]
say = "One."
[[step]]
pose = { swing = 20, roll = 5 }
show = ["instrument", "levels"]
say = "Two."
[[step]]
do = ["swing -20", "roll -5", "tap", "wait 2.5", "read"]
needle = 3
show = ["scale", "reading"]
ask = "Three?"
answer = "Three."
[[step]]
mistake = "other-end"
[[step]]
show = ["student"]
hide = ["reading", "levels"]
say = "Four."
[[step]]
plane = "350/80"
pose = { seat = "side", swing = 90, arm = 80 }
say = "Five."
view = "dip"
`

// marks is the state after a step, in a line.
func marks(p *Player) string {
	var shown []string
	for t := range Things {
		if p.Shows(t) {
			shown = append(shown, t.String())
		}
	}
	w, ok := p.Written()
	return fmt.Sprint(p.Session().World().Hash(), shown, p.Line(), p.View(), w, ok)
}

// through goes to the end, watching each step for so many ticks, and returns
// the marks of every step as it was left.
func through(t *testing.T, p *Player, ticks int) []string {
	t.Helper()
	var out []string
	for {
		for range ticks / 3 {
			if _, err := p.Advance(3); err != nil {
				t.Fatal(err)
			}
		}
		p.complete()
		out = append(out, marks(p))
		if ok, err := p.Next(); err != nil {
			t.Fatal(err)
		} else if !ok {
			return out
		}
	}
}

func TestAStepEndsAlikeHoweverItWasWatched(t *testing.T) {
	want := through(t, played(t, walk), 0)
	for _, ticks := range []int{7, 333, 30000} {
		if got := through(t, played(t, walk), ticks); !slices.Equal(got, want) {
			t.Errorf("watched for %d ticks: got %q, want %q", ticks, got, want)
		}
	}
}

func TestBackIsTheStateBeforeTheStep(t *testing.T) {
	p := played(t, walk)
	want := through(t, p, 50)
	for i := p.Len() - 2; i >= 0; i-- {
		if ok, err := p.Back(); !ok || err != nil {
			t.Fatalf("step %d: %v, %v", i, ok, err)
		}
		if got := marks(p); got != want[i] || p.At() != i {
			t.Errorf("back at step %d: got %q, want %q", i, got, want[i])
		}
	}
	if ok, _ := p.Back(); ok || p.At() != 0 {
		t.Error("went back from the first step")
	}
	if got := through(t, p, 10); !slices.Equal(got, want) {
		t.Errorf("forward again: got %q, want %q", got, want)
	}
}

func TestRestartIsAFreshLesson(t *testing.T) {
	want := through(t, played(t, walk), 0)
	p := played(t, walk)
	for range p.Len() {
		p.Reveal()
		if _, err := p.Next(); err != nil {
			t.Fatal(err)
		}
	}
	p.Live()
	if err := p.Restart(); err != nil || p.At() != 0 || p.IsLive() || p.Answer() != "" {
		t.Fatalf("step %d, live %v, answer %q, %v", p.At()+1, p.IsLive(), p.Answer(), err)
	}
	if got := through(t, p, 0); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	for i := range p.revealed {
		if p.revealed[i] {
			t.Errorf("the answer of step %d stays revealed", i+1)
		}
	}
}

func TestLivePlayIsDroppedOnReturn(t *testing.T) {
	p := played(t, walk)
	want := through(t, p, 0)
	for range 3 {
		if _, err := p.Back(); err != nil {
			t.Fatal(err)
		}
	}
	if err := p.Do(sim.Command{Kind: sim.Tap}); err == nil {
		t.Error("the bench was moved outside of live play")
	}
	p.Live()
	for range 5 {
		if err := p.Do(sim.Command{Kind: sim.Swing, Angle: orient.Degree}); err != nil {
			t.Fatal(err)
		}
		if _, err := p.Advance(40); err != nil {
			t.Fatal(err)
		}
	}
	if marks(p) == want[2] {
		t.Fatal("nothing was moved")
	}
	if err := p.Return(); err != nil || marks(p) != want[2] || p.IsLive() {
		t.Errorf("got %q, %v, want %q", marks(p), err, want[2])
	}
	p.Live()
	if err := p.Do(sim.Command{Kind: sim.Flip}); err != nil {
		t.Fatal(err)
	}
	if _, err := p.Next(); err != nil {
		t.Fatal(err)
	}
	p.complete()
	if got := marks(p); got != want[3] {
		t.Errorf("next from live play: got %q, want %q", got, want[3])
	}
}

func TestWhatIsShownWhen(t *testing.T) {
	p := played(t, walk)
	step := func() {
		t.Helper()
		if _, err := p.Next(); err != nil {
			t.Fatal(err)
		}
	}
	if p.Shows(Instrument) || p.Line() != "One." || p.Running() {
		t.Error("the lesson does not begin with the bare slab")
	}
	step()
	if !p.Shows(Instrument) || !p.Running() {
		t.Error("the instrument is not shown while it is put there")
	}
	step()
	if p.Shows(Reading) || !p.Shows(Scale) || !p.Open() || p.Answer() != "" {
		t.Error("the reading is shown before it has come about")
	}
	p.Finish()
	if !p.Shows(Reading) || p.Running() {
		t.Error("the reading is not shown at the end of the step")
	}
	if !p.Reveal() || p.Answer() != "Three." || p.Reveal() {
		t.Error("the answer is not revealed once")
	}
	step()
	if _, ok := p.Written(); ok || p.Line() != "Three?" || p.Answer() == "" {
		t.Error("the line of the last step does not stay, or the student is done at once")
	}
	p.Finish()
	if w, ok := p.Written(); !ok || w.Right || !slices.Contains(w.Named, mistake.OtherEnd) {
		t.Errorf("got %+v", w)
	}
	step()
	step()
	if _, ok := p.Written(); ok {
		t.Error("what was written at the last slab stays at the new one")
	}
}

func TestAPoseIsTakenExactly(t *testing.T) {
	for _, c := range []Pose{
		{Seat: "edge", Swing: 20 * orient.Degree, Roll: 5 * orient.Degree},
		{Seat: "edge", Swing: -170 * orient.Degree, Roll: -3 * orient.Degree},
		{Seat: "side", Swing: 90 * orient.Degree, Roll: 10 * orient.Degree, Arm: 30 * orient.Degree},
		{Seat: "side", Swing: -80 * orient.Degree, Roll: -7 * orient.Degree, Arm: 41 * orient.Degree},
	} {
		l := Lesson{Title: "a", Plane: orient.PlaneOf(35*orient.Degree, 30*orient.Degree), Steps: []Step{{Pose: &c, Do: []string{"read"}}}}
		p, err := NewPlayer(l)
		if err != nil {
			t.Fatal(err)
		}
		p.Finish()
		seat := sim.OnEdge
		if c.Seat == "side" {
			seat = sim.OnSide
		}
		r, ok := p.Session().World().Reading(seat)
		near := func(a, b orient.Angle) bool { return (a - b).Wrapped().Abs() < 1e-9 }
		if !ok || !near(r.Swing, c.Swing) || !near(r.Across, c.Roll) || seat == sim.OnSide && !near(r.Shown.Arc.Arm, c.Arm) {
			t.Errorf("%+v: got %+v", c, r)
		}
	}
}

func TestAStepThatWaitsIsFollowedByTheNext(t *testing.T) {
	p := played(t, "title=\"a\"\nplane=\"035/30\"\n[[step]]\nwait=2\n[[step]]\nask=\"?\"\nanswer=\"!\"\nwait=1\n[[step]]\n")
	for _, c := range []struct {
		ticks, at int
		answer    string
	}{{200, 0, ""}, {41, 1, ""}, {119, 1, ""}, {1, 1, "!"}, {120, 2, ""}} {
		if _, err := p.Advance(c.ticks); err != nil {
			t.Fatal(err)
		}
		if p.At() != c.at || c.at == 1 && p.Answer() != c.answer {
			t.Errorf("after %d ticks more: step %d, answer %q; want %d, %q", c.ticks, p.At(), p.Answer(), c.at, c.answer)
		}
	}
}

// What the simulated student does is judged like anyone's work: where the
// mistake makes the answer wrong, the judge names it. The bound is the quiz's own
// (quiz/learner: 95 of 100).
func TestMistakesArePerformedAndNamed(t *testing.T) {
	wrong, named := 0, 0
	for _, k := range learner.Mistakes() {
		for seed := range uint64(10) {
			w := performed(t, k.String(), seed)
			if w.Right {
				continue
			}
			wrong++
			if slices.Contains(w.Named, k) {
				named++
			} else {
				t.Logf("%v, seed %d: wrote %s; %s %q", k, seed, w.Text, w.Outcome, w.Reasons)
			}
		}
	}
	if wrong < 150 || 100*named < 95*wrong {
		t.Errorf("the judge named %d of %d", named, wrong)
	}
}

func performed(t *testing.T, name string, seed uint64) Written {
	t.Helper()
	plane := orient.PlaneOf(orient.Angle(17+31*seed)*orient.Degree, orient.Angle(14+3*seed)*orient.Degree)
	p, err := NewPlayer(Lesson{Title: "a", Plane: plane, Seed: seed, Declination: 12 * orient.Degree, Steps: []Step{{Mistake: name}}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := p.Advance(60); err != nil {
		t.Fatal(err)
	}
	if !p.Running() {
		t.Fatalf("%s is over in half a second", name)
	}
	p.Finish()
	w, ok := p.Written()
	if !ok {
		t.Fatalf("%s, seed %d: nothing was written", name, seed)
	}
	return w
}

func TestACarefulStudentIsRight(t *testing.T) {
	for seed := range uint64(10) {
		if w := performed(t, Careful, seed); !w.Right || len(w.Named) > 0 {
			t.Errorf("seed %d: got %+v", seed, w)
		}
	}
}
