package window

import (
	"errors"
	"fmt"
	"time"

	"github.com/ebitengine/oto/v3"

	"cuesta/scenes/sound"
)

// Sounding is a scene that can be heard.
type Sounding interface {
	// Sound is what is to be heard now. A volume of 0 is silence; a device is
	// first looked for when the volume rises above it.
	Sound() sound.State
	// Unheard says why the scene cannot be heard, each time its sound is
	// switched on. Everything but the sound goes on.
	Unheard(error)
}

// ErrNoSound is returned where there is no device to play on, or where it has
// gone away.
var ErrNoSound = errors.New("no sound device was found")

// latency is the most time between what happens and what is heard: one half
// waits here, the other in the device.
const latency = 80 * time.Millisecond

// ears play what a scene sounds like. The zero value has opened nothing.
type ears struct {
	opening chan opened
	device  *oto.Context
	player  *oto.Player
	stream  stream
	err     error
	on      bool // the scene wanted to be heard in the last frame
}

type opened struct {
	device *oto.Context
	err    error
}

// listen is called once a frame. A silent scene costs one call.
func (e *ears) listen(g *guarded) {
	s, ok := g.sound()
	if !ok || s.Volume <= 0 && e.opening == nil {
		return
	}
	switchedOn := s.Volume > 0 && !e.on
	e.on = s.Volume > 0
	e.stream.set(s)
	if e.opening == nil {
		e.opening = make(chan opened, 1)
		go open(e.opening)
	}
	had := e.err
	e.look()
	if e.err != nil && e.on && (switchedOn || had == nil) {
		g.unheard(e.err)
	}
	e.play()
}

// open opens the device, which may take a while.
func open(to chan<- opened) {
	hush()
	c, ready, err := oto.NewContext(&oto.NewContextOptions{
		SampleRate: sound.Rate, ChannelCount: 2, Format: oto.FormatFloat32LE, BufferSize: latency / 2,
	})
	if err == nil {
		<-ready
		err = c.Err()
	}
	to <- opened{c, err}
}

// look takes the device when it is open, and sees whether it has failed.
func (e *ears) look() {
	select {
	case o := <-e.opening:
		if e.fail(o.err); o.err == nil {
			e.device = o.device
			e.player = o.device.NewPlayer(&e.stream)
			e.player.SetBufferSize(int(latency/2*sound.Rate/time.Second) * frameBytes)
		}
	default:
		if e.device != nil && e.err == nil {
			e.fail(e.device.Err())
		}
	}
}

func (e *ears) fail(err error) {
	if err != nil {
		e.err = fmt.Errorf("%w: %w", ErrNoSound, err)
	}
}

// play runs the player while there is something to be heard.
func (e *ears) play() {
	switch {
	case e.player == nil || e.err != nil:
	case e.on && !e.player.IsPlaying():
		e.player.Play()
	case !e.on && e.player.IsPlaying() && e.stream.silent():
		e.player.Pause()
	}
}

// close ends the sound with the window.
func (e *ears) close() {
	if e.player != nil {
		e.player.Pause()
	}
}

// sound is what the scene sounds like; false where it cannot be heard.
func (g *guarded) sound() (sound.State, bool) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if s, ok := g.scene.(Sounding); ok && !g.closed {
		return s.Sound(), true
	}
	return sound.State{}, false
}

func (g *guarded) unheard(err error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if s, ok := g.scene.(Sounding); ok && !g.closed {
		s.Unheard(err)
	}
}
