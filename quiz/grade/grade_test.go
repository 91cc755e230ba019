package grade_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
	"cuesta/sim"
	"cuesta/sim/record"
)

const degree = orient.Degree

// slabs is a blueprint of slabs to measure and dials to read.
func slabs(dipMin, dipMax orient.Angle) form.Blueprint {
	t := quiz.SteppedTolerance
	t.Reading, t.Levelling = 2*degree, degree
	spec := item.Spec{Tolerance: t, DipMin: dipMin, DipMax: dipMax}
	return form.Blueprint{
		Title: "Ostby Fell, first day", Tolerance: t, PassShare: 0.6, Seed: 1,
		Parts: []form.Part{
			{Kind: "measure-slab", Count: 2, Points: 4, Attempts: 3, HintCost: 0.1, Spec: spec},
			{Kind: "read-dial", Count: 1, Points: 2, Attempts: 2, HintCost: 0.25, Spec: item.Spec{Tolerance: t}},
		},
	}
}

// dealt are the forms of a class of n.
func dealt(t testing.TB, b form.Blueprint, n int) []form.Form {
	t.Helper()
	var roster []form.Student
	for i := range n {
		roster = append(roster, form.Student{ID: fmt.Sprintf("tf%02d", i+1), Name: fmt.Sprintf("Student %d", i+1), ExtraTime: 1, Class: fmt.Sprint(i / 40)})
	}
	d, err := form.Deal(b, roster, form.Options{Seed: b.Seed})
	if err != nil {
		t.Fatal(err)
	}
	return d.Forms
}

// sat is what a learner hands in for a form.
func sat(t testing.TB, l learner.Learner, f form.Form, seed uint64) form.Submission {
	t.Helper()
	w, err := l.Sit(f, seed)
	if err != nil {
		t.Fatal(err)
	}
	w.Submission.Started, w.Submission.Finished = "2026-10-02T09:00:00Z", "2026-10-02T09:40:00Z"
	return w.Submission
}

