//go:build linux

package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/cmd/bench/asked"
	"cuesta/orient"
	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/sound"
)

func heardBench(t *testing.T, o options, set scenes.Settings) (*heard, *bytes.Buffer) {
	t.Helper()
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := scenes.NewBench(scenes.BenchOptions{Plane: &p, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	b.Choose(set)
	var out bytes.Buffer
	return &heard{Scene: scenes.NewSwitched(b), crier: newCrier(o, &out)}, &out
}

func frame(ticks int, presses ...input.Press) input.Frame {
	return input.Frame{W: 1280, H: 720, Scale: 1, Ticks: ticks, Presses: presses}
}

func TestAnnounceWritesALineForEachChange(t *testing.T) {
	h, out := heardBench(t, options{Options: asked.Options{Announce: true}}, scenes.Settings{})
	h.Update(frame(1))
	if got := out.String(); !strings.HasPrefix(got, "Bedding, station 1.\n") || !strings.Contains(got, "\nNeedle rubbing on the glass.\n") {
		t.Errorf("at first: %q", got)
	}
	out.Reset()
	for range 100 {
		h.Update(frame(2))
	}
	if out.Len() > 0 {
		t.Errorf("nothing was done, and %q was said", out.String())
	}
	h.Update(frame(2, input.Press{Key: input.Tab}))
	if !strings.Contains(out.String(), "button.\n") {
		t.Errorf("after Tab: %q, want the control", out.String())
	}
}

func TestNothingIsWrittenUnasked(t *testing.T) {
	h, out := heardBench(t, options{}, scenes.Settings{})
	h.Update(frame(1, input.Press{Key: input.Tab}))
	if out.Len() > 0 {
		t.Errorf("wrote %q", out.String())
	}
}

// A reader who has gone away ends the announcements and not the bench.
func TestAnnouncementsNobodyReads(t *testing.T) {
	h, _ := heardBench(t, options{}, scenes.Settings{})
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	w.Close()
	h.crier.out = w
	h.Update(frame(1))
	if h.crier.out != nil {
		t.Error("still writes to where nobody reads")
	}
}

// Without a speech program, speech is told once not to be there.
func TestSpeechWithoutAProgram(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	h, out := heardBench(t, options{Options: asked.Options{Announce: true}}, scenes.Settings{Speech: true})
	h.Update(frame(1))
	h.Update(frame(1))
	if n := strings.Count(out.String(), "there is no speech program"); n != 1 {
		t.Errorf("told %d times that there is no program, want 1: %q", n, out.String())
	}
}

// A speech program of the system says what changes on the screen. The program
// here is a script of a Unix shell; the voice itself is tested everywhere.
func TestSpeechThroughAProgram(t *testing.T) {
	dir := t.TempDir()
	notes := filepath.Join(dir, "notes")
	script := "#!/bin/sh\n/bin/cat >> " + notes + "\n"
	if err := os.WriteFile(filepath.Join(dir, "espeak-ng"), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir)
	h, _ := heardBench(t, options{Options: asked.Options{Speak: true}}, scenes.Settings{})
	h.Update(frame(1))
	h.crier.voice.Finish()
	said, err := os.ReadFile(notes)
	if err != nil || !strings.HasPrefix(string(said), "Bedding, station 1. ") {
		t.Errorf("said %q, %v", said, err)
	}
}

func TestWhatIsHeardOfTheBench(t *testing.T) {
	h, _ := heardBench(t, options{}, scenes.Settings{})
	h.Update(frame(1))
	if s := h.Sound(); s.Volume != 0 {
		t.Errorf("volume %g before sound was asked for", s.Volume)
	}
	h, out := heardBench(t, options{Options: asked.Options{Announce: true}}, scenes.Settings{Sound: scenes.SoundMiddle})
	h.Update(frame(1, input.Press{Key: input.Space}, input.Press{Rune: 'f'}))
	if s := h.Sound(); s.Volume != .5 || s.Level != sound.RoundLevel || s.Needle != sound.Rubbing || s.Taps != 1 || s.Turns != 1 {
		t.Errorf("%+v, want half volume, the round level, a needle that rubs, a tap and a turn", s)
	}
	h.Update(frame(1, input.Press{Rune: 't'}))
	if s := h.Sound(); s.Level != sound.TubeLevel || s.Needle != sound.NoNeedle || s.Turns != 2 {
		t.Errorf("on its side: %+v, want the tube level, no needle, another turn", s)
	}
	h.Unheard(errors.New("no device"))
	h.Update(frame(1))
	if !strings.Contains(out.String(), "No sound device was found") {
		t.Errorf("without a device: %q", out.String())
	}
	for _, r := range "035/30" {
		h.Update(frame(1, input.Press{Rune: r}))
	}
	h.Update(frame(1, input.Press{Key: input.Enter}))
	if s := h.Sound(); s.Volume != 0 {
		t.Errorf("after the verdict: volume %g, want silence", s.Volume)
	}
}
