package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"cuesta/cmd/internal/display"
)

// bench measures and prints one "name value" a line. Ratios are taken side by
// side in the same run, so that they hold on a slow or busy machine.
func bench() error {
	if err := setUp(append(browserPackages, testPackages...)); err != nil {
		return err
	}
	return errors.Join(stepFigures(os.Stdout), quizFigures(os.Stdout), frameFigures(os.Stdout), startFigures(os.Stdout), pageFigures(os.Stdout))
}

// ticksPerSecond is the rate of the world; a test holds it against sim's.
const ticksPerSecond = 120

// stepFigures are the cost of one step of the world and how much faster than
// the clock on the wall it runs.
func stepFigures(out io.Writer) error {
	text, err := goCommand("test", "-run=^$", "-bench=^BenchmarkStep$", "-benchmem", "-count=5", "./sim").Output()
	if err != nil {
		return fmt.Errorf("%s\nthe step could not be measured: %w", text, err)
	}
	ns, allocs, err := medianBenchmark(string(text))
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "step_ns %.1f\nstep_allocs %g\nstep_realtime_factor %.0f\n",
		ns, allocs, float64(time.Second)/ticksPerSecond/ns)
	return nil
}

// medianBenchmark reads the lines of `go test -bench -benchmem`.
func medianBenchmark(text string) (ns, allocs float64, err error) {
	var times, counts []float64
	for _, line := range strings.Split(text, "\n") {
		f := strings.Fields(line)
		if len(f) < 8 || !strings.HasPrefix(f[0], "Benchmark") {
			continue
		}
		var t, a float64
		if _, err := fmt.Sscanf(f[2]+" "+f[6], "%g %g", &t, &a); err != nil {
			return 0, 0, fmt.Errorf("the figures of %q were not understood: %w", line, err)
		}
		times, counts = append(times, t), append(counts, a)
	}
	if len(times) == 0 {
		return 0, 0, fmt.Errorf("no benchmark of the step was run:\n%s", text)
	}
	return median(times), median(counts), nil
}

func median(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// frameFigures are the cost of the whole scene over an empty frame, measured
// by the window program itself.
func frameFigures(out io.Writer) error {
	dir, err := os.MkdirTemp("", "cuesta-frames-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	program, err := buildBench(dir)
	if err != nil {
		return err
	}
	small, err := frames(program, "1280x720")
	if err != nil {
		return err
	}
	large, err := frames(program, "1920x1080")
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "frame_ratio_720 %.3f\nframe_ratio_1080 %.3f\nframe_allocs %g\n",
		small["frame_ratio"], large["frame_ratio"], max(small["frame_allocs"], large["frame_allocs"]))
	return nil
}

// frames asks the window program for its figures at one size.
func frames(program, size string) (map[string]float64, error) {
	c := exec.Command(program, "--frames", "400", "--size", size)
	c.Env = os.Environ()
	if display.Check() != nil {
		var err error
		if c, err = onDisplay(c); err != nil {
			return nil, err
		}
	}
	said, err := c.Output()
	if err != nil {
		return nil, fmt.Errorf("%s\nthe frames at %s could not be measured: %w", said, size, err)
	}
	return figures(string(said), "frame_ratio", "frame_allocs")
}

// figures reads "name value" lines and wants the given names among them.
func figures(text string, want ...string) (map[string]float64, error) {
	got := map[string]float64{}
	for _, line := range strings.Split(text, "\n") {
		var name string
		var value float64
		if n, _ := fmt.Sscanf(line, "%s %g", &name, &value); n == 2 {
			got[name] = value
		}
	}
	for _, w := range want {
		if _, ok := got[w]; !ok {
			return nil, fmt.Errorf("no %s among the figures:\n%s", w, text)
		}
	}
	return got, nil
}

// startFigures are the start of the command line over the start of a bare
// program, taken turn by turn.
func startFigures(out io.Writer) error {
	dir, err := os.MkdirTemp("", "cuesta-start-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	bare, cuesta := filepath.Join(dir, programName("bare")), filepath.Join(dir, programName("cuesta"))
	source := filepath.Join(dir, "bare.go")
	if err := os.WriteFile(source, []byte(bareProgram), 0o644); err != nil {
		return err
	}
	for program, from := range map[string]string{bare: source, cuesta: "./cmd/cuesta"} {
		if said, err := quiet(goCommand("build", "-o", program, from))(); err != nil {
			return fmt.Errorf("%s\n%w", said, err)
		}
	}
	ratio, err := startRatio(exec.Command(cuesta, "convert", "035/30SE"), exec.Command(bare))
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "cli_start_ratio %.2f\n", ratio)
	return nil
}

const bareProgram = `package main

import "fmt"

func main() { fmt.Println("035/30") }
`

// startRatio is the median time of one program over that of another.
func startRatio(a, b *exec.Cmd) (float64, error) {
	const rounds = 150
	var as, bs []float64
	for range rounds {
		ta, err := timed(a)
		if err != nil {
			return 0, err
		}
		tb, err := timed(b)
		if err != nil {
			return 0, err
		}
		as, bs = append(as, ta), append(bs, tb)
	}
	return median(as) / median(bs), nil
}

func timed(c *exec.Cmd) (float64, error) {
	fresh := exec.Command(c.Path, c.Args[1:]...)
	start := time.Now()
	out, err := fresh.CombinedOutput()
	took := time.Since(start).Seconds()
	if err != nil {
		return 0, fmt.Errorf("%s\n%s: %w", out, filepath.Base(c.Path), err)
	}
	return took, nil
}

// pageFigures lets the program that drives a browser measure the page.
func pageFigures(out io.Writer) error {
	support, err := wasmSupport("wasm_exec.js")
	if err != nil {
		return err
	}
	c := goCommand("run", "./cmd/internal/browse/figures", support)
	c.Stdout, c.Stderr = out, os.Stderr
	if err := c.Run(); err != nil {
		return fmt.Errorf("the page could not be measured: %w", err)
	}
	return nil
}
