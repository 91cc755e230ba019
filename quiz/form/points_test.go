package form

import "testing"

// TestPoints: English has its plural for all but one.
func TestPoints(t *testing.T) {
	for n, want := range map[float64]string{0: "0 points", 1: "1 point", 0.5: "0.5 points", 1.0 / 3: "0.33 points", 2: "2 points", -0.001: "0 points"} {
		if got := Points(n); got != want {
			t.Errorf("%v: %q, want %q", n, got, want)
		}
	}
}
