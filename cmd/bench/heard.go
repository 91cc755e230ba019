package main

import (
	"strings"

	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/sound"
	"cuesta/scenes/window"
	"cuesta/sim"
)

// heard is a scene that can be heard: its levels and its needle as sound, and
// what changes on its screen in sentences.
type heard struct {
	scenes.Scene
	listener sound.Listener
	state    sound.State
	crier    *crier // nil says nothing
}

// Update takes a frame of input and listens to what has come of it.
func (h *heard) Update(f input.Frame) []sim.Command {
	done := h.Scene.Update(f)
	set := h.settings()
	h.state = h.listen(set.Sound, done)
	if h.crier != nil {
		h.tell(h.crier.hear(h.Scene, set.Speech, f.Ticks))
	}
	return done
}

func (h *heard) settings() scenes.Settings {
	if c, ok := h.Scene.(scenes.Chooser); ok {
		return c.Settings()
	}
	return scenes.Settings{}
}

func (h *heard) listen(l scenes.Loudness, done []sim.Command) sound.State {
	o, ok := h.Scene.(scenes.Observer)
	if !ok || l == scenes.SoundOff {
		return h.listener.Rest()
	}
	seen, there := o.Observation()
	if !there {
		return h.listener.Rest()
	}
	s := h.listener.Hear(seen, done)
	s.Volume = l.Gain()
	return s
}

// Sound is what is to be heard now.
func (h *heard) Sound() sound.State { return h.state }

// noSound is what is shown where the sound cannot be heard.
const noSound = "No sound device was found, so nothing sounds; everything else works. Plug one in and start the program again."

// Unheard shows why nothing is heard.
func (h *heard) Unheard(error) { h.tell(noSound) }

func (h *heard) tell(s string) {
	if t, ok := h.Scene.(scenes.Told); ok && s != "" {
		t.Tell(s)
	}
}

// Close ends speech with the scene.
func (h *heard) Close() error {
	if h.crier != nil {
		h.crier.close()
	}
	return h.Scene.Close()
}

// plainly is an error in one line.
func plainly(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }

var (
	_ scenes.Scene    = (*heard)(nil)
	_ window.Sounding = (*heard)(nil)
)
