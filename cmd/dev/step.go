package main

import (
	"fmt"
	"io"
	"os/exec"
	"strings"
	"time"
)

// suite is a run of checks, told line by line as they end.
type suite struct {
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
	s.line(name, err, time.Since(start))
	if err != nil {
		s.tally.failed++
		fmt.Fprintf(s.out, "%s\n%v\n", strings.TrimRight(said, "\n"), err)
		return
	}
	s.tally.passed++
}

// tests runs tests and counts each of them.
func (s *suite) tests(name string, c *exec.Cmd) {
	start := time.Now()
	r, err := runTests(c, s.packageLine)
	s.line(fmt.Sprintf("%s (%d tests)", name, r.tally.passed+r.tally.failed), err, time.Since(start))
	s.tally.add(r.tally)
	if err != nil {
		if r.tally.failed == 0 {
			s.tally.failed++
		}
		fmt.Fprintf(s.out, "%s\n%v\n", strings.TrimRight(r.said, "\n"), err)
	}
}

func (s *suite) line(name string, err error, took time.Duration) {
	how := "ok  "
	if err != nil {
		how = "FAIL"
	}
	fmt.Fprintf(s.out, "%s  %-44s %6.1f s\n", how, name, took.Seconds())
}

// packageLine tells that the tests of a package have ended.
func (s *suite) packageLine(ev testEvent) {
	fmt.Fprintf(s.out, "        %-4s  %-38s %6.1f s\n", ev.Action, ev.Package, ev.Elapsed)
}

// remark tells of something that was left out, and why.
func (s *suite) remark(text string) { fmt.Fprintf(s.out, "--    %s\n", text) }

// quiet runs a command and returns all it printed.
func quiet(c *exec.Cmd) func() (string, error) {
	return func() (string, error) {
		out, err := c.CombinedOutput()
		return string(out), err
	}
}
