package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os/exec"
	"strings"
)

// testEvent is one line of `go test -json`, as documented in cmd/test2json.
type testEvent struct {
	Action     string
	Package    string
	ImportPath string // of a build event
	Test       string
	Output     string
	Elapsed    float64 // seconds
}

// testResult is what a run of tests came to.
type testResult struct {
	tally tally
	said  string // the output of what failed
}

// runTests runs `go test -json …` and counts. The end of each package is told
// as it comes: a run of minutes should not be silent.
func runTests(c *exec.Cmd, ended func(testEvent)) (testResult, error) {
	out, err := c.StdoutPipe()
	if err != nil {
		return testResult{}, err
	}
	var remarks strings.Builder
	c.Stderr = &remarks
	if err := c.Start(); err != nil {
		return testResult{}, err
	}
	r := readEvents(out, ended)
	err = c.Wait()
	r.said += remarks.String()
	if err == nil && r.tally.failed > 0 {
		err = fmt.Errorf("%d failed", r.tally.failed)
	}
	return r, err
}

// readEvents counts the tests that hold no tests of their own, and a package
// that fails without a failing test as one failure.
func readEvents(in io.Reader, ended func(testEvent)) testResult {
	var r testResult
	e := newEvents()
	lines := bufio.NewReader(in)
	for {
		line, err := lines.ReadBytes('\n')
		var ev testEvent
		if json.Unmarshal(line, &ev) == nil {
			e.take(ev, &r)
			if ev.Test == "" && (ev.Action == "pass" || ev.Action == "fail") {
				ended(ev)
			}
		} else {
			r.said += string(line)
		}
		if err != nil {
			return r
		}
	}
}

// events gathers what the events of one run leave to remember.
type events struct {
	output map[string]*strings.Builder // by package and test, or build
	parent map[string]bool             // tests that have tests of their own
	failed map[string]bool             // packages with a failed test
}

func newEvents() *events {
	return &events{map[string]*strings.Builder{}, map[string]bool{}, map[string]bool{}}
}

func (e *events) take(ev testEvent, r *testResult) {
	key := ev.Package + " " + ev.Test
	switch ev.Action {
	case "run":
		if i := strings.LastIndex(ev.Test, "/"); i >= 0 {
			e.parent[ev.Package+" "+ev.Test[:i]] = true
		}
	case "output":
		e.write(key, ev.Output)
	case "build-output":
		r.said += ev.Output
	case "pass":
		if ev.Test != "" && !e.parent[key] {
			r.tally.passed++
		}
	case "fail":
		e.fail(ev, key, r)
	}
}

func (e *events) fail(ev testEvent, key string, r *testResult) {
	if b := e.output[key]; b != nil {
		r.said += b.String()
	}
	switch {
	case ev.Test == "" && e.failed[ev.Package]:
	case ev.Test != "" && e.parent[key] && e.failed[ev.Package]:
	default:
		r.tally.failed++
		e.failed[ev.Package] = true
	}
}

func (e *events) write(key, text string) {
	if e.output[key] == nil {
		e.output[key] = new(strings.Builder)
	}
	e.output[key].WriteString(text)
}
