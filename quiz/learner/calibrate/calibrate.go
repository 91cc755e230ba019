// Package calibrate tries a quiz with simulated students before people sit it:
// what each kind of student would score, how often each mistake is named
// rightly, and which items cannot tell two mistakes apart.
package calibrate

import (
	"errors"
	"fmt"
	"math/rand/v2"

	"cuesta/quiz/form"
	"cuesta/quiz/learner"
)

// ErrOptions is wrapped by the errors of options that make no sense.
var ErrOptions = errors.New("the quiz cannot be tried like this")

// Most bounds the students of each kind.
const Most = 100_000

// Options are how a quiz is tried. The zero value tries it with Usual students
// of each kind and the seed 0.
type Options struct {
	Students int // of each kind of learner, at most Most
	Seed     uint64
	Workers  int                 // at work at a time; the result does not depend on it
	Progress func(done, all int) // told now and then, from one goroutine at a time; may be nil
	Learners []learner.Learner   // learner.All when empty
}

// Usual is the number of students of each kind where none is asked for.
const Usual = 400

// Run tries a blueprint. Equal blueprints and options give equal tables.
func Run(b form.Blueprint, o Options) (Table, error) {
	if o.Students == 0 {
		o.Students = Usual
	}
	if o.Students < 2 || o.Students > Most {
		return Table{}, fmt.Errorf("%w: read %d students; from 2 to %d of each kind", ErrOptions, o.Students, Most)
	}
	if len(o.Learners) == 0 {
		o.Learners = learner.All()
	}
	return tabled(b, o, sitAll(b, o))
}

// stream tells the draws of the forms from other uses of the same seed.
const stream = 0x63616c69627261

// dealt is a form of its own for the nth student: the same for each kind of
// learner, so that they can be compared.
func dealt(b form.Blueprint, seed uint64, n int) form.Form {
	r := rand.New(rand.NewPCG(seed, stream+uint64(n)))
	f := form.Form{Blueprint: b, Student: form.Student{ID: fmt.Sprint(n + 1), ExtraTime: 1}}
	for _, p := range b.Slots() {
		f.Items = append(f.Items, form.Dealt{Part: p, Seed: r.Uint64() >> 11})
	}
	return f
}
