package learner

import (
	"fmt"
	"math/rand/v2"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
)

// Work is what a learner hands in, and what is known of how it came about.
type Work struct {
	Submission form.Submission
	Done       []Done // one an item
}

// Done is one item as it was done.
type Done struct {
	Item     item.Item
	Text     string         // the answer
	Made     []mistake.Kind // the mistakes that were made on the way, if any
	Evidence item.Evidence  // of the readings, for an item at the bench
}

// stream tells the draws of the learners from other uses of the same seed.
const stream = 0x6c6561726e6572

// Sit answers every item of a form. The same form and seed give the same work.
// The error is that of a form whose items cannot be dealt.
func (l Learner) Sit(f form.Form, seed uint64) (Work, error) {
	w := Work{Submission: form.Submission{Form: f, Answers: make([]form.Answer, len(f.Items))}}
	for i := range f.Items {
		it, err := f.Item(i)
		if err != nil {
			return Work{}, err
		}
		d := desk{Learner: l, it: it, part: f.Part(i), r: rand.New(rand.NewPCG(seed, stream+uint64(i)))}
		if err := d.work(); err != nil {
			return Work{}, fmt.Errorf("item %d: %w", i+1, err)
		}
		w.Submission.Answers[i] = form.Answer{Texts: []string{d.text}, Recording: d.recording}
		w.Done = append(w.Done, Done{it, d.text, d.made, d.evidence})
	}
	return w, nil
}

// desk is a learner at one item.
type desk struct {
	Learner
	it   item.Item
	part form.Part
	r    *rand.Rand

	text, recording string
	made            []mistake.Kind
	evidence        item.Evidence
	watched         bool // by someone who sees the scales too
}

func (d *desk) work() error {
	if d.Manner == Guessing {
		d.text = d.guess()
		return nil
	}
	if b, ok := d.it.(item.AtBench); ok {
		return d.measure(b)
	}
	d.text = d.reckon()
	return nil
}

// makesHere notes that the mistake of the learner was made.
func (d *desk) makesHere() {
	if d.Manner == Mistaken {
		d.made = []mistake.Kind{d.Mistake}
	}
}
