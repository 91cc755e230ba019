package calibrate

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"cuesta/quiz/mistake"
)

// A table made by hand, and what a teacher may conclude from it.
func TestShort(t *testing.T) {
	table := Table{
		PassShare: 0.6,
		Scores:    []Score{{Learner: "careful", Pass: 1}, {Learner: "other-end", Pass: 0.8}, {Learner: "south-end", Pass: 0.3}},
		Named: []Naming{
			{Kind: mistake.OtherEnd, Made: 10, Apart: 9, Alike: 1},
			{Kind: mistake.SouthEnd, Made: 10, Apart: 5, Alike: 5},
			{Kind: mistake.LevelNotCentred, Made: 10, Right: 4, Apart: 1, Alike: 5},
			{Kind: mistake.NeedleSticking, Made: 10, Right: 10},
		},
		Alike: []Alike{
			{Made: mistake.LevelNotCentred, Slip: true, Share: 0.8},
			{Made: mistake.OtherEnd, Rival: mistake.SouthEnd, Bare: true, Share: 1},
			{Made: mistake.SouthEnd, Rival: mistake.OtherEnd, Bare: true, Share: 1},
			{Made: mistake.SouthEnd, Rival: mistake.DigitsSwapped, Bare: true, Share: 0.2},
			{Made: mistake.Complement, Rival: mistake.PercentScale, Bare: true, Share: 0.7},
		},
	}
	want := []Conclusion{
		{Said: "At the pass mark of 60 % 1 of 2 kinds of mistake pass"},
		{Said: "Of 4 mistakes 2 can be told in most of the answers that they make wrong"},
		{"Seldom told", []mistake.Kind{mistake.LevelNotCentred}},
		{"Nothing comes out wrong of this", []mistake.Kind{mistake.NeedleSticking}},
		{"Not told from a slip without a name with the readings of the bench", []mistake.Kind{mistake.LevelNotCentred}},
		{"Not told from one another on paper, where the answer alone speaks", []mistake.Kind{mistake.OtherEnd, mistake.SouthEnd}},
		{"There neither are these", []mistake.Kind{mistake.PercentScale, mistake.Complement}},
	}
	if got := table.Short(); !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got := (Table{}).Short(); got != nil {
		t.Errorf("nobody made a mistake: got %+v", got)
	}
}

// Every short name that the table uses is explained in it, in lines that a
// terminal shows whole.
func TestTheTableExplainsItsNames(t *testing.T) {
	table, err := Run(shipped(t), Options{Students: 4, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := table.Write(&text); err != nil {
		t.Fatal(err)
	}
	for _, n := range table.Named {
		what, _ := n.Kind.Words(table.Notation)
		explained := false
		for _, line := range strings.Split(text.String(), "\n") {
			explained = explained || strings.Contains(line, n.Kind.String()) && strings.Contains(line, strings.Fields(what)[1])
		}
		if !explained {
			t.Errorf("%v is not explained", n.Kind)
		}
	}
	_, short, ok := strings.Cut(text.String(), "\nIn short\n")
	short, _, _ = strings.Cut(short, "\n\n") // the tables follow
	if !ok || !strings.Contains(short, "Of 22 mistakes ") {
		t.Errorf("the table draws no conclusion:\n%s", short)
	}
	for _, line := range strings.Split(short, "\n") {
		if n := len([]rune(line)); n > 90 {
			t.Errorf("a line of %d characters: %q", n, line)
		}
	}
}

// The conclusions stand first, and the pass mark is the first of them.
func TestThePassMarkIsNamedFirst(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want string
	}{
		{0.9, 1, "At the pass mark of 50 % every kind of mistake passes."},
		{0.1, 0, "At the pass mark of 50 % no kind of mistake passes more often than not."},
	} {
		table := Table{
			Title: "Quiz", PassShare: 0.5, Named: []Naming{{Kind: mistake.OtherEnd}},
			Scores: []Score{{Learner: "other-end", Pass: c.a}, {Learner: "south-end", Pass: c.b}},
		}
		var text bytes.Buffer
		if err := table.Write(&text); err != nil {
			t.Fatal(err)
		}
		short, scores := strings.Index(text.String(), "In short\n  "+c.want), strings.Index(text.String(), "What each would score")
		if short < 0 || short > scores {
			t.Errorf("got %q, want %q first", text.String(), c.want)
		}
	}
}
