package geomag_test

import (
	"strings"
	"testing"

	"cuesta/assets"
	"cuesta/orient/geomag"
)

func TestLoadRefuses(t *testing.T) {
	whole := assets.FieldCoefficients
	lines := strings.SplitAfter(whole, "\n")
	for _, c := range []struct{ name, text, says string }{
		{"nothing", "", "line 1"},
		{"no epoch", "WMM\n", "epoch"},
		{"cut short", strings.Join(lines[:40], ""), "missing"},
		{"a term twice", lines[0] + lines[1] + lines[1], "second time"},
		{"a word", lines[0] + "1 0 north 0 0 0\n", "line 2"},
		{"a degree too high", lines[0] + "13 0 1 0 0 0\n", "n 13"},
		{"order over degree", lines[0] + "2 3 1 0 0 0\n", "m 3"},
		{"a number missing", lines[0] + "1 0 1 0 0\n", "line 2"},
	} {
		if _, err := geomag.Load(c.text); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.says)
		}
	}
	if _, err := geomag.Load(strings.ReplaceAll(whole, "\n", "\r\n")); err != nil {
		t.Errorf("with the line ends of another system: %v", err)
	}
}

func FuzzLoad(f *testing.F) {
	f.Add(assets.FieldCoefficients)
	f.Add("2025.0\n1 0 1 2 3 4\n9999")
	f.Fuzz(func(t *testing.T, text string) {
		m, err := geomag.Load(text)
		if (err == nil) != (m != nil) {
			t.Fatalf("got %v and %v", m, err)
		}
	})
}
