package calibrate

import (
	"sort"

	"gonum.org/v1/gonum/stat"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
)

// Table is what came out.
type Table struct {
	Title     string
	Notation  orient.Notation // of the quiz; it gives the words
	Students  int             // of each kind
	PassShare float64
	Scores    []Score
	Named     []Naming
	Alike     []Alike
	Accused   []Accused
}

// Score is what the students of one kind would score, as shares of the points.
type Score struct {
	Learner  string
	Mean, SD float64 // SD of the sample
	Pass     float64 // share of the students who pass
}

// Naming is how often one mistake is named.
type Naming struct {
	Kind    mistake.Kind
	Made    int // answers in which it was made
	Right   int // of these, right all the same: it did no harm there
	Refused int // no plane at all; said at once, and to be written again
	Alike   int // wrong, but another mistake, or a slip, gives the same answer
	Apart   int // wrong, and it can be told
	Named   int // of these, named, with no other said to fit as well

	// Over all who measured, whatever their mistake: in how many answers it was
	// named, with no other said to fit as well, and in how many of these it was
	// made.
	Called, Rightly int
	// Misnamed are the answers among Alike in which another mistake was named
	// with no word of doubt.
	Misnamed int
}

// Recall is the share of the answers in which the mistake can be told and is
// named; ok is false where there are none.
func (n Naming) Recall() (share float64, ok bool) { return share64(n.Named, n.Apart) }

// Precision is the share of the answers in which the mistake is named and was
// made; ok is false where it is never named.
func (n Naming) Precision() (share float64, ok bool) { return share64(n.Rightly, n.Called) }

// Told says whether the quiz can tell the mistake at all: in at least one in
// twenty of the answers it spoils.
func (n Naming) Told() bool { return n.Apart > 0 && 20*n.Apart >= n.Made-n.Right-n.Refused }

func share64(part, of int) (float64, bool) {
	if of == 0 {
		return 0, false
	}
	return float64(part) / float64(of), true
}

// Alike are two mistakes that an item does not tell apart.
type Alike struct {
	Part        int    // of the blueprint, from 0
	Item        string // the kind of item
	Made, Rival mistake.Kind
	Slip        bool    // there is no rival: a slip without a name, or no harm done, looks the same
	Bare        bool    // by the answer alone, as on paper; with the readings they may be told
	Share       float64 // of the wrong answers of who made the first
}

// Accused is how often students of a manner are told of a mistake which they
// did not make, as a share of their answers.
type Accused struct {
	Manner string
	Share  float64
}

// leastAlike is the share of the wrong answers from which two mistakes are
// listed as alike.
const leastAlike = 0.1

func tabled(b form.Blueprint, o Options, c crowd) (Table, error) {
	t := Table{Title: b.Title, Notation: b.Notation, Students: o.Students, PassShare: b.PassShare}
	for i, l := range o.Learners {
		t.Scores = append(t.Scores, scoreOf(l.String(), c.scores[i], b.PassShare))
	}
	for k := range mistake.Kind(mistake.Kinds) {
		u := c.count.tries[k]
		if u.Made > 0 {
			t.Named = append(t.Named, Naming{
				Kind: k, Made: u.Made, Right: u.Right, Refused: u.Refused, Alike: u.Alike, Apart: u.Apart, Named: u.Named,
				Called: c.count.named[k], Rightly: c.count.rightly[k], Misnamed: u.Misnamed,
			})
		}
	}
	t.Alike = c.count.pairs(b)
	for m, name := range [...]string{"careful", "hurried", "guessing", "mistaken"} {
		if s, ok := share64(c.count.accused[m], c.count.answers[m]); ok {
			t.Accused = append(t.Accused, Accused{name, s})
		}
	}
	return t, c.err
}

func scoreOf(name string, scores []float64, pass float64) Score {
	mean, sd := stat.MeanStdDev(scores, nil)
	passed := 0
	for _, s := range scores {
		if s >= pass-1e-9 {
			passed++
		}
	}
	return Score{name, mean, sd, float64(passed) / float64(len(scores))}
}

// pairs lists what is alike, by part and mistake, the commonest rival first.
func (c *counts) pairs(b form.Blueprint) []Alike {
	var all []Alike
	for i, p := range b.Parts {
		for q, n := range c.rival[i] {
			if s := float64(n) / float64(c.wrong[i][q.made]); s >= leastAlike {
				all = append(all, alikeOf(i, p.Kind, q, s))
			}
		}
	}
	sort.Slice(all, func(i, j int) bool {
		x, y := all[i], all[j]
		switch {
		case x.Part != y.Part:
			return x.Part < y.Part
		case x.Bare != y.Bare:
			return y.Bare
		case x.Made != y.Made:
			return x.Made < y.Made
		case x.Share != y.Share:
			return x.Share > y.Share
		case x.Slip != y.Slip:
			return y.Slip
		}
		return x.Rival < y.Rival
	})
	return all
}

func alikeOf(part int, kind string, q pair, share float64) Alike {
	a := Alike{Part: part, Item: titleOf(kind), Made: q.made, Rival: q.rival, Bare: q.bare, Share: share}
	if q.rival == noRival {
		a.Rival, a.Slip = 0, true
	}
	return a
}

func titleOf(kind string) string {
	if k, ok := item.KindNamed(kind); ok {
		return k.Title()
	}
	return kind
}
