package gradebook

import (
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/mistake"
)

// The name of every mistake stands whole beside its bar.
func TestNamesOfMistakesFit(t *testing.T) {
	for k := range mistake.Kind(mistake.Kinds) {
		name := mistakeName(k.String())
		if got := fit(name, labelSize, mistakeLabels-20); got != name {
			t.Errorf("got %q, want %q", got, name)
		}
	}
}

// Who is missing comes last, in one paragraph.
func TestTheMissingComeLast(t *testing.T) {
	r := grade.Report{
		Missing: []form.Student{{ID: "tf01", Name: "Ada Moss"}, {ID: "tf02", Name: "Bram Fell"}},
		Doubles: []grade.Double{{ID: "tf03", Name: "Cai Rush"}},
	}
	ls := lists(r)
	if len(ls) != 2 {
		t.Fatalf("got %d lists, want 2", len(ls))
	}
	if last := ls[1]; last.Title != "Missing" || len(last.Rows) != 0 || last.Names != "Ada Moss (tf01), Bram Fell (tf02)" {
		t.Errorf("got %+v last, want the missing by name", last)
	}
}

func TestPointsAreSaidPlainly(t *testing.T) {
	for _, c := range []struct {
		hints int
		cost  float64
		want  string
	}{
		{0, 0, ""}, {1, 0, "One hint took nothing off."}, {1, 1, "One hint took off 1 point."},
		{2, 0.5, "2 hints took off 0.5 points."},
	} {
		if got := hintWords(grade.Marked{Hints: c.hints, Cost: c.cost}); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
