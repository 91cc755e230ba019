//go:build linux

package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"testing"

	"cuesta/cmd/bench/asked"
)

// Help and wrong words are answered where there is no display, and only what
// wants a window is refused.
func TestTheCommandLineIsReadWithoutADisplay(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		args        string
		status      int
		out, remark string
	}{
		{"--help", done, asked.Usage, ""},
		{"-h", done, asked.Usage, ""},
		{"--bogus", misread, "", "-bogus; bench --help lists"},
		{"outcrop", misread, "", "neither a scene nor a form"},
		{"--size 3 bench", misread, "", "width x height"},
		{"", failed, "", "there is no display"},
		{"--plane 035/30", failed, "", "there is no display"},
	} {
		c := exec.Command(self, strings.Fields(tt.args)...) // the program as it starts, before any test
		c.Env = append(os.Environ(), "DISPLAY=")
		var out, remarks bytes.Buffer
		c.Stdout, c.Stderr = &out, &remarks
		err := c.Run()
		var exit *exec.ExitError
		if err != nil && !errors.As(err, &exit) {
			t.Fatal(err)
		}
		if got := c.ProcessState.ExitCode(); got != tt.status || out.String() != tt.out || !strings.Contains(remarks.String(), tt.remark) {
			t.Errorf("%q: status %d, %q and %q, want %d, %q and %q", tt.args, got, out.String(), remarks.String(), tt.status, tt.out, tt.remark)
		}
	}
}
