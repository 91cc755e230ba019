package grade_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
)

func source(t testing.TB, name string, s form.Submission) grade.Source {
	t.Helper()
	var b bytes.Buffer
	if err := s.Encode(&b); err != nil {
		t.Fatal(err)
	}
	return text(name, b.String())
}

func text(name, s string) grade.Source {
	return grade.Source{Name: name, Open: func() (io.ReadCloser, error) { return io.NopCloser(strings.NewReader(s)), nil }}
}

// report marks sources as a class.
func report(t testing.TB, roster []form.Student, sources ...grade.Source) grade.Report {
	t.Helper()
	c := grade.NewClass(roster)
	err := grade.Many(sources, nil, func(o grade.Outcome) error { c.Add(o); return nil })
	if err != nil {
		t.Fatal(err)
	}
	return c.Report()
}

func TestTheClassIsInOrderAndComplete(t *testing.T) {
	forms := dealt(t, slabs(20*degree, 60*degree), 5)
	var roster []form.Student
	var sources []grade.Source
	for i, f := range forms {
		s := f.Student
		switch i {
		case 1:
			s.Name = "Another Name"
		case 2:
			s.ExtraTime = 1.5
		case 4:
			s.ID = "tf99"
		}
		roster = append(roster, s)
		if i != 3 {
			sources = append(sources, source(t, s.ID, answered(t, f)))
		}
	}
	slices.Reverse(sources)
	rep := report(t, roster, sources...)
	var ids []string
	var remarks [][]grade.RemarkKind
	for _, r := range rep.Results {
		ids = append(ids, r.ID)
		var ks []grade.RemarkKind
		for _, k := range kinds(r.Remarks) {
			if k != grade.NoRecording {
				ks = append(ks, k)
			}
		}
		remarks = append(remarks, ks)
	}
	if want := []string{"tf01", "tf02", "tf03", "tf05"}; !slices.Equal(ids, want) {
		t.Errorf("results of %v, want %v", ids, want)
	}
	want := [][]grade.RemarkKind{nil, {grade.RosterDiffers}, {grade.RosterDiffers}, {grade.NotOnRoster}}
	if fmt.Sprint(remarks) != fmt.Sprint(want) {
		t.Errorf("remarks %v, want %v", remarks, want)
	}
	if len(rep.Missing) != 2 || rep.Missing[0].ID != "tf04" || rep.Missing[1].ID != "tf99" {
		t.Errorf("missing are %v, want tf04 and tf99", rep.Missing)
	}
	if rep.Results[1].Name != "Another Name" {
		t.Errorf("the name is %q, want that of the roster", rep.Results[1].Name)
	}
}

func TestOfDoublesTheLaterCounts(t *testing.T) {
	f := dealt(t, slabs(20*degree, 60*degree), 1)[0]
	at := func(finished string) form.Submission {
		s := answered(t, f)
		s.Finished = finished
		return s
	}
	for _, c := range []struct{ first, second, counts string }{
		{"2026-10-02T09:00:00Z", "2026-10-02T10:00:00Z", "second"},
		{"2026-10-02T10:00:00Z", "2026-10-02T09:00:00Z", "first"},
		{"2026-10-02T10:00:00+01:00", "2026-10-02T09:30:00Z", "second"}, // 09:00 and 09:30
		{"2026-10-02T09:00:00Z", "2026-10-02T09:00:00Z", "second"},
		{"", "", "second"},
		{"2026-10-02T09:00:00Z", "", "first"},
	} {
		rep := report(t, nil, source(t, "first", at(c.first)), source(t, "second", at(c.second)))
		if len(rep.Results) != 1 || len(rep.Doubles) != 1 {
			t.Fatalf("%d results, %d doubles", len(rep.Results), len(rep.Doubles))
		}
		if got := rep.Results[0].Source; got != c.counts || rep.Doubles[0].Counts != c.counts {
			t.Errorf("%q and %q: %s counts, want %s", c.first, c.second, got, c.counts)
		}
	}
}

