package learner_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
	"cuesta/sim"
	"cuesta/sim/record"
)

// west is a place with a declination that can be seen.
var west = sim.Field{Declination: -15.2 * orient.Degree, Inclination: 68 * orient.Degree, Horizontal: 19.6e-6}

// formOf is a form of n items of one kind.
func formOf(kind string, n int, spec item.Spec) form.Form {
	spec.Declination, spec.Field = west.Declination, west
	p := form.Part{Kind: kind, Count: n, Points: 1, Attempts: 1, Spec: spec}
	f := form.Form{Blueprint: form.Blueprint{Field: west, Parts: []form.Part{p}}}
	for i := range n {
		f.Items = append(f.Items, form.Dealt{Seed: uint64(i + 1)})
	}
	return f
}

func slabs(n int) form.Form {
	return formOf("measure-slab", n, item.Spec{DipMin: 10 * orient.Degree, DipMax: 75 * orient.Degree})
}

func sit(t *testing.T, l learner.Learner, f form.Form, seed uint64) learner.Work {
	t.Helper()
	w, err := l.Sit(f, seed)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestTheSameSeedGivesTheSameWork(t *testing.T) {
	f := slabs(2)
	for _, l := range learner.All() {
		a, b, c := sit(t, l, f, 7), sit(t, l, f, 7), sit(t, l, f, 8)
		if !reflect.DeepEqual(a, b) {
			t.Errorf("%v: the same seed gave another work", l)
		}
		if reflect.DeepEqual(a.Submission.Answers, c.Submission.Answers) {
			t.Errorf("%v: another seed gave the same answers", l)
		}
	}
}

// What a learner hands in must stand like the work of anyone: its recording
// read strictly, run again, and ending in the readings and the note.
func TestRecordingsRunAgain(t *testing.T) {
	f := slabs(2)
	for _, l := range learner.All() {
		w := sit(t, l, f, 3)
		for i, a := range w.Submission.Answers {
			if l.Manner == learner.Guessing {
				if a.Recording != "" {
					t.Errorf("a guess has a recording")
				}
				continue
			}
			r, err := record.Read(strings.NewReader(a.Recording))
			if err != nil {
				t.Fatalf("%v: %v", l, err)
			}
			if got, err := record.Replay(r); err != nil || !got.Same {
				t.Errorf("%v: item %d: got %v, %v, want the same", l, i+1, got, err)
			}
			if r.Setup != w.Done[i].Item.(item.AtBench).Setup() {
				t.Errorf("%v: item %d is recorded at another bench", l, i+1)
			}
			last := r.Entries[len(r.Entries)-1].Command
			if last.Kind != sim.Note || last.Text != a.Texts[0] || a.Texts[0] != w.Done[i].Text {
				t.Errorf("%v: the last command is %v, want the note of %q", l, last, a.Texts)
			}
		}
	}
}

func TestACarefulStudentIsRight(t *testing.T) {
	const n = 250
	w := sit(t, learner.Learner{}, slabs(n), 1)
	right, turned := 0, 0
	for _, d := range w.Done {
		if d.Item.Mark(d.Text, d.Evidence).Right {
			right++
		}
		if !d.Evidence.Edge.Shown.Round.Centred || !d.Evidence.Edge.Shown.Dial.Resting || !d.Evidence.Side.Shown.Tube.Centred {
			turned++
		}
	}
	// Scatter of 1° rounded to degrees stays within 2° in 98.8 of 100 (standard
	// normal within 2.5, NIST/SEMATECH e-Handbook 1.3.6.7.1); twice, that is 97.5.
	if want := n * 96 / 100; right < want {
		t.Errorf("right %d of %d, want at least %d", right, n, want)
	}
	if turned > 0 {
		t.Errorf("%d readings with a bubble off or a needle that moves, want none", turned)
	}
}

// The edge off level by β turns the strike by asin(tan β / tan d) (D. M. Ragan,
// Structural Geology, ch. 1, from memory).
func TestAnEdgeOffLevelTurnsTheStrike(t *testing.T) {
	w := sit(t, learner.Learner{Manner: learner.Mistaken, Mistake: mistake.LevelNotCentred}, slabs(60), 1)
	for _, d := range w.Done {
		p, e := d.Item.(item.AtBench).Setup().Plane, d.Evidence.Edge
		f := e.Shown.Frame.Forward
		got := orient.AzimuthOf(orient.Atan2(f.X, f.Y)).From(p.Strike).Abs().Degrees()
		want := 180 / math.Pi * math.Asin(math.Tan(e.Along.Abs().Radians())/math.Tan(p.Dip.Radians()))
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("%v off level by %.2f°: turned %.4f°, want %.4f°", p, e.Along.Degrees(), got, want)
		}
	}
}

