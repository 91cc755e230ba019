package lab_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
	"cuesta/quiz/lab"
	"cuesta/quiz/mistake"
)

const (
	at   = "2026-09-14T10:00:00Z"
	text = `title = "Slabs"
notation = "NOTATION"
readings = 4
counts = "COUNTS"
[place]
site = "45.20,-69.00,400"
date = 2026-09-14
[[station]]
name = "A"
words = "by the window"
plane = "PLANE"
strike_uncertainty = 1.5
dip_uncertainty = 1
note = "secret note"
[[station]]
name = "3"
plane = "080/60"
points = 2
`
)

// read is a lab of two stations, with words put in place of others.
func read(t testing.TB, words ...string) form.Blueprint {
	t.Helper()
	all := append(words, "NOTATION", "azimuth", "COUNTS", "last", "PLANE", "035/30 SE")
	b, err := form.ReadStations(strings.NewReader(strings.NewReplacer(all...).Replace(text)))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// room opens a room whose submissions are kept in a map.
func room(t testing.TB, b form.Blueprint, o lab.Options) (*lab.Room, map[string]form.Submission) {
	t.Helper()
	kept := map[string]form.Submission{}
	if o.Folder == "" {
		o.Folder = t.TempDir()
	}
	o.Now = func() string { return at }
	o.Keep = func(s form.Submission) error { kept[s.Form.Student.ID] = s; return nil }
	r, err := lab.NewRoom(b, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := r.Close(); err != nil {
			t.Error(err)
		}
	})
	return r, kept
}

func must(t testing.TB, errs ...error) {
	t.Helper()
	if err := errors.Join(errs...); err != nil {
		t.Fatal(err)
	}
}

// TestSameVerdictAsTheQuiz lays the verdict at a station beside that of the
// judge for the same plane, the same answer and the same tolerance, in every
// notation. Where the declination is set on the dials, there is none to reckon
// with.
func TestSameVerdictAsTheQuiz(t *testing.T) {
	for _, setting := range []string{"declination = \"preset\"\n", "declination = \"student\"\n"} {
		sameVerdicts(t, setting)
	}
}

func sameVerdicts(t *testing.T, setting string) {
	answers := []string{
		"035/30", "036/31", "215/30", "215/30 NW", "215/30 SE", "035/30 SE", "N35E 30SE", "S35W 30SE", "N35E/30NW",
		"30→125", "dd 125/30", "125/30", "305/30", "325/30", "035/58", "035/60", "055/30", "015/30", "031.2/30", "040.5/30",
		"horizontal", "vertical", "035/30 overturned", "30 125", "035/03", "053/30", "30/035", "35°/26°15'", "035 @ 33",
	}
	n := 0
	for word, notation := range map[string]orient.Notation{
		"azimuth": orient.AzimuthDip, "quadrant": orient.Quadrant, "direction": orient.DirectionDip, "pole": orient.PoleNotation,
	} {
		b := read(t, "NOTATION", word, "PLANE", orient.Format(orient.PlaneOf(35*orient.Degree, 30*orient.Degree), notation),
			"date =", setting+"date =")
		reckoned := b.Field.Declination
		if b.RingPreset {
			reckoned = 0
		}
		r, _ := room(t, b, lab.Options{})
		must(t, r.GoTo("a"))
		for i, text := range answers {
			must(t, r.Call(fmt.Sprintf("s%d", i)))
			got, err := r.Note(text)
			entry, perr := orient.Parse(text, notation)
			if perr != nil {
				if !errors.Is(err, lab.ErrRefused) || got.Number != 0 {
					t.Errorf("%s, %s: got %v, want it refused", word, text, err)
				}
				continue
			}
			must(t, err)
			n++
			want := quiz.Judge(quiz.Case{
				Entry: entry, Truth: orient.PlaneOf(35*orient.Degree, 30*orient.Degree), Notation: notation,
				Declination: reckoned,
				Tolerance:   quiz.DefaultTolerance.Widened(30*orient.Degree, 1.5*orient.Degree, orient.Degree),
			})
			if v := got.Mark.Verdict; fmt.Sprint(*v) != fmt.Sprint(want) {
				t.Errorf("%s, %s: got %+v\nwant %+v", word, text, *v, want)
			}
		}
	}
	if n < 70 {
		t.Errorf("only %d answers were judged", n)
	}
}

