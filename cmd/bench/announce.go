//go:build !js

package main

import (
	"fmt"
	"io"
	"os/signal"
	"syscall"

	"cuesta/cmd/internal/speech"
	"cuesta/scenes"
	"cuesta/scenes/describe"
)

// crier has what changes on a screen written and spoken.
type crier struct {
	herald describe.Herald
	out    io.Writer // of the written sentences, or nil
	speak  bool      // in any case, and not only where the settings say so
	voice  *speech.Voice
	asked  bool // for the voice
}

// newCrier is what the command line asks for.
func newCrier(o options, out io.Writer) *crier {
	c := &crier{speak: o.Speak}
	if o.Announce {
		c.out = out
		signal.Ignore(syscall.SIGPIPE) // a reader who goes away must not end the bench
	}
	return c
}

// hear says what has changed on the screen, and returns a notice to show where
// speech is wanted and there is none.
func (c *crier) hear(s scenes.Scene, speak bool, ticks int) (notice string) {
	notice = c.ready(c.speak || speak)
	c.herald.Pass(ticks)
	if c.out == nil && c.voice == nil {
		return notice
	}
	if err := c.voice.Err(); err != nil {
		notice = "Nothing is spoken: " + plainly(err) + "."
		c.voice.Close() // at once, since it says nothing any more
		c.voice = nil
	}
	said := c.herald.Hear(s.Description())
	c.voice.Say(said...)
	for _, line := range said {
		if c.out == nil {
			break
		}
		if _, err := fmt.Fprintln(c.out, line); err != nil {
			c.out = nil // whoever read it has gone
		}
	}
	return notice
}

// ready opens the voice when it is first wanted, and ends it when it is no
// longer; a voice begins with the whole screen.
func (c *crier) ready(wanted bool) (notice string) {
	switch {
	case wanted && !c.asked:
		c.asked = true
		v, err := speech.Open()
		if err != nil {
			return "Nothing is spoken: " + plainly(err) + "."
		}
		c.voice = v
		if c.out == nil {
			c.herald = describe.Herald{}
		}
	case !wanted && c.asked:
		c.asked = false
		go c.voice.Close() // a program that hangs must hold up no frame
		c.voice = nil
	}
	return ""
}

func (c *crier) close() { c.voice.Close() }