// made says of each mistake how it shows in the readings and in the answer.
var made = map[mistake.Kind]func(e item.Evidence, p orient.Plane, text string) bool{
	mistake.OtherEnd:             func(e item.Evidence, p orient.Plane, _ string) bool { return forwardOff(e, p) > 170 },
	mistake.DeclinationNotSet:    func(e item.Evidence, _ orient.Plane, _ string) bool { return e.Edge.Shown.Dial.Ring == 0 },
	mistake.DeclinationWrongSign: func(e item.Evidence, _ orient.Plane, _ string) bool { return ringOff(e, 15.2) < 0.01 },
	mistake.DeclinationMisset:    func(e item.Evidence, _ orient.Plane, _ string) bool { return ringOff(e, -15.2) > 4.9 },
	mistake.LevelNotCentred:      func(e item.Evidence, _ orient.Plane, _ string) bool { return !e.Edge.Shown.Round.Centred },
	mistake.NeedleRubbing: func(e item.Evidence, _ orient.Plane, _ string) bool {
		return e.Edge.Shown.Dial.State == sim.NeedleRubbing
	},
	mistake.NeedleLocked: func(e item.Evidence, _ orient.Plane, _ string) bool {
		return e.Edge.Shown.Dial.State == sim.NeedleLocked
	},
	mistake.NeedleMoving: func(e item.Evidence, _ orient.Plane, _ string) bool { return !e.Edge.Shown.Dial.Resting },
	mistake.EdgeNotDownDip: func(e item.Evidence, p orient.Plane, _ string) bool {
		return e.Side.Along.Abs() < p.Dip && (e.Side.Swing.Abs()-orient.Right).Abs() > 14*orient.Degree
	},
	mistake.BodyLeaning:      func(e item.Evidence, _ orient.Plane, _ string) bool { return e.Side.Across.Abs() > 9*orient.Degree },
	mistake.TubeNotCentred:   func(e item.Evidence, _ orient.Plane, _ string) bool { return !e.Side.Shown.Tube.Centred },
	mistake.WrongLetters:     func(_ item.Evidence, _ orient.Plane, text string) bool { return text[0] == 'N' || text[0] == 'S' },
	mistake.StrikeDipSwapped: func(_ item.Evidence, p orient.Plane, text string) bool { return text[0] == '0' },
}

func forwardOff(e item.Evidence, p orient.Plane) float64 {
	f := e.Edge.Shown.Frame.Forward
	return orient.AzimuthOf(orient.Atan2(f.X, f.Y)).From(p.Strike).Abs().Degrees()
}

func ringOff(e item.Evidence, want float64) float64 {
	return math.Abs(e.Edge.Shown.Dial.Ring.Degrees() - want)
}

func TestEachMistakeIsReallyMade(t *testing.T) {
	const n = 20
	for _, k := range learner.Mistakes() {
		w := sit(t, learner.Learner{Manner: learner.Mistaken, Mistake: k}, slabs(n), 5)
		shown := 0
		for _, d := range w.Done {
			if !slices.Contains(d.Made, k) {
				t.Errorf("%v is not noted as made", k)
			}
			if f := made[k]; f == nil || f(d.Evidence, d.Item.(item.AtBench).Setup().Plane, d.Text) {
				shown++
			}
		}
		if want := n * 9 / 10; shown < want {
			t.Errorf("%v shows in %d of %d, want at least %d", k, shown, n, want)
		}
	}
}

// Every notation must be written so that it can be read back as what was
// measured.
func TestEveryNotation(t *testing.T) {
	for n := orient.AzimuthDip; n <= orient.PoleNotation; n++ {
		f := formOf("measure-slab", 60, item.Spec{Notation: n, DipMin: 10 * orient.Degree, DipMax: 75 * orient.Degree})
		right := 0
		for _, d := range sit(t, learner.Learner{}, f, 9).Done {
			if d.Item.Mark(d.Text, d.Evidence).Right {
				right++
			}
		}
		if right < 54 {
			t.Errorf("notation %v: right %d of 60, want at least 54", n, right)
		}
	}
}