func TestLate(t *testing.T) {
	b := slabs(20*degree, 60*degree)
	b.Minutes, b.Due = 60, "2026-10-02T11:00:00Z"
	f := dealt(t, b, 1)[0]
	for _, c := range []struct {
		started, finished string
		extra             float64
		want              []grade.RemarkKind
	}{
		{"2026-10-02T09:00:00Z", "2026-10-02T10:00:00Z", 1, nil},
		{"2026-10-02T09:00:00Z", "2026-10-02T10:00:59Z", 1, nil},
		{"2026-10-02T09:00:00Z", "2026-10-02T10:20:00Z", 1, []grade.RemarkKind{grade.OverTime}},
		{"2026-10-02T09:00:00Z", "2026-10-02T10:20:00Z", 1.5, nil},
		{"2026-10-02T10:30:00Z", "2026-10-02T11:00:01Z", 1, []grade.RemarkKind{grade.PastDue}},
		{"", "2026-10-02T12:00:00+02:00", 1, nil},
	} {
		s := answered(t, f)
		s.Started, s.Finished = c.started, c.finished
		s.Form.Student.ExtraTime = 1
		roster := []form.Student{{ID: f.Student.ID, Name: f.Student.Name, ExtraTime: c.extra}}
		class := grade.NewClass(roster)
		class.Add(grade.Outcome{Source: "one", Graded: marked(t, s)})
		var got []grade.RemarkKind
		for _, k := range kinds(class.Report().Results[0].Remarks) {
			if k == grade.OverTime || k == grade.PastDue {
				got = append(got, k)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s to %s, extra %v: %v, want %v", c.started, c.finished, c.extra, got, c.want)
		}
	}
}

func TestAnotherQuizIsListedAndLeftOutOfTheFigures(t *testing.T) {
	easy := slabs(20*degree, 60*degree)
	easy.Parts[0].Spec.Tolerance.Reading = 80 * degree
	class := dealt(t, slabs(20*degree, 60*degree), 3)
	rep := report(t, nil, source(t, "a", answered(t, class[0])), source(t, "b", answered(t, class[1])),
		source(t, "c", answered(t, dealt(t, easy, 3)[2])))
	if rep.Analysis.Students != 2 {
		t.Errorf("%d students in the figures, want 2", rep.Analysis.Students)
	}
	if got := kinds(rep.Results[2].Remarks); !slices.Contains(got, grade.OtherQuiz) {
		t.Errorf("remarks %v, want another quiz among them", got)
	}
}

// Files that are no submissions are refused with a reason, and the rest of the
// class is marked all the same.
func TestHostileFiles(t *testing.T) {
	forms := dealt(t, slabs(20*degree, 60*degree), 2)
	good, err := encoded(answered(t, forms[0]))
	if err != nil {
		t.Fatal(err)
	}
	sources := []grade.Source{source(t, "good", answered(t, forms[1]))}
	for name, s := range map[string]string{
		"empty":        "",
		"cut off":      good[:len(good)/2],
		"deep":         `{"cuesta":"submission","version":1,"form":` + strings.Repeat("[", 1<<20),
		"huge number":  strings.Replace(good, `"points": 4`, `"points": 1e999`, 1),
		"no number":    strings.Replace(good, `"points": 4`, `"points": NaN`, 1),
		"unknown key":  strings.Replace(good, `"started"`, `"mark": 100, "started"`, 1),
		"wide letters": "\xff\xfe{\x00\"\x00c\x00",
		"a zip":        "PK\x03\x04" + strings.Repeat("\x00", 100),
		"bytes":        strings.Replace(good, "Student 1", "Student \xff", 1),
		"changed":      strings.Replace(good, `"points": 4`, `"points": 40`, 1),
		"a form":       strings.Replace(good, `"submission"`, `"form"`, 1),
	} {
		if s == good {
			t.Fatalf("%s: nothing was changed", name)
		}
		sources = append(sources, text(name, s))
	}
	sources = append(sources,
		grade.Source{Name: "zeros", Open: func() (io.ReadCloser, error) { return io.NopCloser(endless(0)), nil }},
		grade.Source{Name: "spaces", Open: func() (io.ReadCloser, error) {
			return io.NopCloser(io.MultiReader(strings.NewReader("{"), endless(' '))), nil
		}},
		grade.Source{Name: "gone", Open: func() (io.ReadCloser, error) { return nil, errors.New("it is gone") }},
		grade.Source{Name: "broken", Open: func() (io.ReadCloser, error) { panic("unforeseen") }},
	)
	rep := report(t, nil, sources...)
	if len(rep.Results) != 1 || len(rep.Refused) != len(sources)-1 {
		t.Errorf("%d marked and %d refused of %d", len(rep.Results), len(rep.Refused), len(sources))
	}
	for i, r := range rep.Refused {
		if r.Source != sources[i+1].Name || r.Reason == "" || strings.Contains(r.Reason, "\n") || len(r.Reason) > 500 {
			t.Errorf("%s: %q", r.Source, r.Reason)
		}
	}
}

func encoded(s form.Submission) (string, error) {
	var b strings.Builder
	err := s.Encode(&b)
	return b.String(), err
}

// endless is a file of one byte over and over, of a gigabyte and more.
type endless byte

func (e endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = byte(e)
	}
	return len(p), nil
}

