package lesson

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/written"
)

func problems(t testing.TB, err error) []string {
	t.Helper()
	var w *written.Wrong
	if !errors.As(err, &w) || !errors.Is(err, ErrLesson) {
		t.Fatalf("got %v, want a *written.Wrong that is ErrLesson", err)
	}
	lines := make([]string, len(w.Problems))
	for i, p := range w.Problems {
		lines[i] = p.String()
	}
	return lines
}

func TestEveryProblemIsToldAtOnce(t *testing.T) {
	_, err := Parse("x", []byte(`titel = "x"
minutes = 0
plane = "400/30"
declination = 181
[[step]]
pose = { seat = "lid", swing = 400, arm = 3 }
mistake = "south-ent"
do = ["swing 5", "note 035/30", "swig 3"]
needle = -1
wait = nan
ask = "Which?"
show = ["water", "watr"]
hide = "everything"
view = "sideways"
[[step]]
say = "`+strings.Repeat("far too long ", 20)+`"
answer = "None."
mistake = "declination-not-set"
[[step]]
say = "a\nb"
pose = { seat = "edge", arm = 3, swnig = 4 }
do = ["seat lid"]
plane = ""
[[step]]
do = ["seat side", "arm 5", "seat edge", "arm 5"]
`))
	want := []string{
		`there is no title`,
		`line 1, column 1: read the key "titel", which is not known here; perhaps title was meant`,
		`line 2, column 1: minutes: read 0; write a whole number from 1 to 120`,
		`line 3, column 1: plane: `,
		`line 4, column 1: declination: read 181; write a number from -180 to 180`,
		`line 6, column 10: seat: read "lid"; perhaps "side" was meant`,
		`line 6, column 24: swing: read 400`,
		`line 6, column 37: arm: it is turned on the side only`,
		`line 7, column 1: mistake: read "south-ent"; perhaps "south-end" was meant`,
		`line 8, column 1: do: read "note 035/30"; a lesson takes the lines that move`,
		`line 8, column 1: do: Read "swig"`,
		`line 9, column 1: needle: read -1`,
		`line 10, column 1: wait: read nan`,
		`line 11, column 1: ask: there is no answer to it`,
		`line 12, column 1: show: read "watr"; perhaps "water" was meant`,
		`line 13, column 1: hide: read "everything"; write one of water`,
		`line 14, column 1: view: read "sideways"`,
		`line 16, column 1: say: it takes `,
		`line 17, column 1: answer: there is no question`,
		`line 18, column 1: mistake: declination-not-set needs a declination`,
		`line 20, column 1: say: read "a\nb"; write one line`,
		`line 21, column 25: arm: it is turned on the side only`,
		`line 21, column 34: read the key "swnig", which is not known here; perhaps swing was meant`,
		`line 22, column 1: do: read "seat lid"`,
		`line 23, column 1: plane: read nothing`,
		`line 25, column 1: do: read "arm 5"; the arm is turned with the instrument on its side`,
	}
	got := problems(t, err)
	for i := range max(len(got), len(want)) {
		switch {
		case i >= len(got):
			t.Errorf("missing %q", want[i])
		case i >= len(want):
			t.Errorf("too much: %q", got[i])
		case !strings.HasPrefix(got[i], want[i]):
			t.Errorf("problem %d: got %q, want %q", i+1, got[i], want[i])
		}
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "there is no title"},
		{"no steps", `title = "x"`, "there is no step"},
		{"no TOML", "title = ", "line 1, column"},
		{"a key twice", "title = \"a\"\ntitle = \"b\"", "line 2"},
		{"step is no table", "title = \"a\"\nstep = 3", "step: every step starts with the line [[step]]"},
		{"pose is no table", "title = \"a\"\n[[step]]\npose = 3", "line 3"},
		{"curly quotes", "title = “a”", "this lesson cannot be used yet: line 1, column 9: read “; write straight quotes"},
		{"no such mistake", "title = \"a\"\nplane = \"035/30\"\n[[step]]\nmistake = \"wrong-end\"", `line 4, column 1: mistake: read "wrong-end"; write one of other-end, south-end, `},
		{"nearly a mistake", "title = \"a\"\nplane = \"035/30\"\n[[step]]\nmistake = \"south end\"", `mistake: read "south end"; perhaps "south-end" was meant`},
		{"UTF-16", "\xFF\xFEt\x00", "UTF-16"},
		{"Latin-1", "title = \"Gel\xE4nde\"", "line 1, column 13: read bytes that are not UTF-8"},
		{"long", strings.Repeat("#", Largest+1), "longer than 256 KB"},
		{"many steps", "title = \"a\"\nplane=\"035/30\"\n" + strings.Repeat("[[step]]\n", MostSteps+1), "at most 200"},
	} {
		_, err := Parse("x", []byte(c.text))
		if !errors.Is(err, ErrLesson) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

func TestTheExampleMeansWhatItSays(t *testing.T) {
	l, err := Parse("example", []byte(Words()))
	if err != nil {
		t.Fatal(err)
	}
	if l.Name != "example" || l.Plane != orient.PlaneOf(35*orient.Degree, 30*orient.Degree) || l.Seed != 1 || len(l.Steps) != 6 {
		t.Errorf("got %+v", l)
	}
	s := l.Steps[2]
	want := Step{Pose: &Pose{Seat: "edge", Swing: 20 * orient.Degree, Roll: 4 * orient.Degree}, View: ViewStrike,
		Say: s.Say, Show: []Thing{Instrument, Levels, Scale}, Hide: s.Hide}
	if len(s.Hide) != int(Things) || !reflect.DeepEqual(s, want) {
		t.Errorf("got %+v, want %+v", s, want)
	}
	if s := l.Steps[4]; s.Mistake != "other-end" || s.Answer == "" {
		t.Errorf("got %+v", s)
	}
}

func FuzzParse(f *testing.F) {
	f.Add(Words())
	f.Add("title = \"a\"\nplane = \"035/30\"\n[[step]]\npose = {}")
	f.Add("[[step]]\n[step.pose]\na.b.c = {d = [1, {e = 2}]}")
	f.Fuzz(func(t *testing.T, text string) {
		l, err := Parse("x", []byte(text))
		if err != nil {
			if len(problems(t, err)) == 0 {
				t.Error("an error without a problem")
			}
			return
		}
		if l.Title == "" || len(l.Steps) == 0 || !l.Plane.IsValid() {
			t.Errorf("taken, but not whole: %+v", l)
		}
	})
}