// Careful students answer every other kind of item rightly, but for the
// scatter of a reading.
func TestCarefulStudentsAnswerEveryKind(t *testing.T) {
	for _, k := range item.Kinds() {
		const n = 80
		right := 0
		for _, d := range sit(t, learner.Learner{}, formOf(k.Name(), n, item.Spec{}), 2).Done {
			if d.Item.Mark(d.Text, d.Evidence).Right {
				right++
			}
		}
		if want := n * 94 / 100; right < want {
			t.Errorf("%s: right %d of %d, want at least %d", k.Name(), right, n, want)
		}
	}
}

// Guesses are of the form that is asked for, whatever the kind, and are
// seldom right.
func TestGuesses(t *testing.T) {
	for _, k := range item.Kinds() {
		const n = 300
		right, refused := 0, 0
		for _, d := range sit(t, learner.Learner{Manner: learner.Guessing}, formOf(k.Name(), n, item.Spec{}), 2).Done {
			m := d.Item.Mark(d.Text, d.Evidence)
			if m.Right {
				right++
			}
			if m.Refused {
				refused++
			}
		}
		if right > n*35/100 || refused > 0 {
			t.Errorf("%s: of %d guesses %d right and %d refused, want at most a third and none", k.Name(), n, right, refused)
		}
	}
}

func TestRivals(t *testing.T) {
	for _, d := range sit(t, learner.Learner{}, formOf("read-dial", 40, item.Spec{}), 1).Done {
		a := d.Item.Ask()
		rivals, ok := learner.Rivals(d.Item, mistake.EastWest)
		mirrored := math.Abs(math.Remainder(2*a.Value, 360))
		if want := mirrored > a.Tolerance; ok != want {
			t.Errorf("east and west exchanged in %v°: can be told %v, want %v", a.Value, ok, want)
		}
		if end := math.Abs(math.Remainder(2*a.Value-180, 360)) <= a.Tolerance; ok && end != (len(rivals) > 0) {
			t.Errorf("%v°: rivals %v, want some: %v", a.Value, rivals, end)
		}
	}
}

func TestHurriedStudentsLeaveThingsOut(t *testing.T) {
	w := sit(t, learner.Learner{Manner: learner.Hurried}, slabs(200), 4)
	off, right := 0, 0
	for _, d := range w.Done {
		level := d.Evidence.Edge.Shown.Round.Centred
		if level == slices.Contains(d.Made, mistake.LevelNotCentred) {
			t.Errorf("level %v, made %v", level, d.Made)
		}
		if !level {
			off++
		}
		if d.Item.Mark(d.Text, d.Evidence).Right {
			right++
		}
	}
	if off < 20 || off > 80 || right < 40 || right > 160 {
		t.Errorf("of 200 left unlevelled %d, right %d; want some of each", off, right)
	}
}

func TestAClassIsAMixture(t *testing.T) {
	class := learner.Class(60, 3)
	count := map[learner.Manner]int{}
	for _, l := range class {
		count[l.Manner]++
	}
	want := map[learner.Manner]int{learner.Careful: 28, learner.Hurried: 14, learner.Guessing: 2, learner.Mistaken: 16}
	if !reflect.DeepEqual(count, want) {
		t.Errorf("got %v, want %v", count, want)
	}
	if !slices.Equal(class, learner.Class(60, 3)) || slices.Equal(class, learner.Class(60, 4)) {
		t.Error("the order must follow from the seed")
	}
}

func TestARosterOfAnyLength(t *testing.T) {
	own := []form.Student{{Name: "Ada Brook", ExtraTime: 1}, {Name: "Bo van Fell", ExtraTime: 1.5}}
	roster := learner.Roster(own, 65)
	ids := map[string]bool{}
	for _, s := range roster {
		ids[s.ID] = true
	}
	if len(ids) != 65 || roster[0].Name != "Ada Brook" || roster[2].Name != "Ada van Fell" || roster[3].Name != "Bo Brook" || roster[64].Class != "c0003" {
		t.Errorf("got %d ids, %+v", len(ids), roster[:4])
	}
}

// A tolerance of nothing must not stop a learner.
func TestOddSpecifications(t *testing.T) {
	for _, s := range []item.Spec{
		{Tolerance: quiz.Tolerance{Reading: 1e-6}},
		{DipMin: 88 * orient.Degree, DipMax: orient.Right},
		{DipMin: orient.Degree, DipMax: 2 * orient.Degree},
	} {
		for _, l := range learner.All() {
			sit(t, l, formOf("measure-slab", 1, s), 1)
		}
	}
}
