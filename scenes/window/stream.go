package window

import (
	"encoding/binary"
	"math"
	"sync"

	"cuesta/scenes/sound"
)

// frameBytes is the size of a sample for both ears.
const frameBytes = 2 * 4

// stream is the sound as the device reads it, from the state that was set last.
type stream struct {
	mu      sync.Mutex
	state   sound.State
	synth   sound.Synth
	samples []float32
	quiet   int // samples in a row that were silent
}

func (s *stream) set(state sound.State) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.state = state
}

// silent says that all is silent and has been for a while.
func (s *stream) silent() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.state.Volume <= 0 && s.quiet > sound.Rate
}

// Read fills p with whole samples, as the device wants them; it never ends.
func (s *stream) Read(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	n := len(p) / frameBytes * 2
	if cap(s.samples) < n {
		s.samples = make([]float32, n)
	}
	s.samples = s.samples[:n]
	s.synth.Render(s.samples, s.state)
	s.quiet += n
	for i, v := range s.samples {
		if v != 0 {
			s.quiet = 0
		}
		binary.LittleEndian.PutUint32(p[4*i:], math.Float32bits(v))
	}
	return 4 * n, nil
}
