package window

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"
	"time"

	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/sound"
)

// bell is a scene that only sounds.
type bell struct {
	state   sound.State
	unheard []error
}

func (b *bell) Update(input.Frame)   {}
func (b *bell) Picture(*draw.List)   {}
func (b *bell) Close() error         { return nil }
func (b *bell) Sound() sound.State   { return b.state }
func (b *bell) Unheard(reason error) { b.unheard = append(b.unheard, reason) }

func heardState() sound.State {
	return sound.State{Volume: 1, Level: sound.RoundLevel, Right: .5, Forward: -.2}
}

// Where there is no device the scene is told so once each time its sound is
// switched on, and frames go on; where there is one it plays. It is the only
// test that opens a device, since a process can do so once.
func TestWithOrWithoutADevice(t *testing.T) {
	b := &bell{}
	g := &guarded{scene: b}
	var e ears
	defer e.close()
	e.listen(g)
	if e.opening != nil {
		t.Fatal("a device was looked for although nothing is to be heard")
	}
	b.state = heardState()
	for range 200 {
		e.listen(g)
		if len(b.unheard) > 0 || e.player != nil {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	if len(b.unheard) == 0 {
		if e.player == nil || !e.player.IsPlaying() {
			t.Fatal("neither did the scene play, nor was it told that it cannot")
		}
		return
	}
	for range 5 {
		e.listen(g)
	}
	if len(b.unheard) != 1 || !errors.Is(b.unheard[0], ErrNoSound) {
		t.Errorf("told %v, want once that there is no device", b.unheard)
	}
	b.state.Volume = 0
	e.listen(g)
	b.state.Volume = 1
	e.listen(g)
	if len(b.unheard) != 2 {
		t.Errorf("switched on again: told %d times, want 2", len(b.unheard))
	}
}

func TestTheStreamIsWhatTheSynthMakes(t *testing.T) {
	var s stream
	s.set(heardState())
	p := make([]byte, 4800*frameBytes+3)
	n, err := s.Read(p)
	if n != 4800*frameBytes || err != nil {
		t.Fatalf("read %d bytes, %v; want %d whole samples", n, err, 4800)
	}
	want := make([]float32, 2*4800)
	var y sound.Synth
	y.Render(want, heardState())
	for i, w := range want {
		if got := math.Float32frombits(binary.LittleEndian.Uint32(p[4*i:])); got != w {
			t.Fatalf("sample %d: %g, want %g", i, got, w)
		}
	}
	if s.silent() {
		t.Error("silent while a note sounds")
	}
	s.set(sound.State{})
	for range 40 {
		s.Read(p)
	}
	if !s.silent() {
		t.Error("not silent long after the sound was switched off")
	}
}

// A scene that is silent costs nothing worth naming in a frame.
func TestSilenceTakesNoMemory(t *testing.T) {
	g := &guarded{scene: &bell{}}
	var e ears
	if n := testing.AllocsPerRun(100, func() { e.listen(g) }); n != 0 {
		t.Errorf("%g pieces of memory a frame, want 0", n)
	}
}
