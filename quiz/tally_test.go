package quiz_test

import (
	"encoding/json"
	"math"
	"testing"

	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

func TestTallyCounts(t *testing.T) {
	var tally quiz.Tally
	wrong := quiz.Verdict{Mistakes: []mistake.Finding{{Kind: mistake.EastWest}}}
	tied := quiz.Verdict{Mistakes: []mistake.Finding{{Kind: mistake.OtherEnd, With: []mistake.Kind{mistake.SouthEnd}}}}
	tally = tally.Add(plane(10, 20), quiz.Verdict{Right: true})
	tally = tally.Add(plane(10, 20), wrong)
	tally = tally.Add(plane(10, 70), wrong)
	tally = tally.Add(plane(10, 45), tied)
	want := quiz.Tally{Answers: 4}
	want.Classes = [quiz.Classes]quiz.Score{{Right: 1, Total: 2}, {Total: 1}, {Total: 1}}
	want.Mistakes[mistake.EastWest] = 2 // and the tie, which is open, not counted
	if tally != want {
		t.Errorf("got %+v, want %+v", tally, want)
	}
	if got := tally.Focus(); len(got) != 1 || got[0] != mistake.EastWest {
		t.Errorf("focus: got %v, want [east-west-exchanged]", got)
	}
}

// Shares worked out by hand from 15 % + 55 % · missed/Σmissed with missed =
// (wrong + 1)/(total + 2).
func TestTallyMixWeighsWhatIsMissed(t *testing.T) {
	for _, c := range []struct {
		name   string
		scores [quiz.Classes]quiz.Score
		want   quiz.Mix
	}{
		{"nothing yet", [quiz.Classes]quiz.Score{}, quiz.Mix{Gentle: 1. / 3, Moderate: 1. / 3, Steep: 1. / 3}},
		// missed 10/12, 2/12, 2/12
		{"gentle missed", [quiz.Classes]quiz.Score{{Right: 1, Total: 10}, {Right: 9, Total: 10}, {Right: 9, Total: 10}},
			quiz.Mix{Gentle: 0.15 + 0.55*10/14, Moderate: 0.15 + 0.55*2/14, Steep: 0.15 + 0.55*2/14}},
		// missed 1/2, 1/3, 2/3
		{"one slip", [quiz.Classes]quiz.Score{{}, {Right: 1, Total: 1}, {Total: 1}},
			quiz.Mix{Gentle: 0.15 + 0.55/3, Moderate: 0.15 + 0.55*2/9, Steep: 0.15 + 0.55*4/9}},
	} {
		got := quiz.Tally{Classes: c.scores}.Mix()
		off := math.Abs(got.Gentle-c.want.Gentle) + math.Abs(got.Moderate-c.want.Moderate) + math.Abs(got.Steep-c.want.Steep)
		if off > 1e-12 {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestOldAnswersFade(t *testing.T) {
	var tally quiz.Tally
	miss := quiz.Verdict{Mistakes: []mistake.Finding{{Kind: mistake.SouthEnd}}}
	for range 100 {
		tally = tally.Add(plane(0, 45), miss)
	}
	before := tally
	for range 40 {
		tally = tally.Add(plane(0, 45), quiz.Verdict{Right: true})
	}
	if got, want := tally.Classes[quiz.Moderate].Missed(), before.Classes[quiz.Moderate].Missed()/2; got >= want {
		t.Errorf("missed after forty right answers: got %.2f, want under %.2f", got, want)
	}
	if got, limit := tally.Classes[quiz.Moderate].Total, quiz.Recent; got > limit {
		t.Errorf("counted: got %d, want at most %d", got, limit)
	}
	if got, want := tally.Mistakes[mistake.SouthEnd], before.Mistakes[mistake.SouthEnd]; got >= want {
		t.Errorf("south-end: got %d, want under %d", got, want)
	}
}

func TestTallyIsWrittenAndRead(t *testing.T) {
	var tally quiz.Tally
	tally = tally.Add(plane(10, 20), quiz.Verdict{Right: true})
	tally = tally.Add(plane(10, 70), quiz.Verdict{Mistakes: []mistake.Finding{{Kind: mistake.PercentScale}}})
	data, err := json.Marshal(tally)
	want := `{"version":1,"classes":{"gentle":{"right":1,"total":1},"steep":{"right":0,"total":1}},"mistakes":{"percent-scale":1},"answers":2}`
	if got := string(data); err != nil || got != want {
		t.Errorf("got %s, %v, want %s", got, err, want)
	}
	var back quiz.Tally
	if err := json.Unmarshal(data, &back); err != nil || back != tally {
		t.Errorf("got %+v, %v, want %+v", back, err, tally)
	}
}

func TestTallyRefusesWhatCannotBe(t *testing.T) {
	kept := quiz.Tally{Answers: 3}
	for _, text := range []string{
		`{}`,
		`{"version":2}`,
		`{"version":1,"more":1}`,
		`{"version":1,"classes":{"flat":{"right":0,"total":1}}}`,
		`{"version":1,"classes":{"gentle":{"right":2,"total":1}}}`,
		`{"version":1,"classes":{"gentle":{"right":-1,"total":1}}}`,
		`{"version":1,"mistakes":{"hammer":1}}`,
		`{"version":1,"mistakes":{"other-end":-1}}`,
		`{"version":1,"answers":-1}`,
		`{"version":1,"classes":{"gentle":{"right":0,"total":9223372036854775807}}}`,
		`[]`,
	} {
		got := kept
		if err := json.Unmarshal([]byte(text), &got); err == nil || got != kept {
			t.Errorf("%s: got %+v, %v, want an error and the tally as it was", text, got, err)
		}
	}
}

func FuzzTally(f *testing.F) {
	f.Add([]byte(`{"version":1,"classes":{"gentle":{"right":1,"total":2}},"mistakes":{"other-end":1},"answers":2}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var a, b quiz.Tally
		if json.Unmarshal(data, &a) != nil {
			return
		}
		if !a.IsValid() || !a.Mix().IsValid() {
			t.Errorf("got %+v from %s, want a tally", a, data)
		}
		out, err := json.Marshal(a)
		if err != nil || json.Unmarshal(out, &b) != nil || a != b {
			t.Errorf("got %+v, want %+v: %v", b, a, err)
		}
	})
}