// TestWhatIsPresetIsNotBlamed: 053/30 for 035/30 is near the strike without the
// declination of 15° W, which only a student who had to set it can leave out.
func TestWhatIsPresetIsNotBlamed(t *testing.T) {
	for setting, blamed := range map[string]bool{"preset": false, "student": true} {
		f, err := read(t, "date =", "declination = \""+setting+"\"\ndate =").Fixed(form.Student{ID: "a"})
		must(t, err)
		it, err := f.Item(0)
		must(t, err)
		named := false
		for strike := range 360 {
			for _, m := range it.Mark(fmt.Sprintf("%03d/30", strike), item.Evidence{}).Mistakes {
				switch m.Kind {
				case mistake.DeclinationNotSet, mistake.DeclinationWrongSign, mistake.DeclinationTwice, mistake.DeclinationMisset:
					named = true
				default:
				}
			}
		}
		if named != blamed {
			t.Errorf("%s: the declination is blamed: %t, want %t", setting, named, blamed)
		}
		if got := strings.Contains(it.Prompt(), "eclination"); !got {
			t.Errorf("%s: got %q, want the declination told", setting, it.Prompt())
		}
	}
}

// TestNoMistakeThatOnlyAPoseShows writes every wrong reading of a degree and
// looks at the mistakes that are named.
func TestNoMistakeThatOnlyAPoseShows(t *testing.T) {
	f, err := read(t).Fixed(form.Student{ID: "a"})
	must(t, err)
	it, err := f.Item(0)
	must(t, err)
	named := map[mistake.Kind]bool{}
	for strike := 0; strike < 360; strike++ {
		for dip := 0; dip <= 90; dip += 6 {
			for _, m := range it.Mark(fmt.Sprintf("%03d/%02d", strike, dip), item.Evidence{HasEdge: true, HasSide: true}).Mistakes {
				named[m.Kind] = true
			}
		}
	}
	for _, k := range []mistake.Kind{mistake.NeedleMoving, mistake.NeedleRubbing, mistake.NeedleLocked, mistake.NeedleSticking, mistake.DeclinationMisset} {
		if named[k] {
			t.Errorf("%v is named, which no number can show", k)
		}
	}
	for _, k := range []mistake.Kind{mistake.OtherEnd, mistake.DirectionForStrike, mistake.EastWest, mistake.Complement, mistake.PercentScale} {
		if !named[k] {
			t.Errorf("%v is never named", k)
		}
	}
}

// TestMeanCounts marks the mean of repeated readings. The mean of 033/28 and
// 037/32 lies between them; that of three readings about north, 358, 002 and
// 000, is north (the textbook example of why azimuths are not averaged as
// numbers, common practice).
func TestMeanCounts(t *testing.T) {
	for _, c := range []struct {
		plane    string
		readings []string
		counts   string
		right    bool
	}{
		{"035/30", []string{"033/28", "037/32"}, "035.1/30", true},
		{"000/40", []string{"358/40", "002/40", "000/40"}, "000/40", true},
		{"000/40", []string{"358/40", "182/40 E", "N0E 40E"}, "000/40", true},
		{"035/30", []string{"035/30", "125/30"}, "067.6/", false},
	} {
		r, kept := room(t, read(t, "COUNTS", "mean", "PLANE", c.plane), lab.Options{})
		must(t, r.Call("a1"), r.GoTo("A"))
		var got lab.Reading
		for _, text := range c.readings {
			var err error
			got, err = r.Note(text)
			must(t, err)
		}
		if !strings.HasPrefix(got.Counts, c.counts) && (c.right || got.Mark.Right) {
			t.Errorf("%v: got %s, want %s", c.readings, got.Counts, c.counts)
		}
		if got.Mark.Right != c.right {
			t.Errorf("%v: right %v, want %v (%s)", c.readings, got.Mark.Right, c.right, got.Mark.Said)
		}
		if agree := got.Repeats.Most <= item.Apart; !agree && len(got.Mark.Mistakes) > 0 {
			t.Errorf("%v: %v is named, though the readings do not agree", c.readings, got.Mark.Mistakes)
		}
		g, err := grade.Submission(kept["a1"], nil)
		must(t, err)
		if g.Items[0].Mark.Said != got.Mark.Said || g.Items[0].Answer != got.Counts {
			t.Errorf("%v: the gradebook says %q of %s, the room %q of %s", c.readings, g.Items[0].Mark.Said, g.Items[0].Answer, got.Mark.Said, got.Counts)
		}
	}
}

