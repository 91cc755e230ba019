package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"cuesta": main})
}

// TestScripts runs the command lines in testdata/script. There, status N
// command… checks the exit status, which ! and exec cannot.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": statusOf,
		},
	})
}

// statusOf is: status N args…, the arguments of cuesta. Standard error must be
// empty for 0 or hold one line otherwise.
func statusOf(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: status N [args...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	var out, told bytes.Buffer
	got := run(args[1:], env{in: strings.NewReader(""), out: &out, err: &told})
	if got != want {
		ts.Fatalf("status %d, want %d; told %q", got, want, told.String())
	}
	if lines := strings.Count(told.String(), "\n"); got != done && lines != 1 {
		ts.Fatalf("told %d lines, want one: %q", lines, told.String())
	}
	ts.Logf("%s", told.String())
}

// broken is an output that cannot be written.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestBrokenOutput(t *testing.T) {
	for _, args := range [][]string{
		{"convert", "035/30"}, {"convert", "--json", "035/30"}, {"field", "--site", "46,8", "--date", "2026"},
	} {
		var told bytes.Buffer
		if got := run(args, env{in: strings.NewReader(""), out: broken{}, err: &told}); got != failed {
			t.Errorf("%v: status %d, want %d", args, got, failed)
		}
		if !strings.Contains(told.String(), "the disk is full") {
			t.Errorf("%v: told %q", args, told.String())
		}
	}
}

func TestFieldKeys(t *testing.T) {
	var out bytes.Buffer
	if got := run([]string{"field", "--site=80,0", "--date=2025.0", "--json"}, env{out: &out, err: io.Discard}); got != done {
		t.Fatalf("status %d", got)
	}
	var got map[string]float64
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	// World Magnetic Model 2025, technical report, first test row.
	for key, want := range map[string]float64{
		"declination": 1.28, "inclination": 83.21, "north": 6521.6, "east": 145.9, "down": 54791.5,
		"horizontal": 6523.2, "total": 55178.5, "declination_per_year": 0.52, "inclination_per_year": 0.01,
		"north_per_year": -8.3, "east_per_year": 59.5, "down_per_year": 31.1, "horizontal_per_year": -7.0, "total_per_year": 30.1,
	} {
		value, ok := got[key]
		if off := value - want; !ok || off > 0.0501 || off < -0.0501 {
			t.Errorf("%s is %v (%v), want %v", key, value, ok, want)
		}
	}
	if got["declination_error"] < 0.26 {
		t.Errorf("declination_error is %v, want more than 0.26", got["declination_error"])
	}
}

func TestOneLineWhateverIsTyped(t *testing.T) {
	for _, text := range []string{"two\nlines", "\x00", "a\tb", strings.Repeat("x", 10000)} {
		var told bytes.Buffer
		if got := run([]string{"convert", text}, env{out: io.Discard, err: &told}); got != misread {
			t.Errorf("%q: status %d, want %d", text, got, misread)
		}
		if n := strings.Count(told.String(), "\n"); n != 1 || told.Len() > 1000 {
			t.Errorf("%q: told %d lines, %d bytes", text, n, told.Len())
		}
	}
}
