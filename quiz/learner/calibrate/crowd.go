package calibrate

import (
	"runtime"
	"sync"

	"cuesta/quiz/form"
)

// batch is how many students of one kind a worker takes at a time.
const batch = 25

// task is a run of students of one kind of learner.
type task struct{ learner, from, to int }

func tasks(o Options) []task {
	var all []task
	for l := range o.Learners {
		for from := 0; from < o.Students; from += batch {
			all = append(all, task{l, from, min(from+batch, o.Students)})
		}
	}
	return all
}

// crowd is what all the students came to.
type crowd struct {
	scores [][]float64 // a share of the points, by learner and student
	count  *counts
	err    error
}

// sitAll lets everyone sit the quiz, on several workers. Scores stand in their
// own places and counts are whole numbers, so that the order does not matter.
func sitAll(b form.Blueprint, o Options) crowd {
	c := crowd{scores: make([][]float64, len(o.Learners)), count: newCounts(b)}
	for i := range c.scores {
		c.scores[i] = make([]float64, o.Students)
	}
	all := tasks(o)
	next := make(chan task)
	var lock sync.Mutex
	var workers sync.WaitGroup
	done := 0
	for range o.workers(len(all)) {
		workers.Add(1)
		go func() {
			defer workers.Done()
			own := newCounts(b)
			for t := range next {
				err := own.sit(b, o, t, c.scores[t.learner])
				lock.Lock()
				if done += t.to - t.from; o.Progress != nil {
					o.Progress(done, len(o.Learners)*o.Students)
				}
				if err != nil {
					c.err = err
				}
				lock.Unlock()
			}
			lock.Lock()
			c.count.add(own)
			lock.Unlock()
		}()
	}
	for _, t := range all {
		next <- t
	}
	close(next)
	workers.Wait()
	return c
}

func (o Options) workers(tasks int) int {
	n := o.Workers
	if n <= 0 {
		n = runtime.GOMAXPROCS(0)
	}
	return max(1, min(n, tasks))
}

// sit lets the students of a task sit and counts their answers.
func (c *counts) sit(b form.Blueprint, o Options, t task, scores []float64) error {
	l := o.Learners[t.learner]
	for n := t.from; n < t.to; n++ {
		w, err := l.Sit(dealt(b, o.Seed, n), seedOf(o.Seed, t.learner, n))
		if err != nil {
			return err
		}
		scores[n] = c.work(b, l, w)
	}
	return nil
}

// seedOf is a seed of its own for each learner and student.
func seedOf(seed uint64, learner, n int) uint64 {
	return seed ^ (uint64(learner+1)<<40+uint64(n))*0x9e3779b97f4a7c15
}
