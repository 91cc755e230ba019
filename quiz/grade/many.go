package grade

import (
	"errors"
	"fmt"
	"io"
	"runtime"

	"cuesta/quiz/form"
)

// Source is a submission that has not been read yet.
type Source struct {
	Name string // of its file, for reports
	Open func() (io.ReadCloser, error)
}

// Outcome is what became of a source: its marks, or why there are none.
type Outcome struct {
	Source string
	Graded Graded
	Err    error
}

// ErrPanicked says that a submission made the marking fail in a way that was
// not foreseen.
var ErrPanicked = errors.New("the marking failed")

// Many marks many submissions on all processors and hands each outcome to each,
// in the order of the sources. No more than a few are held at a time, however
// many there are. An error of each ends the work and is returned.
func Many(sources []Source, changed *form.Blueprint, each func(Outcome) error) error {
	workers := min(runtime.GOMAXPROCS(0), max(1, len(sources)))
	type job struct {
		source Source
		done   chan Outcome
	}
	jobs := make(chan job)
	queue := make(chan job, 2*workers) // in order; it bounds what is held
	stop := make(chan struct{})
	defer close(stop)
	for range workers {
		go func() {
			for j := range jobs {
				j.done <- One(j.source, changed)
			}
		}()
	}
	go func() {
		defer close(jobs)
		defer close(queue)
		for _, s := range sources {
			j := job{s, make(chan Outcome, 1)}
			select {
			case queue <- j:
			case <-stop:
				return
			}
			jobs <- j
		}
	}()
	for j := range queue {
		if err := each(<-j.done); err != nil {
			return err
		}
	}
	return nil
}

// One reads and marks one submission. Whatever a file holds, it ends in an
// outcome: one bad file must not keep a class from its marks.
func One(s Source, changed *form.Blueprint) (o Outcome) {
	o.Source = s.Name
	defer func() {
		if r := recover(); r != nil {
			o.Graded, o.Err = Graded{}, fmt.Errorf("%w: %v", ErrPanicked, r)
		}
	}()
	in, err := s.Open()
	if err != nil {
		o.Err = err
		return o
	}
	defer in.Close()
	sub, err := form.DecodeSubmission(in)
	if err != nil {
		o.Err = err
		return o
	}
	o.Graded, o.Err = Submission(sub, changed)
	return o
}