func marked(t testing.TB, s form.Submission) grade.Graded {
	t.Helper()
	g, err := grade.Submission(s, nil)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// answered answers every item with its key and leaves out the recordings.
func answered(t testing.TB, f form.Form) form.Submission {
	t.Helper()
	all, err := f.All()
	if err != nil {
		t.Fatal(err)
	}
	s := form.Submission{Form: f, Answers: make([]form.Answer, len(all))}
	for i, it := range all {
		s.Answers[i].Texts = []string{it.Key()}
	}
	return s
}

func TestCarefulWorkEarnsAllAndNoRemark(t *testing.T) {
	f := dealt(t, slabs(20*degree, 60*degree), 1)[0]
	for seed := range uint64(20) {
		g := marked(t, sat(t, learner.Learner{}, f, seed))
		if g.Of != 10 || g.Share() < 0.75 || len(g.Remarks) > 0 {
			t.Errorf("seed %d: %v of %v points, remarks %v", seed, g.Points, g.Of, g.Remarks)
		}
	}
}

func TestHintsAndAttempts(t *testing.T) {
	f := dealt(t, slabs(20*degree, 60*degree), 1)[0]
	key := answered(t, f).Answers[2].Texts[0]
	for _, c := range []struct {
		what   string
		texts  []string
		hints  int
		points float64
		answer string
	}{
		{"right", []string{key}, 0, 2, key},
		{"one hint", []string{key}, 1, 1.5, key},
		{"more hints than points", []string{key}, 9, 0, key},
		{"wrong with a hint costs no more than it earned", []string{"?"}, 1, 0, "?"},
		{"the last counts", []string{"1", key}, 0, 2, key},
		{"the last that can be read counts", []string{key, "well"}, 0, 2, key},
		{"not answered", nil, 2, 0, ""},
	} {
		s := answered(t, f)
		s.Answers[2].Texts, s.Answers[2].Hints = c.texts, c.hints
		m := marked(t, s).Items[2]
		if m.Points != c.points || m.Answer != c.answer || m.Answered != (c.texts != nil) {
			t.Errorf("%s: %v points for %q (answered %v), want %v for %q", c.what, m.Points, m.Answer, m.Answered, c.points, c.answer)
		}
	}
}

// Half marks for a strike within 8° and a dip within 8° is the marking of one
// published course: S. Martel, University of Hawaii, GG303 lab 1, 2011.
func TestSteps(t *testing.T) {
	f := dealt(t, slabs(50*degree, 60*degree), 1)[0]
	s := answered(t, f)
	truth := truthOf(t, f, 0)
	for _, c := range []struct {
		strike, dip orient.Angle
		points      float64
	}{
		{0, 0, 4}, {2, 3, 4}, {0, 7, 3}, {6, 0, 3}, {6, 7, 2}, {0, 9, 2}, {30, 0, 3}, {180, 0, 3},
	} {
		p := orient.PlaneOf(truth.Strike.Angle()+c.strike*degree, truth.Dip+c.dip*degree)
		s.Answers[0].Texts = []string{orient.Format(p, orient.AzimuthDip)}
		want := c.points
		if c.strike == 30 {
			want = 2 // the side counts only with the line
		}
		if got := marked(t, s).Items[0].Points; got != want {
			t.Errorf("off by %v and %v: %v points, want %v", c.strike, c.dip, got, want)
		}
	}
}

func truthOf(t testing.TB, f form.Form, i int) orient.Plane {
	t.Helper()
	it, err := f.Item(i)
	if err != nil {
		t.Fatal(err)
	}
	return it.(item.AtBench).Setup().Plane
}

func TestAnyNotationEarnsTheSame(t *testing.T) {
	for _, dips := range [][2]orient.Angle{{1, 1}, {20, 60}, {85, 89}, {90, 90}} {
		for seed := range uint64(3) {
			b := slabs(dips[0]*degree, dips[1]*degree)
			b.Seed = seed
			f := dealt(t, b, 1)[0]
			truth := truthOf(t, f, 0)
			other := truth.Strike.Opposite().String() + "/" + fmt.Sprintf("%02.0f", truth.Dip.Degrees()) + " " + truth.DipDirection().Letters()
			texts := []string{
				orient.Format(truth, orient.AzimuthDip), orient.Format(truth, orient.Quadrant),
				"dd " + orient.Format(truth, orient.DirectionDip), other,
			}
			for _, text := range texts {
				if strings.HasPrefix(text, "dd ") {
					text = fmt.Sprintf("%02.0f→%s", truth.Dip.Degrees(), truth.DipDirection())
				}
				s := answered(t, f)
				s.Answers[0].Texts = []string{text}
				if m := marked(t, s).Items[0]; m.Points != 4 || !m.Mark.Right {
					t.Errorf("%s for %s: %v points, %s", text, texts[0], m.Points, m.Mark.Said)
				}
			}
		}
	}
}

func TestNorthWraps(t *testing.T) {
	b := slabs(40*degree, 50*degree)
	for seed := range uint64(400) {
		f := form.Form{Blueprint: b, Student: form.Student{ID: "a", ExtraTime: 1}, Items: []form.Dealt{{Part: 0, Seed: seed}, {Part: 0, Seed: seed}, {Part: 1, Seed: 1}}}
		truth := truthOf(t, f, 0)
		if d := truth.Strike.From(0).Abs(); d > degree {
			continue
		}
		for _, text := range []string{"000/45", "360/45", "359/45", "001/45"} {
			s := answered(t, f)
			s.Answers[0].Texts = []string{text}
			if g := marked(t, s); !g.Items[0].Mark.Verdict.StrikeRight {
				t.Errorf("%s for %v: %s", text, truth.Strike, g.Items[0].Mark.Said)
			}
		}
		return
	}
	t.Error("no slab near north was dealt")
}

func kinds(rs []grade.Remark) []grade.RemarkKind {
	var ks []grade.RemarkKind
	for _, r := range rs {
		ks = append(ks, r.Kind)
	}
	return ks
}

// unread is a recording that reads nothing, or reads the dial where it stands.
func unread(t testing.TB, setup sim.Setup, seats ...sim.Seat) string {
	t.Helper()
	r, err := record.Start(setup)
	if err != nil {
		t.Fatal(err)
	}
	r.Advance(600)
	for _, s := range seats {
		for _, c := range []sim.Command{{Kind: sim.Place, Seat: s}, {Kind: sim.Read}} {
			if err := r.Do(c); err != nil {
				t.Fatal(err)
			}
		}
	}
	return written(t, r.Recording())
}

func written(t testing.TB, r record.Recording) string {
	t.Helper()
	var b strings.Builder
	if err := r.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestRecordingsAreReportedAndNotPunished(t *testing.T) {
	f := dealt(t, slabs(20*degree, 60*degree), 1)[0]
	good := sat(t, learner.Learner{}, f, 3)
	it, err := f.Item(0)
	if err != nil {
		t.Fatal(err)
	}
	setup := it.(item.AtBench).Setup()
	ended, err := record.Read(strings.NewReader(good.Answers[0].Recording))
	if err != nil {
		t.Fatal(err)
	}
	ended.End.Seen.Arm++
	for _, c := range []struct {
		what      string
		recording string
		want      []grade.RemarkKind
	}{
		{"as it was", good.Answers[0].Recording, nil},
		{"none", "", []grade.RemarkKind{grade.NoRecording}},
		{"damaged", good.Answers[0].Recording[:100], []grade.RemarkKind{grade.RecordingUnread}},
		{"of the other slab", good.Answers[1].Recording, []grade.RemarkKind{grade.RecordingElsewhere}},
		{"another end", written(t, ended), []grade.RemarkKind{grade.RecordingDiffers}},
		{"nothing read", unread(t, setup), []grade.RemarkKind{grade.NoReading}},
		{"only the dial", unread(t, setup, sim.OnEdge), []grade.RemarkKind{grade.NoReading, grade.ReadingDiffers}},
		{"elsewhere", unread(t, setup, sim.OnEdge, sim.OnSide), []grade.RemarkKind{grade.ReadingDiffers}},
	} {
		s := good
		s.Answers = slices.Clone(good.Answers)
		s.Answers[0].Texts = []string{it.Key()}
		s.Answers[0].Recording = c.recording
		g := marked(t, s)
		if got := kinds(g.Remarks); !slices.Equal(got, c.want) {
			t.Errorf("%s: remarks %v, want %v", c.what, g.Remarks, c.want)
		}
		if g.Items[0].Points != 4 {
			t.Errorf("%s: %v points, want all 4", c.what, g.Items[0].Points)
		}
		for _, r := range g.Remarks {
			if r.Item != 1 {
				t.Errorf("%s: the remark is about item %d", c.what, r.Item)
			}
		}
	}
}

// A dip whose recording shows no arc has no mistake of the arc; the number
// speaks alone only where there is no recording. 49 percent is 26°.
func TestWhatWasNotReadIsNotMisread(t *testing.T) {
	f := dealt(t, slabs(26*degree, 26*degree), 1)[0]
	it, err := f.Item(0)
	if err != nil {
		t.Fatal(err)
	}
	setup := it.(item.AtBench).Setup()
	read := func(recording string) grade.Graded {
		s := answered(t, f)
		s.Answers[0].Recording = recording
		p := setup.Plane
		p.Dip = 49 * degree
		s.Answers[0].Texts = []string{orient.Format(p, orient.AzimuthDip)}
		return marked(t, s)
	}
	for what, recording := range map[string]string{
		"the dial alone was read": unread(t, setup, sim.OnEdge), "nothing was read": unread(t, setup),
	} {
		g := read(recording)
		if m := g.Items[0].Mark; m.Verdict.DipRight || len(m.Mistakes) > 0 {
			t.Errorf("%s: got %v, want the dip wrong and no reason", what, m.Mistakes)
		}
		if g.Remarks[0].Kind != grade.NoReading {
			t.Errorf("%s: got %v, want it remarked", what, g.Remarks)
		}
	}
	if m := read("").Items[0].Mark.Mistakes; len(m) != 1 || m[0].Kind != mistake.PercentScale {
		t.Errorf("no recording: got %v, want the percent scale", m)
	}
}

// The reasons of a wrong answer come from the bench as it runs again, not from
// what the file says was seen.
func TestTheDiagnosisFollowsTheReplay(t *testing.T) {
	f := dealt(t, slabs(15*degree, 25*degree), 1)[0]
	named := 0
	for seed := range uint64(40) {
		s := sat(t, learner.Learner{Manner: learner.Mistaken, Mistake: mistake.NeedleLocked}, f, seed)
		with := marked(t, s).Items[0]
		s.Answers[0].Recording = ""
		without := marked(t, s).Items[0]
		if with.Mark.Right {
			continue
		}
		if with.Points != without.Points {
			t.Errorf("seed %d: %v points with the recording and %v without", seed, with.Points, without.Points)
		}
		if len(with.Mark.Mistakes) == 1 && with.Mark.Mistakes[0].Kind == mistake.NeedleLocked {
			named++
			if len(without.Mark.Mistakes) > 0 && without.Mark.Mistakes[0].Kind == mistake.NeedleLocked {
				t.Errorf("seed %d: named without a recording too", seed)
			}
		}
	}
	if named == 0 {
		t.Error("the lock was never named as the reason")
	}
}

func TestRegrade(t *testing.T) {
	b := slabs(40*degree, 60*degree)
	f := dealt(t, b, 1)[0]
	s := answered(t, f)
	truth := truthOf(t, f, 0)
	s.Answers[0].Texts = []string{orient.Format(orient.PlaneOf(truth.Strike.Angle()+5*degree, truth.Dip), orient.AzimuthDip)}
	var before, after bytes.Buffer
	if err := s.Encode(&before); err != nil {
		t.Fatal(err)
	}
	kinder := slabs(40*degree, 60*degree)
	kinder.Parts[0].Spec.Tolerance.Reading, kinder.Parts[0].Points, kinder.PassShare = 6*degree, 8, 0.99
	g, err := grade.Submission(s, &kinder)
	if err != nil {
		t.Fatal(err)
	}
	old := marked(t, s)
	if old.Items[0].Points != 3 || g.Items[0].Points != 8 || g.Of != 18 || !g.Passed {
		t.Errorf("%v points before; %v of %v after, passed %v", old.Items[0].Points, g.Points, g.Of, g.Passed)
	}
	if err := s.Encode(&after); err != nil || !bytes.Equal(before.Bytes(), after.Bytes()) {
		t.Errorf("the submission was changed: %v", err)
	}
	for what, change := range map[string]func(*form.Blueprint){
		"fewer runs": func(b *form.Blueprint) { b.Parts = b.Parts[:1] },
		"a count":    func(b *form.Blueprint) { b.Parts[0].Count = 3 },
		"a kind":     func(b *form.Blueprint) { b.Parts[1].Kind = "read-arc" },
	} {
		c := slabs(40*degree, 60*degree)
		change(&c)
		if _, err := grade.Submission(s, &c); !errors.Is(err, grade.ErrChanged) {
			t.Errorf("%s: %v, want ErrChanged", what, err)
		}
	}
}

func TestAFormThatCannotBeDealtIsRefused(t *testing.T) {
	s := answered(t, dealt(t, slabs(40*degree, 60*degree), 1)[0])
	s.Form.Blueprint.Parts = slices.Clone(s.Form.Blueprint.Parts)
	s.Form.Blueprint.Parts[1].Kind = "read-tea-leaves"
	if _, err := grade.Submission(s, nil); !errors.Is(err, grade.ErrDealt) {
		t.Errorf("got %v, want ErrDealt", err)
	}
	s = answered(t, dealt(t, slabs(40*degree, 60*degree), 1)[0])
	s.Answers = s.Answers[:2]
	if _, err := grade.Submission(s, nil); !errors.Is(err, grade.ErrDealt) {
		t.Errorf("got %v, want ErrDealt", err)
	}
}

func TestPlanesAreKeptForTheFigures(t *testing.T) {
	f := dealt(t, slabs(40*degree, 60*degree), 1)[0]
	s := answered(t, f)
	truth := truthOf(t, f, 0)
	s.Answers[0].Texts = []string{orient.Format(orient.PlaneOf(truth.Strike.Angle()+185*degree, truth.Dip-4*degree), orient.AzimuthDip)}
	s.Answers[1].Texts = []string{"no idea"}
	g := marked(t, s)
	p := g.Items[0].Plane
	if p == nil || g.Items[1].Plane != nil || g.Items[2].Plane != nil {
		t.Fatalf("planes %v, %v, %v", g.Items[0].Plane, g.Items[1].Plane, g.Items[2].Plane)
	}
	if math.Abs(p.LineError.Degrees()-5) > 0.01 || math.Abs(p.DipError.Degrees()+4) > 0.01 || p.Truth != truth || p.Right {
		t.Errorf("off by %.2f° and %.2f°, want 5° and −4°", p.LineError.Degrees(), p.DipError.Degrees())
	}
}
