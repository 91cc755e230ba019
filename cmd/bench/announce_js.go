package main

import (
	"io"
	"syscall/js"

	"cuesta/scenes"
	"cuesta/scenes/describe"
)

// crier hands what changes on a screen to the page, which speaks it where that
// is wanted. Readers of the page have its controls and its live region instead.
type crier struct {
	herald  describe.Herald
	ticks   int // since it listened
	speaks  bool
	noticed bool // that there is no speech
}

// newCrier is not for a page: openPage has its own.
func newCrier(options, io.Writer) *crier { return nil }

// listenEvery is how often a screen is listened to, in ticks of 1/120 s.
const listenEvery = 12

func (c *crier) hear(s scenes.Scene, speak bool, ticks int) (notice string) {
	if speak && !c.speaks { // begins with the whole screen
		c.herald = describe.Herald{}
	}
	c.speaks = speak
	if speak && !c.noticed && !js.Global().Get("speechSynthesis").Truthy() {
		c.noticed = true
		return "Nothing is spoken: this browser has no speech of its own."
	}
	if c.ticks += ticks; c.ticks < listenEvery {
		return ""
	}
	c.herald.Pass(c.ticks)
	c.ticks = 0
	for _, said := range c.herald.Hear(s.Description()) {
		tell("announce", said, speak)
	}
	return ""
}

func (*crier) close() {}
