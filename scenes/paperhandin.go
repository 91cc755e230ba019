package scenes

import (
	"fmt"
)

// opens are the questions without an answer, and those where another one is
// written and not kept.
func (p *Paper) opens() []int {
	var open []int
	for i := range p.sit.Count() {
		if p.sit.Given(i) == "" || p.draft(i) != "" {
			open = append(open, i)
		}
	}
	return open
}

// numbered are the numbers of questions in a sentence.
func numbered(questions []int) string {
	words, last := "", len(questions)-1
	for n, i := range questions {
		switch {
		case n == 0:
		case n == last:
			words += " and "
		default:
			words += ", "
		}
		words += fmt.Sprint(i + 1)
	}
	return words
}

// standing says which questions are still open.
func (p *Paper) standing() string {
	switch open := p.opens(); len(open) {
	case 0:
		return fmt.Sprintf("All %d questions are answered.", p.sit.Count())
	case 1:
		return fmt.Sprintf("1 of %d is still open: question %s.", p.sit.Count(), numbered(open))
	default:
		return fmt.Sprintf("%d of %d are still open: questions %s.", len(open), p.sit.Count(), numbered(open))
	}
}

// overviewed is what the overview is for.
func (p *Paper) overviewed() string {
	return p.standing() + " Go to a question, or hand the form in."
}

// mostNamed bounds the open questions that are named before handing in; the
// overview shows them all.
const mostNamed = 4

// asks is what is asked before a form with questions open is handed in.
func (p *Paper) asks() string {
	open, words := p.opens(), ""
	switch n := len(open); {
	case n == 0:
		return ""
	case n == 1:
		words = fmt.Sprintf("Question %s is open.", numbered(open))
	case n <= mostNamed:
		words = fmt.Sprintf("Questions %s are open.", numbered(open))
	default:
		words = fmt.Sprintf("%d questions are open.", n)
	}
	return words + " Press Hand in again to hand in all the same."
}

// doing does one thing. What was asked before it is asked no longer, unless it
// is asked anew.
func (p *Paper) doing(do func()) {
	asked, said := p.asked, p.said
	do()
	if !asked {
		return
	}
	if p.asked = false; p.said == said {
		p.said = ""
	}
}

// handIn hands the form in from the overview of all questions; from elsewhere
// it goes there first, and with questions open it asks, so that no slip of a
// finger closes a form.
func (p *Paper) handIn() {
	asks := p.asks()
	if p.review && (asks == "" || p.asked) {
		p.finish()
		return
	}
	if !p.review {
		p.review, p.more, p.page = true, false, 0
		p.said = p.standing() + " Look through the answers; Hand in, once more, hands them in."
	}
	p.focus = idFinish
	if asks != "" {
		p.asked, p.said = true, asks
	}
}

func (p *Paper) finish() {
	h, err := p.sit.Finish()
	if err != nil {
		p.said = err.Error()
		return
	}
	if p.done != "" {
		p.said = "Saved again: " + h.File + " lies " + h.Where + "."
		return
	}
	p.done = "Handed in. The submission lies " + h.Where + ". Send " + h.File + " to your teacher."
	p.said, p.focus, p.drafts = "", idOverview, nil
	p.note.set(p.sit.Given(p.at))
}
