package calibrate

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
)

// shipped is the blueprint of the demo course.
func shipped(t testing.TB) form.Blueprint {
	t.Helper()
	f, err := os.Open("../../../assets/course/blueprint.toml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	b, err := form.ReadBlueprint(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The thresholds are those the course promises; cuesta calibrate --students
// 2000 shows the same with ten times as many.
func TestTheShippedQuizIsFair(t *testing.T) {
	table, err := Run(shipped(t), Options{Students: enough, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range table.Scores {
		switch s.Learner {
		case "careful":
			if s.Mean < 0.97 || s.Pass < 0.99 {
				t.Errorf("careful students: mean %.3f, pass %.3f, want at least 0.97 and 0.99", s.Mean, s.Pass)
			}
		case "guessing":
			if s.Mean >= 0.05 || s.Pass > 0 {
				t.Errorf("guessers: mean %.3f, pass %.3f, want under 0.05 and none", s.Mean, s.Pass)
			}
		case "hurried":
			if s.Mean > 0.9 || s.Mean < 0.5 {
				t.Errorf("hurried students: mean %.3f, want in between", s.Mean)
			}
		}
	}
	for _, n := range table.Named {
		recall, _ := n.Recall()
		precision, _ := n.Precision()
		if n.Told() && (recall < found || precision < sound) {
			t.Errorf("%v: found in %.3f, sound in %.3f, want at least %.2f and %.2f: %+v", n.Kind, recall, precision, found, sound, n)
		}
		if told := n.Kind != mistake.NeedleSticking; n.Told() != told {
			t.Errorf("%v: can be told %v, want %v: %+v", n.Kind, n.Told(), told, n)
		}
		if n.Misnamed*40 > n.Made {
			t.Errorf("%v: %d of %d answers that are like another mistake's are given its name without a doubt", n.Kind, n.Misnamed, n.Made)
		}
		if n.Made != n.Right+n.Refused+n.Alike+n.Apart {
			t.Errorf("%v: the counts do not add up: %+v", n.Kind, n)
		}
	}
	for _, a := range table.Accused {
		if a.Manner == "careful" && a.Share > 0.003 {
			t.Errorf("careful students are accused in %.4f of their answers", a.Share)
		}
	}
}

// The blueprint that explains itself is what most instructors begin with.
func TestTheExampleIsFair(t *testing.T) {
	b, err := form.ReadBlueprint(strings.NewReader(form.Example()))
	if err != nil {
		t.Fatal(err)
	}
	table, err := Run(b, Options{Students: 4 * enough, Seed: 1, Learners: learner.All()[:3]})
	if err != nil {
		t.Fatal(err)
	}
	if careful := table.Scores[0]; careful.Mean < 0.97 || careful.Pass < 0.99 {
		t.Errorf("careful students: mean %.3f, pass %.3f, want at least 0.97 and 0.99", careful.Mean, careful.Pass)
	}
	if guessing := table.Scores[2]; guessing.Mean >= 0.05 || guessing.Pass > 0 {
		t.Errorf("guessers: mean %.3f, pass %.3f, want under 0.05 and none", guessing.Mean, guessing.Pass)
	}
}

// By the answer alone the other end of the strike and the south end of the
// needle are one and the same: both are the strike + 180°.
func TestEndsAreAlikeOnPaper(t *testing.T) {
	table, err := Run(shipped(t), Options{Students: 10, Seed: 2})
	if err != nil {
		t.Fatal(err)
	}
	for _, pair := range [][2]mistake.Kind{{mistake.OtherEnd, mistake.SouthEnd}, {mistake.SouthEnd, mistake.OtherEnd}} {
		bare := slices.ContainsFunc(table.Alike, func(a Alike) bool {
			return a.Part == 0 && a.Bare && a.Made == pair[0] && a.Rival == pair[1] && a.Share == 1
		})
		read := slices.ContainsFunc(table.Alike, func(a Alike) bool {
			return a.Part == 0 && !a.Bare && a.Made == pair[0] && a.Rival == pair[1]
		})
		if !bare || read {
			t.Errorf("%v: alike on paper %v and with the readings %v, want only on paper", pair, bare, read)
		}
	}
}

func TestTheNumberOfWorkersDoesNotMatter(t *testing.T) {
	b := shipped(t)
	one, err := Run(b, Options{Students: 8, Seed: 3, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	most := 0
	four, err := Run(b, Options{Students: 8, Seed: 3, Workers: 4, Progress: func(done, all int) { most = max(most, done*1000/all) }})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(one, four) {
		t.Errorf("got %+v, want %+v", four, one)
	}
	if most != 1000 {
		t.Errorf("the progress ended at %d in a thousand", most)
	}
}

func TestOptionsThatMakeNoSense(t *testing.T) {
	for _, n := range []int{-1, 1, Most + 1} {
		if _, err := Run(shipped(t), Options{Students: n}); !errors.Is(err, ErrOptions) {
			t.Errorf("%d students: got %v, want %v", n, err, ErrOptions)
		}
	}
	b := shipped(t)
	b.Parts[0].Kind = "no-such-kind"
	if _, err := Run(b, Options{Students: 2}); err == nil {
		t.Error("a kind that does not exist: got no error")
	}
}

func TestTheTableIsWritten(t *testing.T) {
	table, err := Run(shipped(t), Options{Students: 3, Seed: 4})
	if err != nil {
		t.Fatal(err)
	}
	var words, object bytes.Buffer
	if err := table.Write(&words); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"careful", "needle-sticking", "south-end", "3 simulated students"} {
		if !strings.Contains(words.String(), want) {
			t.Errorf("no %q in the table:\n%s", want, words.String())
		}
	}
	if err := table.WriteJSON(&object); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Scores   []struct{ Learner string }
		Mistakes []struct{ Kind string }
	}
	if err := json.Unmarshal(object.Bytes(), &got); err != nil || len(got.Scores) != len(learner.All()) || len(got.Mistakes) != len(learner.Mistakes()) {
		t.Errorf("got %v, %+v", err, got)
	}
	if n := bytes.Count(object.Bytes(), []byte("\n")); n != 1 {
		t.Errorf("the object has %d lines, want 1", n)
	}
}
