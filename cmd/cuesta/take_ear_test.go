package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
	"cuesta/scenes/spoken/ear"
)

const earBlueprint = `title = "Tarn Fell field school: first quiz"
[[item]]
kind = "read-dial"
[[item]]
kind = "measure-slab"
[[item]]
kind = "diagnose-mistake"
[[item]]
kind = "convert-notation"
`

// TestAFormByWhatIsSaid takes a form with nothing but the lines that are
// printed: which item it is comes from them, and the slab is measured by ear.
// What the student knows of the other items is the key.
func TestAFormByWhatIsSaid(t *testing.T) {
	b, err := form.ReadBlueprint(strings.NewReader(earBlueprint))
	if err != nil {
		t.Fatal(err)
	}
	for seed := range uint64(5) {
		d, err := form.Deal(b, []form.Student{{ID: "tf1", Name: "Ada Moss"}}, form.Options{Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "tf1"+form.FormEnding)
		file, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Forms[0].Encode(file); err != nil {
			t.Fatal(err)
		}
		file.Close()
		answerAll(t, d.Forms[0], path)
		if said := taken(t, "finish\n", path); !strings.Contains(said, "Handed in: ") {
			t.Fatalf("not handed in: %s", said)
		}
		g := marked(t, strings.TrimSuffix(path, form.FormEnding)+form.SubmissionEnding)
		if g.Points != g.Of {
			t.Errorf("seed %d: %v of %v points", seed, g.Points, g.Of)
		}
	}
}

func marked(t *testing.T, path string) grade.Graded {
	t.Helper()
	g, err := grade.Submission(submissionIn(t, path), nil)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

var itemOf = regexp.MustCompile(`Item (\d+) of (\d+): `)

// mostTakeLines bounds the lines of the form.
const mostTakeLines = 100

// answerAll answers every item line by line and leaves the form open.
func answerAll(t *testing.T, f form.Form, path string) {
	t.Helper()
	j, err := sitting.Open(strings.TrimSuffix(path, form.FormEnding)+sitting.Ending, f, "")
	if err != nil {
		t.Fatal(err)
	}
	defer j.Close()
	var out bytes.Buffer
	p := (&taker{env: env{out: &out}, now: func() string { return "" }}).taking(j)
	lines := 0
	say := func(line string) string {
		lines++
		out.Reset()
		p.Line(line)
		return out.String()
	}
	said := say("go 1")
	for {
		m := itemOf.FindStringSubmatch(said)
		if m == nil {
			t.Fatalf("no item in %q", said)
		}
		var n int
		fmt.Sscan(m[1], &n)
		if kept := say(answerBy(t, f, n-1, said, say)); !strings.HasPrefix(kept, "Kept.") {
			t.Fatalf("item %d: %s", n, kept)
		}
		if m[1] == m[2] {
			break
		}
		said = say("next")
	}
	if lines > mostTakeLines {
		t.Errorf("%d lines, want at most %d", lines, mostTakeLines)
	}
}

func answerBy(t *testing.T, f form.Form, i int, said string, say ear.Say) string {
	t.Helper()
	it, err := f.Item(i)
	if err != nil {
		t.Fatal(err)
	}
	switch a := it.Ask(); {
	case strings.Contains(said, "The bench: "):
		r, err := ear.Measure(said, say)
		if err != nil {
			t.Fatal(err)
		}
		return fmt.Sprintf("note %03d/%02d", r.Strike, r.Dip)
	case a.Kind == item.AskChoice:
		return string(rune('a' + a.Right))
	}
	return "answer " + it.Key()
}
