package main

import (
	"path/filepath"
	"testing"
)

func TestMedianMetric(t *testing.T) {
	const text = `goos: linux
BenchmarkPrint-2   	      12	  95000000 ns/op	         0.25 of-text-alone	       310.5 pages/s
BenchmarkPrint-2   	      12	  95000000 ns/op	         0.75 of-text-alone	       290.5 pages/s
BenchmarkPrinting  	      12	  95000000 ns/op	         9.00 of-text-alone	         9.0 pages/s
BenchmarkPrint     	      12	  95000000 ns/op	         0.35 of-text-alone	       300.5 pages/s
PASS
`
	for unit, want := range map[string]float64{"pages/s": 300.5, "of-text-alone": 0.35, "ns/op": 95e6} {
		if got, err := medianMetric(text, "BenchmarkPrint", unit); err != nil || got != want {
			t.Errorf("%s: got %v, %v, want %v", unit, got, err, want)
		}
	}
	if got, err := medianMetric(text, "BenchmarkPrint", "forms/s"); err == nil {
		t.Errorf("a unit that is not reported: got %v, want an error", got)
	}
}

// Each figure names a package of this module.
func TestQuizFiguresNamePackages(t *testing.T) {
	for _, f := range quizFigureList {
		tests, err := filepath.Glob(filepath.Join(moduleRoot, f.pkg, "*_test.go"))
		if err != nil || len(tests) == 0 {
			t.Errorf("%s: no tests in %s: %v", f.name, f.pkg, err)
		}
	}
}