// TestScatter is a hand calculation: poles of 000/30, 000/40 and 000/50 lie on
// one meridian, so their mean is 000/40 and they lie 10°, 0° and 10° from it;
// the root mean square is 10·√(2/3) = 8.165°.
func TestScatter(t *testing.T) {
	var planes []orient.Plane
	for _, d := range []float64{30, 40, 50} {
		planes = append(planes, orient.PlaneOf(0, orient.Angle(d)*orient.Degree))
	}
	r, ok := lab.RepeatsOf(planes)
	if got := fmt.Sprintf("%v %d %s %.3f %.3f", ok, r.Count, r.Mean.Strike, r.Off.Degrees(), r.Most.Degrees()); got != "true 3 000 8.165 10.000" {
		t.Errorf("got %s", got)
	}
	if _, ok := lab.RepeatsOf(planes[:1]); ok {
		t.Error("one reading has no scatter")
	}
}

// TestFarFromTheOthers tells the student, whatever the truth, that a reading lies
// far from the others at the station, and how to take it back. Turned end for end
// a plane of dip 30 is 60° away.
func TestFarFromTheOthers(t *testing.T) {
	for _, c := range []struct {
		readings []string
		want     string
	}{
		{[]string{"215/30"}, ""},
		{[]string{"215/30", "217/31"}, ""},
		{[]string{"035/30", "215/30"}, "It differs from your other reading here by 60°: if this one slipped, undo takes it back."},
		{[]string{"215/30", "035/30"}, "It differs from your other reading here by 60°: if this one slipped, undo takes it back."},
		{[]string{"035/30", "036/30", "035/52"}, "It differs from your others here by 22°: if this one slipped, undo takes it back."},
		{[]string{"035/30", "215/30", "214/30"}, ""}, // beside one of them: the words on all do
		{[]string{"000/30", "000/40"}, ""},
		{[]string{"000/30", "000/41"}, "It differs from your other reading here by 11°: if this one slipped, undo takes it back."},
	} {
		for _, withhold := range []bool{false, true} {
			for _, truth := range []string{"035/30", "137.25/41.75"} {
				r, _ := room(t, read(t, "PLANE", truth), lab.Options{Withhold: withhold})
				must(t, r.Call("a1"), r.GoTo("A"))
				var last lab.Reading
				for _, text := range c.readings {
					var err error
					last, err = r.Note(text)
					must(t, err)
				}
				told := strings.Join(r.Told(last), "\n")
				if c.want == "" && strings.Contains(told, "undo") || !strings.Contains(told, c.want) {
					t.Errorf("%v of %s: told %q, want %q in it", c.readings, truth, told, c.want)
				}
				if strings.Contains(told, "137") || strings.Contains(told, "41.75") {
					t.Errorf("%v: %q gives the true value away", c.readings, told)
				}
			}
		}
	}
}

