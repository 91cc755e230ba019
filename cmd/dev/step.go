package main

import (
	"fmt"
	"io"
	"os/exec"
	"strings"
	"sync"
	"time"
)

// suite is a run of checks, told line by line as they end. Parts of it may run
// beside each other.
type suite struct {
	mu    sync.Mutex // of what follows
	out   io.Writer
	tally tally
}

// tally counts tests and checks.
type tally struct{ passed, failed int }

func (t *tally) add(u tally) {
	t.passed += u.passed
	t.failed += u.failed
}

// check runs one check and prints its name, how it went and how long it took;
// what it has to say only when it failed.
func (s *suite) check(name string, f func() (string, error)) {
	start := time.Now()
	said, err := f()
	t := tally{passed: 1}
	if err != nil {
		t = tally{failed: 1}
	}
	s.ended(name, t, said, err, time.Since(start))
}

// tests runs tests and counts each of them.
func (s *suite) tests(name string, c *exec.Cmd) {
	start := time.Now()
	r, err := runTests(c, func(ev testEvent) { s.packageLine(name, ev) })
	name = fmt.Sprintf("%s (%d tests)", name, r.tally.passed+r.tally.failed)
	if err != nil && r.tally.failed == 0 {
		r.tally.failed++
	}
	s.ended(name, r.tally, r.said, err, time.Since(start))
}

// ended counts and tells how a part went.
func (s *suite) ended(name string, t tally, said string, err error, took time.Duration) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.tally.add(t)
	how := "ok  "
	if err != nil {
		how = "FAIL"
	}
	fmt.Fprintf(s.out, "%s  %-44s %6.1f s\n", how, name, took.Seconds())
	if err != nil {
		fmt.Fprintf(s.out, "%s\n%v\n", strings.TrimRight(said, "\n"), err)
	}
}

// packageLine tells that the tests of a package have ended, and in which part.
func (s *suite) packageLine(part string, ev testEvent) {
	s.mu.Lock()
	defer s.mu.Unlock()
	fmt.Fprintf(s.out, "        %-4s  %-38s %6.1f s  %s\n", ev.Action, ev.Package, ev.Elapsed, part)
}

// beside runs parts beside each other and returns when all have ended.
func (s *suite) beside(parts ...func()) {
	var all sync.WaitGroup
	for _, part := range parts {
		all.Go(part)
	}
	all.Wait()
}

// remark tells of something that was left out, and why.
func (s *suite) remark(text string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	fmt.Fprintf(s.out, "--    %s\n", text)
}

// quiet runs a command and returns all it printed.
func quiet(c *exec.Cmd) func() (string, error) {
	return func() (string, error) {
		out, err := c.CombinedOutput()
		return string(out), err
	}
}
