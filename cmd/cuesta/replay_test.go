package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/sim"
	"cuesta/sim/record"
)

// recorded is a small recording, as a file holds it.
func recorded(t *testing.T) string {
	t.Helper()
	r, err := record.Start(sim.Setup{Seed: 3, Plane: orient.PlaneOf(35*orient.Degree, 30*orient.Degree)})
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []orient.Angle{10, -3, 0.5} {
		if err := r.Do(sim.Command{Kind: sim.Roll, Angle: a * orient.Degree}); err != nil {
			t.Fatal(err)
		}
		r.Advance(120)
	}
	var b strings.Builder
	if err := r.Recording().Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestReplay(t *testing.T) {
	good := recorded(t)
	changed := strings.Replace(good, `"tick":120,"do":"roll","turn":-0.05`, `"tick":120,"do":"roll","turn":-0.06`, 1)
	lines := strings.SplitAfter(good, "\n")
	for _, c := range []struct {
		name, file string
		flags      []string
		want       int
		out, err   string
	}{
		{"same", good, nil, done, "The recording ends where it says it did, at tick 360 (3.0 s).", ""},
		{"same, as an object", good, []string{"--json"}, done, `{"same":true,"tick":360,"seconds":3,`, ""},
		{"changed", changed, nil, failed, "differs from command 2 on, at tick 120 (1.0 s)", "does not end where it says"},
		{"changed, as an object", changed, []string{"--json"}, failed, `{"same":false,"command":2,"tick":120,`, "does not end"},
		{"cut", lines[0] + lines[1], nil, misread, "", "line 3: the recording is cut off"},
		{"not a recording", "035/30\n", nil, misread, "", "line 1: not a recording"},
		{"empty", "", nil, misread, "", "cut off"},
	} {
		path := filepath.Join(t.TempDir(), "a.rec")
		if err := os.WriteFile(path, []byte(c.file), 0o600); err != nil {
			t.Fatal(err)
		}
		var out, remarks bytes.Buffer
		got := run(append([]string{"replay", path}, c.flags...), env{out: &out, err: &remarks})
		if got != c.want || !strings.Contains(out.String(), c.out) || !strings.Contains(remarks.String(), c.err) {
			t.Errorf("%s: got %d, %q, %q; want %d, %q, %q", c.name, got, &out, &remarks, c.want, c.out, c.err)
		}
	}
}

func TestReplayWantsOneFileThatIsThere(t *testing.T) {
	for _, c := range []struct {
		args []string
		want int
		says string
	}{
		{[]string{"replay"}, misread, "name one recording"},
		{[]string{"replay", "a", "b"}, misread, "read 2 files"},
		{[]string{"replay", filepath.Join(t.TempDir(), "none.rec")}, failed, "none.rec"},
		{[]string{"replay", t.TempDir()}, failed, "directory"},
	} {
		var out, remarks bytes.Buffer
		if got := run(c.args, env{out: &out, err: &remarks}); got != c.want || !strings.Contains(remarks.String(), c.says) {
			t.Errorf("%v: got %d, %q; want %d, %q", c.args, got, &remarks, c.want, c.says)
		}
	}
}

// The golden recordings of the simulator run here as they do in its own tests.
func TestReplayOfTheScenarios(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "sim", "record", "testdata", "*.rec"))
	if err != nil || len(files) == 0 {
		t.Fatalf("got %v, %v", files, err)
	}
	for _, f := range files {
		var out, remarks bytes.Buffer
		if got := run([]string{"replay", f}, env{out: &out, err: &remarks}); got != done {
			t.Errorf("%s: %d, %q, %q", f, got, &out, &remarks)
		}
	}
}