// TestNothingGivesTheTruthAway looks for the true values in everything a
// student can read.
func TestNothingGivesTheTruthAway(t *testing.T) {
	dir := t.TempDir()
	b := read(t, "PLANE", "137.25/41.75")
	r, kept := room(t, b, lab.Options{Folder: dir, Withhold: true})
	must(t, r.Call("a1"), r.GoTo("A"))
	got, err := r.Note("010/20")
	must(t, err)
	if got.Mark != nil {
		t.Errorf("got a verdict, %q, though it is withheld", got.Mark.Said)
	}
	if r.Lab().Keyed() || r.Item(0).Key() != "" {
		t.Error("a room that withholds knows how the stations lie")
	}
	journal, err := os.ReadFile(filepath.Join(dir, "a1.journal"))
	must(t, err)
	var submission, blank bytes.Buffer
	must(t, kept["a1"].Encode(&submission), b.WriteBlind(&blank))
	open, keptOpen := room(t, b, lab.Options{})
	must(t, open.Call("a1"), open.GoTo("A"))
	_, err = open.Note("010/20")
	must(t, err)
	var judged bytes.Buffer
	must(t, keptOpen["a1"].Encode(&judged))
	for name, s := range map[string]string{"journal": string(journal), "submission": submission.String(), "submission with verdicts": judged.String(), "copy for the room": blank.String()} {
		for _, secret := range []string{"137", "41.75", "1.5", "secret", "uncertainty"} {
			if strings.Contains(s, secret) {
				t.Errorf("the %s holds %q", name, secret)
			}
		}
	}
	if !bytes.Equal(submission.Bytes(), judged.Bytes()) {
		t.Error("a submission tells whether verdicts were given")
	}
}

// TestCopyForTheRoom marks with the instructor's file what was read with the
// copy.
func TestCopyForTheRoom(t *testing.T) {
	b := read(t)
	var text bytes.Buffer
	must(t, b.WriteBlind(&text))
	blank, err := form.ReadStations(&text)
	must(t, err)
	r, kept := room(t, blank, lab.Options{})
	if !r.Withholds() {
		t.Error("a room without true values gives verdicts")
	}
	must(t, r.Call("a1"), r.GoTo("A"))
	_, err = r.Note("035/30")
	must(t, err)
	var file bytes.Buffer
	must(t, kept["a1"].Encode(&file))
	s, err := form.DecodeSubmission(&file)
	must(t, err)
	if _, err := grade.Submission(s, nil); !errors.Is(err, grade.ErrUnkeyed) {
		t.Errorf("without the file of stations: got %v, want ErrUnkeyed", err)
	}
	g, err := grade.Submission(s, &b)
	must(t, err)
	if g.Points != 1 || g.Of != 3 || !g.Items[0].Mark.Right || g.Items[0].Plane == nil || g.Items[0].Title != "Station A" {
		t.Errorf("got %+v", g)
	}
	other := read(t)
	other.Parts[0].Spec.Station.Name = "B"
	if _, err := grade.Submission(s, &other); !errors.Is(err, grade.ErrChanged) {
		t.Errorf("with other stations: got %v, want ErrChanged", err)
	}
}

// TestGoesOn closes a room and opens it again, and works two rooms on one
// folder by turns.
func TestGoesOn(t *testing.T) {
	dir := t.TempDir()
	b := read(t)
	r, _ := room(t, b, lab.Options{Folder: dir})
	must(t, r.Call("a1"), r.GoTo("A"))
	_, err := r.Note("035/30")
	must(t, err)
	other, kept := room(t, b, lab.Options{Folder: dir})
	if got := kept["a1"].Answers[0].Texts; len(got) != 1 {
		t.Errorf("a room that opens hands on %v, want the one reading", got)
	}
	must(t, other.Call("A1"), other.GoTo("3"))
	_, err = other.Note("080/61")
	must(t, err)
	got, err := r.Note("036/30") // its journal has grown behind its back
	must(t, err)
	if got.Number != 2 || len(r.Readings(1)) != 1 {
		t.Errorf("got reading %d and %v", got.Number, r.Readings(1))
	}
	changed := read(t)
	changed.Parts[0].Spec.Station.Words = "by the door"
	if _, err := lab.NewRoom(changed, lab.Options{Folder: dir, Now: func() string { return at }, Keep: func(form.Submission) error { return nil }}); !errors.Is(err, lab.ErrOtherFile) {
		t.Errorf("with a changed file: got %v, want ErrOtherFile", err)
	}
}

