package main

import (
	"bytes"
	"errors"
	"flag"
	"strings"
	"testing"

	"cuesta/cmd/bench/asked"
	"cuesta/orient"
)

func TestRead(t *testing.T) {
	plane := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	tests := []struct {
		name string
		args string
		want options
	}{
		{"nothing", "--seed 1", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720}}},
		{"a plane", "--seed 1 --plane 035/30", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720}, plane: &plane}},
		{"a method", "--seed 1 --method lid", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Method: "lid"}}},
		{"with letters", "--seed=1 --plane=N35E,30SE", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720}, plane: &plane}},
		{"a size", "--seed 1 --size 800x600 --full-screen --guest", options{Options: asked.Options{Seed: 1, Seeded: true, W: 800, H: 600, Full: true, Guest: true}}},
		{"the hall", "--seed 1 hall", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Scene: asked.Hall}}},
		{"a form by its file", "--seed 1 a17.form.json", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Scene: asked.Form, File: "a17.form.json"}}},
		{"a form by its scene", "--seed 1 form a17.json", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Scene: asked.Form, File: "a17.json"}}},
		{"a lecture", "--seed 1 lecture two-readings", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Scene: asked.Lecture, File: "two-readings"}}},
		{"a lab", "--seed 1 --station 3 --out r lab s.toml", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Scene: asked.Lab, File: "s.toml", Room: asked.Room{Station: "3", Out: "r"}}}},
		{"flags behind the scene", "lab s.toml --station 3 --seed 1 --out r", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Scene: asked.Lab, File: "s.toml", Room: asked.Room{Station: "3", Out: "r"}}}},
		{"measuring", "--seed 1 --frames 400 --empty", options{Options: asked.Options{Seed: 1, Seeded: true, W: 1280, H: 720, Frames: 400, Empty: true}}},
	}
	for _, tt := range tests {
		got, err := read(strings.Fields(tt.args))
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if (got.plane == nil) != (tt.want.plane == nil) || got.plane != nil && got.plane.Rounded(orient.Degree) != tt.want.plane.Rounded(orient.Degree) {
			t.Errorf("%s: plane %v, want %v", tt.name, got.plane, tt.want.plane)
		}
		got.plane = tt.want.plane
		if got != tt.want {
			t.Errorf("%s: %+v, want %+v", tt.name, got, tt.want)
		}
	}
}

// Without a seed each start is another.
func TestChance(t *testing.T) {
	seen := map[uint64]bool{}
	for range 20 {
		seen[chance()] = true
	}
	if len(seen) < 15 {
		t.Errorf("%d different seeds of 20", len(seen))
	}
}

func TestWrongWordsAreToldInOneLine(t *testing.T) {
	for _, args := range []string{
		"outcrop", "bench extra", "form", "form a b", "hall x", "--station 3", "lab", "--plane nonsense", "--plane", "--method nonsense", "--method", "--seed -1", "--seed x", "--size 1280", "--size 10x10",
		"--size 0x0", "--size 99999x20", "--frames -3", "--frames x", "--no-such-flag",
	} {
		var out, problems bytes.Buffer
		if code := run(strings.Fields(args), &out, &problems); code != misread {
			t.Errorf("%q: exit %d, want %d", args, code, misread)
		}
		if out.Len() > 0 || strings.Count(problems.String(), "\n") != 1 || !strings.HasPrefix(problems.String(), "bench: ") {
			t.Errorf("%q: said %q and %q, want one line about the mistake", args, out.String(), problems.String())
		}
	}
}

func TestHelp(t *testing.T) {
	var out, problems bytes.Buffer
	if code := run([]string{"--help"}, &out, &problems); code != done || out.String() != asked.Usage || problems.Len() > 0 {
		t.Errorf("exit %d, said %q and %q, want 0 and the usage", code, out.String(), problems.String())
	}
	for _, args := range []string{"-h", "lab --help", "lab s.toml -h"} {
		if _, err := read(strings.Fields(args)); !errors.Is(err, flag.ErrHelp) {
			t.Errorf("%s: %v, want the help", args, err)
		}
	}
}
