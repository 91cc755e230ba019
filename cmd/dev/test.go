package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"

	"cuesta/cmd/internal/chromium"
)

// test sets up the machine and runs every check; it fails when any fails.
func test() error {
	start := time.Now()
	s := &suite{out: os.Stdout}
	s.check("system packages", func() (string, error) { return "", setUp(testPackages) })
	s.check("modules", quiet(goCommand("list", "-deps", "-test", "./...", "tool")))
	if s.tally.failed > 0 {
		return s.end(start)
	}
	s.checks()
	return s.end(start)
}

// checks are all that can run once everything they need is there. What often
// waits, for a display, a browser or a single thread, runs beside what never does.
func (s *suite) checks() {
	s.check("gofmt", func() (string, error) { return unformatted(".") })
	s.check("build", quiet(goCommand("build", "./...")))
	s.beside(s.raceTests, s.otherChecks)
}

// otherChecks end with the page, whose tests want the most of a machine: by then
// much of the rest is done.
func (s *suite) otherChecks() {
	s.check("build of cuesta without cgo", withoutCgo)
	s.check("vet", quiet(goCommand("vet", "./...")))
	s.check("staticcheck", quiet(goCommand("tool", "staticcheck", "./...")))
	s.browser()
	s.windowTests()
	s.pageTests()
}

// end prints the totals.
func (s *suite) end(start time.Time) error {
	fmt.Fprintf(s.out, "%.0f s in all\n", time.Since(start).Seconds())
	fmt.Fprintf(s.out, "%d passed, %d failed\n", s.tally.passed, s.tally.failed)
	if s.tally.failed > 0 {
		return errors.New("not every check passed")
	}
	return nil
}

// hung is the flag that ends tests which will never end by themselves: well above
// what a package takes on a slow machine while other parts run beside it.
const hung = "-timeout=15m"

// needsDisplay lists the packages whose tests cannot start without a display.
var needsDisplay = []string{"cuesta/scenes/window", "cuesta/cmd/bench"}

// needsChromium is the package whose tests open the page in a browser.
const needsChromium = "cuesta/cmd/internal/browse"

// raceTests runs all tests that need no display with the race detector. Each
// package takes about a gigabyte to build and test that way.
func (s *suite) raceTests() {
	packages, err := packagesBut(append([]string{needsChromium}, needsDisplay...))
	if err != nil {
		s.check("list of packages", func() (string, error) { return "", err })
		return
	}
	args := append([]string{"test", "-json", "-race", hung, fmt.Sprintf("-p=%d", min(4, runtime.NumCPU()))}, packages...)
	s.tests("tests with the race detector", goCommand(args...))
}

// browser builds the page and checks under Node that the world is the same
// there, bit for bit. What the page is built of is not built once more: both
// take the paths out.
func (s *suite) browser() {
	s.check("build for the browser", throwawayPage)
	node, err := exec.LookPath("node")
	if err != nil {
		s.remark("Node is not installed: the tests in WebAssembly were left out")
		return
	}
	runner, err := wasmSupport("go_js_wasm_exec")
	if err != nil {
		s.check("tests in WebAssembly", func() (string, error) { return "", err })
		return
	}
	s.tests("tests in WebAssembly under "+filepath.Base(node),
		wasmCommand("test", "-json", "-trimpath", hung, "-exec="+runner, "./sim/..."))
}

// windowTests runs the tests that draw, on a display in memory where there is
// a tool for it.
func (s *suite) windowTests() {
	args := append([]string{"test", "-json", hung, "-p=1"}, needsDisplay...)
	c, err := onDisplay(goCommand(args...))
	if err != nil {
		s.check("window tests", func() (string, error) { return "", err })
		return
	}
	s.tests("window tests", c)
}

// pageTests opens the page in Chromium. A machine that cannot have it is told
// so; where every check must run, as on CI, it fails.
func (s *suite) pageTests() {
	err := setUp(browserPackages)
	if err == nil {
		_, err = chromium.Find()
	}
	switch {
	case err == nil:
		s.tests("tests in Chromium", goCommand("test", "-json", hung, needsChromium))
	case os.Getenv("CI") == "true":
		s.check("tests in Chromium", func() (string, error) { return "", err })
	default:
		s.remark(fmt.Sprintf("the tests in Chromium were left out: %v", err))
	}
}

// onDisplay makes the command run under a display in memory on Linux.
func onDisplay(c *exec.Cmd) (*exec.Cmd, error) {
	if runtime.GOOS != "linux" {
		return c, nil
	}
	xvfb, err := exec.LookPath("xvfb-run")
	if err != nil {
		return nil, err
	}
	args := append([]string{"-a", "-s", "-screen 0 1920x1080x24", c.Path}, c.Args[1:]...)
	d := exec.Command(xvfb, args...)
	d.Env = append(c.Env, "LIBGL_ALWAYS_SOFTWARE=1")
	return d, nil
}

// throwawayPage builds the page as it goes to a server.
func throwawayPage() (string, error) {
	dir, err := os.MkdirTemp("", "cuesta-page-")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	return "", buildWeb(dir)
}

// withoutCgo builds the command line as it is built where there is no C
// compiler.
func withoutCgo() (string, error) {
	c := goCommand("build", "-o", os.DevNull, "./cmd/cuesta")
	c.Env = append(c.Env, "CGO_ENABLED=0")
	return quiet(c)()
}

// packagesBut lists the packages of the module without the given ones.
func packagesBut(without []string) ([]string, error) {
	out, err := goCommand("list", "./...").Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var keep []string
	for _, p := range strings.Fields(string(out)) {
		if !slices.Contains(without, p) {
			keep = append(keep, p)
		}
	}
	return keep, nil
}

// unformatted lists the Go files under dir that gofmt would change.
func unformatted(dir string) (string, error) {
	var bad []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && d.Name() != "." {
			return fs.SkipDir
		}
		if d.IsDir() || filepath.Ext(path) != ".go" {
			return nil
		}
		same, err := isFormatted(path)
		if !same {
			bad = append(bad, path)
		}
		return err
	})
	if err == nil && len(bad) > 0 {
		err = fmt.Errorf("gofmt would change %d files", len(bad))
	}
	return strings.Join(bad, "\n"), err
}

func isFormatted(path string) (bool, error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return false, err
	}
	out, err := format.Source(src)
	if err != nil {
		return false, fmt.Errorf("%s: %w", path, err)
	}
	return bytes.Equal(src, out), nil
}
