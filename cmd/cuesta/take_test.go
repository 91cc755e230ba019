package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
)

// finishedForm is a form in a folder of its own, with a journal in which it was
// handed in.
func finishedForm(t *testing.T) (path string) {
	t.Helper()
	f, text := killForm(t)
	path = filepath.Join(t.TempDir(), "tf1"+form.FormEnding)
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	j, err := sitting.Open(strings.TrimSuffix(path, form.FormEnding)+sitting.Ending, f, "")
	if err != nil {
		t.Fatal(err)
	}
	defer j.Close()
	for _, e := range []sitting.Entry{{Do: sitting.Answer, Text: "123"}, {Do: sitting.Finish}} {
		if err := j.Do(e); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

func taken(t *testing.T, in string, args ...string) string {
	t.Helper()
	var out, told bytes.Buffer
	if got := run(append([]string{"take"}, args...), env{in: strings.NewReader(in), out: &out, err: &told}); got != done {
		t.Fatalf("status %d, told %q", got, told.String())
	}
	return out.String()
}

func submissionIn(t *testing.T, path string) form.Submission {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s, err := form.DecodeSubmission(f)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func answersIn(t *testing.T, path string) []form.Answer {
	t.Helper()
	return submissionIn(t, path).Answers
}

func TestACrashBetweenFinishAndTheSubmission(t *testing.T) {
	path := finishedForm(t)
	submission := strings.TrimSuffix(path, form.FormEnding) + form.SubmissionEnding
	if out := taken(t, "", path); !strings.Contains(out, "Handed in: "+submission) {
		t.Errorf("got %q", out)
	}
	if a := answersIn(t, submission); len(a[0].Texts) != 1 || a[0].Texts[0] != "123" {
		t.Errorf("got %v, want the answer 123", a[0])
	}
}

func TestAnsweredAnewAfterTheWindowHandedIn(t *testing.T) {
	path := finishedForm(t)
	submission := strings.TrimSuffix(path, form.FormEnding) + form.SubmissionEnding
	if err := os.WriteFile(submission, []byte("{}"), 0o600); err != nil {
		t.Fatal(err)
	}
	out := taken(t, "45\nfinish\nfinish\n", path, "--force")
	if strings.Contains(out, "Going on") || !strings.Contains(out, "Handed in") {
		t.Errorf("got %q, want a new beginning", out)
	}
	if a := answersIn(t, submission); len(a[0].Texts) != 1 || a[0].Texts[0] != "45" {
		t.Errorf("got %v, want the answer 45", a[0])
	}
}

func TestTheTimeLimit(t *testing.T) {
	b, err := form.ReadBlueprint(strings.NewReader("title = \"a\"\nminutes = 10\n[[item]]\nkind = \"read-dial\"\nattempts = 3\n"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "tf1", Name: "Ada Moss", ExtraTime: 1.5}}, form.Options{})
	if err != nil {
		t.Fatal(err)
	}
	j, err := sitting.Open(filepath.Join(t.TempDir(), "a"+sitting.Ending), d.Forms[0], "2026-09-14T09:00:00Z")
	if err != nil {
		t.Fatal(err)
	}
	defer j.Close()
	times := []string{"2026-09-14T09:00:00Z", "2026-09-14T09:14:00Z", "2026-09-14T09:16:00Z"}
	var out bytes.Buffer
	p := (&taker{env: env{out: &out}, now: func() string { return times[0] }}).taking(j)
	for _, line := range []string{"12", "13", "14"} {
		p.Line(line)
		times = append(times[1:], times[len(times)-1])
	}
	p.Line("overview")
	p.Line("finish")
	text := out.String()
	for _, want := range []string{`answered "12"`, `answered "13"`, "The time is over, so this is not kept. finish hands in", "Time left: none, the time is over"} {
		if !strings.Contains(text, want) {
			t.Errorf("got %q, want %q in it", text, want)
		}
	}
	if strings.Contains(text, `answered "14"`) || !j.Finished() {
		t.Errorf("got %q; finished %v", text, j.Finished())
	}
}

// TestTheBenchGoesOnWhereItWas leaves a form in the middle of a measurement.
func TestTheBenchGoesOnWhereItWas(t *testing.T) {
	_, text := killForm(t)
	path := filepath.Join(t.TempDir(), "tf1"+form.FormEnding)
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	first := taken(t, "go 9\nseat side\nswing 20\narm 25\nlook\nquit\n", path)
	again := taken(t, "look\nquit\n", path)
	lines := strings.Split(strings.TrimSpace(first), "\n")
	looked := lines[len(lines)-2]
	if !strings.HasPrefix(looked, "The rock surface") || !strings.Contains(again, "\n"+looked+"\n") {
		t.Errorf("got %q, want %q in it", again, looked)
	}
}