func TestTheOrderIsThatOfTheSources(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(8))
	f := dealt(t, slabs(20*degree, 60*degree), 1)[0]
	slow := source(t, "slow", sat(t, learner.Learner{}, f, 1))
	var sources []grade.Source
	for i := range 60 {
		s := text(fmt.Sprint(i), "quick to refuse")
		if i%5 == 0 {
			s = grade.Source{Name: fmt.Sprint(i), Open: slow.Open}
		}
		sources = append(sources, s)
	}
	n := 0
	err := grade.Many(sources, nil, func(o grade.Outcome) error {
		if o.Source != fmt.Sprint(n) {
			t.Errorf("%s came as number %d", o.Source, n)
		}
		n++
		return nil
	})
	if err != nil || n != len(sources) {
		t.Errorf("%d outcomes, %v", n, err)
	}
	full := errors.New("the disk is full")
	if err := grade.Many(sources, nil, func(grade.Outcome) error { return full }); !errors.Is(err, full) {
		t.Errorf("got %v, want the error of each", err)
	}
}

func TestAnalysis(t *testing.T) {
	b := form.Blueprint{Parts: []form.Part{{Kind: "read-dial", Count: 2, Points: 2}, {Kind: "unheard-of", Count: 1, Points: 2}}}
	one := func(shares ...float64) grade.Result {
		r := grade.Result{Of: 6}
		for i, s := range shares {
			it := grade.ItemResult{Part: i / 2, Share: s, Points: 2 * s, Right: s == 1, Answered: s > 0}
			if s == 0.5 {
				it.Mistakes = []grade.Named{{Kind: mistake.SouthEnd, Alone: true}}
			}
			if s == 0.25 {
				it.Mistakes = []grade.Named{{Kind: mistake.OtherEnd}, {Kind: mistake.SouthEnd}}
			}
			r.Items = append(r.Items, it)
			r.Points += it.Points
		}
		r.Passed = r.Points >= 3
		return r
	}
	a := grade.Analyse(b, []grade.Result{one(1, 1, 1), one(1, 0.5, 0), one(1, 0.25, 0), one(1, 0, 0)})
	if a.Students != 4 || a.Passed != 2 || len(a.Items) != 3 {
		t.Fatalf("%+v", a)
	}
	if got := a.Items[1]; got.Difficulty.Value != 0.4375 || got.Right.Value != 0.25 || got.Answered != 3 {
		t.Errorf("item 2 is %+v", got)
	}
	if got := a.Items[0].Biserial.Undefined; got != "all right" {
		t.Errorf("the point-biserial of item 1 is undefined because %q, want all right", got)
	}
	if a.Items[0].Title != "Read the dial" || a.Items[2].Title != "unheard-of" {
		t.Errorf("titles %q and %q", a.Items[0].Title, a.Items[2].Title)
	}
	want := []grade.MistakeCount{{Kind: mistake.SouthEnd, Alone: 1, Shared: 1}, {Kind: mistake.OtherEnd, Shared: 1}}
	if !slices.Equal(a.Mistakes, want) {
		t.Errorf("mistakes %+v, want %+v", a.Mistakes, want)
	}
}

func TestNobody(t *testing.T) {
	rep := report(t, nil)
	if rep.Analysis.Students != 0 || rep.Analysis.Mean.Defined() || rep.Analysis.KR20.Defined() {
		t.Errorf("an empty class has figures: %+v", rep.Analysis)
	}
}

func TestRemarksAreSaidOnce(t *testing.T) {
	got := grade.Remarked([]grade.Remark{
		{Kind: grade.NoRecording, Item: 1}, {Kind: grade.NoReading, Item: 2, Detail: "for the dip"},
		{Kind: grade.NoRecording, Item: 3}, {Kind: grade.NotOnRoster},
	})
	const want = "items 1, 3: there is no recording of the bench; item 2: the recording takes no reading for the dip; not on the roster"
	if got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// BenchmarkGrade marks submissions of two slabs and a dial, recordings run
// again, on all processors.
func BenchmarkGrade(b *testing.B) {
	var pool []grade.Source
	for i, f := range dealt(b, slabs(15*degree, 70*degree), 40) {
		pool = append(pool, source(b, f.Student.ID, sat(b, learner.Learner{}, f, uint64(i))))
	}
	sources := make([]grade.Source, b.N)
	for i := range sources {
		sources[i] = pool[i%len(pool)]
	}
	b.ResetTimer()
	c := grade.NewClass(nil)
	err := grade.Many(sources, nil, func(o grade.Outcome) error {
		if o.Err != nil {
			return o.Err
		}
		c.Add(o)
		return nil
	})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "submissions/s")
}
