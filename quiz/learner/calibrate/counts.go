package calibrate

import (
	"slices"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
)

// counts is what is counted of many answers. Whole numbers only, so that
// counts of several workers add up to the same in any order.
type counts struct {
	slots   []int // the part of each item
	tries   [mistake.Kinds]tries
	named   [mistake.Kinds]int     // answers in which the kind was named, alone and first, by those who measured
	rightly [mistake.Kinds]int     // of these, it was made
	rival   []map[pair]int         // by part: wrong answers that cannot be told from those of a rival
	wrong   []map[mistake.Kind]int // by part: wrong answers of who made the mistake
	accused [4]int                 // by manner: answers with a mistake named that was not made
	answers [4]int
}

// tries is how the answers of those came out who made a mistake.
type tries struct {
	Made, Right, Refused, Alike, Apart, Named, Misnamed int
}

// pair is a mistake and another that leads to the same answer.
type pair struct {
	made, rival mistake.Kind
	bare        bool // by the answer alone, without the readings
}

func newCounts(b form.Blueprint) *counts {
	c := &counts{slots: b.Slots(), rival: make([]map[pair]int, len(b.Parts)), wrong: make([]map[mistake.Kind]int, len(b.Parts))}
	for i := range b.Parts {
		c.rival[i], c.wrong[i] = map[pair]int{}, map[mistake.Kind]int{}
	}
	return c
}

// work counts the answers of a student and returns the share of the points.
func (c *counts) work(b form.Blueprint, l learner.Learner, w learner.Work) float64 {
	earned := 0.0
	for i, d := range w.Done {
		part := b.Parts[c.slots[i]]
		m := d.Item.Mark(d.Text, d.Evidence)
		earned += m.Share * part.Points
		c.answer(answer{l, c.slots[i], part, d, m})
	}
	if total := b.Points(); total > 0 {
		return earned / total
	}
	return 0
}

// answer is one answer and how it was marked.
type answer struct {
	learner.Learner
	slot int
	part form.Part
	learner.Done
	mark item.Mark
}

func (c *counts) answer(a answer) {
	c.answers[a.Manner]++
	wrongly := false
	for _, k := range named(a.mark) {
		if a.Manner != learner.Guessing {
			c.named[k]++
		}
		if a.made(k) {
			c.rightly[k]++
		} else {
			wrongly = true
		}
	}
	if wrongly {
		c.accused[a.Manner]++
	}
	if a.Manner == learner.Mistaken && a.made(a.Mistake) {
		c.try(a)
	}
}

func (a answer) made(k mistake.Kind) bool { return slices.Contains(a.Made, k) }

// named are the mistakes that are named without a doubt: none of another is
// said to fit as well.
func named(m item.Mark) []mistake.Kind {
	var ks []mistake.Kind
	for _, f := range m.Mistakes {
		if len(f.With) == 0 {
			ks = append(ks, f.Kind)
		}
	}
	return ks
}

// misnamed says that a mistake was named that was not made.
func (a answer) misnamed() bool {
	for _, k := range named(a.mark) {
		if !a.made(k) {
			return true
		}
	}
	return false
}

// try counts an answer of who made a mistake on purpose.
func (c *counts) try(a answer) {
	t := &c.tries[a.Mistake]
	t.Made++
	if a.mark.Right {
		t.Right++
		return
	}
	c.wrong[a.slot][a.Mistake]++
	apart, rivals := a.apart(true)
	switch {
	case a.mark.Refused && !apart:
		t.Refused++
		return
	case apart:
		t.Apart++
		if slices.Contains(named(a.mark), a.Mistake) {
			t.Named++
		}
	default:
		t.Alike++
		if a.misnamed() {
			t.Misnamed++
		}
	}
	c.alike(a, apart, rivals, false)
	if _, ok := a.Item.(item.AtBench); ok {
		apart, rivals = a.apart(false)
		c.alike(a, apart, rivals, true)
	}
}

// noRival stands for a slip without a name, or a right answer, that leads to
// the same.
const noRival = mistake.Kind(mistake.Kinds)

func (c *counts) alike(a answer, apart bool, rivals []mistake.Kind, bare bool) {
	if apart {
		return
	}
	if len(rivals) == 0 {
		rivals = []mistake.Kind{noRival}
	}
	for _, r := range rivals {
		c.rival[a.slot][pair{a.Mistake, r, bare}]++
	}
}

// apart says whether the mistake can be told in this answer, with the readings
// or without them, and if not, from which others not.
func (a answer) apart(readings bool) (bool, []mistake.Kind) {
	b, ok := a.Item.(item.AtBench)
	if !ok {
		rivals, ok := learner.Rivals(a.Item, a.Mistake)
		return !a.mark.Refused && ok && len(rivals) == 0, rivals
	}
	if a.mark.Refused {
		return shownRefused(a.Mistake, a.part.Spec.Notation), nil
	}
	s, t := b.Setup(), a.part.Spec.Tolerance
	if t == (quiz.Tolerance{}) {
		t = quiz.DefaultTolerance
	}
	e, err := orient.Parse(a.Text, a.part.Spec.Notation)
	if err != nil {
		return false, nil
	}
	var v mistake.Readings
	if readings {
		v = a.Evidence
	}
	return quiz.Case{
		Entry: e, Truth: s.Plane, Declination: s.Field.Declination, Notation: a.part.Spec.Notation, Tolerance: t,
		Readings: v,
	}.Evidence().Apart(a.Mistake)
}

// shownRefused says whether the mistake can be told in an answer that is no
// plane; any other leaves a number that cannot be read, and is said to. A pole
// holds the dip as its complement, where a percentage or a strike cannot stand.
func shownRefused(k mistake.Kind, n orient.Notation) bool {
	switch k {
	case mistake.LettersContradict:
		return true
	case mistake.PercentScale:
		return n != orient.PoleNotation
	case mistake.StrikeDipSwapped:
		return n == orient.AzimuthDip || n == orient.DirectionDip
	}
	return false
}

// add adds the counts of another worker.
func (c *counts) add(o *counts) {
	for k := range c.tries {
		t, u := &c.tries[k], o.tries[k]
		t.Made, t.Right, t.Refused, t.Alike = t.Made+u.Made, t.Right+u.Right, t.Refused+u.Refused, t.Alike+u.Alike
		t.Apart, t.Named, t.Misnamed = t.Apart+u.Apart, t.Named+u.Named, t.Misnamed+u.Misnamed
		c.named[k] += o.named[k]
		c.rightly[k] += o.rightly[k]
	}
	for i := range c.rival {
		for p, n := range o.rival[i] {
			c.rival[i][p] += n
		}
		for k, n := range o.wrong[i] {
			c.wrong[i][k] += n
		}
	}
	for m := range c.accused {
		c.accused[m] += o.accused[m]
		c.answers[m] += o.answers[m]
	}
}
