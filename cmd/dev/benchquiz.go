package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
)

// quizFigure is a figure of the quiz that a benchmark reports under a unit.
type quizFigure struct {
	name      string // as it is printed
	pkg       string
	benchmark string
	unit      string
}

var quizFigureList = []quizFigure{
	{"deal_forms_per_s", "./quiz/form", "BenchmarkDeal", "forms/s"},
	{"sit_slabs_per_s", "./quiz/learner", "BenchmarkSit", "slabs/s"},
	{"grade_submissions_per_s", "./quiz/grade", "BenchmarkGrade", "submissions/s"},
	{"replay_realtime_factor", "./quiz/learner", "BenchmarkReplay", "x-realtime"},
	{"print_pages_per_s", "./quiz/paper", "BenchmarkPrint", "pages/s"},
	{"print_text_ratio", "./quiz/paper", "BenchmarkPrint", "of-text-alone"},
}

// quizFigures are how fast forms are dealt, sat, marked, run again and printed.
// The last is the time that the text of the same pages takes the PDF library
// by itself, over the time they take in all.
func quizFigures(out io.Writer) error {
	said := map[string]string{} // by package and benchmark
	for _, f := range quizFigureList {
		key := f.pkg + " " + f.benchmark
		if said[key] == "" {
			text, err := goCommand("test", "-run=^$", "-bench=^"+f.benchmark+"$", "-count=3", f.pkg).CombinedOutput()
			if err != nil {
				return fmt.Errorf("%s\n%s could not be measured: %w", text, f.name, err)
			}
			said[key] = string(text)
		}
		x, err := medianMetric(said[key], f.benchmark, f.unit)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "%s %.4g\n", f.name, x)
	}
	return nil
}

// medianMetric reads the values of one unit from the lines of a benchmark.
func medianMetric(text, benchmark, unit string) (float64, error) {
	var values []float64
	for _, line := range strings.Split(text, "\n") {
		f := strings.Fields(line)
		if len(f) == 0 || strings.SplitN(f[0], "-", 2)[0] != benchmark {
			continue
		}
		for i := 2; i+1 < len(f); i += 2 {
			if f[i+1] != unit {
				continue
			}
			x, err := strconv.ParseFloat(f[i], 64)
			if err != nil {
				return 0, fmt.Errorf("the figures of %q were not understood: %w", line, err)
			}
			values = append(values, x)
		}
	}
	if len(values) == 0 {
		return 0, fmt.Errorf("%s reported nothing in %s:\n%s", benchmark, unit, text)
	}
	return median(values), nil
}
