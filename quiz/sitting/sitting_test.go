package sitting_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
	"cuesta/sim"
	"cuesta/sim/record"
)

const blueprint = `title = "Sitting"
minutes = 10
[[item]]
kind = "read-dial"
attempts = 2
[[item]]
kind = "measure-slab"
`

const began = "2026-09-14T09:00:00Z"

func at(minutes int) string {
	t, _ := time.Parse(time.RFC3339, began)
	return t.Add(time.Duration(minutes) * time.Minute).Format(time.RFC3339)
}

func dealt(t testing.TB, text string, s form.Student) form.Form {
	t.Helper()
	b, err := form.ReadBlueprint(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{s}, form.Options{Seed: 5})
	if err != nil {
		t.Fatal(err)
	}
	return d.Forms[0]
}

var ada = form.Student{ID: "tf1", Name: "Ada Moss", ExtraTime: 1.5}

func begin(t testing.TB) *sitting.Sitting {
	t.Helper()
	s, err := sitting.New(dealt(t, blueprint, ada), began)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bench is a recording of some swings of the second item.
func bench(t testing.TB, s *sitting.Sitting, swings int) string {
	t.Helper()
	it := s.Item(1).(interface{ Setup() sim.Setup })
	r, err := record.Start(it.Setup())
	if err != nil {
		t.Fatal(err)
	}
	for range swings {
		if err := r.Do(sim.Command{Kind: sim.Swing, Angle: orient.Degree}); err != nil {
			t.Fatal(err)
		}
		r.Advance(60)
	}
	var b strings.Builder
	if err := r.Recording().Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestEntries(t *testing.T) {
	s := begin(t)
	for i, c := range []struct {
		entry sitting.Entry
		want  error
	}{
		{sitting.Entry{Do: sitting.Undo}, sitting.ErrNothing},
		{sitting.Entry{Do: sitting.Answer, Item: 0, Text: "nonsense"}, sitting.ErrUnread},
		{sitting.Entry{Do: sitting.Answer, Item: 0, Text: strings.Repeat("1", 500)}, sitting.ErrUnread},
		{sitting.Entry{Do: sitting.Answer, Item: 2, Text: "12"}, sitting.ErrItem},
		{sitting.Entry{Do: sitting.Answer, Item: -1, Text: "12"}, sitting.ErrItem},
		{sitting.Entry{Do: sitting.Go, Item: 1}, nil},
		{sitting.Entry{Do: sitting.Answer, Item: 0, Text: "12"}, nil},
		{sitting.Entry{Do: sitting.Answer, Item: 0, Text: "13"}, nil},
		{sitting.Entry{Do: sitting.Answer, Item: 0, Text: "14"}, sitting.ErrAttempts},
		{sitting.Entry{Do: sitting.Undo}, nil},
		{sitting.Entry{Do: sitting.Answer, Item: 0, Text: "15"}, nil},
		{sitting.Entry{Do: sitting.Flag, Item: 1}, nil},
		{sitting.Entry{Do: sitting.Hint, Item: 1}, nil},
		{sitting.Entry{Do: sitting.Bench, Item: 0, Text: "x"}, sitting.ErrBench},
		{sitting.Entry{Do: sitting.Bench, Item: 1, Keep: 3, Text: "x"}, sitting.ErrBench},
		{sitting.Entry{Do: sitting.Deed(99)}, sitting.ErrDeed},
		{sitting.Entry{Do: sitting.Flag, Item: 1, At: "noon"}, sitting.ErrMoment},
		{sitting.Entry{Do: sitting.Finish, At: at(3)}, nil},
		{sitting.Entry{Do: sitting.Answer, Item: 1, Text: "035/30"}, sitting.ErrFinished},
	} {
		if err := s.Do(c.entry); !errors.Is(err, c.want) {
			t.Errorf("entry %d, %v: got %v, want %v", i+1, c.entry, err, c.want)
		}
	}
	got := s.Submission()
	want := []form.Answer{{Texts: []string{"12", "15"}}, {Hints: 1, Flagged: true}}
	if !reflect.DeepEqual(got.Answers, want) || got.Started != began || got.Finished != at(3) {
		t.Errorf("got %+v, %s to %s; want %+v", got.Answers, got.Started, got.Finished, want)
	}
}

func TestTimeLimitWithExtraTime(t *testing.T) {
	answer := sitting.Entry{Do: sitting.Answer, Item: 0, Text: "12"}
	for _, c := range []struct {
		name    string
		due     string
		minutes []int // of the entries, one after the other
		want    error // of the last one
	}{
		{"at the very end of 15 minutes", "", []int{15}, nil},
		{"after the end", "", []int{16}, sitting.ErrTime},
		{"a clock set back gains nothing", "", []int{16, 2}, sitting.ErrTime},
		{"due earlier", "due = 2026-09-14T10:05:00+01:00\n", []int{6}, sitting.ErrTime},
		{"before it is due", "due = 2026-09-14T10:05:00+01:00\n", []int{4}, nil},
	} {
		s, err := sitting.New(dealt(t, c.due+blueprint, ada), began)
		if err != nil {
			t.Fatal(err)
		}
		var last error
		for i, m := range c.minutes {
			e := answer
			if e.At = at(m); i < len(c.minutes)-1 {
				e.Do = sitting.Go
			}
			last = s.Do(e)
		}
		if !errors.Is(last, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, last, c.want)
		}
		if err := s.Do(sitting.Entry{Do: sitting.Finish, At: at(60)}); err != nil {
			t.Errorf("%s: handing in: %v", c.name, err)
		}
	}
	if left, ok := begin(t).Left(at(5)); !ok || left != 10*time.Minute {
		t.Errorf("got %v, %v left; want 10 minutes", left, ok)
	}
}

func TestBenchEntriesHoldOnlyWhatIsNew(t *testing.T) {
	s := begin(t)
	for n := range 5 {
		rec := bench(t, s, n)
		e := s.BenchEntry(1, rec, "")
		if got, want := strings.Count(e.Text, "\n"), 2; n > 0 && got != want {
			t.Errorf("%d swings: %d lines are written, want the new command and the end", n, got)
		}
		if err := s.Do(e); err != nil {
			t.Fatal(err)
		}
		if got := s.Answer(1).Recording; got != rec {
			t.Fatalf("%d swings: got %q, want %q", n, got, rec)
		}
	}
}

// entries fill a journal.
func entries(t testing.TB, s *sitting.Sitting) []sitting.Entry {
	return []sitting.Entry{
		{Do: sitting.Answer, Item: 0, Text: "12", At: at(1)},
		{Do: sitting.Flag, Item: 0, At: at(1)},
		s.BenchEntry(1, bench(t, s, 2), at(2)),
		{Do: sitting.Answer, Item: 1, Text: "035/30 <b> “x”", At: at(2)},
		{Do: sitting.Go, Item: 1, At: at(2)},
		{Do: sitting.Answer, Item: 1, Text: "N35E 30SE", At: at(2)},
		{Do: sitting.Undo, At: at(3)},
		{Do: sitting.Hint, Item: 1, At: at(4)},
		{Do: sitting.Finish, At: at(5)},
	}
}

// TestAJournalCutAnywhere cuts a journal after each of its bytes. What was
// written whole must be there, and the sitting must go on.
func TestAJournalCutAnywhere(t *testing.T) {
	f := dealt(t, blueprint, ada)
	path := filepath.Join(t.TempDir(), "a"+sitting.Ending)
	j, err := sitting.Open(path, f, began)
	if err != nil {
		t.Fatal(err)
	}
	states := map[int64]form.Submission{} // by the size of the file
	keep := func() {
		info, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		states[info.Size()] = j.Submission()
	}
	keep()
	for _, e := range entries(t, j.Sitting) {
		if err := j.Do(e); err == nil {
			keep()
		}
	}
	if len(states) < 7 || !j.Finished() || j.Close() != nil {
		t.Fatalf("only %d entries were taken", len(states))
	}
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	begun, err := sitting.New(f, at(7))
	if err != nil {
		t.Fatal(err)
	}
	want := begun.Submission()
	for n := range int64(len(whole) + 1) {
		if s, ok := states[n]; ok {
			want = s
		}
		if err := os.WriteFile(path, whole[:n], 0o600); err != nil {
			t.Fatal(err)
		}
		j, err := sitting.Open(path, f, at(7))
		if err != nil {
			t.Fatalf("cut after %d bytes: %v", n, err)
		}
		if got := j.Submission(); !reflect.DeepEqual(got, want) {
			t.Fatalf("cut after %d bytes: got %+v, want %+v", n, got, want)
		}
		if n%13 != 0 { // going on waits for the disk
			j.Close()
			continue
		}
		if err := j.Do(sitting.Entry{Do: sitting.Go, Item: 1}); err != nil && !j.Finished() {
			t.Fatalf("cut after %d bytes, going on: %v", n, err)
		}
		j.Close()
	}
}

func TestADamagedJournalIsRefusedAndLeftAlone(t *testing.T) {
	f := dealt(t, blueprint, ada)
	path := filepath.Join(t.TempDir(), "a"+sitting.Ending)
	j, err := sitting.Open(path, f, began)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries(t, j.Sitting) {
		_ = j.Do(e)
	}
	j.Close()
	whole, _ := os.ReadFile(path)
	lines := bytes.SplitAfter(whole, []byte("\n"))
	for _, c := range []struct {
		name, want string
		text       []byte
	}{
		{"a letter changed", "line 2", bytes.Replace(whole, []byte(`"text":"12"`), []byte(`"text":"13"`), 1)},
		{"a line twice", "line 3", bytes.Join([][]byte{lines[0], lines[1], lines[1], lines[2]}, nil)},
		{"a line missing", "line 2", bytes.Join([][]byte{lines[0], lines[2], lines[3]}, nil)},
		{"no head", "line 1", bytes.Join(lines[1:], nil)},
		{"zeros in front", "line 1", append(make([]byte, 100), whole...)},
	} {
		if err := os.WriteFile(path, c.text, 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := sitting.Open(path, f, at(9))
		if !errors.Is(err, sitting.ErrJournal) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want it to name %s", c.name, err, c.want)
		}
		if after, _ := os.ReadFile(path); !bytes.Equal(after, c.text) {
			t.Errorf("%s: the file was changed", c.name)
		}
	}
	other := dealt(t, blueprint, form.Student{ID: "tf2", Name: "Bram Fell"})
	if err := os.WriteFile(path, whole, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := sitting.Open(path, other, at(9)); !errors.Is(err, sitting.ErrJournal) || !strings.Contains(err.Error(), other.Code) {
		t.Errorf("the journal of another form: got %v", err)
	}
}

func TestTwoProgramsOnOneJournal(t *testing.T) {
	f := dealt(t, blueprint, ada)
	path := filepath.Join(t.TempDir(), "a"+sitting.Ending)
	a, err1 := sitting.Open(path, f, began)
	b, err2 := sitting.Open(path, f, began)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	defer a.Close()
	defer b.Close()
	answer := sitting.Entry{Do: sitting.Answer, Item: 0, Text: "12"}
	if err := a.Do(answer); err != nil {
		t.Fatal(err)
	}
	if err := b.Do(answer); !errors.Is(err, sitting.ErrShared) {
		t.Errorf("got %v, want %v", err, sitting.ErrShared)
	}
	if err := a.Do(sitting.Entry{Do: sitting.Undo}); err != nil {
		t.Errorf("the first one goes on: %v", err)
	}
}
