package grade

import (
	"bytes"
	"cmp"
	"hash/fnv"
	"slices"
	"strings"

	"cuesta/quiz/form"
)

// Class gathers the outcomes of a class. Make one with NewClass.
type Class struct {
	roster    []form.Student
	listed    map[string]form.Student // by id in small letters
	results   map[string]Result       // likewise
	blueprint map[uint64]form.Blueprint
	doubles   []Double
	refused   []Refusal
	dealt     map[string]string // student by code of the form, or nil without a key
}

// Refusal is a source that could not be marked.
type Refusal struct {
	Source string
	Reason string
}

// Double is a second submission of a student.
type Double struct {
	ID, Name string
	Counts   string // the source that counts
	Left     string // the one that does not
}

// NewClass begins a class. Without a roster nobody is missing and nobody is a
// stranger.
func NewClass(roster []form.Student) *Class {
	c := &Class{
		roster: roster, listed: map[string]form.Student{}, results: map[string]Result{},
		blueprint: map[uint64]form.Blueprint{},
	}
	for _, s := range roster {
		c.listed[key(s.ID)] = s
	}
	return c
}

// HoldTo makes the class report every form that the key does not hold for its
// student. A form whose questions or tolerances were changed has another code.
func (c *Class) HoldTo(k form.Key) {
	c.dealt = map[string]string{}
	for _, f := range k.Forms {
		c.dealt[f.Code] = f.Student.ID
	}
}

func key(id string) string { return strings.ToLower(id) }

// Add takes an outcome and says whether it counts from now on. Of two
// submissions of one student the one finished later counts, of two finished
// together the one added later.
func (c *Class) Add(o Outcome) bool {
	if o.Err != nil {
		c.refused = append(c.refused, Refusal{o.Source, oneLine(o.Err.Error())})
		return false
	}
	r := resultOf(o)
	c.compare(&r, &o.Graded)
	if _, ok := c.blueprint[r.Quiz]; !ok {
		c.blueprint[r.Quiz] = o.Graded.Form.Blueprint
	}
	before, double := c.results[key(r.ID)]
	if double && earlier(r.Finished, before.Finished) {
		c.doubles = append(c.doubles, Double{r.ID, r.Name, before.Source, r.Source})
		return false
	}
	if double {
		c.doubles = append(c.doubles, Double{r.ID, r.Name, r.Source, before.Source})
	}
	c.results[key(r.ID)] = r
	return true
}

// earlier compares two times as moments, not as texts. A missing time is
// before all others.
func earlier(a, b string) bool {
	x, okA := moment(a)
	y, okB := moment(b)
	if okA && okB {
		return x.Before(y)
	}
	return okB
}

// compare lays the student of the form beside the roster. What the roster says
// of extra time holds.
func (c *Class) compare(r *Result, g *Graded) {
	s := g.Form.Student
	t, ok := c.listed[key(s.ID)]
	if !ok {
		t = s
	}
	r.Remarks = append(r.Remarks, inTime(*g, t.ExtraTime)...)
	if id, dealt := c.dealt[r.Code]; c.dealt != nil && (!dealt || id != s.ID) {
		r.Remarks = append(r.Remarks, Remark{Kind: NotDealt})
	}
	switch {
	case c.roster == nil:
		return
	case !ok:
		r.Remarks = append(r.Remarks, Remark{Kind: NotOnRoster})
	case t.Name != s.Name:
		r.Remarks = append(r.Remarks, Remark{Kind: RosterDiffers, Detail: "(the name is " + s.Name + " on the form)"})
	case max(1, t.ExtraTime) != max(1, s.ExtraTime):
		r.Remarks = append(r.Remarks, Remark{Kind: RosterDiffers, Detail: "(the extra time)"})
	}
	r.ID, r.Name, r.Class = t.ID, t.Name, t.Class
}

// Report is a class with all its marks.
type Report struct {
	Blueprint form.Blueprint // of most of the class
	Results   []Result       // those that count, in the order of the roster, others by id
	Missing   []form.Student // on the roster, without a submission
	Doubles   []Double
	Refused   []Refusal
	Analysis  Analysis
}

// Done is when a student finished, or "". Nobody hands a lab in: it is finished
// with its last station.
func (r Report) Done(s Result) string {
	lab := len(r.Blueprint.Parts) > 0 && r.Blueprint.Parts[0].Kind == form.LabStation
	if lab && s.Answered() < len(s.Items) {
		return ""
	}
	return s.Finished
}

// Report closes the class.
func (c *Class) Report() Report {
	rep := Report{Doubles: c.doubles, Refused: c.refused}
	for _, s := range c.roster {
		if r, ok := c.results[key(s.ID)]; ok {
			rep.Results = append(rep.Results, r)
		} else {
			rep.Missing = append(rep.Missing, s)
		}
	}
	rep.Results = append(rep.Results, c.strangers()...)
	most := common(rep.Results)
	rep.Blueprint = c.blueprint[most]
	var same []Result
	for i := range rep.Results {
		if r := &rep.Results[i]; r.Quiz == most {
			same = append(same, *r)
		} else {
			r.Remarks = append(slices.Clone(r.Remarks), Remark{Kind: OtherQuiz})
		}
	}
	rep.Analysis = Analyse(rep.Blueprint, same)
	return rep
}

// strangers are the results of students who are not on the roster, by id.
func (c *Class) strangers() []Result {
	var rs []Result
	for k, r := range c.results {
		if _, ok := c.listed[k]; !ok {
			rs = append(rs, r)
		}
	}
	slices.SortFunc(rs, func(a, b Result) int {
		return cmp.Or(cmp.Compare(key(a.ID), key(b.ID)), cmp.Compare(a.ID, b.ID))
	})
	return rs
}

// common is the quiz most results are of; of equally many the first.
func common(rs []Result) uint64 {
	count := map[uint64]int{}
	best, most := uint64(0), 0
	for _, r := range rs {
		count[r.Quiz]++
	}
	for _, r := range rs {
		if n := count[r.Quiz]; n > most {
			best, most = r.Quiz, n
		}
	}
	return best
}

// quizOf is a number that is the same for the same blueprint.
func quizOf(b form.Blueprint) uint64 {
	var text bytes.Buffer
	if err := b.Write(&text); err != nil {
		return 0
	}
	h := fnv.New64a()
	h.Write(text.Bytes()) // it never fails
	return h.Sum64()
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
