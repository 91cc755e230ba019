package lesson

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"cuesta/quiz/learner"
	"cuesta/sim"
)

const bare = "title = \"a\"\nplane = \"035/30\"\ndeclination = 12\n"

func shown(p *Player) []Thing {
	var out []Thing
	for t := range Things {
		if p.Shows(t) {
			out = append(out, t)
		}
	}
	return out
}

// What a class needs to see a mistake is there, however little a step asks for,
// and what it hides by name is not.
func TestAMistakeBringsWhatShowsIt(t *testing.T) {
	all := []Thing{Instrument, Levels, Scale, Student}
	for _, c := range []struct {
		before, step string
		want         []Thing
	}{
		{"", "", all},
		{"", `show = ["instrument", "levels", "reading"]`, []Thing{Instrument, Levels, Scale, Reading, Student}},
		{"", `show = ["student"]`, all},
		{"", `hide = ["student"]`, []Thing{Instrument, Levels, Scale}},
		{"", `hide = ["levels", "scale"]`, []Thing{Instrument, Student}},
		{"", "hide = [\"scale\"]\nshow = [\"scale\"]", all},
		{`show = ["water", "numbers"]`, `hide = ["all"]`, all},
		{`show = ["water"]`, `hide = "water"`, all},
	} {
		p := played(t, bare+"[[step]]\n"+c.before+"\n[[step]]\nmistake = \"other-end\"\n"+c.step)
		if _, err := p.Next(); err != nil {
			t.Fatal(err)
		}
		p.Finish()
		if got := shown(p); !slices.Equal(got, c.want) {
			t.Errorf("%q after %q: shows %v, want %v", c.step, c.before, got, c.want)
		}
	}
}

// A mistake ends where it is to be seen: what was wrong on the edge in the view
// of the strike, with the instrument as it stood there, and what was wrong on the
// side in that of the dip. A careful student stays where the eye is.
func TestAMistakeEndsWhereItIsSeen(t *testing.T) {
	inDip := []string{"edge-not-down-dip", "body-leaning", "tube-not-centred", "percent-scale", "complement"}
	for _, k := range learner.Mistakes() {
		want, seat := ViewStrike, sim.OnEdge
		if slices.Contains(inDip, k.String()) {
			want, seat = ViewDip, sim.OnSide
		}
		for _, before := range []string{"", `view = "dip"`, `view = "strike"`, `view = "above"`} {
			p := played(t, bare+"[[step]]\n"+before+"\n[[step]]\nmistake = \""+k.String()+"\"\n")
			if _, err := p.Next(); err != nil {
				t.Fatal(err)
			}
			p.Finish()
			if got := p.Session().World().Observe().Seat; p.View() != want || got != seat {
				t.Errorf("%v after %q: view %q, seat %v; want %q, %v", k, before, p.View(), got, want, seat)
			}
		}
	}
	for _, c := range []struct {
		mistake, before, step string
		want                  View
	}{
		{"other-end", "", "dip", ViewDip},
		{"other-end", "strike", "close", ViewClose},
		{"complement", "dip", "above", ViewAbove},
		{Careful, "above", "", ViewAbove},
		{Careful, "strike", "", ViewStrike},
	} {
		text := bare + "[[step]]\n" + view(c.before) + "[[step]]\nmistake = \"" + c.mistake + "\"\n" + view(c.step)
		p := played(t, text)
		if _, err := p.Next(); err != nil {
			t.Fatal(err)
		}
		if p.View() != c.want {
			t.Errorf("%s with view %q after %q: view %q, want %q", c.mistake, c.step, c.before, p.View(), c.want)
		}
	}
}

func view(name string) string {
	if name == "" {
		return ""
	}
	return "view = \"" + name + "\"\n"
}

// A reading stands under the scale it was read on.
func TestAReadingBringsItsScale(t *testing.T) {
	p := played(t, bare+"[[step]]\npose = {}\nneedle = 4\nshow = [\"instrument\", \"reading\"]\n")
	p.Finish()
	if got, want := shown(p), []Thing{Instrument, Scale, Reading}; !slices.Equal(got, want) {
		t.Errorf("shows %v, want %v", got, want)
	}
	_, err := Parse("x", []byte(bare+"[[step]]\n[[step]]\nmistake = \"other-end\"\nhide = [\"scale\"]\nshow = [\"reading\"]\n"))
	want := `line 7, column 1: hide: the reading stands under the scale; take "scale" out of hide, or "reading" out of show`
	if !errors.Is(err, ErrLesson) || !strings.Contains(err.Error(), want) {
		t.Errorf("got %v, want %q", err, want)
	}
}

// The arm is turned on the side, and a mistake of the strike ends on the edge.
func TestTheArmAfterAMistake(t *testing.T) {
	for _, c := range []struct {
		text string
		ok   bool
	}{
		{"[[step]]\nmistake = \"complement\"\ndo = [\"arm 3\"]\n", true},
		{"[[step]]\nmistake = \"other-end\"\nview = \"dip\"\ndo = [\"arm 3\"]\n", true},
		{"[[step]]\nmistake = \"other-end\"\ndo = [\"arm 3\"]\n", false},
		{"[[step]]\nmistake = \"other-end\"\ndo = [\"seat side\", \"arm 3\"]\n", true},
		{"[[step]]\nmistake = \"careful\"\ndo = [\"arm 3\"]\n", true},
		{"[[step]]\nview = \"strike\"\n[[step]]\nmistake = \"careful\"\ndo = [\"arm 3\"]\n", false},
	} {
		l, err := Parse("x", []byte(bare+c.text))
		if (err == nil) != c.ok {
			t.Errorf("%q: %v", c.text, err)
		}
		if err == nil {
			playThrough(t, l)
		}
	}
}

func playThrough(t *testing.T, l Lesson) {
	t.Helper()
	p, err := NewPlayer(l)
	for more := true; more && err == nil; {
		more, err = p.Next()
	}
	if err != nil {
		t.Errorf("it reads but does not play: %v", err)
	}
}
