package grade_test

import (
	"strings"
	"testing"

	"cuesta/quiz/grade"
	"cuesta/quiz/learner"
)

// Whatever a file holds, it is marked or refused with a reason, and what is
// marked stays within its points.
func FuzzOne(f *testing.F) {
	forms := dealt(f, slabs(20*degree, 60*degree), 1)
	good, err := encoded(sat(f, learner.Learner{}, forms[0], 1))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(good)
	f.Add(strings.Replace(good, `"hints": 0`, `"hints": 7`, 1))
	f.Add(`{"cuesta":"submission","version":1}`)
	f.Fuzz(func(t *testing.T, s string) {
		o := grade.One(text("fuzz", s), nil)
		switch {
		case o.Err != nil && o.Err.Error() == "":
			t.Error("refused without a reason")
		case o.Err == nil && !(o.Graded.Points >= 0 && o.Graded.Points <= o.Graded.Of):
			t.Errorf("%v of %v points", o.Graded.Points, o.Graded.Of)
		}
		if c := grade.NewClass(nil); c.Add(o) != (o.Err == nil) {
			t.Error("what was marked does not count")
		}
	})
}
