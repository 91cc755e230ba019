package main

import (
	"bufio"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
)

// What the window is told names files wherever it runs, and stands before the
// scene.
func TestWhatTheWindowIsTold(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	if err := os.WriteFile("class.csv", []byte("id,name\na17,Aneira Holt\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		o     opener
		scene []string
		want  []string
	}{
		{opener{}, nil, nil},
		{opener{full: true, speak: true}, []string{"lecture", "x"}, []string{"--full-screen", "--speak"}},
		{opener{roster: "class.csv", folder: "read", station: "A", withhold: true}, []string{"lab", "x"},
			[]string{"--roster", filepath.Join(here, "class.csv"), "--out", filepath.Join(here, "read"), "--station", "A", "--withhold"}},
	} {
		if got, err := c.o.flags(c.scene); err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%v: got %q, %v; want %q", c.scene, got, err, c.want)
		}
	}
	for _, o := range []opener{{roster: "class.csv"}, {folder: "x"}, {station: "A"}, {withhold: true}} {
		if got, err := o.flags([]string{"hall"}); err == nil {
			t.Errorf("%+v of the hall: got %q, want it refused", o, got)
		}
	}
}

// A window is asked to close, not cut off.
func TestTheWindowEndsWithThisProgram(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows knows no asking: the window is killed there")
	}
	ctx, cancel := context.WithCancel(t.Context())
	c := exec.CommandContext(ctx, "sh", "-c", `trap 'echo closed; exit 0' TERM; echo open; while :; do sleep .05; done`)
	c.Cancel = func() error { return end(c.Process) }
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	lines.Scan()
	cancel()
	lines.Scan()
	if lines.Text() != "closed" {
		t.Errorf("the window said %q", lines.Text())
	}
	_ = c.Wait() // says that it was cancelled
}
