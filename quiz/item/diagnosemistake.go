package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

// diagnoseMistake has the mistake behind a wrong answer named.
type diagnoseMistake struct{}

// diagnosisItem is one wrong answer.
type diagnosisItem struct {
	choice
	bare
	truth, answer orient.Plane
	notation      orient.Notation
	declination   int // degrees, east positive
	kind          mistake.Kind
}

// Name, Title and OnPaper describe the kind.
func (diagnoseMistake) Name() string  { return "diagnose-mistake" }
func (diagnoseMistake) Title() string { return "Diagnose a mistake" }
func (diagnoseMistake) OnPaper() bool { return true }

// tries is how many beds are drawn before the dips asked for are given up:
// about one in two shows a mistake that can be told.
const tries = 400

// Deal draws a bed, a declination and a mistake. It draws again until the
// mistake can be told from every other one, by the catalogue's own measure and
// by its diagnosis.
func (diagnoseMistake) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	s.Notation = readInField(s.Notation)
	for range tries {
		p, err := s.planeBetween(r, 10, 80)
		if err != nil {
			return nil, err
		}
		c := diagnosed{s: s, truth: p, declination: signed(r, 8, 22)}
		ms := c.mistaken()
		m := ms[r.IntN(len(ms))]
		if c.told(m) {
			return c.item(m, ms, r), nil
		}
	}
	return nil, fmt.Errorf("%w: at these dips hardly a mistake can be told from the others", ErrSpec)
}

// diagnosed is a bed at a place, and the mistakes that may be made there.
type diagnosed struct {
	s           Spec
	truth       orient.Plane
	declination int
}

// made is a mistake and the answer that comes of it.
type made struct {
	kind  mistake.Kind
	plane orient.Plane
}

// mistaken are the mistakes that change a number on paper, with the answers
// they lead to.
func (c diagnosed) mistaken() []made {
	p, d, n := c.truth, angle(c.declination), c.s.Notation
	turned := func(a orient.Angle) orient.Plane { return turnedBy(p, a, 0) }
	ms := []made{
		{opposed(n), turned(orient.Half)},
		{mistake.DirectionForStrike, turned(orient.Right)},
		{mistake.EastWest, mirrored(p, n).Rounded(orient.Degree)},
		{mistake.DeclinationNotSet, turned(-d)},
		{mistake.DeclinationWrongSign, turned(-2 * d)},
		{mistake.Complement, orient.Plane{Strike: p.Strike, Dip: orient.Right - p.Dip}.Rounded(orient.Degree)},
	}
	if n == orient.DirectionDip {
		ms[1].plane = turned(-orient.Right)
	}
	if percent := orient.PercentGrade(p.Dip); percent <= 90 {
		ms = append(ms, made{mistake.PercentScale, orient.Plane{Strike: p.Strike, Dip: orient.Angle(percent) * orient.Degree}.Rounded(orient.Degree)})
	}
	return ms
}

// evidence is the answer of m as the catalogue sees it.
func (c diagnosed) evidence(m made) (mistake.Evidence, quiz.Verdict, bool) {
	entry, err := orient.Parse(orient.Format(m.plane, c.s.Notation), c.s.Notation)
	k := quiz.Case{Entry: entry, Truth: c.truth, Declination: angle(c.declination), Notation: c.s.Notation, Tolerance: quiz.DefaultTolerance}
	return k.Evidence(), quiz.Judge(k), err == nil
}

// told says that the mistake stands apart from all others, and that the
// diagnosis names it and no other.
func (c diagnosed) told(m made) bool {
	e, v, ok := c.evidence(m)
	if !ok || v.Right {
		return false
	}
	apart, _ := e.Apart(m.kind)
	return apart && len(v.Mistakes) == 1 && v.Mistakes[0].Kind == m.kind && len(v.Mistakes[0].With) == 0
}

// item offers the mistake with three whose answers are others.
func (c diagnosed) item(m made, all []made, r *rand.Rand) diagnosisItem {
	it := diagnosisItem{truth: c.truth, answer: m.plane, notation: c.s.Notation, declination: c.declination, kind: m.kind}
	var others []option
	for _, i := range r.Perm(len(all)) {
		o := all[i]
		if o.kind != m.kind && o.plane.AngleTo(m.plane) > quiz.DefaultTolerance.Dip && len(others) < 3 {
			others = append(others, option{what(o.kind, it.notation), slipped("That would have given another answer: work out which.")})
		}
	}
	_, advice := m.kind.Words(it.notation)
	it.choice = shuffled(r, "mistake", option{what(m.kind, it.notation), slipped(advice)}, others...)
	return it
}

// what says what happened.
func what(k mistake.Kind, n orient.Notation) string {
	words, _ := k.Words(n)
	return words
}

// Kind is the kind.
func (diagnosisItem) Kind() Kind { return diagnoseMistake{} }

// Prompt is the question.
func (it diagnosisItem) Prompt() string {
	return fmt.Sprintf("A bed lies %s (%s). The declination of the place is %s. A student wrote %s. What has probably happened?",
		orient.Format(it.truth, it.notation), notationNames[it.notation], declinationWords(angle(it.declination)), orient.Format(it.answer, it.notation))
}

// Hints help in steps.
func (it diagnosisItem) Hints() []string {
	if it.truth.Dip == it.answer.Dip {
		return []string{
			"Which of the two numbers is wrong: the direction or the dip?",
			"By how much is it off: by half a turn, a quarter turn, the declination or twice that? Or is it a mirror image?",
		}
	}
	return []string{
		"Which of the two numbers is wrong: the direction or the dip?",
		"Compare the wrong dip with what is left to 90, and with 100 times the tangent of the right one.",
	}
}

// Near says that both show the same mistake on much the same bed.
func (it diagnosisItem) Near(other Item) bool {
	o, ok := other.(diagnosisItem)
	return ok && it.kind == o.kind && it.truth.AngleTo(o.truth) <= 5*orient.Degree
}

// Difficulty is how near the right and the wrong plane lie, and half of it for
// the direction, where more mistakes are known.
func (it diagnosisItem) Difficulty() float64 {
	d := 0.5 * (1 - float64(it.truth.AngleTo(it.answer)/orient.Right))
	if it.truth.Strike != it.answer.Strike {
		d += 0.4
	}
	return d
}