func TestRefusals(t *testing.T) {
	r, kept := room(t, read(t), lab.Options{Roster: []form.Student{{ID: "A17", Name: "Ada Moss"}, {ID: "b2", Name: "Bo Fell"}}})
	_, err := r.Note("035/30")
	refuse := func(name string, err, want error, words string) {
		t.Helper()
		if !errors.Is(err, want) || !strings.Contains(err.Error(), words) {
			t.Errorf("%s: got %v, want %v with %q", name, err, want, words)
		}
	}
	refuse("nobody", err, lab.ErrNobody, "")
	refuse("stranger", r.Call("a71"), lab.ErrStudent, "perhaps a17 was meant")
	refuse("far stranger", r.Call("zzzzzz"), lab.ErrStudent, "such as A17")
	must(t, r.Call("ada moss"))
	_, err = r.Note("035/30")
	refuse("nowhere", err, lab.ErrNowhere, "")
	refuse("no station", r.GoTo("9"), lab.ErrStation, "the stations are A, 3")
	must(t, r.GoTo("a"))
	_, _, err = r.Undo()
	refuse("nothing", err, lab.ErrNothing, "")
	for text, words := range map[string]string{
		"040/30 NE": "dips SE or NW", "035/95": "a dip lies from 0 to 90", "400/30": "360", "": "no azimuth", strings.Repeat("0", 500): "", "joint": "", "035": "",
	} {
		_, err = r.Note(text)
		refuse(text, err, lab.ErrRefused, words)
	}
	if len(kept) != 0 {
		t.Errorf("kept %v", kept)
	}
	for range 4 {
		_, err = r.Note("035/30")
		must(t, err)
	}
	_, err = r.Note("035/30")
	refuse("too often", err, lab.ErrReadings, "4 times")
	if i, text, err := r.Undo(); i != 0 || text != "035/30" || err != nil || r.Left(0) != 1 {
		t.Errorf("undo: got %d, %q, %v", i, text, err)
	}
	open, _ := room(t, read(t), lab.Options{})
	refuse("an id with a path", open.Call("../a"), lab.ErrStudent, "letters a to z")
}

func TestJoin(t *testing.T) {
	b := read(t)
	part := func(finished string, texts ...[]string) form.Submission {
		f, err := b.Fixed(form.Student{ID: "a1"})
		must(t, err)
		s := form.Submission{Form: f, Started: finished, Finished: finished}
		for _, x := range texts {
			s.Answers = append(s.Answers, form.Answer{Texts: x})
		}
		return s
	}
	late := part("2026-09-14T12:00:00+02:00", []string{"3", "4"}, nil) // 10:00 Z
	later := part("2026-09-14T10:30:00Z", []string{"5"}, []string{"7", "8"})
	early := part("2026-09-14T09:00:00Z", []string{"1", "2"}, []string{"7"})
	got, err := lab.Join([]form.Submission{late, later, early})
	must(t, err)
	if s := fmt.Sprint(got.Answers[0].Texts, got.Answers[1].Texts, got.Started, got.Finished); s != "[1 2 3 4] [7 8]2026-09-14T09:00:00Z2026-09-14T10:30:00Z" {
		t.Errorf("got %s", s)
	}
	if len(late.Answers[0].Texts) != 2 {
		t.Error("a part was changed")
	}
	f, err := b.Fixed(form.Student{ID: "a2"})
	must(t, err)
	late.Form = f
	if _, err := lab.Join([]form.Submission{late, early}); !errors.Is(err, lab.ErrJoin) {
		t.Errorf("got %v, want ErrJoin", err)
	}
}

func TestExample(t *testing.T) {
	b, err := form.ReadStations(strings.NewReader(lab.Example()))
	must(t, err)
	if !b.Keyed() || len(b.Parts) != 3 || !b.Parts[0].Spec.Station.Mean {
		t.Errorf("got %+v", b)
	}
}

// Readings from the two ends of one line contradict each other: their mean, a
// level bed, is of no use to anyone.
func TestReadingsThatDoNotAgreeHaveNoMean(t *testing.T) {
	planes := []orient.Plane{orient.PlaneOf(140*orient.Degree, 14*orient.Degree), orient.PlaneOf(320*orient.Degree, 14*orient.Degree)}
	r, ok := lab.RepeatsOf(planes)
	if !ok || r.Agree() {
		t.Fatalf("got %+v, %v, want readings that do not agree", r, ok)
	}
	got := r.Words(orient.AzimuthDip)
	if !strings.Contains(got, "they do not agree") || strings.Contains(got, "horizontal") {
		t.Errorf("got %q, want no mean", got)
	}
}
