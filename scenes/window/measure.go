package window

import (
	"fmt"
	"runtime"
	"slices"
	"time"

	"github.com/hajimehoshi/ebiten/v2"
)

// Cost is what frames cost: the middle and the mean of their times, and the
// pieces of memory taken for each.
type Cost struct {
	Median, Mean time.Duration
	Allocs       float64
}

// Costs compares a scene with an empty frame, which is wiped and shown and
// holds nothing else.
type Costs struct{ Empty, Scene Cost }

// Ratio is the cost of a frame of the scene over that of an empty frame.
func (c Costs) Ratio() float64 { return float64(c.Scene.Median) / float64(c.Empty.Median) }

// Measure shows a scene for a number of frames, as fast as they can be had,
// in turns with as many empty ones, and returns what they cost. Like Run it
// may be called once, from main.
func Measure(s Scene, o Options, frames int) (Costs, error) {
	set(o)
	ebiten.SetVsyncEnabled(false)
	m := &meter{game: game{scene: &guarded{scene: s}, painter: NewPainter()}, left: frames}
	err := ebiten.RunGame(m)
	if err != nil {
		return Costs{}, fmt.Errorf("%w: %w", ErrDisplay, err)
	}
	return Costs{m.cost(m.empty), m.cost(m.full)}, m.scene.close()
}

// Turns are short, so that both kinds of frame meet the same disturbances. The
// first frames after a change and the first of all are not counted.
const (
	turnFrames = 20
	skipFrames = 4
	warmFrames = 60
)

// meter is a game that shows a scene and nothing in turns.
type meter struct {
	game
	left        int // frames of the scene to come
	n           int // frames so far
	start       time.Time
	mallocs     uint64
	empty, full sample
}

type sample struct {
	times   []time.Duration
	mallocs uint64
	frames  int
}

// blank says whether the present frame is an empty one.
func (m *meter) blank() bool { return m.n > warmFrames && (m.n/turnFrames)%2 == 0 }

func (m *meter) now() *sample {
	if m.blank() {
		return &m.empty
	}
	return &m.full
}

// Update ends one frame and begins the next.
func (m *meter) Update() error {
	now := time.Now()
	at := m.n % turnFrames
	if m.n > warmFrames && at > skipFrames {
		m.now().times = append(m.now().times, now.Sub(m.start))
	}
	m.count(at)
	if m.n > warmFrames+2*m.left {
		return ebiten.Termination
	}
	m.n++
	m.start = time.Now()
	return m.game.Update()
}

// count takes the number of allocations at the ends of a turn.
func (m *meter) count(at int) {
	if m.n <= warmFrames || at != skipFrames && at != turnFrames-1 {
		return
	}
	var s runtime.MemStats
	runtime.ReadMemStats(&s)
	if at == skipFrames {
		m.mallocs = s.Mallocs
		return
	}
	m.now().mallocs += s.Mallocs - m.mallocs
	m.now().frames += turnFrames - 1 - skipFrames
}

// Draw paints the scene or wipes the screen.
func (m *meter) Draw(screen *ebiten.Image) {
	if m.blank() {
		screen.Clear()
		m.painter.Repaint()
		return
	}
	m.game.Draw(screen)
}

func (m *meter) cost(s sample) Cost {
	if len(s.times) == 0 || s.frames == 0 {
		return Cost{}
	}
	slices.Sort(s.times)
	var sum time.Duration
	for _, t := range s.times {
		sum += t
	}
	return Cost{s.times[len(s.times)/2], sum / time.Duration(len(s.times)), float64(s.mallocs) / float64(s.frames)}
}
