package session_test

import (
	"errors"
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/scenes/session"
	"cuesta/sim"
	"cuesta/sim/record"
)

func start(t *testing.T, o session.Options) *session.Session {
	t.Helper()
	s, err := session.New(o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func plane(strike, dip float64) *orient.Plane {
	p := orient.PlaneOf(orient.Angle(strike)*orient.Degree, orient.Angle(dip)*orient.Degree)
	return &p
}

func TestTheSeedDealsThePlaneAndThePose(t *testing.T) {
	a, b := start(t, session.Options{Seed: 7}), start(t, session.Options{Seed: 7})
	if a.World().Hash() != b.World().Hash() {
		t.Error("one seed, two benches")
	}
	c := start(t, session.Options{Seed: 8})
	if a.Truth() == c.Truth() {
		t.Error("two seeds, one plane")
	}
	if err := a.Next(8); err != nil || a.World().Hash() != c.World().Hash() {
		t.Errorf("the next plane of seed 8 is not the plane of seed 8 (%v)", err)
	}
}

func TestTheMixDecidesTheDip(t *testing.T) {
	for seed := range uint64(50) {
		s := start(t, session.Options{Seed: seed, Mix: quiz.SteepOnly})
		if got := quiz.ClassOf(s.Truth().Dip); got != quiz.Steep {
			t.Fatalf("seed %d: a %v bed from a mix of steep ones", seed, got)
		}
	}
}

func TestTheRingIsSetOnlyWhenAskedFor(t *testing.T) {
	field := sim.Field{Declination: 12 * orient.Degree, Horizontal: 20e-6}
	for _, preset := range []bool{false, true} {
		s := start(t, session.Options{Plane: plane(35, 30), Field: field, RingPreset: preset})
		want := orient.Angle(0)
		if preset {
			want = field.Declination
		}
		if got := s.World().Observe().Dial.Ring; math.Abs(float64(got-want)) > 1e-12 {
			t.Errorf("preset %v: the ring stands at %v°, want %v°", preset, got.Degrees(), want.Degrees())
		}
	}
}

func TestNoteJudges(t *testing.T) {
	s := start(t, session.Options{Plane: plane(35, 30)})
	v, err := s.Note("N35E 30SE")
	if err != nil || !v.Right || !s.Answered() {
		t.Errorf("verdict %+v, %v; want right", v, err)
	}
	v, err = s.Note("215/30")
	if err != nil || v.Right {
		t.Errorf("verdict %+v, %v; want wrong", v, err)
	}
	if got := len(s.World().Notes()); got != 2 {
		t.Errorf("%d notes kept, want 2", got)
	}
}

func TestAnAnswerThatCannotBeIsRefused(t *testing.T) {
	s := start(t, session.Options{Plane: plane(35, 60)})
	must := func(c sim.Command) {
		if err := s.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	must(sim.Command{Kind: sim.Place, Seat: sim.OnSide})
	must(sim.Command{Kind: sim.Arm, Angle: 60*orient.Degree - s.World().Observe().Arc.Arm})
	must(sim.Command{Kind: sim.Read})
	before := s.World().Hash()
	var refused *session.Refused
	// 100·tan 60° = 173: the percent scale written as a dip.
	if _, err := s.Note("035/173"); !errors.As(err, &refused) || !errors.Is(err, orient.ErrDip) {
		t.Fatalf("error %v, want a refusal of the dip", err)
	}
	if refused.Hint == nil || refused.Hint.Kind != mistake.PercentScale {
		t.Errorf("hint %+v, want the percent scale", refused.Hint)
	}
	if s.World().Hash() != before || s.Answered() {
		t.Error("a refused answer left a trace")
	}
}

// 49 percent is 26°. Whoever never turned to the arc cannot have misread it.
func TestNoMistakeOfAReadingThatWasNotTaken(t *testing.T) {
	s := start(t, session.Options{Plane: plane(35, 26)})
	if err := s.Do(sim.Command{Kind: sim.Read}); err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{"035/49", "035/64", "325/26"} {
		v, err := s.Note(text)
		if err != nil || v.Right {
			t.Fatalf("%s: %+v, %v; want a wrong answer", text, v, err)
		}
		for _, m := range v.Mistakes {
			if m.Kind == mistake.PercentScale || m.Kind == mistake.Complement {
				t.Errorf("%s: got %v, want no mistake of the arc", text, m.Kind)
			}
		}
	}
	var refused *session.Refused
	if _, err := s.Note("035/149"); !errors.As(err, &refused) || refused.Hint != nil {
		t.Errorf("error %v, want a refusal without a reason", err)
	}
}

// The rule of a form holds for practice: with the declination set on the dial
// none was left out; 023 is 035 without 12° E.
func TestAPresetDialIsNotBlamedInPractice(t *testing.T) {
	field := sim.Field{Declination: 12 * orient.Degree, Horizontal: 20e-6}
	for preset, want := range map[bool]bool{true: false, false: true} {
		s := start(t, session.Options{Plane: plane(35, 30), Field: field, RingPreset: preset, Tool: sim.Lidded, Method: sim.OnLid})
		if err := s.Do(sim.Command{Kind: sim.Read}); err != nil {
			t.Fatal(err)
		}
		v, err := s.Note("023/30")
		named := err == nil && len(v.Mistakes) > 0 && v.Mistakes[0].Kind == mistake.DeclinationNotSet
		if named != want {
			t.Errorf("preset %t: got %+v, %v; want the declination named: %t", preset, v.Mistakes, err, want)
		}
	}
}

func TestTheWholePracticeIsRecorded(t *testing.T) {
	s := start(t, session.Options{Seed: 3})
	for range 3 {
		if err := s.Do(sim.Command{Kind: sim.Swing, Angle: 5 * orient.Degree}); err != nil {
			t.Fatal(err)
		}
		s.Advance(100)
		if err := s.Next(s.Seed() + 1); err != nil {
			t.Fatal(err)
		}
	}
	all := s.Recordings()
	if len(all) != 4 {
		t.Fatalf("%d recordings, want 4", len(all))
	}
	for i, r := range all {
		if res, err := record.Replay(r); err != nil || !res.Same {
			t.Errorf("recording %d: %v, %v", i, res, err)
		}
	}
}

func TestAnImpossiblePlaneIsAnError(t *testing.T) {
	if _, err := session.New(session.Options{Plane: &orient.Plane{Dip: 2}}); !errors.Is(err, sim.ErrSetup) {
		t.Errorf("got %v, want sim.ErrSetup", err)
	}
}
